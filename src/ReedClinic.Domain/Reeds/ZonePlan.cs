namespace ReedClinic.Domain.Reeds;

/// <summary>Lays the zones of one style out on a blade. The borders between zones are drawing defaults (no source) unless the measures say otherwise.</summary>
internal sealed class ZonePlan(BladeShape shape, ReedMeasures m)
{
    private const double EdgeStrip = 0.915;
    private const double TipEdgeDepth = 0.42;
    private const double CornerFrom = 0.7;
    private const double Gutter = 0.42;
    private const double Ridge = 0.26;
    private const double Slope = 1.2;

    private bool HasWindows => m.Windows > 0;

    private double BackTop => m.TipAtSides + m.Heart;

    private double BarkTop => BackTop + m.Windows;

    /// <summary>All pieces on the face of the blade, from the tip down, left before right.</summary>
    public IEnumerable<ZonePiece> Face() => HasWindows ? [.. Tip(), .. Heart(), .. Back()] : [.. Tip(), .. Heart(), .. ShortBark()];

    /// <summary>What holds the cane: eye, thread, cork where there is one, and the wire where there is one.</summary>
    public IEnumerable<ZonePiece> Below(bool hasCork)
    {
        var (throat, foot) = (m.ThroatWidth / 2, m.Cane);
        yield return Whole(Zone.Eye, Lens(foot + 0.75, throat * 0.6, 0.36));
        yield return Whole(Zone.Thread, Tube(foot, throat + 0.2, foot + 7.2, throat + 0.75));
        if (hasCork)
        {
            yield return Whole(Zone.Cork, Tube(foot + 8.2, throat + 1.2, foot + 12.4, throat + 1.4));
        }

        var wire = foot - 2.2;
        yield return Whole(Zone.Wire, shape.Between(_ => wire, _ => wire + 0.5, _ => -1, _ => 1));
    }

    /// <summary>The rooftop from edge to edge.</summary>
    public IReadOnlyList<MmPoint> RooftopLine() =>
        [.. Enumerable.Range(0, 41).Select(i => (i - 20) / 20.0).Select(u => shape.At(u, shape.Roof(u)))];

    /// <summary>Lines along the cane, inside the bark and rails, where the grain shows.</summary>
    public IReadOnlyList<IReadOnlyList<MmPoint>> Grain() =>
        [.. new[] { -0.72, -0.5, -0.3, -0.1, 0.12, 0.31, 0.52, 0.7 }.Select(u => (IReadOnlyList<MmPoint>)
            [.. Enumerable.Range(0, 7).Select(i => GrainTop(u) + ((m.Cane - 0.25 - GrainTop(u)) * i / 6)).Select(y => shape.At(u, y))])];

    private double GrainTop(double u) => HasWindows ? BarkTop + 0.45 + (0.5 * Math.Abs(Math.Sin(u * 9))) : LayEnd(u) + 0.8 + Math.Abs(2 * Math.Sin(u * 9));

    private IEnumerable<ZonePiece> Tip()
    {
        double EdgeFoot(double u) => BladeShape.TipLine(u) + TipEdgeDepth;
        double CornerFoot(double u) => TipEdgeDepth + (Math.Max(0, Math.Abs(u) - CornerFrom) / (1 - CornerFrom) * 1.15);
        double GutterTop(double u) => shape.Roof(u) - Gutter;
        double Support(double y) => 0.3 + (0.05 * y);
        return
        [
            .. Halves(Zone.TipEdge, BladeShape.TipLine, EdgeFoot, _ => 0, _ => CornerFrom),
            .. Halves(Zone.TipCorners, BladeShape.TipLine, CornerFoot, _ => CornerFrom, _ => 1),
            .. Halves(Zone.TipCentre, EdgeFoot, GutterTop, _ => 0, Support),
            .. Halves(Zone.TipSides, CornerFoot, GutterTop, Support, _ => 1),
            .. Halves(Zone.Rooftop, GutterTop, u => shape.Roof(u) + Ridge, _ => 0, _ => 1),
        ];
    }

