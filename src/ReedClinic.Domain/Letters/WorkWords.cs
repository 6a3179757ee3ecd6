using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Letters;

/// <summary>What was done to a reed, what was risked, why it stopped, and how it leaves the bench.</summary>
internal static partial class WorkWords
{
    // With so many faults still open a reed may play better, and isn’t called a better reed.
    private const int ManyOpen = 2;

    private static readonly TimeSpan OneJudgement = TimeSpan.FromMinutes(10);

    internal static List<LetterSentence> Done(Reed reed, BenchLog log, CrowTarget target, Phrasing phrasing, LetterSoFar told, string? whyBeyondTheWish, string? whyGivenUp) =>
    [
        .. Untouched(reed, log, phrasing),
        .. GoodOfIt.Sentences(reed, log, target, phrasing, told),
        .. WorkStory.Tell(reed.Number, log, phrasing, told),
        .. LetterWish.Sentences(reed, log, target, whyBeyondTheWish, phrasing, told),
        .. log.Risks.SelectMany((risk, index) => Risks(risk, reed.Number + index, phrasing)),
        .. Ended(reed, log, phrasing, told),
        .. GivenUp.Sentences(reed, log, whyGivenUp, phrasing),
        .. PutAside.Sentences(reed, log, phrasing),
    ];

    private static IEnumerable<LetterSentence> Ended(Reed reed, BenchLog log, Phrasing phrasing, LetterSoFar told)
    {
        var why = log.IsStopped && Reason(log.Stop?.Now.Words) is { } words ? words : null;
        if (log.Verdict is { Now.VerdictKind: VerdictKind.StoppedToProtectIt } protect && why is not null)
        {
            yield return new(
                Because("stopped-to-protect", reed, WorkFrames.StoppedToProtect, why, phrasing), [log.Stop!.Root, protect.Root]);
        }
        else
        {
            if (why is not null)
            {
                yield return new(Because("stopped", reed, WorkFrames.Stopped, why, phrasing), [log.Stop!.Root]);
            }

            if (log.Verdict is { } verdict && !(IsAsItCame(log) && reed.Fitness != Fitness.Mould && Untouched(reed, log) is not null))
            {
                if (Verdicts(verdict.Now.VerdictKind, log, told) is { } ways)
                {
                    yield return new(phrasing.Say("verdict", reed.Number, ways), [verdict.Root]);
                }
            }
        }

        foreach (var (remark, root) in Remarks(log))
        {
            yield return new(BenchSaid.Sentence(remark, reed.Number, phrasing), [root]);
        }
    }

    // What was said beside the verdict, and beside one that was given just before it; what is told already isn't told again.
    internal static IEnumerable<(string Words, EntryId Root)> Remarks(BenchLog log)
    {
        List<string> told = log.IsStopped && Reason(log.Stop?.Now.Words) is { } why ? [why] : [];
        foreach (var verdict in log.Verdict is { } last ? [.. Beside(log, last), last] : Array.Empty<LiveFact<Verdict>>())
        {
            if (Reason(verdict.Now.Words) is { } words && !told.Exists(one => Holds(one, words)))
            {
                told.Add(words);
                yield return (words, verdict.Root);
            }
        }
    }

    // Given within minutes, with nothing done and nothing tried in between: then both are one judgement, and the later one counts. Of a reed that is given up, or isn't after all, only that is told.
    private static IEnumerable<LiveFact<Verdict>> Beside(BenchLog log, LiveFact<Verdict> last) => last.Now.VerdictKind == VerdictKind.NotToBeSaved ? []
        : log.Live<Verdict>().Where(one => one.Sequence < last.Sequence && one.Now.VerdictKind != VerdictKind.NotToBeSaved
            && (Given(log, last) - Given(log, one)).Duration() <= OneJudgement
            && !log.Told.Any(fact => fact.Now is Adjustment { Prepares: false } or Test { MeasuredFrom: null } && fact.Sequence > one.Sequence && fact.Sequence < last.Sequence));

