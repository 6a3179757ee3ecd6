namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Whether something was done, or is only talked of.</summary>
internal enum Mood
{
    None,
    Done,
    Plan,
    Asked,
    Condition,
    Others,
    NotDone,
    KeepOff,
    Harm,
    Unsure,
}

/// <summary>Tells deeds from everything else. In doubt it isn't a deed.</summary>
internal static class Moods
{
    private static readonly HashSet<string> Lead =
        ["and", "then", "so", "but", "now", "also", "just", "only", "lightly", "gently", "carefully", "slightly", "again", "quickly", "i", "we", "have", "'ve", "am", "'m", "the", "a", "on", "of", "", "here", "at", "up", "very", "with", "first", "next", "in", "to", "for", "simply", "already", "myself", "both", "which", "because", "plus", "this", "that", "these", "those", "there", "its", "your", "my", "even", "straight", "another", "more", "as", "well", "too", "since", "finally", "quick", "quickly", "barely", "really", "softly", "delicately", "having", "'s", "one", "over", "merely", "got", "still", "dry", "wet", "it"];

    /// <summary>Which verb says what the segment is about, if any.</summary>
    internal static Item? Head(Segment segment)
    {
        foreach (var verb in segment.All(Cat.Verb))
        {
            if (!IsNoun(segment, verb))
            {
                var rests = segment.Items.FirstOrDefault(item => item.Cat == Cat.Verb && item.First > verb.First && Action(verb) is "light" && (Action(item) is "dry" or "wait" || TellsDeed(segment, segment.First) || TellsDeed(segment, segment.First + 1)) && !IsNoun(segment, item));
                return rests.Value is null ? verb : rests;
            }
        }

        return null;
    }

    internal static string Action(Item verb) => verb.Value[..verb.Value.IndexOf('/', StringComparison.Ordinal)];

    internal static char Form(Item verb) => verb.Value[^1];

    /// <summary>The mood of a segment with a deed in it.</summary>
    internal static Mood Of(Course course, Segment segment, Item? verb)
    {
        if (verb is { } harm && Action(harm) == "harm")
        {
            return Mood.Harm;
        }

        if (Talked(course, segment, verb) is not Mood.None and var talked)
        {
            return talked;
        }

        return verb is { } head ? OfVerb(course, segment, head) : OfNone(course, segment);
    }

    // “Put it back in the case to dry”.
    internal static bool IsPutAside(Segment segment, Item verb) => segment.Word(verb.First - 1) is "to" && segment.HasWord("it") && !HasModal(segment, segment.End) && !segment.Has(Cat.Plan)
        && (segment.HasWord("put") || segment.HasWord("left") || segment.HasWord("laid")) && !segment.Has(Cat.Other) && !segment.Has(Cat.Not);

    /// <summary>Signs anywhere in the segment that it is only talked of.</summary>
    private static Mood Talked(Course course, Segment segment, Item? verb)
    {
        var isPast = verb is { } head && Form(head) is 'P' or 'N';
        var place = verb?.First ?? segment.End;
        var limit = isPast ? place : segment.End;
        if (verb is { } idle && Action(idle) is "dry" or "wait" && IsPutAside(segment, idle))
        {
            return Mood.Done;
        }

        if (segment.Items.Any(item => item.Cat is Cat.Habit || (item.Cat is Cat.Cond && (item.First < limit || IsIf(segment, item)))))
        {
            return Mood.Condition;
        }

        if (segment.Items.Any(item => item.Cat is Cat.Plan && item.First < limit) || HasModal(segment, limit))
        {
            return Mood.Plan;
        }

        if (IsQuestion(segment) || (segment.Asked && !isPast))
        {
            return Mood.Asked;
        }

        if (segment.Items.Any(item => item.Cat is Cat.Other && item.First < place && !OwnedOnly(segment, item)))
        {
            return Mood.Others;
        }

        return segment.Items.Any(item => item.Cat is Cat.Not && item.First < Math.Min(place + 2, segment.End) && !IsOnly(segment, item))
            ? Mood.NotDone
            : course.Segments.Any(other => other.Sentence == segment.Sentence && other.Items.Any(item => item.Cat == Cat.Cond && IsIf(other, item))) && !isPast
                ? Mood.Condition
                : Mood.None;
    }

