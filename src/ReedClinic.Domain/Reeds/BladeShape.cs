namespace ReedClinic.Domain.Reeds;

/// <summary>
/// The curves of one blade. Across, a place is a share of the half width there (<c>u</c>: 0 on the centre line, 1 on the
/// edge); down, it is millimetres from the tip. Every zone follows the blade because it is drawn in these terms.
/// </summary>
internal sealed class BladeShape(ReedMeasures measures)
{
    private const double AcrossStep = 1 / 50.0;
    private const double DownStep = 0.25;

    /// <summary>Half the width of the blade at a distance from the tip: nearly straight from the tip, waisted towards the thread.</summary>
    public double HalfWidth(double y)
    {
        var (tip, throat) = (measures.TipWidth / 2, measures.ThroatWidth / 2);
        var t = Math.Clamp(y / measures.Cane, 0, 1);
        var s = 1 - t;
        return (s * s * s * tip) + (3 * s * s * t * (tip * 0.99)) + (3 * s * t * t * (throat * 1.08)) + (t * t * t * throat);
    }

    /// <summary>The line of the tip: straight, its corners eased.</summary>
    public static double TipLine(double u)
    {
        var over = Math.Max(0, Math.Abs(u) - 0.92) / 0.08;
        return 0.28 * over * over;
    }

    /// <summary>The rooftop: an inverted V with a soft apex, from the centre of the tip down to its sides.</summary>
    public double Roof(double u)
    {
        const double soft = 0.16;
        var rise = (Math.Sqrt((u * u) + (soft * soft)) - soft) / (Math.Sqrt(1 + (soft * soft)) - soft);
        return measures.TipAtCentre + ((measures.TipAtSides - measures.TipAtCentre) * rise);
    }

    /// <summary>The point at a share of the half width and a distance from the tip.</summary>
    public MmPoint At(double u, double y) => new(u * HalfWidth(y), y);

    /// <summary>The outline between two curves across and two curves down.</summary>
    /// <param name="top">The upper border, millimetres by share of the half width.</param>
    /// <param name="bottom">The lower border.</param>
    /// <param name="left">The left border, share of the half width by millimetres.</param>
    /// <param name="right">The right border.</param>
    public Outline Between(Func<double, double> top, Func<double, double> bottom, Func<double, double> left, Func<double, double> right)
    {
        var (topLeft, topRight) = (Meet(top, left), Meet(top, right));
        var (bottomRight, bottomLeft) = (Meet(bottom, right), Meet(bottom, left));
        var points = new List<MmPoint>();
        Across(points, top, topLeft.U, topRight.U);
        Down(points, right, topRight.Y, bottomRight.Y);
        Across(points, bottom, bottomRight.U, bottomLeft.U);
        Down(points, left, bottomLeft.Y, topLeft.Y);
        return new Outline(points);
    }

    private static (double U, double Y) Meet(Func<double, double> across, Func<double, double> down)
    {
        // Both curves are gentle, so that going to and fro between them settles at once.
        var u = down(0);
        for (var i = 0; i < 24; i++)
        {
            u = down(across(u));
        }

        return (u, across(u));
    }

    // Both walk one grid that all zones share, so that neighbours have their border's points in common.
    private void Across(List<MmPoint> points, Func<double, double> line, double from, double to) =>
        points.AddRange(Walk(from, to, AcrossStep).Select(u => At(u, line(u))));

    private void Down(List<MmPoint> points, Func<double, double> line, double from, double to) =>
        points.AddRange(Walk(from, to, DownStep).Select(y => At(line(y), y)));

    private static IEnumerable<double> Walk(double from, double to, double step)
    {
        yield return from;
        var forward = to > from;
        var index = forward ? Math.Floor(from / step) + 1 : Math.Ceiling(from / step) - 1;
        for (; forward ? index * step < to - 1e-9 : index * step > to + 1e-9; index += forward ? 1 : -1)
        {
            if (Math.Abs((index * step) - from) > 1e-9)
            {
                yield return index * step;
            }
        }
    }
}
