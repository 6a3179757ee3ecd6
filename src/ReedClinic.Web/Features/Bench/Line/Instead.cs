using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>An entry that is being said better in the line.</summary>
/// <param name="Seen">The last entry of the fact, as it stood when it was taken up.</param>
/// <param name="Number">Its place in the log.</param>
/// <param name="Title">What it says, in short.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Words">The words that it is taken up in.</param>
public sealed record Instead(EntryId Seen, int Number, string Title, EntryKind Kind, string Words)
{
    /// <summary>Takes an entry up to say it better; null where it has no words for the line, and is mended in its fields.</summary>
    /// <param name="view">The reed and its log.</param>
    /// <param name="fact">The fact.</param>
    /// <param name="words">Says entries in words.</param>
    public static Instead? Of(BenchView view, BenchFact fact, EntryWords words)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(fact);
        ArgumentNullException.ThrowIfNull(words);
        return fact.Now is { } now && SaidAgain.Of(now, view) is { } said ? new(fact.Tail, fact.Sequence, words.InShort(now), now.Kind, said) : null;
    }

    /// <summary>Takes a verdict up to say why in the line; null for anything else.</summary>
    /// <param name="fact">The fact.</param>
    /// <param name="words">Says entries in words.</param>
    public static Instead? Why(BenchFact fact, EntryWords words)
    {
        ArgumentNullException.ThrowIfNull(fact);
        ArgumentNullException.ThrowIfNull(words);
        return fact.Now is Verdict verdict ? new(fact.Tail, fact.Sequence, words.InShort(verdict), EntryKind.Verdict, verdict.Words ?? "") : null;
    }

    /// <summary>What a line comes to in an entry’s place: why the work stopped, why this verdict, or why advice was set aside, is kept as it is typed; anything else is heard.</summary>
    /// <param name="view">The reed and its log.</param>
    /// <param name="fact">The fact.</param>
    /// <param name="text">The line.</param>
    public static HeardLine Hear(BenchView view, BenchFact fact, string? text)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(fact);
        if (fact.Now is Stopped)
        {
            return Stopped.Of(text) is Outcome<Stopped>.Done(var stop) ? new HeardLine([new HeardEntry(stop, [])], null) : HeardLine.Nothing;
        }

        if (fact.Now is AdviceSetAside aside)
        {
            return !string.IsNullOrWhiteSpace(text) && AdviceSetAside.Of(aside.AdviceId, text) is Outcome<AdviceSetAside>.Done(var why) ? new HeardLine([new HeardEntry(why, [])], null) : HeardLine.Nothing;
        }

        // “No, improved” puts the verdict right; anything else is why it was given.
        if (fact.Now is Verdict verdict && EntryPutRight.Of(text, verdict, new PhraseContext(view.Log, view.Batch.CrowTarget.Tuning), alone: true) is null)
        {
            return Why(verdict, text, HeardLine.Of(text, view.Log, view.Batch.CrowTarget.Tuning));
        }

        if (EntryPutRight.Of(text, fact.Now, new PhraseContext(view.Log, view.Batch.CrowTarget.Tuning), alone: false) is { } meant)
        {
            return new HeardLine([new HeardEntry(SaidAgain.With(fact.Now!, meant).AsSaid(text), [])], null);
        }

        var heard = HeardLine.Of(text, view.Log, view.Batch.CrowTarget.Tuning, view.Catalogue.Own);
        return fact.Now is { } before ? heard with { Entries = [.. heard.Entries.Select(one => one with { Entry = SaidAgain.With(before, one.Entry) })] } : heard;
    }

    // Said with its name (“verdict: improved”) it is another verdict.
    private static HeardLine Why(Verdict verdict, string? text, HeardLine heard) =>
        heard.All is [Verdict] && text!.TrimStart().StartsWith("verdict", StringComparison.OrdinalIgnoreCase) ? heard
        : !string.IsNullOrWhiteSpace(text) && Verdict.Of(verdict.VerdictKind, text) is Outcome<Verdict>.Done(var why) ? new HeardLine([new HeardEntry(why, [])], null)
        : HeardLine.Nothing;

    /// <summary>What keeps what was heard from standing in an entry’s place.</summary>
    /// <param name="view">The reed and its log.</param>
    /// <param name="fact">The fact.</param>
    /// <param name="entry">What was heard.</param>
    public static Problem? Wanted(BenchView view, BenchFact fact, BenchEntry entry)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(fact);
        return Agreement.Wanted(view.Reed, entry, SafeChanges.CrowBefore(view.Log, view.Batch.CrowTarget, fact.Sequence));
    }
}
