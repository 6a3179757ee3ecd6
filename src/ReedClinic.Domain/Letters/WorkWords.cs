using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>What was done to a reed, what was risked, why it stopped, and how it leaves the bench.</summary>
internal static class WorkWords
{
    internal static List<LetterSentence> Done(Reed reed, BenchLog log, Phrasing phrasing, string? whyBeyondTheWish) =>
    [
        .. Work(reed, log, phrasing),
        .. LetterWish.Sentences(reed, log, whyBeyondTheWish),
        .. log.Risks.SelectMany(Risks),
        .. Ended(reed, log, phrasing),
    ];

    private static IEnumerable<LetterSentence> Ended(Reed reed, BenchLog log, Phrasing phrasing)
    {
        var why = log.IsStopped ? log.Stop?.Now.Words : null;
        if (log.Verdict is { Now.VerdictKind: VerdictKind.StoppedToProtectIt } protect && why is not null)
        {
            yield return new("Then I stopped, to protect it. " + Prose.Sentence(why), [log.Stop!.Root, protect.Root]);
        }
        else
        {
            if (why is not null)
            {
                yield return new("Then I stopped. " + Prose.Sentence(why), [log.Stop!.Root]);
            }

            if (log.Verdict is { } verdict)
            {
                yield return new(Verdict(verdict.Now.VerdictKind, reed, phrasing), [verdict.Root]);
            }
        }

        if (log.Verdict is { Now.Words: { } words } said)
        {
            yield return new(Prose.Sentence(words), [said.Root]);
        }
    }

    private static IEnumerable<LetterSentence> Work(Reed reed, BenchLog log, Phrasing phrasing)
    {
        var work = log.Live<Adjustment>().ToList();
        if (work.Count == 0)
        {
            if (Untouched(reed, log, phrasing) is { } untouched)
            {
                yield return LetterSentence.Plain(untouched);
            }

            yield break;
        }

        var passes = work.Select(adjustment => adjustment.Pass).Distinct().Count();
        var rhythm = !TriedAfterEach(work, log)
            ? $"I worked on it in {(passes == 1 ? "one pass" : Prose.Number(passes) + " passes")}."
            : passes == 1
            ? phrasing.Pick("one-pass", reed.Number, "I worked on it in one pass and then tried it again.", "It needed one pass of work, and a test after it.")
            : phrasing.Pick(
                "passes", reed.Number,
                $"I worked in {Prose.Number(passes)} passes and tried the reed after each.",
                $"It took {Prose.Number(passes)} passes, with a test after every one.",
                $"I went over it in {Prose.Number(passes)} passes and tried it each time.");
        yield return new(rhythm, [.. work.Select(adjustment => adjustment.Root)]);
        foreach (var sentence in WorkStory.Tell(log))
        {
            yield return sentence;
        }
    }

    private static bool TriedAfterEach(List<LiveFact<Adjustment>> work, BenchLog log)
    {
        var tried = log.Live<Test>().Select(test => test.Pass).ToHashSet();
        return work.All(adjustment => tried.Contains(adjustment.Pass));
    }

    private static string? Untouched(Reed reed, BenchLog log, Phrasing phrasing)
    {
        if (reed.Fitness == Fitness.Mould)
        {
            return "Because of the mould I neither played it nor worked on it.";
        }

        if (reed.Permission == Permission.AdviseOnly && reed.Presence != Presence.Extra)
        {
            return phrasing.Pick(
                "advise", reed.Number,
                "You asked for advice only, so I took nothing away.",
                "As you wished, I left the cane alone.");
        }

        return log.Facts.Count == 0 ? null : phrasing.Pick("untouched", reed.Number, "I took nothing away from it.", "I left its cane as it came.");
    }

    private static IEnumerable<LetterSentence> Risks(RiskNow risk)
    {
        var words = Prose.Inside(risk.Fact.Now.Words.Trim().TrimEnd('.'));
        if (risk.IsOpen)
        {
            yield return new($"One thing to keep an eye on: {words}.", [risk.Fact.Root]);
        }
        else if (risk.Closed!.Now.Outcome == RiskOutcome.Happened)
        {
            yield return new($"Before I began I had written down a risk ({words}), and it did happen.", [risk.Fact.Root, risk.Closed.Root]);
            if (risk.Closed.Now.Words is { } said)
            {
                yield return new(Prose.Sentence(said), [risk.Closed.Root]);
            }
        }
    }

    private static string Verdict(VerdictKind verdict, Reed reed, Phrasing phrasing) => verdict switch
    {
        VerdictKind.Improved => phrasing.Pick(
            "improved", reed.Number, "It plays better than it came.", "I think you will notice the difference.", "It goes home a better reed."),
        VerdictKind.GoodOnArrivalRefined => phrasing.Pick(
            "refined", reed.Number, "It was a good reed already; I only refined it.", "You had made a good reed, and it needed very little."),
        VerdictKind.LeftAsItCame => phrasing.Pick(
            "as-it-came", reed.Number, "It goes home as it came.", "I send it back as it was."),
        VerdictKind.AsGoodAsThisCaneGets => phrasing.Pick(
            "cane", reed.Number, "It is as good now as this piece of cane lets it be.", "More cannot be had from this piece of cane, and that is not your doing."),
        VerdictKind.StoppedToProtectIt => phrasing.Pick(
            "protect", reed.Number, "I stopped there to protect it.", "Another stroke might have cost more than it gave, so I stopped."),
        VerdictKind.NeedsPlayingIn => phrasing.Pick(
            "playing-in", reed.Number, "What it needs now is to be played in, not scraped.", "The rest will come from playing it in."),
        VerdictKind.NotToBeSaved => phrasing.Pick(
            "not-saved", reed.Number, "This one can't be saved, but it has taught us something.", "Its playing days are over; keep the staple for the next one."),
        _ => "It comes back to you unplayed.",
    };
}
