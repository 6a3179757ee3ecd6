using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters;

/// <summary>Finds what is short for whoever stands at the bench, such as “L worse, R ok”: nobody else can read it, so it isn’t put into a letter.</summary>
/// <remarks>The signs are common ones, from memory.</remarks>
internal static partial class Shorthand
{
    /// <summary>The sentences that hold any.</summary>
    /// <param name="words">What was typed.</param>
    internal static IEnumerable<string> In(string? words) => SpokenOf.Sentences(words).Where(IsShort);

    /// <summary>The same words without those sentences; null where nothing is left.</summary>
    /// <param name="words">What was typed.</param>
    internal static string? Without(string? words)
    {
        List<string> all = [.. SpokenOf.Sentences(words)], kept = [.. all.Where(sentence => !IsShort(sentence))];
        return kept.Count == all.Count ? words : kept.Count == 0 ? null : string.Join(' ', kept);
    }

    // What was agreed is told as agreed, whatever stands beside it.
    private static bool IsShort(string sentence) => !Agreement.IsIn(sentence) && (Sign().IsMatch(sentence) || (Fine().IsMatch(sentence) && BenchSaid.Whole(sentence) is null));

    [GeneratedRegex(@"(?<![\p{L}\p{N}.'’/-])(?:[LR](?![\p{L}\p{N}'’./-])|(?:esp|approx|resp|incl)\b\.?|w/o?(?=\s)|b/c\b|b4\b|v\.? (?=\p{L}))|->|=>|→|\+\+")]
    private static partial Regex Sign();

    [GeneratedRegex(@"(?i)(?<=\p{L}.*)\bok(?:ay)?\b")]
    private static partial Regex Fine();
}
