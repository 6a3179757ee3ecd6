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
        ["and", "then", "so", "but", "now", "also", "just", "only", "lightly", "gently", "carefully", "slightly", "again", "quickly", "i", "we", "have", "'ve", "am", "'m", "the", "a", "on", "of", "", "here", "at", "up", "very", "with", "first", "next", "in", "to", "for", "simply", "already", "myself", "both", "which", "because", "plus", "this", "that", "these", "those", "there", "its", "your", "my", "even", "straight", "another", "more", "as", "well", "too", "finally", "quick", "quickly", "barely", "really", "softly", "delicately", "having", "'s", "one", "over", "merely", "got", "still", "dry", "wet", "it", "ended", "finished", "managed", "had", "went", "needed", "done", "minute", "moment", "second", "began", "started", "by", "end", "eventually", "after", "all"];

    /// <summary>Which verb says what the segment is about, if any.</summary>
    internal static Item? Head(Segment segment) => HeadVerb.Of(segment);

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
    internal static bool IsPutAside(Segment segment, Item verb) => segment.Word(verb.First - 1) is "to" && (segment.HasWord("it") || segment.Word(segment.First) is "left" or "put" or "laid" or "hung") && !HasModal(segment, segment.End) && !segment.Has(Cat.Plan)
        && (segment.HasWord("put") || segment.HasWord("left") || segment.HasWord("laid")) && !segment.Has(Cat.Other) && !segment.Has(Cat.Not);

    /// <summary>Signs anywhere in the segment that it is only talked of.</summary>
    private static Mood Talked(Course course, Segment segment, Item? verb)
    {
        var isPast = verb is { } head && (Form(head) is 'P' or 'N' || (Action(head) is "wait" && head.Count > 1 && segment.Word(head.First) is "put" or "set"));
        var place = verb?.First ?? segment.End;
        var limit = isPast || (verb is { } rest && Form(rest) is 'G' && Action(rest) is "dry" or "wait" or "soak") ? place : segment.End;
        if (verb is { } idle && Action(idle) is "dry" or "wait" && IsPutAside(segment, idle))
        {
            return Mood.Done;
        }

        if (segment.Word(segment.First) is "because" or "since" || (segment.Word(segment.First) is "now" && segment.Word(segment.First + 1) is "that") || segment.Items.Any(item => item.Cat is Cat.Habit || (item.Cat is Cat.Cond && (item.First < limit || IsIf(segment, item)))))
        {
            return Mood.Condition;
        }

        if (segment.Items.Any(item => item.Cat is Cat.Plan && item.First < limit) || HasModal(segment, limit))
        {
            return Mood.Plan;
        }

        if (IsQuestion(segment) || (segment.Asked && !(isPast && segment.Has(Cat.Me))))
        {
            return Mood.Asked;
        }

        if (IsByAnother(segment, verb) || segment.HasWord("yourself") || segment.HasWord("yourselves") || segment.Items.Any(item => item.Cat is Cat.Other && item.First < place && !OwnedOnly(segment, item)))
        {
            return Mood.Others;
        }

        return segment.Items.Any(item => item.Cat is Cat.Not && (item.First < Math.Min(place + 2, segment.End) || segment.Word(item.First) is "nothing" or "none") && !IsOnly(segment, item) && !segment.Covered(item.First, Cat.Wordy))
            ? Mood.NotDone
            : course.Segments.Any(other => other.Sentence == segment.Sentence && other.Items.Any(item => item.Cat == Cat.Cond && IsIf(other, item))) && !isPast
                ? Mood.Condition
                : Mood.None;
    }

    // “Clipped by the maker”.
    private static bool IsByAnother(Segment segment, Item? verb) => verb is { } head && Form(head) is 'P' or 'N' && (segment.IndexOfWord("by") is >= 0 and var by && segment.Word(by + 1) is "wear" or "use" or "playing" or "age" or "time" or "accident" or "nature" or "itself" or "teeth" || segment.All(Cat.Other).Any(item => item.First > head.First && Enumerable.Range(head.End, item.First - head.End).Any(at => segment.Word(at) is "by" && item.First - at <= 3)));

    private static Mood OfVerb(Course course, Segment segment, Item verb)
    {
        var leadIsClean = LeadIsClean(segment, verb, out var me, out var now);
        switch (Form(verb))
        {
            case 'S':
                return Mood.Others;
            case 'P' or 'N':
                return Carries(course, segment, me, now, past: true) ? course.Carried
                    : !me && (IsHowItIs(segment, verb) || IsPraised(segment, verb)) ? Mood.Unsure
                    : leadIsClean && !IsPassive(segment, verb) ? Mood.Done : Mood.Unsure;
            case 'G':
                return Carries(course, segment, me, now, past: false) ? course.Carried
                    : leadIsClean && !segment.Has(Cat.Hedge) && !Generals.Says(segment, verb) ? Mood.Done : Mood.Unsure;
            case 'B' when segment.Word(verb.First - 1) is "did" && !segment.Asked:
                return Mood.Done;
            default:
                return Carries(course, segment, me: false, now: false, past: false) ? course.Carried
                    : leadIsClean && !segment.Has(Cat.Hedge) && !Generals.Says(segment, verb) && !(me && AmountReader.Read(segment, segment.First, segment.End) is null)
                        && !HasWords(segment, verb, "to", "have", "do", "did") ? Mood.Done : Mood.Unsure;
        }
    }

    // “Windows opened well”.
    private static bool IsPraised(Segment segment, Item verb) => segment.Items.Any(item => item.Cat is Cat.Good && item.First == verb.End) && segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region && item.End <= verb.First) && AmountReader.Read(segment, segment.First, segment.End) is null;

    // “Tied on a bit squint”, “scraped too deep”: how it is, told by what was done to it once.
    private static bool IsHowItIs(Segment segment, Item verb) => Form(verb) is 'P' or 'N' && segment.Items.Any(item => item.Cat is Cat.Quality && item.First >= verb.End && item.Value is "thick" or "thin" or "stiff" or "soft" or "crooked" or "slanted" or "lopsided" or "uneven" or "ragged" or "steep" or "merged" or "squashed" or "against" or "deep" or "shallow" or "slipped" or "high" or "worn" or "loose" or "undone" or "short")
        && !segment.Items.Any(item => item.Cat is Cat.Side or Cat.Blade or Cat.Part && item.First >= verb.End && Action(verb) is "take") && !segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region or Cat.Thing && item.First >= verb.End) && segment.Word(verb.End) is not ("it" or "them" or "that") && AmountReader.Read(segment, segment.First, segment.End) is null or { Words: not null };

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
            : !((me && course.Carried is not Mood.Condition) || now);
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

        return !HasWords(segment, verb, "to", "by", "for", "of", "from", "about") || (Form(verb) is 'P' && segment.Word(verb.First - 1) is "to" or "by") || segment.Word(verb.First - 1) is not ("to" or "by" or "for" or "of" or "from" or "about" or "'s");
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

    private static bool IsPassive(Segment segment, Item verb) => !(segment.Word(verb.First) is "done" && segment.Word(segment.First) is "that") && !(segment.Word(verb.First - 1) is "to" && segment.Word(verb.First - 2) is "had") && !(segment.Word(verb.First) is "had" && segment.Word(verb.First - 1) is "'s" or "has") && !(Action(verb) is "retire" && segment.Word(verb.First) is "gone" or "went") && !TellsDeed(segment, segment.First) && HasWords(segment, verb, "was", "were", "been", "is", "are", "be", "being", "has", "had", "'s");

    // “What I’m doing is …”, “all I did was …”.
    internal static bool TellsDeed(Segment segment, int at) => segment.Word(at) is "what" or "all" && segment.Word(at + 1) is "i" or "we" && segment.Word(at + 2) is "am" or "did" or "have" or "are"
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

        if (segment.Word(i - 1) is "so" && segment.Word(i) is "is" or "are" or "was" or "were" or "does" or "has")
        {
            return false;
        }

        return segment.Word(i) switch
        {
            "what" when !segment.Asked && next is "a" or "an" => false,
            "what" when !segment.Asked && next is "i" or "we" or "you" or "she" or "he" or "they" or "it" or "worries" or "bothers" or "strikes" or "pleases" or "remains" or "keeps" => !(segment.HasWord("is") || segment.HasWord("was") || segment.HasWord("'s") || segment.HasWord("are")),
            "which" when !segment.Asked && segment.Joint is "which" or "," => false,
            "what" or "why" or "how" or "which" or "who" or "whose" => true,
            "where" or "when" => next is "do" or "did" or "is" or "should" or "shall" or "will",
            "should" or "shall" or "could" or "would" or "can" or "will" => next is "i" or "we" or "you" or "it" or "the" or "that" or "this",
            "is" or "are" or "was" or "were" or "does" or "has" => IsSubject(segment, i + 1),
            "did" or "have" when next is "the" => segment.Asked || segment.Items.Any(item => item.Cat is Cat.Verb && item.First > i + 1 && Form(item) is 'B' && segment.Word(item.First - 1) is not ("a" or "the" or "more")),
            "do" or "did" or "have" or "am" or "may" or "might" => next is "i" or "we" or "you" or "they" or "the",
            _ => false,
        };
    }

    // “Was good when it came” is told, “was it good” is asked.
    private static bool IsSubject(Segment segment, int at) => segment.Word(at) is "it" or "the" or "that" or "this" or "there" or "they" or "these" or "those" or "your" or "my" or "you" or "i" or "we" or "he" or "she" or "anybody" or "anyone" or "somebody" or "a" or "one"
        || segment.Items.Any(item => item.First == at && item.Cat is Cat.Zone or Cat.Region or Cat.Side or Cat.Blade or Cat.Test);

    internal static bool IsIf(Segment segment, Item item) => segment.Word(item.Count > 1 && segment.Word(item.First) is "only" ? item.First + 1 : item.First) is "if" or "unless" or "supposing" or "provided" or "assuming" or "had" or "were" or "should"
        && segment.Word(item.First - 1) is not ("see" or "as" or "hear" or "even") && !IsHelp(segment, item);

    // “Holds if I lip it up”: how the test was done.
    private static bool IsHelp(Segment segment, Item item) => (segment.Items.Any(other => other.Cat is Cat.Test && other.First < item.First) || segment.HasWord("high") || segment.HasWord("low") || segment.HasWord("top") || segment.HasWord("bottom"))
        && Enumerable.Range(item.End, Math.Max(0, Math.Min(5, segment.End - item.End))).Any(at => segment.Word(at) is "help" or "helped" or "support" or "supported" or "lip" or "coax" or "coaxed" or "nurse" or "careful" or "push" or "pushed" or "care" or "lean");

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

    /// <summary>“I’ll have some of that out directly”, “I might take another”.</summary>
    internal static bool IsIntention(Segment segment)
    {
        for (var i = segment.First; i < segment.End - 1; i++)
        {
            if (segment.Word(i) is "i" or "we" && segment.Word(i + 1) is "will" or "shall" or "might" or "may" or "could" or "should" or "must")
            {
                return segment.Items.Any(item => item.Cat is Cat.Verb && item.First > i && Action(item) is not "harm");
            }
        }

        return false;
    }

    private static bool IsOnly(Segment segment, Item item) => segment.Word(item.End) is "only" or "just" or "more" or "but" or "much" || segment.Word(item.First) is "nothing" && segment.Word(item.End) is "but" or "more";

    // “Your left corner” has no other subject; “you took” has.
    private static bool OwnedOnly(Segment segment, Item item) => segment.Word(item.First) is "your" or "her" or "his" or "their" or "them" && item.Count == 1;
}