    // A slip that is mended later makes no later verdict of it.
    private static DateTimeOffset Given(BenchLog log, LiveFact<Verdict> verdict) => log.FactOf(verdict.Root)!.Chain[0].RecordedAt;

    private static bool Holds(string told, string words) => $" {Bare(told)} ".Contains($" {Bare(words)} ", StringComparison.Ordinal);

    private static string Bare(string words) => string.Join(' ', words.ToLowerInvariant().Split([' ', ',', ';', ':', '.', '!', '–', '-'], StringSplitOptions.RemoveEmptyEntries));

    // That it is better is told where the log holds work, or tests that say so; LetterUntold asks the teacher about the rest.
    private static IReadOnlyList<string>? Verdicts(VerdictKind verdict, BenchLog log, LetterSoFar told) => (verdict, log.Work.Any()) switch
    {
        (VerdictKind.Improved, false) => LetterUntold.HasGained(log) ? VerdictWordings.ImprovedByItself : null,
        (VerdictKind.GoodOnArrivalRefined, false) => null,
        (VerdictKind.GoodOnArrivalRefined, true) when IsHarmed(log) => VerdictWordings.GoodOnArrivalHarmed,
        (VerdictKind.GoodOnArrivalRefined, true) when log.Moves.Any(move => move.Arrival?.Now is { Step: { } step } test && TestScale.Of(test.TestKind).FromGood(step) > 0) => VerdictWordings.GoodOnArrivalOnTheWhole,
        (VerdictKind.NotToBeSaved, _) when !told.Says("given up") => VerdictWordings.NotToBeSavedToo,
        (VerdictKind.NotToBeSaved, false) => VerdictWordings.NotToBeSavedUntried,
        (VerdictKind.Improved, _) when (GivenUp.IsNearItsEnd(log) ? VerdictWordings.ImprovedNearItsEnd : VerdictWordings.All[verdict]) is var ways =>
            log.Findings.Count(IsOpen) < ManyOpen ? ways : [.. ways.Where(way => !way.Contains("better reed", StringComparison.Ordinal))],
        _ => VerdictWordings.All[verdict],
    };

    // What the work itself brought about, and a risk that came about.
    private static bool IsHarmed(BenchLog log) => log.Risks.Any(risk => risk.Closed?.Now.Outcome == RiskOutcome.Happened)
        || log.Findings.Any(one => one.Finding is { Character: FindingCharacter.Fault, Arose: Arose.CausedByTheWork } && one.Ended?.Now.Ending != FindingEnding.Gone);

    private static bool IsOpen(FindingNow found) =>
        found is { Finding: { Character: FindingCharacter.Fault, Certainty: not Certainty.Suspected }, Ended: null or { Now.Ending: FindingEnding.Unchanged } };

    // A reason that holds a colon of its own, or is no clause, stands as a sentence by itself.
    private static string Because(string place, Reed reed, IReadOnlyList<string> ways, string words, Phrasing phrasing) =>
        BenchSaid.Reason(words) is { } why && !why.Contains(": ", StringComparison.Ordinal)
            ? phrasing.Say(place, reed.Number, ways, ("why", why))
            : phrasing.Say(place, reed.Number, ways == WorkFrames.Stopped ? WorkFrames.StoppedAlone : WorkFrames.StoppedToProtectAlone, ("why", BenchSaid.Sentence(words, reed.Number, phrasing)));

    /// <summary>What somebody typed as a reason; null where it only names a verdict, which the letter tells in its own place.</summary>
    /// <param name="words">What was typed.</param>
    internal static string? Reason(string? words)
    {
        words = words is null ? null : Beyond().Replace(StopWord().Replace(words.Trim(), ""), "");
        var bare = ItIs().Replace((words ?? "").Trim(' ', '.', '!'), "");
        var named = bare.StartsWith("verdict", StringComparison.OrdinalIgnoreCase) ? bare["verdict".Length..].Trim(' ', ':', ',', '-', '–') : bare;
        return named.Length == 0 || WellAlone().IsMatch(named) || Enum.GetValues<VerdictKind>().Any(kind =>
            named.Equals(kind.Name(), StringComparison.OrdinalIgnoreCase) || (named != bare && kind.Name().StartsWith(named, StringComparison.OrdinalIgnoreCase))) ? null
            : Enum.GetValues<VerdictKind>().Select(kind => AfterName(named, kind.Name())).FirstOrDefault(rest => rest is not null) ?? words;
    }

