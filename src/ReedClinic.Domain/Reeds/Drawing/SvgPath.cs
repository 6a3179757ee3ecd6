using System.Globalization;
using System.Text;

namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>Writes millimetres as the path data of a drawing, leaving out points that a straight line replaces as well.</summary>
public static class SvgPath
{
    /// <summary>Drawing units in a millimetre.</summary>
    public const double Scale = 16;

    private const double Tolerance = 0.006;

    /// <summary>A closed shape.</summary>
    /// <param name="points">Its outline in millimetres, without its first point again at the end.</param>
    public static string Closed(IReadOnlyList<MmPoint> points)
    {
        // A ring has no ends to hold on to: it is thinned as two lines between its first point and the one opposite.
        var half = points.Count / 2;
        var there = Thin([.. points.Take(half + 1)]);
        var back = Thin([.. points.Skip(half), points[0]]);
        return Write([.. there, .. back.Skip(1).Take(back.Count - 2)]) + "Z";
    }

    /// <summary>An open line.</summary>
    /// <param name="points">Its points in millimetres.</param>
    public static string Open(IReadOnlyList<MmPoint> points) => Write(Thin(points));

    /// <summary>A number as path data spells it.</summary>
    /// <param name="value">In drawing units; a tenth is the finest.</param>
    public static string Number(double value) => Math.Round(value, 1).ToString("0.#", CultureInfo.InvariantCulture);

    private static string Write(List<MmPoint> points)
    {
        var path = new StringBuilder();
        for (var i = 0; i < points.Count; i++)
        {
            path.Append(i == 0 ? 'M' : i == 1 ? 'L' : ' ').Append(Number(points[i].X * Scale)).Append(',').Append(Number(points[i].Y * Scale));
        }

        return path.ToString();
    }

    /// <summary>Douglas and Peucker's thinning.</summary>
    private static List<MmPoint> Thin(IReadOnlyList<MmPoint> points)
    {
        if (points.Count < 3)
        {
            return [.. points];
        }

        var (far, at) = (0.0, 0);
        for (var i = 1; i < points.Count - 1; i++)
        {
            var distance = Distance(points[i], points[0], points[^1]);
            if (distance > far)
            {
                (far, at) = (distance, i);
            }
        }

        return far <= Tolerance
            ? [points[0], points[^1]]
            : [.. Thin([.. points.Take(at + 1)]), .. Thin([.. points.Skip(at)]).Skip(1)];
    }

    private static double Distance(MmPoint p, MmPoint a, MmPoint b)
    {
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var length = Math.Sqrt((dx * dx) + (dy * dy));
        return length < 1e-12
            ? Math.Sqrt(((p.X - a.X) * (p.X - a.X)) + ((p.Y - a.Y) * (p.Y - a.Y)))
            : Math.Abs((dx * (a.Y - p.Y)) - (dy * (a.X - p.X))) / length;
    }
}
