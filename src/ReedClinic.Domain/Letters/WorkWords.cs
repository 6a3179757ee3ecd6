using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Letters;

/// <summary>What was done to a reed, what was risked, why it stopped, and how it leaves the bench.</summary>
internal static class WorkWords
{
    internal static List<LetterSentence> Done(Reed reed, BenchLog log, CrowTarget target, Phrasing phrasing, LetterSoFar told, string? whyBeyondTheWish) =>
    [
        .. Untouched(reed, log, phrasing),
        .. WorkStory.Tell(reed.Number, log, phrasing, told),
        .. LetterWish.Sentences(reed, log, target, whyBeyondTheWish, phrasing, told),
        .. log.Risks.SelectMany((risk, index) => Risks(risk, reed.Number + index, phrasing)),
        .. Ended(reed, log, phrasing),
    ];

    private static IEnumerable<LetterSentence> Ended(Reed reed, BenchLog log, Phrasing phrasing)
    {
        var why = log.IsStopped && Reason(log.Stop?.Now.Words) is { } words ? Prose.Ended(Prose.Inside(words)) : null;
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
                if (Verdicts(verdict.Now.VerdictKind, log) is { } ways)
                {
                    yield return new(phrasing.Say("verdict", reed.Number, ways), [verdict.Root]);
                }
            }
        }

        if (log.Verdict is { } said && Reason(said.Now.Words) is { } remark)
        {
            yield return new(Prose.Sentence(remark), [said.Root]);
        }
    }

    // That it is better is told where the log holds work, or tests that say so; LetterUntold asks the teacher about the rest.
    private static IReadOnlyList<string>? Verdicts(VerdictKind verdict, BenchLog log) => (verdict, log.Live<Adjustment>().Any()) switch
    {
        (VerdictKind.Improved, false) => LetterUntold.HasGained(log) ? VerdictWordings.ImprovedByItself : null,
        (VerdictKind.GoodOnArrivalRefined, false) => null,
        (VerdictKind.NotToBeSaved, false) => VerdictWordings.NotToBeSavedUntried,
        _ => VerdictWordings.All[verdict],
    };

    // A reason that holds a colon of its own stands as a sentence by itself.
    private static string Because(string place, Reed reed, IReadOnlyList<string> ways, string why, Phrasing phrasing) => why.Contains(": ", StringComparison.Ordinal)
        ? phrasing.Say(place, reed.Number, ways == WorkFrames.Stopped ? WorkFrames.StoppedAlone : WorkFrames.StoppedToProtectAlone, ("why", Prose.Capital(why)))
        : phrasing.Say(place, reed.Number, ways, ("why", why));

    /// <summary>What somebody typed as a reason; null where it only names a verdict, which the letter tells in its own place.</summary>
    /// <param name="words">What was typed.</param>
    internal static string? Reason(string? words)
    {
        var bare = (words ?? "").Trim(' ', '.', '!');
        var named = bare.StartsWith("verdict", StringComparison.OrdinalIgnoreCase) ? bare["verdict".Length..].Trim(' ', ':', ',', '-', '–') : bare;
        return named.Length == 0 || Enum.GetValues<VerdictKind>().Any(kind =>
            named.Equals(kind.Name(), StringComparison.OrdinalIgnoreCase) || (named != bare && kind.Name().StartsWith(named, StringComparison.OrdinalIgnoreCase))) ? null : words;
    }

    private static bool IsAsItCame(BenchLog log) => log.Verdict?.Now.VerdictKind == VerdictKind.LeftAsItCame;

    // That nothing was done; that the reed goes home as it came is said with it. Null where there is nothing to say of it.
    private static IReadOnlyList<string>? Untouched(Reed reed, BenchLog log) => reed switch
    {
        _ when log.Live<Adjustment>().Any() => null,
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
                yield return new(Prose.Sentence(said), [risk.Closed.Root]);
            }
        }
    }
}
