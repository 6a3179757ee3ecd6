using System.Buffers;
using System.Globalization;
using System.Text;
using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Print;

/// <summary>
/// Text as paper can have it. Latin, Greek and Cyrillic letters are set as they are; a letter of another script, or a picture
/// sign, is shown as an empty square, so that it is seen that something stands there.
/// </summary>
public static class PrintText
{
    // What every face has and nothing combines with: most texts are of these alone, and need no second look.
    private static readonly SearchValues<char> Plain =
        SearchValues.Create(string.Concat(Enumerable.Range(' ', '~' - ' ' + 1).Select(sign => (char)sign)) + "\n’‘“”–—…·½");

    /// <summary>What stands for a letter that can't be printed.</summary>
    public const string Placeholder = "▢";

    /// <summary>The text with a square for every letter that can't be printed.</summary>
    /// <param name="text">The text.</param>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!text.AsSpan().ContainsAnyExcept(Plain))
        {
            return text;
        }

        var set = new StringBuilder(text.Length);
        foreach (var element in Elements(text))
        {
            set.Append(element is "\n" || CanBeSet(element) ? element : Placeholder);
        }

        return set.ToString();
    }

    /// <summary>The words of a text that have letters which can't be printed, each once, in order.</summary>
    /// <param name="text">The text.</param>
    public static IReadOnlyList<string> NotPrinted(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return [.. text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Where(word => Elements(word).Any(element => !CanBeSet(element))).Distinct()];
    }

    /// <summary>
    /// The text with plain spaces. A space that holds words together has done so when lines are broken. On paper it is a space: a face
    /// has one glyph for both, and a reader would find the one for the other wherever it stands.
    /// </summary>
    /// <param name="text">The text.</param>
    internal static string WithPlainSpaces(string text) => text.Replace('\u00A0', ' ');

    /// <summary>Parts a text where its face changes: what the face itself doesn't have is set in the face of the signs.</summary>
    /// <param name="text">The text.</param>
    /// <param name="face">The face.</param>
    internal static IEnumerable<(string Text, bool Sign)> Parts(string text, Face face)
    {
        var (from, sign) = (0, false);
        for (var at = 0; at < text.Length;)
        {
            var rune = Rune.GetRuneAt(text, at);
            var other = !PrintFonts.Has(face, rune.Value) && PrintFonts.SignsHave(rune.Value);
            if (other != sign && at > from)
            {
                yield return (text[from..at], sign);
                from = at;
            }

            sign = other;
            at += rune.Utf16SequenceLength;
        }

        if (from < text.Length)
        {
            yield return (text[from..], sign);
        }
    }

    // Marks that only steer how others are shown, such as the direction of writing, have no width and are left out.
    private static IEnumerable<string> Elements(string text)
    {
        var plain = string.Concat(Composed(text).EnumerateRunes().Where(rune => rune.Value == '\n' || Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Format or UnicodeCategory.Control)));
        var elements = StringInfo.GetTextElementEnumerator(plain);
        while (elements.MoveNext())
        {
            yield return elements.GetTextElement();
        }
    }

    // Half a surrogate pair comes out as U+FFFD; what Unicode will never make a character of can't be composed, and is left out.
    private static string Composed(string text) =>
        string.Concat(text.EnumerateRunes().Where(rune => (rune.Value & 0xFFFE) != 0xFFFE).Select(rune => rune.ToString())).Normalize(NormalizationForm.FormC);

    private static bool CanBeSet(string element) =>
        element.EnumerateRunes().All(rune => Is(rune) && (PrintFonts.Has(Face.Text, rune.Value) && PrintFonts.Has(Face.Label, rune.Value) || PrintFonts.SignsHave(rune.Value)));

    // DejaVu has letters of more scripts, but no shaping is done here: what would come out in pieces isn't printed at all.
    private static bool Is(Rune rune) => rune.Value is < 0x0590 or (>= 0x10A0 and < 0x1100) or (>= 0x1E00 and < 0x2E80) or Placeholders || Rune.IsWhiteSpace(rune);

    private const int Placeholders = 0x25A2;
}