    private static Mood OfVerb(Course course, Segment segment, Item verb)
    {
        var leadIsClean = LeadIsClean(segment, verb, out var me, out var now);
        switch (Form(verb))
        {
            case 'S':
                return Mood.Others;
            case 'P' or 'N':
                return Carries(course, segment, me, now, past: true) ? course.Carried
                    : leadIsClean && !IsPassive(segment, verb) ? Mood.Done : Mood.Unsure;
            case 'G':
                return Carries(course, segment, me, now, past: false) ? course.Carried
                    : leadIsClean && !segment.Has(Cat.Hedge) && !IsGeneral(segment, verb) ? Mood.Done : Mood.Unsure;
            default:
                return Carries(course, segment, me: false, now: false, past: false) ? course.Carried
                    : leadIsClean && !segment.Has(Cat.Hedge) && !IsGeneral(segment, verb) && !(me && AmountReader.Read(segment, segment.First, segment.End) is null)
                        && !HasWords(segment, verb, "to", "have", "do", "did") ? Mood.Done : Mood.Unsure;
        }
    }

    private static Mood OfNone(Course course, Segment segment) =>
        Carries(course, segment, me: false, now: segment.Has(Cat.Now), past: false) ? course.Carried
            : segment.Has(Cat.Hedge) ? Mood.Unsure : Mood.Done;

    private static bool Carries(Course course, Segment segment, bool me, bool now, bool past)
    {
        if (course.Carried == Mood.None || segment.Joint is "but" or "though" or "although" or "however")
        {
            return false;
        }

        return past
            ? !me && (course.Carried is Mood.Others or Mood.Condition || (course.Carried is Mood.NotDone or Mood.Plan or Mood.Asked && segment.Joint is "or" or "and"))
            : !(me || now);
    }

    private static bool LeadIsClean(Segment segment, Item verb, out bool me, out bool now)
    {
        me = false;
        now = segment.Has(Cat.Now);
        var tells = TellsDeed(segment, segment.First) || TellsDeed(segment, segment.First + 1);
        for (var i = segment.First; i < verb.First; i++)
        {
            me |= segment.Word(i) is "i" or "we";
            if ((tells && segment.Word(i) is "what" or "all" or "doing" or "did" or "done" or "is" or "was" or "are") ||
                segment.Tokens[i].Kind is TokenKind.Symbol or TokenKind.Break or TokenKind.Number || Lead.Contains(segment.Word(i))
                || Numbers.Word(segment.Word(i)) is not null)
            {
                continue;
            }

            if (!segment.Items.Any(item => item.First <= i && i < item.End
                && item.Cat is Cat.Filler or Cat.Zone or Cat.Region or Cat.Part or Cat.Side or Cat.Blade or Cat.Now or Cat.Me or Cat.Degree or Cat.Also or Cat.Again or Cat.Same or Cat.Stroke or Cat.Hedge or Cat.Thing or Cat.Fix or Cat.Off))
            {
                return false;
            }
        }

        return !HasWords(segment, verb, "to", "by", "for", "of", "from", "about") || segment.Word(verb.First - 1) is not ("to" or "by" or "for" or "of" or "from" or "about" or "'s");
    }