    // “Improved: it speaks at once” names the verdict, and then says more.
    private static string? AfterName(string words, string name) =>
        words.StartsWith(name, StringComparison.OrdinalIgnoreCase) && words[name.Length..].TrimStart() is [',' or ';' or ':' or '.' or '–' or '-', .. var rest] && rest.Trim() is { Length: > 0 } more ? more : null;

    // What one says to oneself in stopping; what comes behind it is the reason.
    [GeneratedRegex(@"(?i)^(?:(?:ok(?:ay)?|right|so|well|done|enough|finished|that['’]?s (?:it|enough|all)|(?:I(?:['’]ll| will| have)? |let['’]s )?(?:stop(?:ped|ping)?|leave it)(?: (?:here|there|now|at that))?)(?: (?:and|then))?\s*(?:[,;:.–-]+\s*|$))+")]
    private static partial Regex StopWord();

    [GeneratedRegex(@"(?i)^(?:(?:it|this one|this reed|this|that) )?(?:can['’]?t|cannot|can not|could not) be (?:saved|rescued)\s*(?:[,;:.–-]+\s*|$)|^beyond saving\s*(?:[,;:.–-]+\s*|$)")]
    private static partial Regex Beyond();

    [GeneratedRegex(@"(?i)^(?:it(?:['’]s| is| was)|this (?:one )?is|that(?:['’]s| is)) (?:now )?(?=as good as)")]
    private static partial Regex ItIs();

    [GeneratedRegex(@"(?i)^(?:better )?(?:leave|let) (?:it |well |this |that )?(?:well )?(?:alone|be|there|here)(?: now| for now)?$")]
    private static partial Regex WellAlone();

    private static bool IsAsItCame(BenchLog log) => log.Verdict?.Now.VerdictKind == VerdictKind.LeftAsItCame;

    // That nothing was done; that the reed goes home as it came is said with it. Null where there is nothing to say of it.
    private static IReadOnlyList<string>? Untouched(Reed reed, BenchLog log) => reed switch
    {
        _ when log.Work.Any() => null,
        { Fitness: Fitness.Mould } => CautionWordings.MouldAtWork,
        { Permission: Permission.AdviseOnly, Presence: not Presence.Extra } => IsAsItCame(log) ? WorkFrames.AdviceOnlyAsItCame : WorkFrames.AdviceOnly,
        _ when !log.Told.Any() => null,
        _ => IsAsItCame(log) ? WorkFrames.UntouchedAsItCame : WorkFrames.Untouched,
    };

    private static IEnumerable<LetterSentence> Untouched(Reed reed, BenchLog log, Phrasing phrasing)
    {
        var ways = Untouched(reed, log);
        IReadOnlyList<EntryId> last = log.Verdict is { } verdict ? [verdict.Root] : [.. log.Told.TakeLast(1).Select(fact => fact.Root)];
        return ways is null ? [] : [new LetterSentence(phrasing.Say("untouched", reed.Number, ways), last)];
    }

    private static IEnumerable<LetterSentence> Risks(RiskNow risk, int turn, Phrasing phrasing)
    {
        var words = ("risk", Prose.Inside(risk.Fact.Now.Words.Trim().TrimEnd('.')));
        if (risk.IsOpen)
        {
            yield return new(phrasing.Say("risk-open", turn, WorkFrames.RiskOpen, words), [risk.Fact.Root]);
        }
        else if (risk.Closed!.Now.Outcome == RiskOutcome.Happened)
        {
            yield return new(phrasing.Say("risk-happened", turn, WorkFrames.RiskHappened, words), [risk.Fact.Root, risk.Closed.Root]);
            if (risk.Closed.Now.Words is { } said)
            {
                yield return new(BenchSaid.Sentence(said, turn, phrasing), [risk.Closed.Root]);
            }
        }
    }
}
