using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Letters;

/// <summary>“Nah, scratch that”: words by which something was taken back at the bench. They were said to the log, so no letter quotes them.</summary>
/// <remarks>The words are common English, from memory.</remarks>
internal static partial class CommandSaid
{
    /// <summary>The same words without those at their beginning; null where nothing is left.</summary>
    /// <param name="words">What was said.</param>
    internal static string? Without(string? words)
    {
        if (words is null || TakesBack().Match(words) is not { Success: true } back)
        {
            return words;
        }

        var rest = words[back.Length..].Trim();
        return rest.Length == 0 ? null : char.IsUpper(words.TrimStart()[0]) ? Prose.Capital(rest) : rest;
    }

    private const string Hm = @"(?:(?:nah|naw|nope|no|oh|ah|er|erm|um|uh|hm+|wait|hang on|hold on|sorry|oops|whoops|actually|ok|okay|well|right|and|but|please)\b[\s,;:.!–-]*)*";

    private const string End = @"(?:\s*(?:please|again|now|for now|will you|would you))?(?:\s*[,;:.!–-]+\s*|\s*$)";

    // What is said on behind such words without a pause; “scratch that corner” is work.
    private const string On = @"(?:\s+(?=(?:I|it|it['’]s|we|left (?:it|the|that|this|its)|just|only|took|did|made|keep|leave|let|don['’]t|do not|not|rather|was|is|cleaned|scraped|thinned|clipped|dusted)\b))";

    private const string Last = @"(?:the |my |that )?(?:last|previous|latest) (?:one|two|thing|bit|line|entry|note|remark|word)";

    [GeneratedRegex(
        @"(?i)^\W*(?:" + Hm + @"(?:"
        + @"(?:(?:scratch|scrap|strike|delete|erase|undo|cancel|forget|ignore|disregard) (?:that|this|it|" + Last + @"|all that|what I (?:just )?said)(?: (?:last|previous) (?:one|two|thing|bit|line|entry|note))?|(?:I )?take (?:that|it|this|" + Last + @") back|(?:never mind|forget) that)(?:" + End + "|" + On + ")"
        + @"|(?:correct|change|amend|edit|correction (?:of|to)) (?:that|" + Last + @")(?: to)?" + End
        + @"|correction(?: no)?\s*[,;:.!–-]+\s*|make that\s*[,;:–-]+\s*|I tell a lie" + End + @"|(?:wrong (?:word|entry|button)|slip of the tongue|let me (?:rephrase|correct) that)" + End
        + @"|(?<=\b(?:nah|nope|no|sorry|oops|wait|actually)\W+)(?:that(?: is|['’]s| was) (?:wrong|not right|a mistake)|not that|my mistake|I (?:mean|meant))" + End
        + @"|(?<=\b(?:actually|wait|sorry|oh|oops|no)\W+)(?:no|wait|sorry)\s*[,;:.!–-]+\s*"
        + "))+")]
    private static partial Regex TakesBack();
}
