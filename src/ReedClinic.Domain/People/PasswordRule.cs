using System.Globalization;
using System.Text;

namespace ReedClinic.Domain.People;

/// <summary>
/// What a password must be: long, and not what everybody would try first. Nothing is asked of its letters, and every
/// character is taken as it was typed.
/// </summary>
/// <remarks>
/// At least 15 characters where the password is the only factor and 8 where it isn't, no rules of composition, each Unicode
/// code point counted as one character, common and expected words barred: NIST SP 800-63B-4, section 3.1.1.2; OWASP ASVS
/// 5.0, 6.1.2, 6.2.1, 6.2.4, 6.2.5, 6.2.9, 6.2.11. How a text is taken apart to find expected words is our own.
/// </remarks>
public static class PasswordRule
{
    /// <summary>The fewest characters (Unicode code points) where the password is the only factor.</summary>
    public const int Shortest = 15;

    /// <summary>The fewest characters (Unicode code points) where a second step is asked for too.</summary>
    public const int ShortestWithSecondStep = 8;

    /// <summary>The most characters (Unicode code points), so that nobody can make the server hash a book.</summary>
    public const int Longest = 256;

    // What must be left when everything is taken out that whoever guesses would begin with.
    private const int FewestOwn = 6;

    private const int ShortestRun = 4;

    private static readonly string[] Expected =
        ["reedclinic", "reed", "clinic", "oboe", "cor anglais", "studio", "teacher", "student", "music", "password", "letmein", "welcome", "qwertz"];

    private static readonly string[] Rows =
        ["abcdefghijklmnopqrstuvwxyz", "01234567890", "qwertyuiop", "qwertzuiop", "asdfghjkl", "zxcvbnm", "yxcvbnm", "azertyuiop"];

    /// <summary>What is wrong with a password, in one plain sentence; null when nothing is.</summary>
    /// <param name="typed">What was typed, untrimmed.</param>
    /// <param name="shortest">The fewest characters.</param>
    /// <param name="common">Passwords that everybody tries, in small letters; null where there is no list.</param>
    /// <param name="about">Words about this person and this studio, which whoever knows them would try.</param>
    public static string? ProblemWith(
        string? typed, int shortest = Shortest, IReadOnlySet<string>? common = null, params IReadOnlyList<string?> about)
    {
        var length = typed?.EnumerateRunes().Count() ?? 0;
        if (length < shortest)
        {
            return $"Choose a password of at least {shortest} characters. A few words in a row are easy to remember.";
        }

        if (length > Longest)
        {
            return $"That is more than {Longest} characters. A shorter password is enough.";
        }

        return IsExpected(typed!.ToLowerInvariant(), common, about)
            ? "That is one of the first things somebody would try. A few words that have nothing to do with each other are safer."
            : null;
    }

    private static bool IsExpected(string text, IReadOnlySet<string>? common, IReadOnlyList<string?> about)
    {
        if (common?.Contains(text) == true || IsOverAndOver(text, common))
        {
            return true;
        }

        foreach (var word in about.SelectMany(WordsOf).Concat(Expected).OrderByDescending(word => word.Length))
        {
            text = text.Replace(word, " ", StringComparison.Ordinal);
        }

        return OwnIn(text) < FewestOwn;
    }

    // “harbourharbour” is no better than its half, which is short or common.
    private static bool IsOverAndOver(string text, IReadOnlySet<string>? common)
    {
        for (var unit = 1; unit <= text.Length / 2; unit++)
        {
            if (text.Length % unit == 0 && Enumerable.Range(unit, text.Length - unit).All(i => text[i] == text[i - unit]))
            {
                return unit < ShortestWithSecondStep || common?.Contains(text[..unit]) == true;
            }
        }

        return false;
    }

    private static IEnumerable<string> WordsOf(string? said) =>
        (said ?? "").ToLowerInvariant().Split([' ', '@', '.', '-', '_', '\'', ','], StringSplitOptions.RemoveEmptyEntries).Where(word => word.Length >= 3);

    // How many letters belong to no run along the alphabet, the numbers or a keyboard, and repeat no neighbour.
    private static int OwnIn(string text)
    {
        var own = 0;
        for (var i = 0; i < text.Length;)
        {
            var run = RunAt(text, i);
            if (run >= ShortestRun)
            {
                i += run;
                continue;
            }

            own += CharUnicodeInfo.GetUnicodeCategory(text, i) is UnicodeCategory.DecimalDigitNumber or UnicodeCategory.SpaceSeparator ? 0 : 1;
            i += char.IsSurrogatePair(text, i) ? 2 : 1;
        }

        return own;
    }

    private static int RunAt(string text, int from)
    {
        var same = 1;
        while (from + same < text.Length && text[from + same] == text[from])
        {
            same++;
        }

        return Rows.SelectMany(row => new[] { row, Backwards(row) }).Select(row => Along(row, text, from)).Append(same).Max();
    }

    private static int Along(string row, string text, int from)
    {
        var start = row.IndexOf(text[from], StringComparison.Ordinal);
        var length = 0;
        while (start >= 0 && from + length < text.Length && start + length < row.Length && text[from + length] == row[start + length])
        {
            length++;
        }

        return length;
    }

    private static string Backwards(string row)
    {
        var letters = new StringBuilder(row.Length);
        for (var i = row.Length - 1; i >= 0; i--)
        {
            letters.Append(row[i]);
        }

        return letters.ToString();
    }
}
