namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Numbers in digits and in words.</summary>
internal static class Numbers
{
    private static readonly Dictionary<string, int> Words = new()
    {
        ["one"] = 1,
        ["two"] = 2,
        ["three"] = 3,
        ["four"] = 4,
        ["five"] = 5,
        ["six"] = 6,
        ["seven"] = 7,
        ["eight"] = 8,
        ["nine"] = 9,
        ["ten"] = 10,
        ["eleven"] = 11,
        ["twelve"] = 12,
        ["thirteen"] = 13,
        ["fourteen"] = 14,
        ["fifteen"] = 15,
        ["sixteen"] = 16,
        ["seventeen"] = 17,
        ["eighteen"] = 18,
        ["nineteen"] = 19,
        ["twenty"] = 20,
        ["thirty"] = 30,
        ["forty"] = 40,
        ["fifty"] = 50,
        ["sixty"] = 60,
        ["seventy"] = 70,
        ["eighty"] = 80,
        ["ninety"] = 90,
        ["couple"] = 2,
        ["dozen"] = 12,
    };

    internal static int? Word(string word) => Words.TryGetValue(word, out var value) ? value : null;

    /// <summary>The number that begins at a token, with the token after it.</summary>
    internal static (decimal Value, int End)? At(IReadOnlyList<Token> tokens, int at, int end)
    {
        if (at >= end)
        {
            return null;
        }

        var token = tokens[at];
        if (token.Kind == TokenKind.Number)
        {
            return (token.Number!.Value, at + 1);
        }

        if (token.Is("half"))
        {
            return Next(tokens, at + 1, end, "a", "dozen") is { } dozen && tokens[dozen - 1].Is("dozen") ? (6, dozen) : (0.5m, at + 1);
        }

        if (token.Is("point") && At(tokens, at + 1, end) is ( >= 1 and < 10, var after) tenth)
        {
            return (tenth.Value / 10, after);
        }

        if (Word(token.Text) is not { } value)
        {
            return token.Is("quarter") ? (0.25m, at + 1) : null;
        }

        return Longer(tokens, at + 1, end, value, token.Text);
    }

    private static (decimal Value, int End) Longer(IReadOnlyList<Token> tokens, int at, int end, int value, string word)
    {
        if (at < end && value is >= 20 and < 100 && value % 10 == 0 && Word(tokens[at].Text) is { } unit and < 10 && tokens[at].Text != "couple")
        {
            return (value + unit, at + 1);
        }

        if (at < end && tokens[at].Is("point") && At(tokens, at + 1, end) is ( >= 0 and < 10, var after) tenth)
        {
            return (value + tenth.Value / 10, after);
        }

        if (at + 1 < end && tokens[at].Is("and") && Next(tokens, at + 1, end, "a", "half") is { } half && tokens[half - 1].Is("half"))
        {
            return (value + 0.5m, half);
        }

        return word == "couple" && at < end && tokens[at].Is("of") ? (value, at + 1) : (value, at);
    }

    private static int? Next(IReadOnlyList<Token> tokens, int at, int end, params ReadOnlySpan<string> either)
    {
        var last = at;
        while (last < end && last < at + either.Length && either.Contains(tokens[last].Text))
        {
            last++;
        }

        return last > at ? last : null;
    }
}
