using System.Text.RegularExpressions;

namespace ReedClinic.Domain.TeachingNotes;

/// <summary>What a field of a note is filled with; nothing where a batch doesn't say.</summary>
/// <param name="Student">What the student is called.</param>
/// <param name="Reed">The one reed.</param>
/// <param name="Reeds">All the reeds.</param>
/// <param name="Place">Where on them.</param>
/// <param name="Blade">On which blade.</param>
public sealed record NoteFilling(string? Student, string? Reed, string? Reeds, string? Place, string? Blade);

/// <summary>The fields of notes, such as <c>{reeds}</c>: names in plain words, filled from the batch that a letter is about.</summary>
public static partial class NoteField
{
    /// <summary>The names, in the order in which they are offered.</summary>
    public static IReadOnlyList<string> Names { get; } = ["student", "reed", "reeds", "place", "blade"];

    /// <summary>A field as it stands in a text.</summary>
    /// <param name="name">Its name.</param>
    public static string Written(string name) => "{" + name + "}";

    /// <summary>What looks like a field and is none, each once, as it was typed.</summary>
    /// <param name="text">The text.</param>
    public static IReadOnlyList<string> UnknownIn(string text) =>
        [.. Braces().Matches(text).Where(match => !Names.Contains(match.Groups[1].Value)).Select(match => match.Value).Distinct()];

    /// <summary>The names of the fields that stand in a text, each once.</summary>
    /// <param name="text">The text.</param>
    public static IReadOnlyList<string> NamesIn(string text) =>
        [.. Braces().Matches(text).Select(match => match.Groups[1].Value).Where(Names.Contains).Distinct()];

    /// <summary>The text with its fields filled; one that has nothing to fill it stays. What is filled in isn't read again.</summary>
    /// <param name="text">The text.</param>
    /// <param name="filling">What they are filled with.</param>
    public static string Fill(string text, NoteFilling filling)
    {
        ArgumentNullException.ThrowIfNull(filling);
        return Braces().Replace(text, match => match.Groups[1].Value switch
        {
            "student" => filling.Student,
            "reed" => filling.Reed,
            "reeds" => filling.Reeds,
            "place" => filling.Place,
            "blade" => filling.Blade,
            _ => null,
        } ?? match.Value);
    }

    [GeneratedRegex(@"\{([^{}\n]{0,40})\}", RegexOptions.CultureInvariant)]
    private static partial Regex Braces();
}
