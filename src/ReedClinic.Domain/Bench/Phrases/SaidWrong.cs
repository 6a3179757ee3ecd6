namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Three strokes was wrong, five strokes”, “that last one was on the lower blade”, “scratch the other blade, only the upper”: other ways of saying what in the entry before is put right.</summary>
internal static class SaidWrong
{
    private const int Longest = 8;

    private static readonly HashSet<string> Ahead = [.. "no nope nah sorry oops whoops wait ok okay well and um er please actually correction pardon".Split(' ')];

    private static readonly HashSet<string> Which = [.. "other lower upper top bottom left right".Split(' ')];

    private static readonly HashSet<string> What = [.. "blade side corner window one half wing bit part edge".Split(' ')];

    /// <summary>What is said behind “… was wrong,” of the number that stands; null where the words are others.</summary>
    internal static string? Behind(string said, List<Token> tokens, BenchEntry before)
    {
        var wrong = tokens.FindIndex(token => token.Is("wrong"));
        if (wrong < 2 || wrong > Longest || wrong + 2 >= tokens.Count || tokens[wrong - 1].Text is not ("was" or "is" or "'s" or "were") || tokens[wrong + 1].Kind is not TokenKind.Break || tokens[wrong + 1].Text is "?" || tokens.Exists(token => token.Is("not")))
        {
            return null;
        }

        var first = tokens.FindIndex(token => token.Kind is not TokenKind.Break && !Ahead.Contains(token.Text));
        if (first >= wrong || tokens.Skip(first).Take(wrong - first).Any(token => token.Kind is TokenKind.Break))
        {
            return null;
        }

        var number = Enumerable.Range(first, wrong - first).Select(at => Numbers.At(tokens, at, wrong)).FirstOrDefault(one => one is not null);
        var stands = number is not { } denied || before is not Adjustment work || denied.Value == work.AmountStrokes || denied.Value == work.Amount.Millimetres;
        return stands ? said[tokens[wrong + 2].Start..] : null;
    }

    /// <summary>Where the last entry was, said of it by name: “that last one was on the lower blade”.</summary>
    internal static string? OfTheLast(string said, List<Token> tokens)
    {
        var at = tokens.FindIndex(token => token.Kind is not TokenKind.Break && !Ahead.Contains(token.Text));
        if (at < 0 || tokens.Exists(token => token.Is("reed")))
        {
            return null;
        }

        at += tokens[at].Text is "that" or "the" or "my" or "this" ? 1 : 0;
        if (at + 3 >= tokens.Count || !tokens[at].Is("last") || tokens[at + 1].Text is not ("one" or "entry" or "line"))
        {
            return null;
        }

        at += 2;
        var was = at;
        while (at < tokens.Count && tokens[at].Text is "was" or "is" or "'s" or "were" or "should" or "have" or "been" or "be" or "meant" or "actually" or "really")
        {
            at++;
        }

        return at > was && at < tokens.Count ? said[tokens[at].Start..] : null;
    }

    /// <summary>Which half alone was meant, behind the one that is given up: “scratch the other blade, only the upper”.</summary>
    internal static string? OnlyOne(string said, List<Token> tokens)
    {
        var at = tokens.FindIndex(token => token.Kind is not TokenKind.Break && !Ahead.Contains(token.Text));
        if (at < 0 || at + 4 >= tokens.Count || !(LastTakenBack.IsEither(tokens[at].Text) || LastTakenBack.IsAway(tokens[at].Text) || tokens[at].Is("not")))
        {
            return null;
        }

        at += tokens[at + 1].Text is "the" or "that" ? 2 : 1;
        if (!Which.Contains(tokens[at].Text) || !What.Contains(tokens[at + 1].Text) || tokens[at + 2].Kind is not TokenKind.Break || tokens[at + 2].Text is "?" || at + 4 >= tokens.Count || tokens[at + 3].Text is not ("only" or "just"))
        {
            return null;
        }

        return said[tokens[at + 4].Start..];
    }
}