    private IEnumerable<ZonePiece> Heart()
    {
        double Ramp(double u) => shape.Roof(u) + Ridge;
        double Crest(double u) => shape.Roof(u) + Ridge + Slope;
        double BottomTop(double u) => HeartEnd(u) - 0.95;
        double Flank(double y) => 0.42 - (0.012 * (y - m.TipAtSides));
        var edgeFoot = m.Cane;
        return
        [
            .. Halves(Zone.Transition, Ramp, Crest, _ => 0, _ => EdgeStrip),
            .. Halves(Zone.HeartCentre, Crest, BottomTop, _ => 0, Flank),
            .. Halves(Zone.HeartSides, Crest, BottomTop, Flank, _ => EdgeStrip),
            .. Halves(Zone.HeartBottom, BottomTop, HeartEnd, _ => 0, _ => EdgeStrip),
            .. Halves(Zone.SideEdges, Ramp, _ => edgeFoot, _ => EdgeStrip, _ => 1),
        ];
    }

    private IEnumerable<ZonePiece> Back()
    {
        var split = BarkTop - 1.9;
        double SpineEdge(double y) => 0.115 + (0.07 * (y - BackTop) / m.Windows);
        double RailEdge(double y) => 0.8 - (0.02 * (y - BackTop) / m.Windows);
        double Arch(double u) => HeartEnd(u) + Round(u, 0.118, 0.8, 0.9);
        double Foot(double u) => BarkTop - Round(u, 0.184, 0.782, 1.0);
        return
        [
            .. Halves(Zone.Windows, Arch, _ => split, SpineEdge, RailEdge),
            .. Halves(Zone.WindowBase, _ => split, Foot, SpineEdge, RailEdge),
            .. Halves(Zone.Spine, HeartEnd, _ => BarkTop, _ => 0, SpineEdge),
            .. Halves(Zone.Rails, HeartEnd, _ => BarkTop, RailEdge, _ => EdgeStrip),
            .. Halves(Zone.Bark, _ => BarkTop, _ => m.Cane, _ => 0, _ => EdgeStrip),
        ];
    }

    private IEnumerable<ZonePiece> ShortBark() =>
        Halves(Zone.Bark, LayEnd, _ => m.Cane, _ => 0, _ => EdgeStrip);

    /// <summary>The lower border of the heart: a shallow bowl, lowest on the centre line.</summary>
    private double HeartEnd(double u) => HasWindows ? BackTop + (0.85 * (1 - (u * u))) : LayEnd(u);

    /// <summary>The end of a short scrape: a deep U.</summary>
    private double LayEnd(double u) => BackTop + (3.6 * (1 - Math.Pow(Math.Abs(u), 2.4)));

    /// <summary>How far a window's end is rounded away near its two flanks.</summary>
    private static double Round(double u, double inner, double outer, double depth)
    {
        var t = Math.Clamp(((Math.Abs(u) - inner) / (outer - inner) * 2) - 1, -1, 1);
        return depth * Math.Pow(Math.Abs(t), 4.5);
    }

    private IEnumerable<ZonePiece> Halves(Zone zone, Func<double, double> top, Func<double, double> bottom, Func<double, double> inner, Func<double, double> outer)
    {
        var right = shape.Between(top, bottom, inner, outer);
        yield return new ZonePiece(zone, Sides.Left, right.Mirror());
        yield return new ZonePiece(zone, Sides.Right, right);
    }

    private static ZonePiece Whole(Zone zone, Outline outline) => new(zone, Sides.Both, outline);

    private static Outline Tube(double top, double topHalf, double bottom, double bottomHalf) =>
        new([new(-topHalf, top), new(topHalf, top), new(bottomHalf, bottom), new(-bottomHalf, bottom)]);

    private static Outline Lens(double middle, double half, double height) =>
        new(Enumerable.Range(0, 32).Select(i => i * Math.PI / 16).Select(a => new MmPoint(half * Math.Cos(a), middle + (height * Math.Sin(a)))));
}
