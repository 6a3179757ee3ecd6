using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>The parts of a segment that may tell of a deed.</summary>
internal sealed class DeedParts
{
    private static readonly HashSet<string> Small = ["hair", "tiniest", "touch", "little", "bit", "tad", "whisker", "smidgen", "smidge", "fraction", "shade", "sliver", "trifle", "slightest", "smallest", "tiny", "breath", "wisp", "thought", "lightest", "barest", "shaving", "slightly", "merest", "speck", "crumb", "barely", "trace", "hint"];

    internal DeedParts(Course course, Segment segment, Item? verb, List<Mention> mentions, SaidAmount? amount)
    {
        Course = course;
        Segment = segment;
        Verb = verb;
        Amount = amount;
        Object = mentions.FirstOrDefault(mention => mention.HasPlace && !IsGoal(segment, mention)) ?? mentions.FirstOrDefault(mention => mention.HasPlace);
        Part = mentions.FirstOrDefault(mention => mention.Part is not null)?.Part;
        Blade = mentions.FirstOrDefault(mention => mention.Blade is not null)?.Blade;
        Side = mentions.FirstOrDefault(mention => mention.Side is not null && mention.Side != "Both")?.Side ?? mentions.FirstOrDefault(mention => mention.Side is not null)?.Side;
        Thing = segment.Items.FirstOrDefault(item => item.Cat == Cat.Thing && item.Value is not ("block" or "case" or "pliers")).Value;
        Object ??= IsNewOne ? course.Topic : null;
        Target = Object ?? (Part is { } part && course.Topic is { } topic && PlaceReader.Named(part, Region(topic)) is { } zone
            ? new Mention { Zone = zone }
            : null);
        Target ??= UsesTopic ? Topic : null;
    }

    internal Course Course { get; }

    internal Segment Segment { get; }

    internal Item? Verb { get; }

    internal SaidAmount? Amount { get; init; }

    /// <summary>The place that is named.</summary>
    internal Mention? Object { get; }

    /// <summary>The place that is meant.</summary>
    internal Mention? Target { get; init; }

    internal string? Part { get; }

    internal string? Blade { get; }

    internal string? Side { get; }

    internal string? Thing { get; }

    internal string? Action => Verb is { } verb ? Moods.Action(verb) : null;

    internal bool IsAgain => Segment.Has(Cat.Again) || Segment.Has(Cat.Same) || (Verb is null && IsOtherPlace) || (Verb is null && Segment.Has(Cat.More) && Amount is { Strokes: not null } or { Mm: not null } && !Segment.Has(Cat.Quality));

    private bool IsOtherPlace => (Blade is "Other" || Side is "Other") && !Segment.Has(Cat.Quality) && !Segment.Has(Cat.Good) && !Segment.Has(Cat.Than) && !Segment.Has(Cat.Test);

    // “There’s a new one on now”, of a cork.
    private bool IsNewOne => Verb is null && Course.Topic?.Zone is Zone.Cork or Zone.Wire && Segment.HasWord("new") | Segment.HasWord("fresh") && Segment.HasWord("one") && Segment.HasWord("on");

    private bool HasPlace => Object is not null || Part is not null;

    private Mention? Topic => Course.Topic ?? Course.Pending ?? (Course.Before.LastPlace is { } place
        ? new Mention
        {
            Zone = place.Zone,
            Blade = place.Blades is Blades.Both ? null : place.Blades.ToString(),
            Side = place.Sides is Sides.Both ? null : place.Sides.ToString(),
        }
        : null);

    private bool UsesTopic => !HasPlace && Thing is null && (Verb is null || Action is "scrape" or "take" or "light" or "sand" or "smooth" or "blend" or "free" or "narrow" or "dust" && (Course.Topic is not null || Pronoun));

    private bool Pronoun => Segment.HasWord("it") || Segment.HasWord("them") || Segment.HasWord("that") || Segment.HasWord("those") || Segment.HasWord("there");

