using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>A stretch of the typed text, counted in UTF-16 characters.</summary>
/// <param name="Start">Its first character.</param>
/// <param name="Length">How many characters.</param>
public readonly record struct TextSpan(int Start, int Length)
{
    /// <summary>The first character after it.</summary>
    public int End => Start + Length;

    /// <summary>The shortest stretch that has both in it.</summary>
    /// <param name="other">The other stretch.</param>
    public TextSpan With(TextSpan other)
    {
        var start = Math.Min(Start, other.Start);
        return new TextSpan(start, Math.Max(End, other.End) - start);
    }
}

/// <summary>Something that was taken one way and could be meant another.</summary>
/// <param name="Slot">The slot it is about, such as <c>sides</c>; <c>kind</c> for the entry itself; <c>done</c> for whether an adjustment was done at all.</param>
/// <param name="Words">Short plain words for the screen.</param>
public sealed record Doubt(string Slot, string Words)
{
    /// <summary>Said of an adjustment: it may be a plan, a remark or another’s.</summary>
    public static Doubt Done { get; } = new("done", "unsure whether this was done");
}

/// <summary>What a phrase leans on: what stands on this reed, and what is tuned to.</summary>
/// <param name="Log">What stands on this reed.</param>
/// <param name="Tuning">What the player tunes to.</param>
public sealed record PhraseContext(BenchLog Log, Tuning Tuning);

/// <summary>What was understood of a phrase.</summary>
/// <param name="Text">The phrase as it was typed.</param>
/// <param name="Entries">What it says, in the order in which it is said.</param>
/// <param name="LeftOver">What could not be made anything of; together with the entries' spans it covers every visible character.</param>
public sealed record PhraseReading(string Text, IReadOnlyList<ReadEntry> Entries, IReadOnlyList<TextSpan> LeftOver)
{
    /// <summary>The words left over that say something, without those said in passing; they belong in a note.</summary>
    public IReadOnlyList<string> Kept => [.. LeftOver.Select(span => LeftWords.Kept(Text, span)).OfType<string>()];
}
