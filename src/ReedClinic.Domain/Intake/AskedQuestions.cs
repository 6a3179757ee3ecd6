using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Intake;

/// <summary>Finds the questions in what somebody wrote.</summary>
internal static partial class AskedQuestions
{
    /// <summary>The sentences that ask something, such as “Why does it do that?”; a lone word with a question mark is none.</summary>
    /// <param name="words">What was written.</param>
    public static IEnumerable<string> In(string? words) => Sentence().Matches(words ?? "").Select(match => match.Value.Trim())
        .Where(text => text.EndsWith('?') && text.Length <= Question.LongestText && Asks().IsMatch(text)).Distinct();

    [GeneratedRegex(@"[^.!?…\n\r]+[.!?…]*")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"(?i)\b(why|how|what|which|when|where|who|should|can|could|do|does|did|is|are|am|was|will|would|may|might|shall|have|has)\b.*\s")]
    private static partial Regex Asks();
}
