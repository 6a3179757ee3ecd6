using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Letters;

/// <summary>What was typed when a place was to be left alone: the letter asks for that by itself, so only a reason is told beside it.</summary>
/// <remarks>The words are common English, from memory. Whatever isn’t known to be the order, the place or how long is taken for a reason, with or without a comma before it.</remarks>
internal static partial class AloneSaid
{
    // Where, in words that say nothing of why.
    private const string Place = "(?:it|them|this|that|these|those|here|there|the|its|both|all|each|two|four|other|left|right|upper|lower|top|bottom|whole|very|of|on|at|in|near|around|and|to|from"
        + "|tips?|hearts?|corners?|edges?|side|sides|middle|centre|center|rooftop|slope|transition|windows?|base|spine|rails?|bark|opening|inside|wire|thread|winding|eye|staple|cork|backs?|blades?|lines?|marks?|ends?|shoulders?|plateau|cane|reed|scrape|place|places|part|parts|spot|spots|area)";

    private const string Rest = "(?: (?:" + Place + "|alone|be|untouched|in peace|as (?:it|they) (?:is|are)|please|now|for now|for today|today|any ?more|any further|further|at all|again|ever|altogether|completely|entirely))*";

    /// <summary>Whether words only ask once more to leave the place alone.</summary>
    /// <param name="words">What was typed.</param>
    internal static bool IsOnlyThat(string words) => Parts().Split(words).Select(part => Spaces().Replace(part.Trim(), " ")).Where(part => part.Length > 0).All(part => Order().IsMatch(part));

    [GeneratedRegex(@"[.,;:!–]+(?:\s+|$)")]
    private static partial Regex Parts();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"(?i)^(?:(?:and|but|so|please|really|just|now|ok|I|I[’']ve|I have) )*(?:(?:don['’]t|do not|never|must not|mustn['’]t) (?:(?:ever|even|you|please) )?(?:touch|scrape|thin|cut|shave|clip|work|go)(?: (?:off|over|into|anything))?|leave|leaving|left|let|spare|save|(?:keep|stay|hands) (?:(?:your|the) (?:knife|hands) )?(?:off|away|out)|not|no (?:more )?(?:knife|knives|scraping|work|strokes?)|no more|untouched|alone|please)" + Rest + "$")]
    private static partial Regex Order();
}
