namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Which verb a segment is about, where one verb alone says it or a light one and a word beside it: “gave it a squeeze”.</summary>
internal static class HeadVerb
{
    private static readonly HashSet<string> BeforeNoun =
        ["a", "an", "another", "the", "one", "quick", "light", "little", "small", "tiny", "tiniest", "slight", "slightest", "gentle", "good", "nice", "fresh", "brief", "long", "short", "last", "final", "first", "second", "more", "proper", "thorough", "wee", "smallest", "lightest", "careful", "further", "extra", "minimal", "minute", "micro", "generous", "decent", "merest", "single", "new", "overnight", "real", "full"];

    /// <summary>The verb; null when there is none.</summary>
    internal static Item? Of(Segment segment)
    {
        foreach (var verb in segment.All(Cat.Verb))
        {
            if (IsNoun(segment, verb))
            {
                continue;
            }

            var rests = segment.Items.FirstOrDefault(item => item.Cat == Cat.Verb && item.First > verb.First && Moods.Action(verb) is "light" && (Moods.Action(item) is "dry" or "wait" || Moods.TellsDeed(segment, segment.First) || Moods.TellsDeed(segment, segment.First + 1)) && !IsNoun(segment, item));
            return Pasts.Told(segment, Named(segment, verb) ?? Settled(segment, verb) ?? Aside(segment, verb) ?? Result(segment, verb) ?? (rests.Value is null ? verb : rests));
        }

        return null;
    }

    /// <summary>“Took the tiniest clip”, “gave it a quick squeeze”: the noun says what was done.</summary>
    private static Item? Named(Segment segment, Item verb)
    {
        if (Moods.Action(verb) is not ("light" or "take"))
        {
            return null;
        }

        var amount = AmountReader.Read(segment, segment.First, segment.End);
        foreach (var noun in segment.All(Cat.Verb))
        {
            if (noun.First > verb.End && Moods.Form(noun) is 'B' or 'G' && BeforeNoun.Contains(segment.Word(noun.First - 1)) && Moods.Action(noun) is not ("light" or "take" or "other" or "harm" or "keepoff" or "offset")
                && !(amount is { } said && said.First <= noun.First && noun.First < said.End && Moods.Action(noun) is not ("clip" or "soak" or "squeeze" or "press"))
                && !segment.Items.Any(item => item.First <= noun.First && noun.End <= item.End && item.Cat is Cat.Zone or Cat.Region or Cat.Part))
            {
                return With(verb, Moods.Action(noun));
            }
        }

        return null;
    }

    /// <summary>“Let it dry overnight”, “left it to settle”.</summary>
    private static Item? Settled(Segment segment, Item verb)
    {
        var laid = segment.Word(verb.First) is "lay" or "laid" or "laying" or "put" or "putting" or "set" or "setting" or "hang" or "hung" or "hanging";
        if (!laid && segment.Word(verb.First) is not ("let" or "letting"))
        {
            return null;
        }

        for (var i = verb.End; i < segment.End && i < verb.End + 5; i++)
        {
            if (laid && segment.Word(i - 1) is not "to")
            {
                continue;
            }

            if (segment.Word(i) is "settle" or "sit" or "stand")
            {
                return With(verb, "wait", laid);
            }

            if (segment.Word(i) is "dry" or "rest" or "soak")
            {
                return With(verb, segment.Word(i) is "soak" ? "soak" : "dry", laid);
            }
        }

        return null;
    }

    /// <summary>“Set it aside for a week”.</summary>
    private static Item? Aside(Segment segment, Item verb)
    {
        if (segment.Word(verb.First) is not ("set" or "setting" or "put" or "putting" or "lay" or "laid" or "laying"))
        {
            return null;
        }

        for (var i = verb.End; i < segment.End && i < verb.End + 4; i++)
        {
            if (segment.Word(i) is "aside" or "by" or "away" || (segment.Word(i) is "side" && segment.Word(i - 1) is "one"))
            {
                return With(verb, "wait", past: true);
            }
        }

        return null;
    }

