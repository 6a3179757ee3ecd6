using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>A reed that was put aside for now and not taken up again: the letter says so, and the teacher is told before it goes.</summary>
internal static class PutAside
{
    /// <summary>The gap; null where it was taken up again, or where its missing verdict says it too.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static LetterGap? Gap(Reed reed, BenchLog log) => !log.IsParked || log.Verdict is null ? null : new(
        "aside-" + Prose.Number(reed.Number),
        GapKind.PutAside,
        $"Reed {Prose.Number(reed.Number)} was put aside for now{(Why(log) is { } why ? $" ({Prose.Quoted(why)})" : "")} and not taken up again, and the letter says so. Take it up at the bench, or say why it goes home as it is.")
    {
        Reed = reed.Id,
    };

    /// <summary>What the letter says of it, with the reason where that is a clause; nothing of a reed that was taken up again.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static IEnumerable<LetterSentence> Sentences(Reed reed, BenchLog log, Phrasing phrasing)
    {
        if (log.IsParked)
        {
            var why = Why(log) is { } words ? BenchSaid.Reason(words) : null;
            yield return new(phrasing.Say("put-aside", reed.Number, why is null ? WorkFrames.PutAside : WorkFrames.PutAsideBecause, ("why", why ?? "")), [Last(log).Root]);
        }
    }

    private static string? Why(BenchLog log) => Last(log).Now.Words;

    private static LiveFact<Parked> Last(BenchLog log) => log.Live<Parked>().MaxBy(parked => parked.Now.Sequence)!;
}