    /// <summary>True when the segment talks of working on the reed, done or not.</summary>
    internal bool IsDeed => Verb is null ? IsWithoutVerb : Action switch
    {
        "light" => Thing is not null && Thing is not "air" || (Object?.Zone is Zone.Wire or Zone.Cork && Segment.HasWord("on")) || (HasPlace && Segment.HasWord("over") && Verb is { } went && Segment.Word(went.First) is "go" or "went" or "going" or "gone" && !Segment.Has(Cat.Quality)) || (Amount is { } amount && (amount.Strokes is not null || amount.Mm is not null || Segment.Has(Cat.Off) || IsBareLight) && (HasPlace || Topic is not null) && !Segment.Has(Cat.Cent)),
        "take" => (Amount is not null && !Segment.Has(Cat.Cent)) || (HasPlace && IsTakenDown),
        "other" => HasPlace || Thing is not null,
        "fit" => Object?.Zone is Zone.Cork or Zone.Wire or Zone.Thread || Thing is not null,
        "realign" => IsRealigned,
        "draw" => Thing is "air" && !Segment.Has(Cat.Test),
        "keepoff" => false,
        "scrape" or "open" or "press" or "even" or "clean" or "free" or "lengthen" or "define" or "narrow" or "tie" or "seal" or "round" or "bend" or "square" or "offset" or "squeeze" or "soak" or "dry" or "wait" => !IsState && !IsStanding,
        _ => true,
    };

    /// <summary>“Give it a scrape”, “went over the corners lightly”.</summary>
    private bool IsBareLight => HasPlace && !Segment.Has(Cat.Quality) && !Segment.Has(Cat.Good) && Amount?.Words is not null && (Segment.HasWord("over") || Segment.HasWord("gave") || Segment.HasWord("giving") || Segment.HasWord("give") || Segment.HasWord("put"));

    private bool IsTakenDown => Segment.HasWord("down") || Segment.Has(Cat.Off) || Segment.HasWord("back") || Action is "take" && Object is not null && Verb is { } verb && Segment.Word(verb.First) is "take" or "took" or "taking" or "taken";

    private bool IsRealigned => Object?.Zone is Zone.SideEdges or Zone.Wire or Zone.Rooftop || ((Segment.HasWord("blades") || Segment.HasWord("them") || Segment.Has(Cat.Blade))
        && (Segment.HasWord("back") || Segment.HasWord("straight") || Segment.HasWord("over") || Segment.HasWord("line") || Segment.HasWord("across") || Segment.HasWord("round") || Segment.HasWord("true") || Verb is { } verb && Segment.Word(verb.First).Contains("align", StringComparison.Ordinal)));

    // “Wet, a little closed”: how it is, with nothing that it is done to; and “eye squashed”.
    private bool IsStanding => Verb is { } verb && !Moods.IsPutAside(Segment, verb) && (Moods.Form(verb) is 'B'
        ? Segment.Word(verb.First) is "wet" or "dry" or "clean" or "close" or "even" or "level" or "square" or "true" or "open" or "round" or "narrow" or "clear" or "free" or "smooth" or "rest" or "wait" && !HasObject(verb)
        : Moods.Form(verb) is 'P' && (Segment.Items.Any(item => item.First == verb.First && item.Cat is Cat.Quality) && !HasObject(verb)
            || (!HasObject(verb) && (Action is "press" or "squeeze" or "bend" or "round" || Segment.Word(verb.First) is "closed" or "opened" or "separated" or "defined" or "rested" or "balanced") && verb.First > Segment.First && !Segment.HasWord("i"))));