    /// <summary>“Thumbed it closed”, “made it half a millimetre longer”: the deed is told by what came of it.</summary>
    private static Item? Result(Segment segment, Item verb)
    {
        var action = Moods.Action(verb);
        var made = segment.Word(verb.First) is "make" or "made" or "making";
        if (!made && action is not ("clip" or "squeeze" or "realign" or "other" or "bend" or "press" or "scrape" or "free" or "burnish" or "polish" or "open"))
        {
            return null;
        }

        for (var i = verb.End; i < segment.End; i++)
        {
            var result = segment.Word(i) switch
            {
                "closed" or "shut" or "flat" or "flatter" when action is not "clip" && !segment.Items.Any(item => item.Cat is Cat.Zone && item.Value is "Eye" or "Wire") && segment.Word(i - 1) is not "the" => "press",
                "open" or "opener" or "wider" when action is not ("scrape" or "clip") && !segment.Items.Any(item => item.Cat is Cat.Zone && item.Value is "Wire") => "open",
                "longer" when made => "lengthen",
                "deeper" when made || action is "clip" => "open",
                "thinner" or "weaker" or "lighter" when made => "scrape",
                "narrower" or "smaller" when made => segment.Has(Cat.Zone, "Opening") ? "press" : "narrow",
                "even" or "evener" or "equal" when made => "even",
                "smooth" or "smoother" when made => "smooth",
                "square" or "level" when made => "square",
                "clearer" or "crisper" or "sharper" when made => "define",
                "rounder" or "round" when made || segment.Items.Any(item => item.Cat is Cat.Zone && item.Value is "Eye") && action is "realign" or "press" or "bend" or "squeeze" or "other" => "round",
                _ => null,
            };
            if (result is not null && result != action && segment.Word(i - 1) is not ("a" or "an" or "too"))
            {
                return With(verb, result);
            }
        }

        return null;
    }

    // “Put” and “set” are their own past.
    private static Item With(Item verb, string action, bool past = false) => verb with { Value = $"{action}/{(past && Moods.Form(verb) is 'B' ? 'P' : Moods.Form(verb))}" };

    private static bool Ends(Segment segment, int at) => at >= segment.End || segment.Tokens[at].Kind is TokenKind.Break || segment.Covered(at, Cat.Now);

    // “Three strokes”, “the lightest dusting”.
    private static bool IsAmount(Segment segment, Item verb) =>
        (segment.Covered(verb.First, Cat.Stroke) && (Moods.Form(verb) is 'S' || (verb.First > segment.First && segment.Tokens[verb.First - 1].Kind is TokenKind.Number) || Numbers.Word(segment.Word(verb.First - 1)) is not null || segment.Word(verb.First - 1) is "few"))
        || (AmountReader.Read(segment, segment.First, segment.End) is { Words: not null } amount && amount.First < verb.First && verb.First < amount.End);

    /// <summary>True for a word that has a verb's form and is here a thing or a way of being.</summary>
    internal static bool IsNoun(Segment segment, Item verb)
    {
        var last = segment.Word(verb.First - 1) is { Length: > 0 } word ? word : segment.Word(verb.First - 2);
        if (segment.Word(verb.First) is "done" && segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region && (item.End <= verb.First || item.First - verb.End is 0 or 1)) && !segment.Has(Cat.Verdict) && last is not ("well" or "nicely" or "is" or "are" or "was" or "be" or "beautifully" or "not"))
        {
            return false;
        }

        if (IsAmount(segment, verb) || segment.Items.Any(item => item.First <= verb.First && verb.End <= item.End && item.Cat is Cat.Taste or Cat.Verdict or Cat.Stop or Cat.Test or Cat.Known or Cat.RiskClosed or Cat.Leave))
        {
            return true;
        }

        // “The attack is clean”, “touch feels right”: a thing that something is said of.
        if (Moods.Form(verb) is 'B' or 'S' && segment.Word(verb.End) is "is" or "'s" or "are" or "was" or "were" or "looks" or "feels" or "sounds" or "seems" or "has" or "of")
        {
            return true;
        }

