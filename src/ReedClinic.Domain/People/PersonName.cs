using System.Globalization;
using System.Text;

namespace ReedClinic.Domain.People;

/// <summary>The rules for what a person is called: as they wrote it, trimmed, one line, and nothing that spills into other text.</summary>
public static class PersonName
{
    /// <summary>The longest name that is kept, in characters.</summary>
    public const int MaxLength = 80;

    /// <summary>The most marks on one letter: enough for every script that is written, too few to climb over other lines.</summary>
    public const int MostMarks = 4;

    /// <summary>The name as it will be kept, or null when something is wrong with it.</summary>
    /// <param name="typed">What was typed.</param>
    public static string? Read(string? typed) => ProblemWith(typed) is null ? typed!.Trim() : null;

    /// <summary>What is wrong with a name, in a sentence; null when nothing is.</summary>
    /// <param name="typed">What was typed.</param>
    public static string? ProblemWith(string? typed)
    {
        var name = typed?.Trim() ?? string.Empty;
        var runes = name.EnumerateRunes().ToList();
        if (name.Length > MaxLength || runes.Any(IsNotForOneLine) || !runes.Any(IsSeen))
        {
            return $"Write a name of 1 to {MaxLength} characters, on one line.";
        }

        if (runes.Any(TurnsText))
        {
            return "There is an unseen character in this name that turns the direction of the text around it. Please type the name instead of pasting it.";
        }

        return MarksInARow(runes) > MostMarks
            ? $"There are too many marks on one letter of this name. Please keep to {MostMarks}."
            : null;
    }

    // Half a surrogate pair comes out of EnumerateRunes as U+FFFD.
    private static bool IsNotForOneLine(Rune rune) =>
        rune == Rune.ReplacementChar || (rune.Value & 0xFFFE) == 0xFFFE
        || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;

    private static bool IsSeen(Rune rune) =>
        rune.Value is not (0x115F or 0x1160 or 0x3164 or 0xFFA0) // fillers: letters that nobody sees
        && !IsMark(rune) && !Rune.IsWhiteSpace(rune) && Rune.GetUnicodeCategory(rune) != UnicodeCategory.Format;

    // Embeddings, overrides and isolates of the Unicode bidirectional algorithm. The marks that only set a direction stay.
    private static bool TurnsText(Rune rune) => rune.Value is (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069);

    private static bool IsMark(Rune rune) =>
        Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark or UnicodeCategory.EnclosingMark;

    private static int MarksInARow(List<Rune> runes)
    {
        var (most, row) = (0, 0);
        foreach (var rune in runes)
        {
            row = IsMark(rune) ? row + 1 : Rune.GetUnicodeCategory(rune) == UnicodeCategory.Format ? row : 0;
            most = Math.Max(most, row);
        }

        return most;
    }
}
