namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“The back either side of the spine”, “left of the spine”: the windows beside it are meant, and the spine itself is spared.</summary>
internal static class BesideSpine
{
    private static readonly HashSet<string> Articles = ["the", "that", "this", "its", "my", "your"];

    private static readonly HashSet<string> Alongside = ["beside", "alongside", "flanking"];

    private static readonly HashSet<string> Elsewhere = ["tip", "heart"];

    /// <summary>Hears the windows where the spine is only what they lie beside: the characters stay where they are.</summary>
    internal static void Quiet(List<Token> tokens)
    {
        for (var spine = tokens.Count - 1; spine > 0; spine--)
        {
            if (spine < tokens.Count && tokens[spine].Text is "spine")
            {
                Hear(tokens, spine);
            }
        }
    }

    private static void Hear(List<Token> tokens, int spine)
    {
        var at = Articles.Contains(tokens[spine - 1].Text) ? spine - 2 : spine - 1;
        if (at >= 1 && Alongside.Contains(tokens[at].Text) || at >= 2 && tokens[at].Is("to") && tokens[at - 1].Text is "next" or "close")
        {
            Put(tokens, tokens[at].Is("to") ? at - 1 : at, spine, "both");
            return;
        }

        if (at < 1 || !tokens[at].Is("of"))
        {
            return;
        }

        var noun = tokens[at - 1].Text;
        if (noun is "side" or "sides")
        {
            var which = at >= 2 ? tokens[at - 2].Text : "";
            if (which is "either" or "each" or "both" or "left" or "right" or "two" or "the")
            {
                Put(tokens, at - 2, spine, which is "left" or "right" ? which : "both");
            }
        }
        else if (noun is "left" or "right" && at >= 2)
        {
            var from = tokens[at - 2].Is("the") ? at - 2 : at - 1;
            Put(tokens, from >= 1 && tokens[from - 1].Text is "to" or "just" ? from - 1 : from, spine, noun);
        }
    }

    private static void Put(List<Token> tokens, int first, int spine, string which)
    {
        var clause = first;
        while (clause > 0 && tokens[clause - 1].Kind is not TokenKind.Break)
        {
            clause--;
        }

        var before = tokens.Skip(clause).Take(first - clause).ToList();
        var noun = before.Exists(token => Elsewhere.Contains(token.Text)) ? which is "both" ? "sides" : "side" : which is "both" ? "windows" : "window";
        var cut = tokens[first + 1];
        tokens[first] = tokens[first] with { Text = which, Length = cut.Start - tokens[first].Start, Kind = TokenKind.Word };
        tokens[first + 1] = cut with { Text = noun, Length = tokens[spine].End - cut.Start, Kind = TokenKind.Word, IsCapital = false };
        tokens.RemoveRange(first + 2, spine - first - 1);
    }
}