    private bool HasObject(Item verb)
    {
        for (var i = verb.End; i < Segment.End; i++)
        {
            if (Segment.Word(i) is "it" or "them" or "that" or "the" or "this" or "those" or "reed" or "up" || Segment.Covered(i, Cat.Zone) || Segment.Covered(i, Cat.Region) || Segment.Covered(i, Cat.Stroke))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>“When I press the faces the sides meet first”: looking, not doing.</summary>
    internal bool IsLook => Action is "press" or "squeeze" && Course.Segments.Any(other => other.Sentence == Segment.Sentence
        && (other.HasWord("first") || other.HasWord("last")) && (other.HasWord("close") || other.HasWord("closes") || other.HasWord("meet") || other.HasWord("meets") || other.HasWord("touch") || other.HasWord("touches") || other.HasWord("shut") || other.Has(Cat.Quality, "centrefirst")));

    // “The edge is open”: a state, said of a thing; the forms are the same as the verb's.
    private bool IsState => Verb is { } verb && Moods.Form(verb) is 'B' && (Segment.Word(verb.First - 1) is "is" or "'s" or "are" or "was" or "very" or "too" or "more" || (Segment.Items.Any(item => item.First == verb.First && item.Cat is Cat.Quality or Cat.Good) && verb.First > Segment.First && Object is { } place && place.First < verb.First) || Segment.Items.Any(item => item.Cat is Cat.Sound or Cat.Test && item.First < verb.First));

    private bool IsWithoutVerb
    {
        get
        {
            if (Segment.Has(Cat.Quality) || Segment.Has(Cat.Test) || Segment.Has(Cat.Cent) || Segment.Has(Cat.Than) || Segment.Has(Cat.Change))
            {
                return Segment.Has(Cat.Off) && Amount is { Bare: false } && HasPlace && !Segment.Has(Cat.Test) && Amount.Value.First < Object?.First && !Segment.Has(Cat.Cent);
            }

            if (Thing is "mandrel")
            {
                return false;
            }

            if (Object?.Zone is Zone.Cork && Segment.HasWord("new") | Segment.HasWord("fresh"))
            {
                return true;
            }

            if (Thing is not null and not "air" || Object?.Zone is Zone.Cork or Zone.Wire)
            {
                return Segment.HasWord("on") || Segment.HasWord("over") || Segment.HasWord("in") || Segment.HasWord("through") || Segment.HasWord("round") || Segment.HasWord("around") || Segment.HasWord("across") || Segment.HasWord("along") || Segment.HasWord("to");
            }

            if (Object is null && !Segment.Has(Cat.Off) && !Segment.Has(Cat.More) && Segment.Joint is "," or "" or "but" && Course.LastInSentence is { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null, Words: null } })
            {
                return false;
            }

            return Amount is { } amount && (amount.Strokes is not null && !amount.Bare ? HasPlace || Segment.Has(Cat.Off) || Course.Last is { Kind: EntryKind.Adjustment }
                : (Segment.Has(Cat.Off) && (HasPlace || Blade is not null || Side is not null || Course.Topic is not null)) || (amount.Words is not null && IsWorkNoun) || (amount.Bare && amount.Strokes is not null && (HasPlace || Side is not null || Blade is not null) && Course.LastInSentence is { Kind: EntryKind.Adjustment }));
        }
    }

    private bool IsWorkNoun => HasPlace && (Segment.HasWord("dusting") || Segment.HasWord("lick") || Segment.HasWord("brush") || Segment.HasWord("scrape") || Segment.HasWord("pass") || Segment.HasWord("skim") || Segment.HasWord("flick"));

    /// <summary>What was done, by its lasting name.</summary>
    internal string Kind()
    {
        var action = Action ?? (Thing is not null || Object?.Zone is Zone.Cork or Zone.Wire ? "light" : Segment.HasWord("dusting") ? "dust" : "take");
        if (action is "clip" || (Segment.HasWord("trimmed") || Segment.HasWord("trim") || Segment.HasWord("trimming")) && Target?.Region is "tip")
        {
            return IsSmall ? "clip-hair" : "clip";
        }

        if (Segment.HasWord("lay") && Target?.Zone is Zone.WindowBase)
        {
            return DeedTable.Kind(action, "lay-base") ?? "scrape-lay-base";
        }

        if (Thing is { } thing && (DeedTable.Specific(action, thing) ?? DeedTable.Specific("light", thing)) is { } withThing)
        {
            return withThing;
        }

        if (Object is null && Part is null && Pronoun && Course.Topic is { HasPlace: true } topic && DeedTable.Specific(action, topic.Region ?? topic.Zone!.Value.ToString()) is { } ofTopic)
        {
            return ofTopic;
        }

        foreach (var key in Keys())
        {
            if (DeedTable.Kind(action, key) is { } kind)
            {
                return kind == "retie" && action is "tie" && Thing is "fishskin" ? "seal-sides" : kind;
            }
        }

        return "something-else";
    }

    private IEnumerable<string> Keys()
    {
        if (Thing is not null)
        {
            yield return Thing;
        }

        if (Segment.Has(Cat.Quality, "bump") && !(Action is "smooth" && Target?.Zone is Zone.TipEdge))
        {
            yield return "bump";
        }

        if (Part is "face" || (Part is "side" && Object is null))
        {
            yield return Part;
        }

        yield return Target is { Region: { } region } ? region == "heart" && Target.OneSide is not null ? "HeartSides" : region : Target?.Zone?.ToString() ?? "-";
    }

    private bool IsSmall => Amount switch
    {
        { Mm: { } mm } => mm < 0.3m,
        { Words: { } words } => words.Split(' ').Any(Small.Contains),
        _ => false,
    };

    // “Down towards the bark”, “near the thread”: where it leads, not where it was done.
    private static bool IsGoal(Segment segment, Mention mention)
    {
        for (var i = mention.First - 1; i >= segment.First && mention.First - i <= 2; i--)
        {
            if (segment.Word(i) is "towards" or "toward" or "near" or "with" or "above" or "below" or "until")
            {
                return true;
            }
        }

        return false;
    }

    private static string Region(Mention topic) => topic.Region ?? (topic.Zone is { } zone ? PlaceReader.Of(zone) : "");
}
