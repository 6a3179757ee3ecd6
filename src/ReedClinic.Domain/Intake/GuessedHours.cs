using System.Globalization;
using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Intake;

/// <summary>Reads how long something took from the simple ways in which people guess: “about 4”, “about two”, “4 h”, “4–5”, “half an hour”, “20 min”.</summary>
public static partial class GuessedHours
{
    private static readonly string[] Words = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <summary>Reads a guess.</summary>
    /// <param name="typed">What was typed.</param>
    /// <returns>The hours, of a range the middle; null when no number of hours can be made out.</returns>
    public static double? Read(string? typed)
    {
        var guess = Guess().Match(InFigures((typed ?? "").Trim().Replace('−', '-').ToLowerInvariant()));
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

    /// <summary>Whether a guess is of more hours than most reeds are played, and can be taken all the same.</summary>
    /// <param name="typed">What was typed.</param>
    public static bool IsLong(string? typed) => Read(typed) is > IntakeLimits.LongHours and <= IntakeLimits.HoursPlayed;

    // Number words as figures: “two and a half hours” is “2.5 hours”, “half an hour” is “0.5 hours”.
    private static string InFigures(string typed)
    {
        var figures = Word().Replace(typed, word => (Array.IndexOf(Words, word.Value) + 1).ToString(CultureInfo.InvariantCulture));
        figures = HalfAnHour().Replace(figures, "0.5 hours");
        return AndAHalf().Replace(AnHour().Replace(figures, "1 hour"), half => $"{half.Groups["whole"].Value}.5{(half.Groups["hour"].Success ? " hours" : "")}");
    }

    private static double? Number(Group group) =>
        double.TryParse(group.Value.Replace(',', '.'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            && double.IsFinite(number) ? number : null;

    [GeneratedRegex(@"\b(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b", RegexOptions.CultureInvariant)]
    private static partial Regex Word();

    [GeneratedRegex(@"\bhalf an hour\b", RegexOptions.CultureInvariant)]
    private static partial Regex HalfAnHour();

    [GeneratedRegex(@"\ban hour\b", RegexOptions.CultureInvariant)]
    private static partial Regex AnHour();

    [GeneratedRegex(@"\b(?<whole>\d{1,9})(?<hour>\s+hours?)?\s+and a half\b", RegexOptions.CultureInvariant)]
    private static partial Regex AndAHalf();

    [GeneratedRegex(
        @"^(?:(?:about|around|roughly|maybe|perhaps|approx\.?|circa|ca\.?)\s+|[~≈]\s*)?(?<from>[-+]?\d{1,9}(?:[.,]\d{1,9})?)\+?"
        + @"(?:\s*(?:-|–|to|or)\s*(?<to>\d{1,9}(?:[.,]\d{1,9})?))?\s*(?:h|hr|hrs|hours?|(?<minutes>mins?|minutes?))?\.?(?:\s+or so)?$",
        RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000)]
    private static partial Regex Guess();
}
