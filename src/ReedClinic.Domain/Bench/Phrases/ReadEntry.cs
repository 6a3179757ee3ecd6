using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>One entry that a phrase says.</summary>
/// <param name="Span">Where in the text it was said.</param>
/// <param name="Kind">What kind of entry.</param>
/// <param name="Slots">What it says.</param>
/// <param name="Doubts">What could be meant otherwise.</param>
public sealed record ReadEntry(TextSpan Span, EntryKind Kind, ReadSlots Slots, IReadOnlyList<Doubt> Doubts)
{
    /// <summary>The words it was said in.</summary>
    public string Said { get; init; } = "";

    /// <summary>True when the words say more than the slots hold.</summary>
    internal bool HasAside { get; init; }

    /// <summary>The entry for the log.</summary>
    /// <param name="context">What stands on this reed.</param>
    /// <returns>The entry, in no log yet; or what is wrong with it.</returns>
    public Outcome<BenchEntry> ToEntry(PhraseContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return EntryMaker.Make(this, context);
    }
}
