using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Drawings;

/// <summary>One way of the knife over a blade, in millimetres from the centre line and from the tip.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
public readonly record struct KnifeWay(MmPoint From, MmPoint To);

/// <summary>How a stroke is drawn: where on the blade, from where to where, and what stays as it is.</summary>
/// <param name="Ways">The ways of the knife.</param>
/// <param name="Worked">The zone that is thinned.</param>
/// <param name="Sides">Its half.</param>
/// <param name="Spared">Zones that are not to be touched.</param>
/// <param name="Top">The upper border of what is drawn, in millimetres from the tip.</param>
/// <param name="Bottom">The lower border.</param>
/// <param name="Start">Where it begins, in words.</param>
/// <param name="Finish">Where it ends, in words.</param>
/// <remarks>Common practice. The lengths follow the drawing's own measures; they are a picture to point at, no norm.</remarks>
public sealed record StrokePlan(
    IReadOnlyList<KnifeWay> Ways, Zone Worked, Sides Sides, IReadOnlyList<Zone> Spared, double Top, double Bottom, string Start, string Finish)
{
    private static readonly Dictionary<string, Func<ReedMeasures, StrokePlan?>> Plans = new()
    {
        ["tip-thick"] = Corners,
        ["tip-corners-thick"] = Corners,
        ["tip-thin"] = BesideTheMiddle,
        ["tip-even-across"] = BesideTheMiddle,
        ["tip-centre-thin"] = BesideTheMiddle,
        ["tip-short"] = TheLine,
        ["tip-long"] = TheLine,
        ["tip-not-separate"] = TheLine,
        ["heart-length"] = TheLine,
        ["step-abrupt"] = TheSlope,
        ["bumps"] = TheSlope,
        ["heart-thick"] = HeartFlanks,
        ["heart-sides-thick"] = HeartFlanks,
        ["centre-closes-first"] = HeartFlanks,
        ["bark-island"] = HeartFlanks,
        ["back-thick"] = TheWindows,
        ["left-right-uneven"] = OneSide,
        ["blades-uneven"] = OneSide,
        ["heart-lopsided"] = OneSide,
        ["windows-uneven"] = OneSide,
        ["opening-lopsided"] = OneSide,
    };

    /// <summary>The stroke against a kind of fault; null where no knife is wanted, or none is drawn.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="style">How the reed is scraped.</param>
    /// <param name="instrument">What it is for; an oboe when nobody said.</param>
    public static StrokePlan? For(FindingKindId? kind, ScrapeStyle style, Instrument? instrument) =>
        kind is { Value: { } id } && Plans.TryGetValue(id, out var plan) ? plan(ReedMeasures.For(style, instrument)) : null;

    // Just in front of the line where the heart ends, at a share of the half width.
    private static MmPoint BeforeTheRoof(ReedMeasures m, double share)
    {
        var shape = new BladeShape(m);
        return shape.At(share, shape.Roof(share) - 0.35);
    }

    private static StrokePlan Corners(ReedMeasures m) => new(
        Both(BeforeTheRoof(m, 0.66), new(0.56 * m.TipWidth, -0.1), BeforeTheRoof(m, 0.47), new(0.53 * m.TipWidth, -0.6)),
        Zone.TipCorners, Sides.Both, [Zone.TipCentre], -1.1, m.TipAtSides + 2.2, "begin in front of the line", "end past the corner");

    private static StrokePlan BesideTheMiddle(ReedMeasures m) => new(
        Both(BeforeTheRoof(m, 0.5), new(0.42 * m.TipWidth, -0.6)),
        Zone.TipSides, Sides.Both, [Zone.TipCentre], -1.1, m.TipAtSides + 2.2, "begin beside the middle", "end past the tip");

    private static StrokePlan TheLine(ReedMeasures m) => new(
        Both(BeforeTheRoof(m, 0.2), new(0.1 * m.TipWidth, 0.3), BeforeTheRoof(m, 0.66), new(0.33 * m.TipWidth, 0.3)),
        Zone.Rooftop, Sides.Both, [Zone.HeartCentre], -1.1, m.TipAtSides + 4, "begin in front of the line", "lift before the end");

    private static StrokePlan TheSlope(ReedMeasures m) => new(
        Both(new(0.16 * m.TipWidth, m.TipAtCentre + 2.2), new(0.16 * m.TipWidth, m.TipAtCentre - 0.6)),
        Zone.Transition, Sides.Both, [Zone.HeartCentre], -1.1, m.TipAtSides + 4, "begin at the front of the heart", "lift before the end");

    private static StrokePlan HeartFlanks(ReedMeasures m) => new(
        Both(new(0.27 * m.TipWidth, m.TipAtSides + m.Heart - 0.9), new(0.27 * m.TipWidth, m.TipAtSides - 0.2)),
        Zone.HeartSides, Sides.Both, [Zone.HeartCentre], -0.6, m.TipAtSides + m.Heart + 2, "begin at the foot of the heart", "end before the line");

    // A short scrape has no windows to open, and behind its lay the bark stays.
    private static StrokePlan? TheWindows(ReedMeasures m) => m.Windows <= 0 ? null : new(
        Both(new(0.2 * m.TipWidth, m.Cane - m.Bark - 1.2), new(0.2 * m.TipWidth, m.TipAtSides + m.Heart + 1)),
        Zone.Windows, Sides.Both, [Zone.Spine, Zone.Rails], m.TipAtSides + 2, m.Cane, "begin above the bark", "end below the heart");

    private static StrokePlan OneSide(ReedMeasures m) => new(
        [new(new(-0.27 * m.TipWidth, m.TipAtSides + m.Heart - 1.2), new(-0.27 * m.TipWidth, m.TipAtSides + 0.2))],
        Zone.HeartSides, Sides.Left, [Zone.HeartCentre], -0.6, m.TipAtSides + m.Heart + 2, "begin at the thick place", "end where it ends");

    private static List<KnifeWay> Both(params ReadOnlySpan<MmPoint> points)
    {
        List<KnifeWay> ways = [];
        for (var i = 0; i + 1 < points.Length; i += 2)
        {
            ways.Add(new(points[i], points[i + 1]));
            ways.Add(new(points[i].Mirror(), points[i + 1].Mirror()));
        }

        return ways;
    }
}
