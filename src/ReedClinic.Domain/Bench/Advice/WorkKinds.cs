using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Advice;

/// <summary>What kinds of adjustment have in common.</summary>
internal static class WorkKinds
{
    // Taking cane from the blades lowers the pitch and makes the reed easier (oboeinsight.com, adjustments and fixes; woodwind.org
    // forum, message 12801). Left out are those that hardly take any, that set the tip off (which may add resistance), and
    // evening up, which follows a measured difference.
    private static readonly HashSet<string> Scrapes =
    [
        "thin-corners", "thin-tip-sides", "thin-whole-tip", "thin-tip-centre", "thin-edge", "lengthen-tip", "blend",
        "take-heart-sides", "dust-heart", "free-heart-bottom", "open-windows", "extend-windows", "scrape-lay-base",
        "thin-spine", "thin-rails",
    ];

    private static readonly HashSet<string> AtTheTipsSides = ["thin-corners", "thin-tip-sides", "thin-edge"];

    internal static bool IsClip(AdjustmentKindId kind) => kind.Value is "clip" or "clip-hair" or "square-tip";

    internal static bool IsScrape(AdjustmentKindId kind) => kind.Value is { } name && Scrapes.Contains(name);

    /// <summary>Edges and corners, with the centre of the tip left as it is.</summary>
    internal static bool KeepsTheCentre(AdjustmentKindId kind) => kind.Value is { } name && AtTheTipsSides.Contains(name);

    internal static bool TakesCane(AdjustmentKindId kind) =>
        kind.Value is not ("retie" or "retire") && kind.TakesAway;

    /// <summary>The zones that are worked: the one that was said, and those that this kind can't help but reach.</summary>
    internal static IEnumerable<Zone> ZonesOf(PlannedWork work) => work.Kind.Value switch
    {
        "clip" or "clip-hair" or "square-tip" => [work.Place.Zone, Zone.TipEdge, Zone.TipCorners],
        "thin-whole-tip" => [work.Place.Zone, Zone.TipCentre, Zone.TipSides, Zone.TipCorners],
        "thin-tip-centre" => [work.Place.Zone, Zone.TipCentre],
        "dust-heart" => [work.Place.Zone, Zone.HeartCentre],
        "thin-spine" => [work.Place.Zone, Zone.Spine],
        "thin-rails" => [work.Place.Zone, Zone.Rails],
        _ => [work.Place.Zone],
    };

    /// <summary>Whether the work reaches a place. Work on the whole reed reaches every place when it takes cane.</summary>
    internal static bool Reaches(PlannedWork work, Place place) =>
        (ZonesOf(work).Contains(place.Zone)
            || (TakesCane(work.Kind) && (place.Zone == Zone.WholeReed || work.Place.Zone == Zone.WholeReed)))
        && (work.Place.Blades == Blades.Both || place.Blades == Blades.Both || work.Place.Blades == place.Blades)
        && (work.Place.Sides == Sides.Both || place.Sides == Sides.Both || work.Place.Sides == place.Sides);
}
