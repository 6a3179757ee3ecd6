namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Where a new clause begins without a mark or a joining word, as in captions.</summary>
internal static class Openings
{
    private static readonly HashSet<string> Is = ["'s", "is", "are", "was", "were", "has", "have", "had", "will", "would", "plays", "needs", "wants", "looks", "feels", "am", "did", "shuts", "closes", "seals", "leaks", "could", "might", "may", "can", "should", "starts", "speaks", "sounds"];

    private static readonly HashSet<string> Things = ["it", "that", "this", "there", "they", "these", "those", "he", "she", "you"];

    internal static bool IsNewClause(List<Token> tokens, List<Item> items, int first, int at)
    {
        var word = tokens[at].Text;
        var next = at + 1 < tokens.Count ? tokens[at + 1].Text : "";
        if (IsNewAmount(tokens, items, first, at) || IsNextPlace(tokens, items, first, at))
        {
            return true;
        }

        if (!HasHead(items, first, at) || Splitter.Binds(tokens[at - 1].Text))
        {
            return false;
        }

        if (word is "i" or "we" && (Is.Contains(next) || IsVerb(items, at + 1)) && !Within(items, at, Cat.Taste, Cat.SeenLater))
        {
            return true;
        }

        if (Things.Contains(word) && Is.Contains(next) && !IsObject(items, at, next) && !Within(items, at, Cat.Taste, Cat.Ended))
        {
            return true;
        }

        if (word is "what" && next is "i" or "we")
        {
            return true;
        }

        // “Its” without its apostrophe, as captions have it.
        if (word is "its" && (next is "a" or "an" or "the" or "too" or "very" or "not" or "now" or "got" or "still" or "gone" or "been" or "at" or "just" or "all" or "much" or "really" || IsVerb(items, at + 1)))
        {
            return true;
        }

        return IsNewTest(tokens, items, first, at) || IsNewDeed(tokens, items, first, at);
    }

    // “Clipping this would kill it”: what is clipped, and no new subject.
    private static bool IsObject(List<Item> items, int at, string next) => next is "would" or "could" or "might" or "will" or "may" or "can" or "was" && items.Any(item => item.Cat is Cat.Verb && item.End == at && item.Value[^1] is 'G');

    // “Three left two right”: a second number after a place that has one already.
    private static bool IsNewAmount(List<Token> tokens, List<Item> items, int first, int at)
    {
        if (at <= first || !IsNumber(tokens, at) || !(tokens[at - 1].Text is "right" or "left" || items.Any(item => item.End == at && item.Cat is Cat.Side or Cat.Zone or Cat.Region)))
        {
            return false;
        }

        for (var i = first; i < at - 1; i++)
        {
            if (IsNumber(tokens, i))
            {
                return !(at + 1 < tokens.Count && tokens[at + 1].Text is "of" or "more") && items.Any(item => item.First >= first && item.End <= at && item.Cat is Cat.Side or Cat.Off or Cat.Stroke);
            }
        }

        return false;
    }

    // “Left window one stroke right window two strokes”: a second place after an amount, and an amount of its own.
    private static bool IsNextPlace(List<Token> tokens, List<Item> items, int first, int at)
    {
        if (at <= first + 2 || !(items.Any(item => item.End == at && item.Cat is Cat.Stroke) || (IsNumber(tokens, at - 1) && items.Any(item => item.End == at - 1 && item.Cat is Cat.Zone or Cat.Region))) || !(tokens[at].Text is "left" or "right" or "upper" or "lower" || items.Any(item => item.First == at && item.Cat is Cat.Zone or Cat.Region or Cat.Side or Cat.Blade)))
        {
            return false;
        }

        var number = -1;
        for (var i = at - 1; i > first; i--)
        {
            number = IsNumber(tokens, i) || tokens[i].Text is "one" or "a" ? i : number;
        }

        return number > first && items.Any(item => item.First >= first && item.End <= number && item.Cat is Cat.Zone or Cat.Region or Cat.Side)
            && Enumerable.Range(at + 1, Math.Max(0, Math.Min(4, tokens.Count - at - 1))).Any(i => IsNumber(tokens, i) || tokens[i].Text is "one");
    }

