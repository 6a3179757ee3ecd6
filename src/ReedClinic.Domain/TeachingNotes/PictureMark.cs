using System.Text.RegularExpressions;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Domain.TeachingNotes;

/// <summary>Where a picture stands in a letter: <c>[picture KEY: what it shows]</c>, alone in its paragraph, in a part that somebody wrote.</summary>
/// <param name="Key">Which picture.</param>
/// <param name="Words">What it shows, for those who can't see it.</param>
public sealed partial record PictureMark(string Key, string Words)
{
    /// <summary>How long a key is.</summary>
    public const int KeyLength = 12;

    /// <summary>The longest words about a picture, in characters.</summary>
    public const int LongestWords = 300;

    private const string Beginning = "[picture";

    /// <summary>As it is written in a letter.</summary>
    public string Written => $"{Beginning} {Key}: {Words}]";

    /// <summary>As it is read where nothing can be shown.</summary>
    public string Said => $"Picture: {Words}";

    /// <summary>The picture that a paragraph is; null when it is words.</summary>
    /// <param name="block">The part.</param>
    /// <param name="paragraph">A paragraph of it.</param>
    public static PictureMark? Of(LetterBlock block, LetterParagraph paragraph)
    {
        ArgumentNullException.ThrowIfNull(block);
        ArgumentNullException.ThrowIfNull(paragraph);
        return block.IsEdited && Mark().Match(paragraph.Text) is { Success: true } mark ? new(mark.Groups[1].Value, mark.Groups[2].Value.Trim()) : null;
    }

    /// <summary>Whether a paragraph begins as a picture does: then it is one, or one that was mistyped.</summary>
    /// <param name="block">The part.</param>
    /// <param name="paragraph">A paragraph of it.</param>
    public static bool IsMeant(LetterBlock block, LetterParagraph paragraph)
    {
        ArgumentNullException.ThrowIfNull(block);
        ArgumentNullException.ThrowIfNull(paragraph);
        return block.IsEdited && paragraph.Text.Contains(Beginning, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The keys of all the pictures in a letter, each once.</summary>
    /// <param name="letter">The letter.</param>
    public static IReadOnlyList<string> KeysIn(LetterDraft letter)
    {
        ArgumentNullException.ThrowIfNull(letter);
        return [.. letter.Blocks.SelectMany(block => block.Paragraphs.Select(paragraph => Of(block, paragraph)?.Key)).OfType<string>().Distinct()];
    }

    /// <summary>A part's text as it is read where nothing can be shown.</summary>
    /// <param name="block">The part.</param>
    /// <param name="paragraph">A paragraph of it.</param>
    public static string SaidIn(LetterBlock block, LetterParagraph paragraph)
    {
        ArgumentNullException.ThrowIfNull(paragraph);
        return Of(block, paragraph)?.Said ?? paragraph.Text;
    }

    [GeneratedRegex(@"^\[picture ([a-z0-9]{1,32}):\s+(\S[^\n]*?)\s*\]$", RegexOptions.CultureInvariant)]
    private static partial Regex Mark();
}