        return IsNamed(segment, verb, last) || IsStill(segment, verb, last);
    }

    // “The clip”, “the lightest dusting”, “blend smooth”: the deed’s name.
    private static bool IsNamed(Segment segment, Item verb, string last)
    {
        if (Moods.Form(verb) is 'B' or 'S' && last is "the" or "a" or "an" or "some" or "any" or "that" or "this" or "your" or "my" or "of" or "is" or "'s" or "are" or "too" or "very" or "one" or "another" or "was" or "each" or "little" or "so" or "no" or "more" or "than" or "first" or "last" or "light" or "nice" or "good" or "own")
        {
            return true;
        }

        if (Moods.Form(verb) is 'G' && last is "like" or "the" or "that" or "this" or "my" or "your" or "his" or "her" or "any" or "all" or "no" or "some" or "of" or "more" or "since" or "after" or "before" or "by" or "despite" or "for" or "from" && segment.Word(verb.First - 2) is not ("am" or "'m"))
        {
            return true;
        }

        // “Blend smooth”, “clip clean”: the deed’s name with a word for how it is, and nothing that it is done to.
        if (Moods.Form(verb) is 'B' && Moods.Action(verb) is not ("squeeze" or "press" or "bend") && segment.Items.Any(item => item.First == verb.End && item.Cat is Cat.Quality or Cat.Good && Ends(segment, item.End)))
        {
            return true;
        }

        // “Clipped little tongued notes”; “with beeswax on”.
        if ((Moods.Form(verb) is 'P' && Moods.Action(verb) is "clip" && segment.Items.Any(item => item.Is(Cat.Test, nameof(TestKind.TonguedStarts)) && item.First > verb.First))
            || (Moods.Form(verb) is 'B' && Moods.Action(verb) is "seal" && verb.First > segment.First && segment.Covered(verb.First, Cat.Thing) && last is not ("and" or "then" or "i" or "to" or "we" or "now" or "just")))
        {
            return true;
        }

        // “Few strokes round the shoulders”.
        if (Moods.Form(verb) is 'B' && segment.Word(verb.First) is "round" && verb.First > segment.First && last is not ("and" or "then" or "i" or "to" or "we"))
        {
            return true;
        }

        if (IsPlaceName(segment, verb))
        {
            return true;
        }

        // “Dust on the heart” lies there.
        return Moods.Form(verb) is 'B' && segment.Word(verb.First) is "dust" or "wax" or "tape" or "water" or "scratch" or "cut" or "mark" or "bend" or "twist" or "patch" or "split" or "set" && segment.Word(verb.End) is "on" or "in";
    }

    // “Ramp: …”, “ramp too steep”, “blend smooth enough”: the word names a place of which something is said.
    private static bool IsPlaceName(Segment segment, Item verb) => Moods.Form(verb) is 'B' && verb.First == segment.First && segment.Items.Any(item => item.First == verb.First && item.Cat is Cat.Zone or Cat.Region)
        && (segment.Word(verb.End) is ":" || (segment.Items.Any(item => item.First >= verb.End && item.Cat is Cat.Quality or Cat.Good) && segment.Word(verb.End) is not ("the" or "it" or "that" or "them")));

    // “The worn corner”, “it is tied well”: a way of being; “have”, “do” and “did” beside another verb.
    private static bool IsStill(Segment segment, Item verb, string last)
    {
        if (Moods.Action(verb) is "retire" && segment.Word(verb.First) is "gone" && !segment.Has(Cat.Off))
        {
            return false;
        }

        if (Moods.Form(verb) is 'P' or 'N' && (last is "the" or "a" or "an" or "your" or "well" or "too" or "nicely" or "evenly" or "badly" or "is" or "'s" or "are" or "already" or "hardly" or "scarcely" or "poorly" or "beautifully" or "neatly" or "crudely" or "roughly" or "carelessly" or "unevenly" or "half" or "under" or "over" or "cleanly" or "properly" or "horribly" or "never"
            || (Moods.Form(verb) is 'P' or 'N' && last is "barely" && segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region or Cat.Part && item.End <= verb.First))) && Moods.Action(verb) is not "harm"
            && segment.Word(verb.First - 2) is not ("have" or "i"))
        {
            return true;
        }

        // “Half a millimetre gone off the end”.
        if (segment.Word(verb.First) is "gone" && segment.Has(Cat.Off) && AmountReader.Read(segment, segment.First, verb.First) is not null)
        {
            return true;
        }

        // “I’ve stopped”: no verb of its own.
        if (segment.Word(verb.First) is "have" && segment.Tokens[verb.First].Length == 3)
        {
            return true;
        }

        if (segment.Word(verb.First) is "did" && segment.Items.Any(item => item.Cat == Cat.Verb && item.First == verb.End && Moods.Form(item) is 'B'))
        {
            return true;
        }

        return Moods.Form(verb) is 'B' && Moods.Action(verb) is "light" && (segment.Word(verb.First) is "have" or "do" && segment.Items.Any(item => item.Cat == Cat.Verb && item.First > verb.First))
            || (Moods.Form(verb) is 'P' && segment.Word(verb.First) is "had" && segment.Items.Any(item => item.Cat == Cat.Verb && item.First > verb.First));
    }
}
