using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>What the drawing of a reed shows in a letter: what stands today, not how it came about.</summary>
public static class LetterMarks
{
    private static readonly string[] Places = [" at the ", " over the ", " in the ", " on the ", " from heart "];

    // The words that the letter has for the same work.
    private static readonly Dictionary<string, string> Plain = new(StringComparer.Ordinal)
    {
        ["blend"] = "smoothed",
        ["smooth-edge"] = "evened with fine abrasive",
        ["lengthen-tip"] = "made longer",
        ["extend-windows"] = "made longer",
        ["dust-heart"] = "a breath of cane taken",
        ["free-heart-bottom"] = "eased",
        ["open-windows"] = "scraped",
        ["narrow-edges"] = "made narrower",
        ["burnish"] = "rubbed smooth",
        ["clip-hair"] = "a hair cut off",
        ["clip"] = "a little cut off",
        ["square-tip"] = "made square",
        ["round-eye"] = "made rounder",
        ["flatten-eye"] = "made flatter",
    };

    /// <summary>The marks of one reed. Their words stand after the name of their place, so they don't repeat it.</summary>
    /// <param name="log">Its log.</param>
    public static IReadOnlyList<ReedMark> Of(BenchLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return
        [
            .. log.Findings.Where(finding => finding.Ended?.Now.Ending != FindingEnding.Gone).Select(Found),
            .. log.Work.GroupBy(work => work.Now.Place).Select(group => new ReedMark(
                group.Key, MarkKind.Worked, What([.. group.Select(work => work.Now)]), Times: group.Select(work => work.Pass).Distinct().Count())),
            .. log.LeftAlone.Select(left => new ReedMark(left.Now.Place, MarkKind.LeaveAlone, AloneSaid.IsOnlyThat(left.Now.Words) ? LetterLog.NoReason : left.Now.Words)),
        ];
    }

    private static ReedMark Found(FindingNow now)
    {
        var finding = now.Finding;
        var kind = finding.Character switch
        {
            FindingCharacter.Strength => MarkKind.Strength,
            FindingCharacter.Taste => MarkKind.Taste,
            _ => MarkKind.Fault,
        };
        return new ReedMark(finding.Place, kind, Beside(finding.Zone, StoryBlock.NameOf(finding)), now.Ended?.Now.Ending == FindingEnding.Better ? "better now" : null)
        {
            Suspected = finding.Certainty == Certainty.Suspected,
        };
    }

    /// <summary>A finding's name where the name of its place stands before it: “too thick” for “tip corners too thick”.</summary>
    /// <param name="zone">The place.</param>
    /// <param name="name">The finding's name.</param>
    internal static string Beside(Zone zone, string name) =>
        new[] { zone.Name(), zone.NamePlainly() }.FirstOrDefault(place => name.StartsWith(place + " ", StringComparison.Ordinal)) is { } place ? name[(place.Length + 1)..] : name;

    // “thinned, 2 strokes”: the name of the place stands before it already.
    private static string What(List<Adjustment> work) =>
        string.Join("; ", work.GroupBy(one => one.AdjustmentKind).Select(same => Done(same.First()) + HowMuch([.. same])));

    private static string Done(Adjustment work)
    {
        if (AdjustmentCatalogue.Find(work.AdjustmentKind) is not { } kind)
        {
            return StoryBlock.Short(Agreement.Without(work.Words)?.TrimEnd('.')) ?? "worked on";
        }

        if (Plain.TryGetValue(kind.Id.Value, out var plain))
        {
            return plain;
        }

        var end = Places.Select(place => kind.Done.IndexOf(place, StringComparison.Ordinal)).Where(at => at > 0).DefaultIfEmpty(kind.Done.Length).Min();
        return kind.Done[..end];
    }

    private static string HowMuch(List<Adjustment> same) => same switch
    {
        [var only] => StrokesSaid.Beside(only) is { Length: > 0 } amount ? $", {amount}" : "",
        _ => $", {Prose.Times(same.Count)}",
    };
}
