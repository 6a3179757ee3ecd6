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

    /// <summary>Whether no verdict says how a reed that was put aside leaves the bench: the letter says how it is to be played, and what comes next.</summary>
    /// <param name="log">Its log.</param>
    internal static bool IsOpen(BenchLog log) => log.IsParked && log.Verdict is null;

    /// <summary>Whether it may be played as it is, and how the work goes on; nothing where a verdict says it.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="isSaid">Whether words of the teacher say how it is to be played.</param>
    /// <param name="isHarmful">Whether something speaks against playing it at all.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static IEnumerable<LetterSentence> Use(Reed reed, BenchLog log, bool isSaid, bool isHarmful, Phrasing phrasing)
    {
        if (!IsOpen(log) || reed.Fitness == Fitness.Mould)
        {
            yield break;
        }

        if (reed.MayBePlayed && !isHarmful)
        {
            yield return new(phrasing.Say("aside-use", reed.Number, isSaid ? UseWordings.AsideMind : UseWordings.AsideGently), [Last(log).Root]);
        }

        yield return new(phrasing.Say("aside-next", reed.Number, UseWordings.AsideNext), [Last(log).Root]);
    }

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
            if (reed.Fitness != Fitness.Mould)
            {
                yield return new(phrasing.Say("aside-home", reed.Number, WorkFrames.PutAsideHome), [Last(log).Root]);
            }
        }
    }

    /// <summary>Why it was put aside; null where nobody said.</summary>
    /// <param name="log">The log of a reed that was put aside.</param>
    internal static string? Why(BenchLog log) => Last(log).Now.Words;

    private static LiveFact<Parked> Last(BenchLog log) => log.Live<Parked>().MaxBy(parked => parked.Now.Sequence)!;
}
