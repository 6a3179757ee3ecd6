namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Finds what the tokens stand for, and strikes out what the speaker put right.</summary>
internal static class Scanner
{
    private static readonly HashSet<string> Between = ["the", "a", "an", "on", "", "er", "um", "blade", "strokes", "stroke", "one", "i", "mean", "corner", "side", "of", "off", "from", "it", "'s", "that", "was"];

    internal static List<Item> Scan(List<Token> tokens)
    {
        var items = Match(tokens);
        return Strike(tokens, items) ? Match(tokens) : items;
    }

    private static List<Item> Match(List<Token> tokens)
    {
        List<Item> all = [];
        for (var i = 0; i < tokens.Count; i++)
        {
            Lexicon.All.Match(tokens, i, all);
        }

        // What lies inside a longer form of any kind doesn't stand for itself. Forms are in order of their first token.
        List<Item> kept = [];
        for (var i = 0; i < all.Count; i++)
        {
            if (!IsInside(all, i))
            {
                kept.Add(all[i]);
            }
        }

        return kept;
    }

    private static bool IsInside(List<Item> all, int index)
    {
        var item = all[index];
        for (var i = index - 1; i >= 0 && item.First - all[i].First < 12; i--)
        {
            if (all[i].End >= item.End && all[i].Count > item.Count)
            {
                return true;
            }
        }

        for (var i = index + 1; i < all.Count && all[i].First == item.First; i++)
        {
            if (all[i].Count > item.Count)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>“The left, no, the right”: the word before the correction doesn't count, nor does the correction.</summary>
    private static bool Strike(List<Token> tokens, List<Item> items)
    {
        var struck = StrikeNot(tokens, items);
        foreach (var fix in items.Where(item => item.Cat == Cat.Fix).ToList())
        {
            var after = fix.End;
            while (after < tokens.Count && KindOf(tokens, items, after) is null && IsLoose(tokens, items, after))
            {
                after++;
            }

            if (after >= tokens.Count || KindOf(tokens, items, after) is not { } kind)
            {
                continue;
            }

            var before = fix.First - 1;
            while (before >= 0 && fix.First - before < 6 && KindOf(tokens, items, before) != kind && IsLoose(tokens, items, before))
            {
                before--;
            }

            if (before >= 0 && fix.First - before < 6 && KindOf(tokens, items, before) == kind)
            {
                PutRight(tokens, items, fix, before, after, kind);
                struck = true;
            }
        }

        return struck;
    }

    private static void PutRight(List<Token> tokens, List<Item> items, Item fix, int before, int after, string kind)
    {
        if (kind is "number" && IsCounted(items, before + 1) && !IsCounted(items, after + 1))
        {
            tokens[before] = tokens[before] with { Text = tokens[after].Text, Number = tokens[after].Number, Kind = tokens[after].Kind };
            Blank(tokens, fix.First, after + 1);
            BlankMarks(tokens, before, Math.Min(tokens.Count, after + 2));
            return;
        }

        Blank(tokens, kind is "note" && tokens[before].Text is "sharp" or "flat" ? before - 1 : before, before + 1);
        Blank(tokens, fix.First, after);
        BlankMarks(tokens, before, fix.First);
    }

    // “Three strokes, make that four”: what is counted stands by the first number.
    private static bool IsCounted(List<Item> items, int at) => items.Exists(item => item.First == at && item.Cat is Cat.Stroke or Cat.Mm or Cat.Tenth or Cat.Hundredth or Cat.Cent);

    /// <summary>“The left rail, no, not the left, the right”: what is denied is the word that was put right.</summary>
    private static bool StrikeNot(List<Token> tokens, List<Item> items)
    {
        var struck = false;
        for (var i = 2; i + 2 < tokens.Count; i++)
        {
            var side = tokens[i + 1].Is("the") ? i + 2 : i + 1;
            if (!tokens[i].Is("not") || side >= tokens.Count || KindOf(tokens, items, side) is not { } kind || kind is "number" or "note")
            {
                continue;
            }

            var said = Enumerable.Range(Math.Max(0, i - 7), Math.Min(7, i)).LastOrDefault(at => tokens[at].Text.Length > 0 && tokens[at].Is(tokens[side].Text), -1);
            var no = Enumerable.Range(Math.Max(0, i - 2), Math.Min(2, i)).Any(at => tokens[at].Text is "no" or "sorry");
            if (said >= 0 && no)
            {
                Blank(tokens, said, said + 1);
                Blank(tokens, i - 1, side + 1);
                BlankMarks(tokens, i - 2, Math.Min(tokens.Count, side + 2));
                Blank(tokens, i - 2, tokens[i - 2].Is("no") ? i - 1 : i - 2);
                struck = true;
            }
        }

        return struck;
    }

    private static bool IsLoose(List<Token> tokens, List<Item> items, int at) =>
        (tokens[at].Kind == TokenKind.Break && tokens[at].Text == ",")
        || tokens[at].Kind == TokenKind.Symbol || Between.Contains(tokens[at].Text)
        || items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Fix or Cat.Filler or Cat.Stroke or Cat.Zone or Cat.Part);

    private static string? KindOf(List<Token> tokens, List<Item> items, int at)
    {
        if (tokens[at].Kind is TokenKind.Number || Numbers.Word(tokens[at].Text) is not null)
        {
            return "number";
        }

        if (Notes.IsLetter(tokens, at) || (tokens[at].Text is "sharp" or "flat" && at > 0 && tokens[at - 1].Length == 1 && Notes.IsLetter(tokens, at - 1)))
        {
            return "note";
        }

        if (tokens[at].Is("right") && at > 0 && tokens[at - 1].Text is "the" or "," or "no")
        {
            return nameof(Cat.Side);
        }

        foreach (var item in items)
        {
            if (item.First <= at && at < item.End && item.Cat is Cat.Side or Cat.Blade)
            {
                return item.Cat.ToString();
            }
        }

        foreach (var item in items)
        {
            if (item.First <= at && at < item.End && item.Cat is Cat.Zone or Cat.Region)
            {
                return "place";
            }
        }

        return null;
    }

    private static void Blank(List<Token> tokens, int first, int end)
    {
        for (var i = first; i < end; i++)
        {
            tokens[i] = tokens[i] with { Text = "", Kind = TokenKind.Symbol, Number = null };
        }
    }

    private static void BlankMarks(List<Token> tokens, int first, int end)
    {
        for (var i = first; i < end; i++)
        {
            if (tokens[i].Kind == TokenKind.Break)
            {
                Blank(tokens, i, i + 1);
            }
        }
    }
}
