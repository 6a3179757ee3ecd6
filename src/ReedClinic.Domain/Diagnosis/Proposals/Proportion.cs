using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>
/// Thick by comparison: where a part has too little cane, what stands around it can be thinned until the part is thick again beside it.
/// It is limited, and the part itself is never touched (common practice).
/// </summary>
internal static class Proportion
{
    /// <summary>So many passes at most on each neighbour; this program’s own default.</summary>
    internal const int MostPasses = 2;

    private static readonly (Zone Part, string Sign, string[] Neighbours)[] Ways =
    [
        (Zone.HeartCentre, "heart-thin", ["thin-tip-sides", "free-heart-bottom"]),
        (Zone.TipCentre, "tip-even-across", ["thin-tip-sides", "thin-corners"]),
        (Zone.TipCentre, "tip-centre-thin", ["thin-tip-sides", "thin-corners"]),
    ];

    /// <summary>The part for whose sake an adjustment would be done; null where it is for none.</summary>
    internal static Zone? PartFor(ReedNow now, AdjustmentKindId kind) => Ways
        .Where(way => way.Neighbours.Contains(kind.Value) && (now.Has(way.Sign) || now.ByComparison == way.Part))
        .Select(way => (Zone?)way.Part).FirstOrDefault();

    /// <summary>Whether it serves such a goal and has passes left.</summary>
    internal static bool Serves(ReedNow now, AdjustmentKindId kind) => PartFor(now, kind) is not null && !IsUsedUp(now, kind);

    /// <summary>Whether the neighbour has given all it can.</summary>
    internal static bool IsUsedUp(ReedNow now, AdjustmentKindId kind) => PartFor(now, kind) is not null && now.PassesOf(kind) >= MostPasses;
}
