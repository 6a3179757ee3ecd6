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

        if (text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t')))
        {
            yield return new Problem(field, "This has a character in it that can't be shown. Please type it again.");
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
}
