using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>A reed that can’t be saved: why, that it is a pity, and what was allowed on it.</summary>
internal static partial class GivenUp
{
    // What by itself ends the days of a reed, or can’t be put back. Common practice.
    private static readonly Dictionary<string, string> Ends = new(StringComparer.Ordinal)
    {
        ["body-cracked"] = "the crack in the cane",
        ["tip-cracked"] = "the crack in the tip",
        ["worn"] = "the tired cane",
        ["spine-scraped"] = "the spine that is scraped away",
        ["heart-thin"] = "the heart that is too thin",
        ["back-thin"] = "the back that is too thin",
        ["tip-thin"] = "the tip that is too thin",
        ["tip-centre-thin"] = "the middle of the tip that is too thin",
        ["rails-cut"] = "the rails that are cut into",
        ["tip-corner-broken"] = "the broken corner",
    };

    /// <summary>The gap that asks the teacher why; null where the log says it.</summary>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="reed">The reed.</param>
    internal static LetterGap? Gap(LetterMaterial material, Reed reed) =>
        material.LogOf(reed.Id) is var log && !ComplaintAnswer.IsGivenUp(log) || reed.Fitness == Fitness.Mould || IsSaid(log) || (Crack(log) is not null && material.ReasonFor(KeyOf(reed)) is null) ? null : new(
            KeyOf(reed),
            GapKind.GivenUpWithoutWhy,
            $"Reed {Prose.Number(reed.Number)} ({reed.HowToRecognise}) can’t be saved, and nothing says why. Say it; the student reads it.")
        {
            Reed = reed.Id,
            Proposed = MayBe(log) is { Count: > 0 } faults ? $"What decided it: {Prose.List(faults)}." : null,
        };

    /// <summary>What the letter says beside the verdict; nothing of any other.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="reason">Why, where the teacher was asked.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static IEnumerable<LetterSentence> Sentences(Reed reed, BenchLog log, string? reason, Phrasing phrasing)
    {
        if (!ComplaintAnswer.IsGivenUp(log) || reed.Fitness == Fitness.Mould)
        {
            yield break;
        }

        IReadOnlyList<EntryId> roots = [log.Verdict!.Root];
        if (!IsSaid(log) && reason is not null)
        {
            yield return new(Prose.Sentence(reason), roots);
        }
        else if (!IsSaid(log) && Crack(log) is { } crack)
        {
            yield return new(phrasing.Say("given-up-why", reed.Number, VerdictWordings.GivenUpBecause, ("what", Ends[crack.Finding.FindingKind.Value])), [log.Verdict.Root, crack.Fact.Root]);
        }

        if (reed is { Permission: Permission.TakeRisks, Presence: not Presence.Extra } && LeaveToRisk(log) is { } leave)
        {
            yield return new(phrasing.Say("given-up-risk", reed.Number, leave), roots);
        }
    }

    // Work on which no risk was named isn’t called a risk, and not called none.
    private static IReadOnlyList<string>? LeaveToRisk(BenchLog log) => (log.Work.Any(), log.Risks.Any()) switch
    {
        (true, true) => VerdictWordings.RiskWasAllowed,
        (false, false) => VerdictWordings.RiskNotTaken,
        _ => null,
    };

    /// <summary>Whether the cane of a reed is tired or at its end, by what was found and stays, or by what was said of it at the bench.</summary>
    /// <param name="log">Its log.</param>
    internal static bool IsNearItsEnd(BenchLog log) => Faults(log).Any()
        || log.Live<Stopped>().Any(stop => SpeaksOfTheEnd(stop.Now.Words)) || log.Live<Verdict>().Any(verdict => SpeaksOfTheEnd(verdict.Now.Words));

    private static bool SpeaksOfTheEnd(string? words) => words is not null && Tired().IsMatch(words);

    [GeneratedRegex(@"(?i)\b(?:tired|tiring|worn|weary|spent|at (?:the|its) end|end of its|last days|days are (?:over|numbered)|rest (?:it|this)|retire\w*|throw|bin|not be saved|won['’]t last|soft cane|cane is soft)\b")]
    private static partial Regex Tired();

    /// <summary>The key of that gap.</summary>
    /// <param name="reed">The reed.</param>
    internal static string KeyOf(Reed reed) => "given-up-" + Prose.Number(reed.Number);

    private static bool IsSaid(BenchLog log) => WorkWords.Reason(log.Verdict?.Now.Words) is not null
        || (log.IsStopped && WorkWords.Reason(log.Stop?.Now.Words) is not null)
        || log.Risks.Any(risk => risk.Closed?.Now.Outcome == RiskOutcome.Happened);

    private static IEnumerable<FindingNow> Faults(BenchLog log) => log.Findings.Where(one =>
        one.Finding is { Character: FindingCharacter.Fault, Certainty: Certainty.Certain } && Ends.ContainsKey(one.Finding.FindingKind.Value) && one.Ended?.Now.Ending != FindingEnding.Gone);

    // Only of a crack that stays it goes without saying that it decides: which of other faults did, nobody but the teacher knows.
    private static FindingNow? Crack(BenchLog log) =>
        Faults(log).FirstOrDefault(one => one.Finding.FindingKind.Value is "body-cracked" or "tip-cracked" && one.Ended?.Now.Ending is null or FindingEnding.Unchanged);

    // Proposed to the teacher, who strikes out what it wasn’t.
    private static List<string> MayBe(BenchLog log) =>
        [.. Faults(log).Where(one => one.Ended?.Now.Ending is null or FindingEnding.Unchanged).Select(one => Ends[one.Finding.FindingKind.Value]).Distinct()];
}
