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
        foreach (var piece in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => word.Chunk(most)))
        {
            var word = new string(piece);
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
}
