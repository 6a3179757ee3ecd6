using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>A remark.</summary>
public sealed class Note : BenchEntry
{
    private Note()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Note;

    /// <summary>What was said.</summary>
    public string Words { get; private init; } = "";

    /// <summary>Makes a remark.</summary>
    /// <param name="words">What is said.</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<Note> Of(string? words) => Checked.Give(
        [.. PlainText.CheckRequired(nameof(Words), words, "Write something first.")],
        () => new Note { Words = PlainText.Tidy(words) ?? "" });
}
