namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Scratch the last two”, “undo the last three lines”: words that take back more than what was said last.</summary>
public static class SeveralTakenBack
{
    private const int Most = 9;

    private static readonly HashSet<string> Things = ["entries", "lines", "ones", "things", "of", "them", "those", "both"];

    /// <summary>
    /// What a line takes back of what stands: “that” is all that was said in the last breath, “the last entry” is that entry alone, and “the last two” are the
    /// two things of the last breath, or as many breaths.
    /// </summary>
    /// <param name="text">What was typed or said: it takes back.</param>
    /// <param name="log">The reed’s log.</param>
    /// <param name="teacher">Who says it.</param>
    /// <returns>The facts, the newest first; none when nothing of theirs stands.</returns>
    public static IReadOnlyList<BenchFact> Of(string? text, BenchLog log, People.AccountId teacher)
    {
        ArgumentNullException.ThrowIfNull(log);
        var words = LastTakenBack.Words(text);
        var last = SaidTogether.Last(log, teacher, 1);
        return Count(words) is > 1 and var many
            ? last.Count == many ? last : Entries(words) ? [.. SaidTogether.Last(log, teacher, many).Take(many)] : SaidTogether.Last(log, teacher, many)
            : words.Contains("last") || words.Contains("entry") ? [.. last.Take(1)] : last;
    }

    /// <summary>How many are taken back; 0 where the words say anything else.</summary>
    internal static int Count(List<string> words)
    {
        List<string> rest = words switch
        {
            [var away, .. var said] when LastTakenBack.IsAway(away) || LastTakenBack.IsEither(away) || away is "remove" => said,
            ["take", "back", .. var said] => said,
            ["take", .. var said, "back"] => said,
            _ => [],
        };
        return rest is ["last", var number, .. var things] && things.TrueForAll(Things.Contains) && Value(number) is > 1 and <= Most and var many ? many
            : rest is ["last", "couple", .. var couple] && couple.TrueForAll(Things.Contains) ? 2 : 0;
    }

    private static bool Entries(List<string> words) => words.Contains("entries") || words.Contains("things");

    private static int Value(string word) => int.TryParse(word, System.Globalization.CultureInfo.InvariantCulture, out var digits) ? digits : Numbers.Word(word) is { } said ? (int)said : 0;
}