    private static bool IsNumber(List<Token> tokens, int at) => (tokens[at].Kind is TokenKind.Number && tokens[at].Text.Length == 0) || (Numbers.Word(tokens[at].Text) is not null && tokens[at].Text is not "one" and not "couple");

    private static bool IsNewTest(List<Token> tokens, List<Item> items, int first, int at)
    {
        var noun = tokens[at].Text is "the" or "now" or "my" ? at + 1 : at;
        if (noun != at && noun < tokens.Count && tokens[noun].Text is "the")
        {
            noun++;
        }

        if (tokens[at - 1].Text is "the" or "on" or "in" or "by" or "with" or "from" or "of" or "a" or "my" or "to" or "your" or "now" or "for" or "at")
        {
            return false;
        }

        foreach (var test in items)
        {
            if (test.Cat == Cat.Test && test.First == noun && IsNoun(tokens, test))
            {
                return items.Any(item => item.First >= first && item.End <= at
                    && ((item.Cat == Cat.Verb && item.End < at && !item.Value.StartsWith("light", StringComparison.Ordinal))
                        || (item.Cat == Cat.Test && item.Value != test.Value && item.Value is "Crow" or "Peep" or "LowResponse" or "HighSteadiness" or "SoftestStart" or "TonguedStarts" or "Swell" && !(item.Value == "Peep" && test.Value == "Crow"))));
            }
        }

        return false;
    }

    // “The tongued ones are unsure” and “the swell holds” name a test; “start softly” and “tongue it” do something.
    private static bool IsNoun(List<Token> tokens, Item test) => test.Cat is Cat.Test && (test.Value is "Crow" or "Peep" or "LowResponse" or "HighSteadiness" or "TuningNote"
        || (test.Value is "TonguedStarts" or "Swell" or "SoftestStart" && test.First > 0 && tokens[test.First - 1].Is("the") && test.End < tokens.Count && tokens[test.End].Text is "is" or "'s" or "are" or "holds" or "keeps" or "sags" or "thuds" or "needs" or "goes" or "breaks" or "thud" or "starts" or "still"));

    private static bool IsNewDeed(List<Token> tokens, List<Item> items, int first, int at)
    {
        var verb = items.FirstOrDefault(item => item.Cat == Cat.Verb && item.First == at);
        if (verb.Value is null || !(verb.Value.EndsWith("/P", StringComparison.Ordinal) || verb.Value.EndsWith("/G", StringComparison.Ordinal))
            || items.Any(item => item.First == at && item.Cat is Cat.Test or Cat.Quality or Cat.Ended or Cat.Verdict))
        {
            return false;
        }

        var earlier = items.LastOrDefault(item => item.First >= first && item.End <= at && item.Cat == Cat.Verb);
        return earlier.Value is not null && earlier.End < at
            && items.Any(item => item.First >= earlier.End && item.End <= at && item.Cat is Cat.Zone or Cat.Region or Cat.Degree or Cat.Stroke)
            && tokens[at - 1].Text is not ("by" or "with" or "of" or "for" or "without" or "to" or "and" or "like" or "from")
            && !items.Any(item => item.End == at && item.Cat is Cat.Me or Cat.Other or Cat.Not or Cat.Plan or Cat.Off);
    }

    private static bool HasHead(List<Item> items, int first, int at)
    {
        foreach (var item in items)
        {
            if (item.First >= at)
            {
                return false;
            }

            if (item.First >= first && item.End <= at
                && item.Cat is Cat.Verb or Cat.Quality or Cat.Test or Cat.Good or Cat.Lean or Cat.Verdict or Cat.Stop or Cat.Leave or Cat.Plan or Cat.Ended)
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsVerb(List<Item> items, int at) => items.Any(item => item.First == at && item.Cat is Cat.Verb or Cat.Plan or Cat.May);

    private static bool Within(List<Item> items, int at, params ReadOnlySpan<Cat> cats)
    {
        foreach (var item in items)
        {
            if (item.First < at && at < item.End && cats.Contains(item.Cat))
            {
                return true;
            }
        }

        return false;
    }
}
