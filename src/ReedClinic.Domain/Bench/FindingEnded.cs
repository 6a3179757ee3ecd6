using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>How a finding ended.</summary>
public sealed class FindingEnded : BenchEntry
{
    private FindingEnded()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.FindingEnded;

    /// <summary>The finding, by its first entry.</summary>
    public EntryId FindingId { get; private init; }

    /// <summary>Gone, better, unchanged, or left on purpose.</summary>
    public FindingEnding Ending { get; private init; }

    /// <summary>A remark.</summary>
    public string? Words { get; private init; }

    /// <summary>Says how a finding ended.</summary>
    /// <param name="finding">The finding, by its first entry.</param>
    /// <param name="ending">Gone, better, unchanged, or left on purpose.</param>
    /// <param name="words">A remark.</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<FindingEnded> Of(EntryId finding, FindingEnding ending, string? words = null)
    {
        List<Problem> problems =
        [
            .. Checked.Known(nameof(Ending), ending, "Say how it ended."),
            .. PlainText.Check(nameof(Words), words),
        ];
        return Checked.Give(
            problems,
            () => new FindingEnded { FindingId = finding, Ending = ending, Words = PlainText.Tidy(words) });
    }
}
