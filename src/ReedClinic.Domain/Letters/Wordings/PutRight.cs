using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What is so now where a fault was put right: “it was hard to see the line” isn’t “gone”, but “now the line shows”.</summary>
internal static class PutRight
{
    private static readonly Dictionary<string, string> Clauses = new(StringComparer.Ordinal)
    {
        ["tip-thick"] = "the tip is {thin enough|as thin as it needs to be}",
        ["tip-corners-thick"] = "the corners are {thin enough|as thin as they need be}",
        ["tip-short"] = "the tip is {long enough|longer}",
        ["tip-long"] = "the tip is {shorter|no longer too long}",
        ["tip-not-separate"] = "the line {shows|can be seen|shows clearly}",
        ["step-abrupt"] = "the step is {gentle|an even slope}",
        ["tip-line-slanted"] = "the end is square",
        ["tip-edge-ragged"] = "the {end|edge} is clean",
        ["tip-wavy"] = "the tip lies flat",
        ["heart-thick"] = "the heart has {no more cane than it needs|the right strength}",
        ["heart-lopsided"] = "both sides of the heart are alike",
        ["heart-sides-thick"] = "the sides are {thin enough|thinner than the middle}",
        ["back-thick"] = "the back has {no more cane than it needs|the right strength}",
        ["windows-uneven"] = "the windows are {alike|equally deep}",
        ["bark-island"] = "no bark is left there",
        ["bumps"] = "the scrape is smooth",
        ["left-right-uneven"] = "both halves are alike",
        ["blades-uneven"] = "both blades are {alike|equally strong}",
        ["slipped-too-far"] = "the blades {lie|sit} where they should",
        ["slipped-against-winding"] = "the overlap goes {the way the thread winds|with the thread}",
        ["no-slip"] = "the blades overlap as they should",
        ["side-leak"] = "no air {escapes|gets out} there",
        ["thread-leak"] = "no air {escapes|gets out} there",
        ["opening-wide"] = "the opening is {no longer too wide|small enough}",
        ["opening-narrow"] = "the opening is {no longer too small|wide enough}",
        ["opening-lopsided"] = "the opening is even",
        ["closes-in-play"] = "the opening stays as it is",
        ["crooked-on-staple"] = "the cane stands straight",
        ["cork-loose"] = "the cork is {tight|firm}",
        ["dirty-inside"] = "nothing is caught {inside|there}",
    };

    private static readonly Dictionary<string, string> OnOneSide = new(StringComparer.Ordinal)
    {
        ["tip-corners-thick"] = "the corner is {thin enough|as thin as it need be}",
        ["heart-sides-thick"] = "the side is {thin enough|thinner than the middle}",
    };

    // What only a knife puts right. Common practice.
    private static readonly HashSet<string> ByTheKnife = new(StringComparer.Ordinal)
    {
        "tip-thick", "tip-corners-thick", "tip-short", "tip-long", "tip-not-separate", "step-abrupt", "tip-line-slanted", "tip-edge-ragged", "heart-thick", "heart-lopsided", "heart-sides-thick", "back-thick",
        "windows-uneven", "bark-island", "bumps", "left-right-uneven", "blades-uneven",
    };

    /// <summary>Whether something was done that may have put a fault right: once it was found, and what needs a knife isn’t put right without one, nor by one elsewhere.</summary>
    /// <param name="now">The fault as it stands.</param>
    /// <param name="log">The log it stands in.</param>
    internal static bool IsWorkedOn(FindingNow now, BenchLog log) => log.Work.Any(work => FindingPast.IsAfter(work, now)
        && (!ByTheKnife.Contains(now.Finding.FindingKind.Value) || (SafeChanges.TakesCane(work.Now.AdjustmentKind) != false && IsThere(now, work))));

    private static bool IsThere(FindingNow now, LiveFact<Adjustment> work)
    {
        var (kind, place, worked) = (now.Finding.FindingKind.Value, now.Finding.Place, work.Now.Place);
        if (now.DoneForIt.Any(done => done.Root == work.Root) || FindingPast.IsCutOff(now.Finding, work.Now) || PartOf(place.Zone) is not { } part)
        {
            return true;
        }

        var isOtherBlade = place.Blades != worked.Blades && place.Blades != Blades.Both && worked.Blades != Blades.Both;
        var reaches = kind is "tip-not-separate" or "step-abrupt" or "tip-short" or "bumps" ? 1 : 0;
        return !isOtherBlade && (kind == "tip-long" || !WorkKinds.IsClip(work.Now.AdjustmentKind))
            && (worked.Zone == Zone.WholeReed || (PartOf(worked.Zone) is { } other && Math.Abs(part - other) <= reaches));
    }

    // Tip, heart and back; null for what is of no single one.
    private static int? PartOf(Zone zone) => zone switch
    {
        Zone.TipEdge or Zone.TipCorners or Zone.TipSides or Zone.TipCentre or Zone.Rooftop or Zone.Transition => 1,
        Zone.HeartCentre or Zone.HeartSides or Zone.HeartBottom => 2,
        Zone.Windows or Zone.WindowBase or Zone.Bark => 3,
        _ => null,
    };

    /// <summary>The endings that claim no work where none was done.</summary>
    /// <param name="ways">The endings.</param>
    /// <param name="worked">Whether work was done for it.</param>
    internal static IReadOnlyList<string> Without(IReadOnlyList<string> ways, bool worked) =>
        worked ? ways : [.. ways.Where(way => !way.Contains("put right", StringComparison.Ordinal) && !way.Contains("in order", StringComparison.Ordinal))];

    /// <summary>The ends of a sentence that say so; null where nothing more can be said than that it is put right.</summary>
    /// <param name="finding">The fault.</param>
    internal static IReadOnlyList<string>? EndsOf(Finding finding) =>
        (finding is { Sides: Sides.Left or Sides.Right } && OnOneSide.TryGetValue(finding.FindingKind.Value, out var clause)) || Clauses.TryGetValue(finding.FindingKind.Value, out clause) ? ["; now " + clause, "; by now " + clause, "; {now|by now}, " + clause] : null;
}
