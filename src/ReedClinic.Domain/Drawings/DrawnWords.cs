using System.Globalization;

namespace ReedClinic.Domain.Drawings;

/// <summary>Words on a drawing, where nobody can measure them: so many letters to a line.</summary>
internal static class DrawnWords
{
    /// <summary>From one line to the next.</summary>
    public const double LineHeight = 18;

    /// <summary>Breaks a text into lines. A word that is longer than a line is cut.</summary>
    /// <param name="text">The text.</param>
    /// <param name="most">The most letters in a line.</param>
    public static IReadOnlyList<string> Wrap(string text, int most)
    {
        List<string> lines = [];
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, most)))
        {
            if (lines.Count > 0 && lines[^1].Length + 1 + word.Length <= most)
            {
                lines[^1] += " " + word;
            }
            else
            {
                lines.Add(word);
            }
        }

        return lines.Count == 0 ? [""] : lines;
    }

    /// <summary>The beginning of a text, cut where a letter ends.</summary>
    /// <param name="text">The text.</param>
    /// <param name="most">How many signs it may have at most.</param>
    public static string Start(string text, int most) =>
        text.Length <= most ? text : text[..StringInfo.ParseCombiningCharacters(text).LastOrDefault(start => start <= most)];

    // Between what is seen as letters: never within one that is of several signs.
    private static IEnumerable<string> Pieces(string word, int most)
    {
        var starts = StringInfo.ParseCombiningCharacters(word);
        return starts.Chunk(most).Select((piece, index) => word[piece[0]..(((index + 1) * most) < starts.Length ? starts[(index + 1) * most] : word.Length)]);
    }
}
