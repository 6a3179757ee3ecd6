using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.People;

/// <summary>The rules for the name of a country: whatever somebody calls it, in any script, as long as it can be a name.</summary>
public static class CountryName
{
    private const int Fewest = 2;

    // In names as people write them: Côte d’Ivoire, Guinea-Bissau, St. Vincent & the Grenadines, Korea (Republic of).
    private const string Joining = " '’-.,&()";

    /// <summary>The name as it will be kept; null for nothing typed, or with a problem.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="field">The form field that a problem names.</param>
    /// <param name="problems">Where a problem goes.</param>
    public static string? Read(string? typed, string field, ICollection<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        var before = problems.Count;
        var name = PlainText.Read(typed, field, Student.LongestCountry, problems);
        if (name is null || problems.Count > before || CanBeName(name))
        {
            return name;
        }

        problems.Add(new Problem(field, "Write the name of a country in letters, such as Portugal. Leave it empty if you would rather not say."));
        return null;
    }

    private static bool CanBeName(string name) =>
        char.IsLetter(name, 0) && name.Count(char.IsLetter) >= Fewest && name.All(sign => char.IsLetterOrDigit(sign) || IsMark(sign) || Joining.Contains(sign, StringComparison.Ordinal));

    private static bool IsMark(char sign) => char.GetUnicodeCategory(sign)
        is System.Globalization.UnicodeCategory.NonSpacingMark or System.Globalization.UnicodeCategory.SpacingCombiningMark or System.Globalization.UnicodeCategory.Surrogate;
}