    private static bool HasWords(Segment segment, Item verb, params ReadOnlySpan<string> words)
    {
        for (var i = segment.First; i < verb.First; i++)
        {
            if (words.Contains(segment.Word(i)))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsPassive(Segment segment, Item verb) => !TellsDeed(segment, segment.First) && HasWords(segment, verb, "was", "were", "been", "is", "are", "be", "being", "has", "had", "'s");

    /// <summary>“Taking cane off there costs the low notes”.</summary>
    private static bool IsGeneral(Segment segment, Item verb)
    {
        for (var i = verb.End; i < segment.End; i++)
        {
            if (segment.Word(i) is "is" or "'s" or "costs" or "makes" or "helps" or "would" or "will" or "does" or "lowers" or "raises" or "means" or "gives" or "takes" or "usually" or "was"
                && segment.Word(i - 1) is not ("it" or "that" or "which" or "what" or "where"))
            {
                return true;
            }
        }

        return false;
    }

    // “What I’m doing is …”, “all I did was …”.
    private static bool TellsDeed(Segment segment, int at) => segment.Word(at) is "what" or "all" && segment.Word(at + 1) is "i" or "we" && segment.Word(at + 2) is "am" or "did" or "have" or "are"
        && (segment.HasWord("is") || segment.HasWord("was"));

    internal static bool IsQuestion(Segment segment)
    {
        var i = segment.First;
        while (i < segment.End - 1 && (segment.Word(i) is "and" or "so" or "but" or "then" or "" or "or" || segment.Covered(i, Cat.Filler)))
        {
            i++;
        }

        var next = segment.Word(i + 1);
        if (TellsDeed(segment, i))
        {
            return false;
        }

        return segment.Word(i) switch
        {
            "what" or "why" or "how" or "which" or "who" or "whose" => true,
            "where" or "when" => next is "do" or "did" or "is" or "should" or "shall" or "will",
            "should" or "shall" or "could" or "would" or "can" or "will" => next is "i" or "we" or "you" or "it" or "the" or "that" or "this",
            "is" or "are" or "was" or "were" or "does" or "has" => true,
            "do" or "did" or "have" or "am" or "may" or "might" => next is "i" or "we" or "you" or "they" or "the",
            _ => false,
        };
    }

    internal static bool IsIf(Segment segment, Item item) => segment.Word(item.Count > 1 && segment.Word(item.First) is "only" ? item.First + 1 : item.First) is "if" or "unless" or "supposing" or "provided" or "assuming" or "had" or "were" or "should"
        && segment.Word(item.First - 1) is not ("see" or "as" or "hear" or "even");

    private static bool HasModal(Segment segment, int limit)
    {
        for (var i = segment.First; i < limit; i++)
        {
            if (segment.Word(i) is "will" or "would" or "shall" or "should" or "could" or "can" or "may" or "might" or "must" or "ought" or "'d" or "'ll"
                && !segment.Items.Any(item => item.First <= i && i < item.End && item.Cat is Cat.Test or Cat.Taste or Cat.Known or Cat.Ended))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsOnly(Segment segment, Item item) => segment.Word(item.End) is "only" or "just" or "more" or "but" or "much" || segment.Word(item.First) is "nothing" && segment.Word(item.End) is "but" or "more";

    // “Your left corner” has no other subject; “you took” has.
    private static bool OwnedOnly(Segment segment, Item item) => segment.Word(item.First) is "your" or "her" or "his" or "their" && item.Count == 1;

    // “Three strokes”, “the lightest dusting”.
    private static bool IsAmount(Segment segment, Item verb) =>
        (segment.Covered(verb.First, Cat.Stroke) && (Form(verb) is 'S' || Numbers.Word(segment.Word(verb.First - 1)) is not null || segment.Word(verb.First - 1) is "few"))
        || (AmountReader.Read(segment, segment.First, segment.End) is { Words: not null } amount && amount.First < verb.First && verb.First < amount.End);

    /// <summary>True for a word that has a verb's form and is here a thing or a way of being.</summary>
    private static bool IsNoun(Segment segment, Item verb)
    {
        var last = segment.Word(verb.First - 1);
        if (IsAmount(segment, verb) || segment.Items.Any(item => item.First <= verb.First && verb.End <= item.End && item.Cat is Cat.Taste or Cat.Verdict or Cat.Stop or Cat.Test or Cat.Known or Cat.RiskClosed or Cat.Leave))
        {
            return true;
        }

        // “The attack is clean”, “touch feels right”: a thing that something is said of.
        if (Form(verb) is 'B' or 'S' && segment.Word(verb.End) is "is" or "'s" or "are" or "was" or "were" or "looks" or "feels" or "sounds" or "seems" or "has" or "of")
        {
            return true;
        }

        if (Form(verb) is 'B' or 'S' && last is "the" or "a" or "an" or "that" or "this" or "your" or "my" or "of" or "is" or "'s" or "are" or "too" or "very" or "one" or "another" or "was" or "each" or "little" or "so" or "no" or "more" or "than" or "first" or "last" or "light" or "nice" or "good" or "own")
        {
            return true;
        }

        if (Form(verb) is 'P' or 'N' && last is "the" or "a" or "an" or "your" or "well" or "too" or "nicely" or "evenly" or "badly" or "is" or "'s" or "are" or "already" && Action(verb) is not "harm"
            && segment.Word(verb.First - 2) is not ("have" or "i"))
        {
            return true;
        }

        return Form(verb) is 'B' && Action(verb) is "light" && (segment.Word(verb.First) is "have" or "do" && segment.Items.Any(item => item.Cat == Cat.Verb && item.First > verb.First))
            || (Form(verb) is 'P' && segment.Word(verb.First) is "had" && segment.Items.Any(item => item.Cat == Cat.Verb && item.First > verb.First));
    }
}
