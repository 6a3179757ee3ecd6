using System.Globalization;

namespace ReedClinic.Domain.Outcomes;

/// <summary>What every typed text has to be: not too long, and free of control characters.</summary>
public static class PlainText
{
    /// <summary>The longest remark that is taken, in UTF-16 characters.</summary>
    public const int LongestRemark = 2000;

    /// <summary>Trims a text and makes nothing of an empty one.</summary>
    /// <param name="text">What was typed.</param>
    /// <returns>The trimmed text, or null when nothing is left.</returns>
    public static string? Tidy(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    /// <summary>Says what is wrong with a typed text, if anything.</summary>
    /// <param name="field">The form field's name.</param>
    /// <param name="text">What was typed.</param>
    /// <param name="longest">The longest text that is taken, in UTF-16 characters.</param>
    /// <returns>Nothing, or one problem.</returns>
    public static IEnumerable<Problem> Check(string field, string? text, int longest = LongestRemark)
    {
        if (text is null)
        {
            yield break;
        }

        if (text.Trim().Length > longest)
        {
            yield return new Problem(field, $"This is too long: please keep it to {longest} characters.");
        }

        if (HasUnseen(text, severalLines: true))
        {
            yield return new Problem(field, "This has a character in it that can’t be shown. Please type it again.");
        }
    }

    /// <summary>As <see cref="Check"/>, and something must have been typed.</summary>
    /// <param name="field">The form field's name.</param>
    /// <param name="text">What was typed.</param>
    /// <param name="whenMissing">One sentence for an empty field.</param>
    /// <param name="longest">The longest text that is taken, in UTF-16 characters.</param>
    /// <returns>Nothing, or one problem.</returns>
    public static IEnumerable<Problem> CheckRequired(
        string field, string? text, string whenMissing, int longest = LongestRemark) =>
        Tidy(text) is null ? [new Problem(field, whenMissing)] : Check(field, text, longest);

    /// <summary>Reads one text into the form in which it is kept; what is wrong with it is added to the problems.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="field">The form field that a problem names.</param>
    /// <param name="longest">The most characters that are kept.</param>
    /// <param name="problems">Where a problem goes.</param>
    /// <param name="severalLines">Whether line breaks and tabs are allowed.</param>
    /// <returns>The trimmed text with plain line feeds; null when it is empty or refused.</returns>
    public static string? Read(string? typed, string field, int longest, ICollection<Problem> problems, bool severalLines = false)
    {
        ArgumentNullException.ThrowIfNull(problems);
        var text = Tidy(typed?.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n'));
        if (text is null)
        {
            return null;
        }

        if (text.Length > longest)
        {
            problems.Add(new Problem(field, string.Create(
                CultureInfo.InvariantCulture, $"Please keep this to {longest} characters; it has {text.Length}.")));
            return null;
        }

        if (HasUnseen(text, severalLines))
        {
            problems.Add(new Problem(field, severalLines
                ? "There is a character in this that can't be shown. Please type it again."
                : "Please keep this to one line of ordinary characters."));
            return null;
        }

        return text;
    }

    // Half a surrogate pair comes out of EnumerateRunes as U+FFFD: no database takes it, so it is refused as well.
    private static bool HasUnseen(string text, bool severalLines) => text.EnumerateRunes().Any(rune => rune.Value switch
    {
        '\n' or '\r' or '\t' => !severalLines,
        0xFFFD => true,
        _ => System.Text.Rune.IsControl(rune),
    });
}
