using System.Globalization;
using System.Text.RegularExpressions;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>“The same”, “the same as reed one”: of which other reed a student’s words were said first.</summary>
internal static partial class SameAs
{
    private static readonly string[] Numbers = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth"];

    /// <summary>
    /// The reed; null where the words say nothing of the kind, or where that reed wasn’t in the parcel: what the letter doesn’t
    /// tell of is not carried over, and the complaint is asked back.
    /// </summary>
    /// <param name="reed">The reed of which it is said.</param>
    /// <param name="batch">Its batch.</param>
    public static Reed? Reed(Reed reed, Batch batch)
    {
        if (Same().Match(reed.Bothers) is not { Success: true } said)
        {
            return null;
        }

        var which = said.Groups["which"].Success ? Number(said.Groups["which"].Value.ToLowerInvariant()) : null;
        var other = which is { } number
            ? batch.Reeds.FirstOrDefault(one => one.Number == number && one.Id != reed.Id)
            : batch.Reeds.Where(one => one.Number < reed.Number && !(one.Presence == Presence.Missing && Same().IsMatch(one.Bothers))).MaxBy(one => one.Number);
        return other is { Presence: Presence.Missing } ? null : other;
    }

    private static int? Number(string word) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number
        : Array.IndexOf(Numbers, word) is var at and >= 0 ? at + 1
        : Array.IndexOf(Ordinals, word) is var place and >= 0 ? place + 1
        : null;

    // The whole sentence, or followed by what says that it is a complaint; not “the same reed played well last week”, nor what was so at
    // another time: “the same as before”, “the same problem as in spring”.
    [GeneratedRegex(
        @"(?i)^\W*(?:(?:(?:much|just|exactly|quite) )?(?:the )?same(?:\s*(?:$|[.,;:!?–-])| (?:here|again|problems?|troubles?|thing|complaints?|and|but|only)\b(?! as\b)"
        + @"|(?: (?:problems?|troubles?|thing|complaints?))? as (?:(?:on|with|for|in) )?(?:the )?(?:reed |number |no\.? ?|tag |#)?(?<which>one before|(?<=reed )before|others?|previous|last one|above"
        + @"|\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth)\b"
        + @"(?! (?:times?|days?|weeks?|months?|lessons?|batch|parcel)\b))|ditto\b)")]
    private static partial Regex Same();
}
