using System.Globalization;
using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Intake;

/// <summary>Reads how long something took from the simple ways in which people guess: “about 4”, “4 h”, “4–5”, “20 min”.</summary>
public static partial class GuessedHours
{
    /// <summary>Reads a guess.</summary>
    /// <param name="typed">What was typed.</param>
    /// <returns>The hours, of a range the middle; null when no number of hours can be made out.</returns>
    public static double? Read(string? typed)
    {
        var guess = Guess().Match((typed ?? "").Trim().Replace('−', '-').ToLowerInvariant());
        if (!guess.Success || Number(guess.Groups["from"]) is not { } from)
        {
            return null;
        }

        var hours = from;
        if (guess.Groups["to"].Success)
        {
            // Of a range that goes too far at one end, that end is what has to be looked at.
            var to = Number(guess.Groups["to"]) ?? from;
            hours = from < 0 ? from : to > IntakeLimits.HoursPlayed ? to : (from + to) / 2;
        }

        return guess.Groups["minutes"].Success ? hours / 60 : hours;
    }

    private static double? Number(Group group) =>
        double.TryParse(group.Value.Replace(',', '.'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            && double.IsFinite(number) ? number : null;

    [GeneratedRegex(
        @"^(?:(?:about|around|roughly|maybe|perhaps|approx\.?|circa|ca\.?)\s+|[~≈]\s*)?(?<from>[-+]?\d{1,9}(?:[.,]\d{1,9})?)\+?"
        + @"(?:\s*(?:-|–|to|or)\s*(?<to>\d{1,9}(?:[.,]\d{1,9})?))?\s*(?:h|hr|hrs|hours?|(?<minutes>mins?|minutes?))?\.?(?:\s+or so)?$",
        RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000)]
    private static partial Regex Guess();
}
