using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Letters;

/// <summary>What was typed when a place was to be left alone: the letter asks for that by itself, so only a reason is told beside it.</summary>
/// <remarks>The words are common English, from memory.</remarks>
internal static partial class AloneSaid
{
    /// <summary>Whether words only ask once more to leave the place alone.</summary>
    /// <param name="words">What was typed.</param>
    internal static bool IsOnlyThat(string words) => Parts().Split(words).Select(part => part.Trim()).Where(part => part.Length > 0).All(part => Order().IsMatch(part) && !Reason().IsMatch(part));

    [GeneratedRegex(@"[.,;:!–]+(?:\s+|$)")]
    private static partial Regex Parts();

    [GeneratedRegex(@"(?i)^(?:(?:and|but|so|please|really|just|now|ok) )*(?:(?:don['’]t|do not|never|must not|mustn['’]t) (?:\w+ )?(?:touch|scrape|thin|cut|shave|clip|work|go)\b.*|(?:leave|let)\b.*\b(?:alone|be|untouched|as (?:it|they) (?:is|are))|(?:leave|spare|save) (?:it|them|this|that|(?:the|its|this|that) [\w ]+)|(?:keep|stay|hands) (?:off|away|out)\b.*|not (?:the|this|that|these|those|here)\b.*|no (?:knife|knives|scraping|work|strokes?|more)\b.*|untouched|leave|please)(?: please)?$")]
    private static partial Regex Order();

    [GeneratedRegex(@"(?i)\b(?:because|since|as (?:it|they) (?!is$|are$)|so that|or|until|before|else|otherwise|for (?:it|they|its|the))\b")]
    private static partial Regex Reason();
}
