using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>A reed whose log holds no work, so that the letter says its cane was left alone, while its words tell of some.</summary>
internal static partial class LetterUntold
{
    /// <summary>The gap that asks the teacher which of the two is so; null where nothing speaks of work, or the log has it.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static LetterGap? Gap(Reed reed, BenchLog log) =>
        log.Work.Any() ? null
        : Said(log).OfType<string>().FirstOrDefault(TellsOfWork) is { } typed
            ? Ask(reed, $"The letter says that nothing was taken from reed {Prose.Number(reed.Number)}, since its log holds no work; but it also tells of work: {Prose.Quote(typed)} Write the work down, or change what was said.")
        : LeftOut(log) is { } verdict
            ? Ask(reed, $"The letter leaves “{verdict.Name()}” out for reed {Prose.Number(reed.Number)}, since no work stands in its log. Choose another verdict, or write the work down.") with { IsToldOnly = true }
        : null;

    /// <summary>The gap where a reed goes back “unplayed” whose log tells of blowing it; null where the two don’t stand side by side.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static LetterGap? Unplayed(Reed reed, BenchLog log) =>
        log.Verdict?.Now.VerdictKind == VerdictKind.ReturnedUnplayed && log.Blown.Any()
            ? new("unplayed-" + Prose.Number(reed.Number), GapKind.WordsAgainstTheLog, $"The letter sends reed {Prose.Number(reed.Number)} back unplayed and tells of its tests as well. Choose another verdict, or take back the tests that were none of this reed’s.") { Reed = reed.Id }
            : null;

    private static LetterGap Ask(Reed reed, string words) => new("untold-" + Prose.Number(reed.Number), GapKind.WorkNotInTheLog, words) { Reed = reed.Id };

    // What such a verdict would claim the letter doesn’t say, so nothing in it is against the log.
    private static VerdictKind? LeftOut(BenchLog log) => log.Verdict?.Now.VerdictKind switch
    {
        VerdictKind.GoodOnArrivalRefined => VerdictKind.GoodOnArrivalRefined,
        VerdictKind.Improved when !HasGained(log) => VerdictKind.Improved,
        _ => null,
    };

    /// <summary>Whether a reed tested better later than when it came, without having been worked on.</summary>
    /// <param name="log">Its log.</param>
    internal static bool HasGained(BenchLog log) => log.Moves.Any(move => move.Movement == Movement.Nearer) && !log.Moves.Any(move => move.Movement == Movement.Further);

    private static IEnumerable<string?> Said(BenchLog log) =>
    [
        .. WorkWords.Remarks(log).Select(remark => remark.Words),
        log.IsStopped ? log.Stop?.Now.Words : null,
        .. log.Findings.Where(finding => finding.Finding.Character == FindingCharacter.Fault).Select(finding => finding.Ended?.Now.Words),
    ];

    /// <summary>Whether words tell of work that was done here.</summary>
    /// <param name="words">The words.</param>
    internal static bool TellsOfWork(string words) => Deed().IsMatch(words);

    // What is told as done by whoever works here: “I scraped …”, “thinning the corners helped”.
    [GeneratedRegex(@"(?i)\bI (have |also |only |just |then )*(scraped|thinned|clipped|cut|shaved|dusted|eased|blended|narrowed|took)\b|\b(scraping|thinning|clipping|cutting|easing|blending|narrowing|evening)\b.*\b(helped|worked|did it|made|put right|was enough)\b|\b(strokes|work) (on|off|from) .*\bhelped\b")]
    private static partial Regex Deed();
}
