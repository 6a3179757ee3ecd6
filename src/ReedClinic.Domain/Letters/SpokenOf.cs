using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters;

/// <summary>Finds where somebody wrote of the student as of a third person: such a sentence isn’t put into a letter to that student.</summary>
/// <remarks>The words are common English, from memory.</remarks>
internal static partial class SpokenOf
{
    /// <summary>The sentences that do so.</summary>
    /// <param name="words">What was typed.</param>
    /// <param name="student">The student’s name.</param>
    internal static IEnumerable<string> In(string? words, string student) => Sentences(words).Where(sentence => IsOf(sentence, student));

    /// <summary>The same words without those sentences; null where nothing is left.</summary>
    /// <param name="words">What was typed.</param>
    /// <param name="student">The student’s name.</param>
    internal static string? Without(string? words, string student)
    {
        List<string> all = [.. Sentences(words)], kept = [.. all.Where(sentence => !IsOf(sentence, student))];
        return kept.Count == all.Count ? words : kept.Count == 0 ? null : string.Join(' ', kept);
    }

    /// <summary>What was typed, sentence by sentence.</summary>
    /// <param name="words">What was typed.</param>
    internal static IEnumerable<string> Sentences(string? words) => Ends().Split(words ?? "").Select(sentence => sentence.Trim()).Where(sentence => sentence.Length > 0);

    // “Ask your teacher, she knows” is of somebody else, and what was agreed is told as agreed.
    private static bool IsOf(string sentence, string student) =>
        (!Agreement.IsIn(sentence) && Student().IsMatch(sentence) && !Another().IsMatch(sentence))
        || (student.Split(' ')[0] is { Length: > 1 } first && Regex.IsMatch(sentence, $@"\b{Regex.Escape(first)}(?:['’]s\b| (?:{Does})\b)"));

    private const string Does =
        "should|must|can|could|will|would|may|might|wants?|wanted|says?|said|asks?|asked|told|thinks?|thought|likes?|liked|plays?|played|needs?|needed|has|had|is|was|does|did|bites?|scrapes?|scraped";

    [GeneratedRegex(@"(?<=[.!?…])\s+|[\r\n]+")]
    private static partial Regex Ends();

    [GeneratedRegex(
        @"(?i)\b(?:she|he|her|hers|herself|his|him|himself)\b|\b(?:the|this|that|our|my) (?:student|pupil|girl|boy|kid|child|lad|young (?:man|woman|lady))\b"
        + @"|\b(?:tell|ask|remind|warn) (?:the|this|our) player\b|\b(?:the|this|that|our) player(?:[’']s (?:lips?|mouth|embouchure|teacher|knife|hands?|teeth)\b| (?:should|must|ought to|has to|needs to|wants?|wanted|says?|said|asks?|asked|thinks?|thought|likes?|liked|bites?|bit)\b)"
        + @"|\bthey (?:(?:should|must|can|could|may|might|ought to|had better|need to|have to|ll|d) (?:not |first |only |really )?(?:play|practi[sc]e|use|bring|send|ask|tell|try|learn|scrape|(?:keep|rest|soak|leave) (?:it|this|them|these))|want(?:ed)? (?:it|this|them|to (?:play|use|keep|send|practi[sc]e))|says?|said|asked|told|thinks?|thought|likes?|liked|bites?|bit|scraped|practi[sc]ed?)\b"
        + @"|\btheir (?:lips?|mouth|embouchure|teacher|knife|playing|parents?|lessons?|hands?|teeth)\b")]
    private static partial Regex Student();

    [GeneratedRegex(@"(?i)\b(?:your|a|an|the|another|some) (?:\w+ )?(?:teacher|mother|father|mum|dad|parent|guardian|friend|maker|doctor|dentist|sister|brother|conductor|colleague|player next to you)\b")]
    private static partial Regex Another();
}
