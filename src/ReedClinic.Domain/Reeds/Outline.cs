namespace ReedClinic.Domain.Reeds;

/// <summary>A point on the drawing of one blade, in millimetres.</summary>
/// <param name="X">From the centre line: negative to the left, positive to the right, seen from the blade's own face, tip up.</param>
/// <param name="Y">From the tip, downwards.</param>
public readonly record struct MmPoint(double X, double Y)
{
    /// <summary>The same point on the other side of the centre line.</summary>
    /// <returns>X with its sign turned.</returns>
    public MmPoint Mirror() => new(-X, Y);
}

/// <summary>A closed outline in millimetres: a simple polygon, its last point joined to its first.</summary>
public sealed class Outline
{
    private readonly MmPoint[] points;

    /// <summary>Closes a line of points.</summary>
    /// <param name="points">At least three points, in order, the first not repeated at the end.</param>
    public Outline(IEnumerable<MmPoint> points)
    {
        this.points = [.. points];
        if (this.points.Length < 3)
        {
            throw new ArgumentException("An outline needs three points.", nameof(points));
        }
    }

    /// <summary>The points in order.</summary>
    public IReadOnlyList<MmPoint> Points => points;

    /// <summary>The smallest X.</summary>
    public double Left => points.Min(p => p.X);

    /// <summary>The largest X.</summary>
    public double Right => points.Max(p => p.X);

    /// <summary>The smallest Y: nearest the tip.</summary>
    public double Top => points.Min(p => p.Y);

    /// <summary>The largest Y: furthest from the tip.</summary>
    public double Bottom => points.Max(p => p.Y);

    /// <summary>The area in square millimetres, by the shoelace formula.</summary>
    public double Area
    {
        get
        {
            var twice = 0.0;
            for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
            {
                twice += (points[j].X * points[i].Y) - (points[i].X * points[j].Y);
            }

            return Math.Abs(twice) / 2;
        }
    }

    /// <summary>The outline mirrored in the centre line, its points in the opposite order.</summary>
    /// <returns>A new outline of the same turning direction.</returns>
    public Outline Mirror() => new(points.Reverse().Select(p => p.Mirror()));

    /// <summary>Whether a point lies inside (crossing rule; a point on the line itself may go either way).</summary>
    /// <param name="point">The point to ask about.</param>
    /// <returns>True when it is inside.</returns>
    public bool Contains(MmPoint point)
    {
        var inside = false;
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            var (a, b) = (points[i], points[j]);
            if ((a.Y > point.Y) != (b.Y > point.Y)
                && point.X < a.X + ((point.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)))
            {
                inside = !inside;
            }
        }

        return inside;
    }

    /// <summary>A point well inside, where a number or a mark can sit: the middle of the widest stretch at half height.</summary>
    /// <returns>A point for which <see cref="Contains"/> is true.</returns>
    public MmPoint Anchor()
    {
        var y = ((Top + Bottom) / 2) + 1e-7;
        var crossings = new List<double>();
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            var (a, b) = (points[i], points[j]);
            if ((a.Y > y) != (b.Y > y))
            {
                crossings.Add(a.X + ((y - a.Y) / (b.Y - a.Y) * (b.X - a.X)));
            }
        }

        crossings.Sort();
        var best = new MmPoint(crossings[0], y);
        var width = -1.0;
        for (var i = 0; i + 1 < crossings.Count; i += 2)
        {
            if (crossings[i + 1] - crossings[i] > width)
            {
                width = crossings[i + 1] - crossings[i];
                best = new MmPoint((crossings[i] + crossings[i + 1]) / 2, y);
            }
        }

        return best;
    }
}
