namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Late, that low C, isn’t it”, “the tip’s, erm, a little short”: a tag asks and denies nothing, and a hesitation is no place to stop.</summary>
internal static class SaidInPassing
{
    private const string Nothing = "um";

    private static readonly HashSet<string> Auxiliary = ["is", "are", "was", "were", "does", "do", "did", "has", "have", "had", "wo", "will", "would", "ca", "can", "could"];

    private static readonly HashSet<string> Pronouns = ["it", "they", "that", "there", "he", "she"];

    private static readonly HashSet<string> Hums = ["um", "uh", "er", "erm", "hm", "hmm", "mm", "eh", "ah"];

    private static readonly HashSet<string> Unfinished = ["'s", "is", "are", "was", "looks", "feels", "seems", "sounds", "plays", "very", "too", "bit", "more", "slightly", "quite", "rather", "on", "off", "from", "at", "in", "with", "and", "but", "still"];

    /// <summary>Makes of both what is heard in passing: the characters stay where they are.</summary>
    internal static void Quiet(List<Token> tokens)
    {
        for (var at = 1; at < tokens.Count; at++)
        {
            if (IsTag(tokens, at))
            {
                Hush(tokens, at, 3);
            }
            else if (at + 2 < tokens.Count && IsComma(tokens[at]) && Hums.Contains(tokens[at + 1].Text) && IsComma(tokens[at + 2]) && (Unfinished.Contains(tokens[at - 1].Text) || IsNameAlone(tokens, at)))
            {
                Hush(tokens, at, 3);
            }
        }
    }

    private static bool IsComma(Token token) => token is { Kind: TokenKind.Break, Text: "," };

    // Behind a mark or before one, and not in what is really asked.
    private static bool IsTag(List<Token> tokens, int at) => at + 2 < tokens.Count && Auxiliary.Contains(tokens[at].Text) && tokens[at + 1].Is("not") && Pronouns.Contains(tokens[at + 2].Text) && tokens[at].Kind is TokenKind.Word
        && (at + 3 >= tokens.Count || tokens[at + 3] is { Kind: TokenKind.Break, Text: not "?" } || tokens[at + 3].Text is "yes" or "yeah" or "yep");

    // “The edge, er, right”: a name, and nothing said of it yet.
    private static bool IsNameAlone(List<Token> tokens, int at)
    {
        var first = at;
        while (first > 0 && tokens[first - 1].Kind is not TokenKind.Break)
        {
            first--;
        }

        return at - first is 2 && tokens[first].Text is "the" or "that" or "this" or "your";
    }

    private static void Hush(List<Token> tokens, int at, int count)
    {
        for (var word = at; word < at + count; word++)
        {
            tokens[word] = tokens[word] with { Text = Nothing, Kind = TokenKind.Word, Number = null, IsCapital = false };
        }
    }
}
