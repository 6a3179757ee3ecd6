using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench;

/// <summary>What a reed map shows of a log: what was found and hasn't gone, what was worked, what is left alone.</summary>
public static class ReedMarks
{
    /// <summary>Reads the marks of a reed: findings first, then the work by place, then what is left alone.</summary>
    /// <param name="log">The reed's log.</param>
    /// <returns>One mark for each finding and each place left alone; one for all the work of a kind at one place.</returns>
    public static IReadOnlyList<ReedMark> Of(BenchLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return
        [
            .. Standing(log).Select(Found),
            .. Works(log).Select(Worked),
            .. log.LeftAlone.Select(left => new ReedMark(left.Now.Place, MarkKind.LeaveAlone, left.Now.Words)),
        ];
    }

    /// <summary>The number on the drawing of each fact that is a mark there, or part of one, by its root: the log says it beside the words.</summary>
    /// <param name="log">The reed’s log.</param>
    public static IReadOnlyDictionary<EntryId, int> Numbers(BenchLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        IEnumerable<EntryId[]> marks = [.. Standing(log).Select(found => new[] { found.Fact.Root }), .. Works(log).Select(work => work.Select(one => one.Root).ToArray()), .. log.LeftAlone.Select(left => new[] { left.Root })];
        return marks.SelectMany((roots, index) => roots.Select(root => (root, Number: index + 1))).ToDictionary(one => one.root, one => one.Number);
    }

    /// <summary>The mark that one entry by itself would make, before it is in a log; null when it has none.</summary>
    /// <param name="entry">The entry.</param>
    public static ReedMark? Of(BenchEntry entry) => entry switch
    {
        Finding finding => new ReedMark(finding.Place, KindOf(finding.Character), FindingCatalogue.Find(finding.FindingKind)?.Name ?? finding.Words ?? FindingCatalogue.NameOf(finding.FindingKind)) { Suspected = finding.Certainty == Certainty.Suspected },
        Adjustment { Prepares: true } => null,
        Adjustment work => new ReedMark(work.Place, MarkKind.Worked, AdjustmentCatalogue.Find(work.AdjustmentKind)?.Name ?? work.Words ?? AdjustmentCatalogue.NameOf(work.AdjustmentKind)),
        LeaveAlone left => new ReedMark(left.Place, MarkKind.LeaveAlone, left.Words),
        _ => null,
    };

    private static IEnumerable<FindingNow> Standing(BenchLog log) => log.Findings.Where(found => found.Ended?.Now.Ending != FindingEnding.Gone);

    private static IEnumerable<IGrouping<(AdjustmentKindId Kind, string? Own, Place Place), LiveFact<Adjustment>>> Works(BenchLog log) =>
        log.Work.GroupBy(work => (work.Now.AdjustmentKind, Own(work.Now), work.Now.Place));

    private static ReedMark Found(FindingNow found)
    {
        var finding = found.Finding;
        var named = !finding.FindingKind.IsInWords;
        var words = named ? FindingCatalogue.NameOf(finding.FindingKind) : finding.Words ?? "";
        var detail = new[]
        {
            finding.OtherPlace is { } other && finding.Relation is { } relation ? $"{relation.Name()} {other.Say()}" : null,
            finding.KnownBy == KnownBy.NotSaid ? null : finding.KnownBy.Name(),
            found.Ended?.Now.Ending.Name(),
            named ? finding.Words : null,
        };
        return new ReedMark(finding.Place, KindOf(finding.Character), words, Join(detail)) { Suspected = finding.Certainty == Certainty.Suspected };
    }

    private static ReedMark Worked(IGrouping<(AdjustmentKindId Kind, string? Own, Place Place), LiveFact<Adjustment>> work)
    {
        var words = AdjustmentCatalogue.Find(work.Key.Kind)?.Done ?? work.Key.Own ?? AdjustmentCatalogue.NameOf(work.Key.Kind);
        var passes = work.Select(fact => fact.Pass).Distinct().Order().ToList();
        var detail = new[]
        {
            (passes.Count == 1 ? "pass " : "passes ") + string.Join(", ", passes),
            work.Count() == 1 ? work.First().Now.AmountBeside() : null,
        };
        return new ReedMark(work.Key.Place, MarkKind.Worked, words, Join(detail), passes.Count);
    }

    private static string? Own(Adjustment work) => work.AdjustmentKind.IsInWords ? work.Words : null;

    private static MarkKind KindOf(FindingCharacter character) => character switch
    {
        FindingCharacter.Strength => MarkKind.Strength,
        FindingCharacter.Taste => MarkKind.Taste,
        _ => MarkKind.Fault,
    };

    private static string? Join(IEnumerable<string?> parts)
    {
        var said = string.Join("; ", parts.Where(part => !string.IsNullOrEmpty(part)));
        return said.Length == 0 ? null : said;
    }
}
