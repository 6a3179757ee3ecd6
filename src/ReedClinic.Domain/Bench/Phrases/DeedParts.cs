using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>The parts of a segment that may tell of a deed.</summary>
internal sealed class DeedParts
{
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
        Thing = segment.Items.FirstOrDefault(item => item.Cat == Cat.Thing && item.Value is not ("block" or "case" or "pliers") && item.First != verb?.First && !(item.Value is "swab" && segment.Word(item.End) is "touch" or "light" or "stroke" or "strokes")).Value;
        Object ??= IsNewOne ? course.Topic : segment.Joint is ":" && verb is { } told && Moods.Form(told) is 'P' or 'N' ? course.Pending : null;
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

    internal bool IsAgain => AgainReader.IsAnother(Segment, Verb) || Segment.Has(Cat.Again) || Segment.Has(Cat.Same) || (Verb is null && IsOtherPlace) || IsTwice || IsSideToo || (Verb is null && Segment.Has(Cat.More) && Amount is { Strokes: not null } or { Mm: not null } && !Segment.Has(Cat.Quality)) || IsMoreToo;

    /// <summary>“Twice that on the right”.</summary>
    internal bool IsTwice => Segment.IndexOfWord("twice") is >= 0 and var twice ? Segment.Word(twice + 1) is "that" or "as" : Segment.IndexOfWord("double") is >= 0 and var doubled && Segment.Word(doubled + 1) is "that";

    // “And a hair more”, after a deed and about nothing else.
    private bool IsMoreToo => (Verb is null || Segment.Word(Verb.Value.First) is "took" or "taken" or "taking") && !HasPlace && Segment.Has(Cat.More) && Amount is { Words: not null } && (Course.Last is { Kind: EntryKind.Adjustment } || (Course.Drafts.Count == 0 && Course.Before.Last is Adjustment))
        && Segment.Items.All(item => item.Cat is Cat.More or Cat.Degree or Cat.Filler or Cat.Now or Cat.Off or Cat.Also or Cat.Side or Cat.Blade or Cat.Verb or Cat.Again)
        && Enumerable.Range(Segment.First, Segment.End - Segment.First).All(at => Segment.Tokens[at].Kind is TokenKind.Break or TokenKind.Symbol || Segment.Items.Any(item => item.First <= at && at < item.End) || (Amount is { } said && at >= said.First && at < said.End) || Segment.Word(at) is "and" or "then" or "just" or "a" or "the" or "only" or "on" or "of" or "from" or "in" or "there" or "that" or "side" or "it" or "took" or "off");

    // “And the right too”, of what stands last in the log.
    private bool IsSideToo => Verb is null && Course.Drafts.Count == 0 && Course.Before.Last is Adjustment && (Blade is not null || Side is not null) && !HasPlace
        && (Segment.Has(Cat.Also) || Segment.Joint is "and" or "then" or "plus") && !Segment.Has(Cat.Quality) && !Segment.Has(Cat.Good) && !Segment.Has(Cat.Than) && !Segment.Has(Cat.Test) && !Segment.Has(Cat.Not) && PitchReader.NotesIn(Segment).Count == 0;

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

    private bool UsesTopic => !HasPlace && !(Action is "blend" && !Pronoun) && Thing is null && (Verb is null || Action is "scrape" or "take" or "light" or "sand" or "smooth" or "blend" or "free" or "narrow" or "dust" or "lengthen" && (Course.Topic is not null || Pronoun));

    internal bool Pronoun => Segment.HasWord("it") || Segment.HasWord("them") || Segment.HasWord("that") || Segment.HasWord("those") || Segment.HasWord("there");

    /// <summary>True when the segment talks of working on the reed, done or not.</summary>
    internal bool IsDeed => !IsOfTool && !IsOfElse && !IsHeading && !(Verb is { } plays && (Moods.Form(plays) is 'S' || Segment.Word(plays.First) is "gone") && Segment.Find(Cat.Test) is { } test && StepReader.Step(Segment, Enum.Parse<TestKind>(test.Value), null, new HeardPitch()) is not null) && !(Verb is { } drops && Moods.Form(drops) is 'B' && TestReader.NoteWithHeight(Segment) is not null && !HasPlace) && !(Segment.Has(Cat.Known, "Finger") && Action is "lengthen" or "light" or "realign" or "scrape" or "other" && Amount is null && Segment.HasWord("ran") | Segment.HasWord("run") | Segment.HasWord("running") | Segment.HasWord("drew") | Segment.HasWord("passed") | Segment.HasWord("slid") | Segment.HasWord("put")) && !(Verb is { } does && Moods.Form(does) is 'S' && StepRules.Closing(Segment) is not null) && (Verb is null ? IsWithoutVerb : IsOfVerb);

    // “Tied: straight”, “sealing: fine”.
    private bool IsHeading => Verb is { } verb && verb.First == Segment.First && verb.End >= Segment.End - 1 && Course.At + 1 < Course.Segments.Count && Course.Segments[Course.At + 1] is { Joint: ":" } next && (next.Has(Cat.Quality) || next.Has(Cat.Good));

    // “Dusted off last year’s notes”: an object that isn’t of the reed.
    private bool IsOfElse
    {
        get
        {
            if (Verb is not { } verb || HasPlace || Thing is not null || Side is not null || Blade is not null || Moods.Action(verb) is "light" or "take")
            {
                return false;
            }

            var at = verb.End;
            while (at < Segment.End && Segment.Word(at) is "off" or "up" or "out" or "down" or "over")
            {
                at++;
            }

            if (Segment.Word(at) is not ("the" or "my" or "your" or "her" or "his" or "our" or "last" or "some" or "these" or "those" or "a" or "an"))
            {
                return false;
            }

            while (at < Segment.End && Segment.Word(at) is "the" or "my" or "your" or "her" or "his" or "our" or "last" or "some" or "these" or "those" or "a" or "an" or "'s" or "old" or "new" or "other")
            {
                at++;
            }

            return at < Segment.End && Segment.Tokens[at].Kind is TokenKind.Word && Segment.Word(at) is not ("reed" or "cane" or "thing" or "whole" or "lot" or "blades" or "poor" or "rest" or "bit" or "little" or "job")
                && !Segment.Items.Any(item => item.First <= at && at < item.End && item.Cat is not (Cat.Stage or Cat.Known)) && !(Amount is { } said && said.First <= at && at < said.End);
        }
    }

    // “Opened up overnight”: what the reed did.
    private bool IsOfItself => Verb is { } verb && Moods.Form(verb) is 'P' or 'N' && Segment.Word(verb.First) is "opened" or "closed" or "shut" or "spread" or "collapsed" && !Segment.Has(Cat.Me) && !HasPlace && !HasObject(verb) && Thing is null && Side is null;

    // “Sharpened the knife”: not the reed.
    private bool IsOfTool => Segment.HasWord("parcel") || Segment.HasWord("envelope") || Segment.HasWord("letter") || Segment.HasWord("label") || Segment.HasWord("photo") || Segment.HasWord("camera") || !HasPlace && Enumerable.Range(Segment.First, Segment.End - Segment.First).Any(at => Segment.Word(at) is "knife" or "knives" or "plaque" or "stone" or "strop" or "desk" or "box" or "lip" or "lips" or "hands" or "eyes" or "fingers" or "arm" or "light" && !(Segment.Word(at) is "box" or "light" && Segment.Word(at - 1) is not "the")
        && !Enumerable.Range(Math.Max(Segment.First, at - 3), at - Math.Max(Segment.First, at - 3)).Any(before => Segment.Word(before) is "with" or "of" or "under" or "using" or "on" or "by" or "over" or "and"));

    private bool IsOfVerb => Action switch
    {
        "light" when HasPlace && Thing is null && (IsDone || IsTreated) => true,
        "light" => (Thing is not null and not "air" && IsThingPut) || (Object?.Zone is Zone.Wire or Zone.Cork && Segment.HasWord("on") | Segment.HasWord("round") | Segment.HasWord("added")) || (HasPlace && Segment.HasWord("over") && Verb is { } went && Segment.Word(went.First) is "go" or "went" or "going" or "gone" && !Segment.Has(Cat.Quality)) || (Amount is { } amount && (amount.Strokes is not null || amount.Mm is not null || Segment.Has(Cat.Off) || IsBareLight) && (HasPlace || Topic is not null) && !Segment.Has(Cat.Cent)),
        "take" when (Side is not null || Blade is not null) && DeedKind.IsToMatch(this) && (Segment.HasWord("down") || Amount is not null) => true,
        "take" or "light" or "realign" or "press" when !HasPlace && Amount is { Bare: true } && Segment.Has(Cat.Change) => false,
        "take" when Course.Topic is { HasPlace: true } && Segment.Word(Segment.First) is "taken" or "took" && Segment.HasWord("down") && Segment.End - Segment.First <= 3 => true,
        "take" => (Amount is not null && !Segment.Has(Cat.Cent)) || (HasPlace && IsTakenDown) || Segment.Has(Cat.Quality, "bump") || Segment.Has(Cat.Quality, "barkspot") && Segment.Has(Cat.Off),
        "other" => HasPlace || Thing is not null,
        "fit" => Object?.Zone is Zone.Cork or Zone.Wire or Zone.Thread || Thing is not null,
        "realign" or "other" or "fit" or "light" or "lengthen" when Thing is "mandrel" or "swab" => true,
        "realign" => IsRealigned || (Object is not null && DeedKind.IsFurther(this, "realign") is not null),
        "draw" => Thing is "air" && !Segment.Has(Cat.Test),
        "keepoff" => false,
        "clean" when Segment.Has(Cat.Test, "Seal") => false,
        "open" or "press" when IsOfItself => false,
        "define" when !HasPlace && !(Pronoun && Course.Topic is not null) && Course.Pending is null => false,
        "bend" when !HasPlace && !Pronoun && Blade is null && Thing is null => false,
        "retire" when Object is not null and not { Zone: Zone.WholeReed } => false,
        "retire" => Verb is { } gone && (Moods.Form(gone) is not 'B' || HasObject(gone) || gone.First == Segment.First),
        "scrape" when Target is null && Part is null && Side is null && Blade is null && Amount is null && !(Pronoun && Course.Topic is not null) && !Segment.HasWord("cane") => false,
        "tie" when Object is null && (Segment.Has(Cat.Quality) || Segment.HasWord("tightly") || Segment.HasWord("tight") || Segment.HasWord("loosely") || Segment.HasWord("loose")) && Verb is { } tied && Moods.Form(tied) is 'P' or 'N' && !HasObject(tied) => false,
        "tie" when Segment.Has(Cat.Quality) && Object is null => false,
        "scrape" or "open" or "press" or "even" or "clean" or "free" or "lengthen" or "define" or "narrow" or "tie" or "seal" or "round" or "bend" or "square" or "offset" or "squeeze" or "soak" or "dry" or "wait" or "smooth" or "clean" => !(Action is "soak" or "dry" && Segment.HasWord("too") && Segment.HasWord("long") | Segment.HasWord("much")) && !IsState && !IsStanding,
        _ => true,
    };

    // “Gave both corners the once-over”, “the right side had some attention”.
    private bool IsTreated => Verb is { } verb && Segment.Word(verb.First) is "gave" or "give" or "giving" or "given" or "had" && !Segment.Has(Cat.Quality) && !Segment.Has(Cat.Not)
        && (Segment.HasWord("attention") || Segment.HasWord("treatment") || (Segment.HasWord("over") && (Segment.HasWord("once") || Segment.HasWord("going"))));

    // “Did the corners, two each”.
    private bool IsDone => Verb is { } verb && (Segment.Word(verb.First) is "did" or "done" or "doing" || (Segment.Word(verb.First) is "do" && Segment.Word(verb.First - 1) is "did")) && Object is { } place && (Segment.Word(verb.First) is "done" || place.First >= verb.End) && place.First - verb.End <= 2 && !Segment.Has(Cat.Quality) && !Segment.Has(Cat.Good) && !Segment.Has(Cat.Not)
        && !Segment.Has(Cat.Test) && !Segment.HasWord("what") && !Segment.HasWord("job") && Object.Zone is not (Zone.Opening or Zone.WholeReed);

    // “Put tape round the sides”; not “the tape is on its way”.
    private bool IsThingPut => Verb is { } verb && Segment.Items.FirstOrDefault(item => item.Cat == Cat.Thing) is { Value: not null } thing && (thing.First > verb.First || IsPutOn);

    // “Fishskin on”, “new cork on”: what it is put on, or that it is put on, comes after it.
    private bool IsPutOn => Segment.Items.Any(item => (item.Cat == Cat.Thing && item.Value is not ("air" or "mandrel" or "block" or "case" or "pliers") || (item.Cat == Cat.Zone && item.Value is "Cork" or "Wire"))
        && Segment.Word(item.First - 1) is not ("over" or "under" or "on" or "from" or "off" or "to" or "behind" or "above" or "below" or "near" or "in")
        && !Segment.HasWord("table") && !Segment.HasWord("order") && !Segment.HasWord("ordered") && !Segment.HasWord("bench") && !Segment.HasWord("shelf") && !Segment.HasWord("floor")
        && (Enumerable.Range(item.First + 1, Math.Max(0, Math.Min(item.End + 3, Segment.End) - item.First - 1)).Any(at => Segment.Word(at) is "on" or "over" or "round" or "around" or "across" or "along" or "through" or "to" or "in" or "into" or "down"
                && !Segment.Items.Any(known => known.Cat is Cat.Test && known.First <= at && at < known.End))
            || Segment.Word(item.First - 1) is "new" or "fresh" or "another" || Segment.Word(item.First - 2) is "new" or "fresh"));

    /// <summary>“Give it a scrape”, “went over the corners lightly”.</summary>
    private bool IsBareLight => HasPlace && !Segment.Has(Cat.Quality) && !Segment.All(Cat.Good).Any(good => Amount is { } said && (good.First < said.First || good.End > said.End)) && Amount?.Words is not null && (Segment.HasWord("over") || Segment.HasWord("gave") || Segment.HasWord("giving") || Segment.HasWord("give") || Segment.HasWord("put"));

    private bool IsTakenDown => Segment.HasWord("down") || Segment.Has(Cat.Off) || Segment.HasWord("back") || Action is "take" && Object is not null && Verb is { } verb && Segment.Word(verb.First) is "take" or "took" or "taking" or "taken";

    private bool IsRealigned => Object?.Zone is Zone.SideEdges or Zone.Wire or Zone.Rooftop || ((Segment.HasWord("blades") || Segment.HasWord("them") || Segment.Has(Cat.Blade))
        && (Segment.HasWord("back") || Segment.HasWord("straight") || (Segment.HasWord("over") && !Segment.HasWord("turned") && !Segment.HasWord("turn") && !Segment.HasWord("turning")) || Segment.HasWord("line") || Segment.HasWord("across") || Segment.HasWord("round") || Segment.HasWord("true") || Verb is { } verb && Segment.Word(verb.First).Contains("align", StringComparison.Ordinal) || Verb is { } again && Segment.Word(again.First) is "re" or "reset" or "reseat" or "reseated" or "reposition" or "repositioned"));

    // “Wet, a little closed”: how it is, with nothing that it is done to; and “eye squashed”.
    private bool IsStanding => Verb is { } verb && !Moods.IsPutAside(Segment, verb) && (Moods.Form(verb) is 'B'
        ? Segment.Word(verb.First) is "wet" or "dry" or "clean" or "close" or "even" or "level" or "square" or "true" or "open" or "round" or "narrow" or "clear" or "free" or "smooth" or "rest" or "wait" or "shut" or "match" && !HasObject(verb)
        : Moods.Form(verb) is 'P' or 'N' && (Segment.Items.Any(item => item.First == verb.First && item.Cat is Cat.Quality) && !HasObject(verb)
            || (!HasObject(verb) && (Action is "press" or "squeeze" or "bend" or "round" && Object?.Zone is not Zone.Eye && Thing is null && Amount is null || Segment.Word(verb.First) is "closed" or "opened" && Object?.Zone is null or Zone.Opening or Zone.WholeReed && !(Side is not null && Course.Topic?.Zone is Zone.Windows) || Segment.Word(verb.First) is "separated" or "defined" or "rested" or "balanced") && verb.First > Segment.First && !Segment.HasWord("i"))));

    private bool HasObject(Item verb)
    {
        for (var i = verb.End; i < Segment.End; i++)
        {
            if (Segment.Word(i) is "it" or "them" or "that" or "the" or "this" or "those" or "reed" or "up" || Segment.Covered(i, Cat.Side) || Segment.Covered(i, Cat.Blade) || Segment.Covered(i, Cat.Zone) || Segment.Covered(i, Cat.Region) || Segment.Covered(i, Cat.Stroke))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>“When I press the faces the sides meet first”: looking, not doing.</summary>
    internal bool IsLook => Action is "press" or "squeeze" && Amount is null && Course.Segments.Any(other => other.Sentence == Segment.Sentence && !ReferenceEquals(other, Segment) && StepRules.Closing(other) is not null && !other.Has(Cat.Test, nameof(TestKind.Crow)))
        || Action is "press" or "squeeze" && Course.Segments.Any(other => other.Sentence == Segment.Sentence
        && (other.HasWord("first") || other.HasWord("last")) && (other.HasWord("close") || other.HasWord("closes") || other.HasWord("meet") || other.HasWord("meets") || other.HasWord("touch") || other.HasWord("touches") || other.HasWord("shut") || other.Has(Cat.Quality, "centrefirst")));

    // “The edge is open”: a state, said of a thing; the forms are the same as the verb's.
    private bool IsState => Verb is { } verb && Moods.Form(verb) is 'B' && (Segment.Word(verb.First - 1) is "is" or "'s" or "are" or "was" or "very" or "too" or "more" || (Segment.Items.Any(item => item.First == verb.First && item.Cat is Cat.Quality or Cat.Good) && verb.First > Segment.First && Object is { } place && place.First < verb.First) || Segment.Items.Any(item => item.Cat is Cat.Sound or Cat.Test && item.First < verb.First));

    private bool IsWithoutVerb
    {
        get
        {
            if (Segment.Has(Cat.Change) && HasPlace && Amount is { Bare: false, Strokes: not null } && !Segment.Has(Cat.Quality) && !Segment.Has(Cat.Test) && !Segment.Has(Cat.Than))
            {
                return true;
            }

            if (Segment.Has(Cat.Quality) || Segment.Has(Cat.Test) || Segment.Has(Cat.Cent) || Segment.Has(Cat.Than) || Segment.Has(Cat.Change))
            {
                return Segment.Has(Cat.Off) && Amount is { Bare: false } && HasPlace && !Segment.Has(Cat.Test) && Amount.Value.First < Object?.First && !Segment.Has(Cat.Cent);
            }

            if (Thing is "mandrel" || Segment.Word(Segment.First) is "after" or "since" or "despite" or "before" or "with" || (Segment.Word(Segment.First) is "another" && Segment.HasWord("would")))
            {
                return false;
            }

            if (Object?.Zone is Zone.Cork && Segment.HasWord("new") | Segment.HasWord("fresh") && (Segment.HasWord("on") || (!Segment.HasWord("is") && !Segment.HasWord("'s"))))
            {
                return true;
            }

            if (Thing is "fishskin" && !Segment.Has(Cat.Not) && Segment.Items.All(item => item.Cat is Cat.Thing or Cat.Filler or Cat.Now or Cat.Also) && Enumerable.Range(Segment.First, Segment.End - Segment.First).All(at => Segment.Tokens[at].Kind is TokenKind.Break or TokenKind.Symbol || Segment.Items.Any(item => item.First <= at && at < item.End)))
            {
                return true;
            }

            if (Thing is not null and not "air" || Object?.Zone is Zone.Cork or Zone.Wire)
            {
                return IsPutOn && !Segment.Has(Cat.Not);
            }

            if (IsMeasure)
            {
                return false;
            }

            if (IsBareLine || IsLength || IsBareAfter)
            {
                return true;
            }

            return Amount is { } amount && (amount.IsStrokes ? HasPlace || (Segment.HasWord("there") && Topic is not null && !Segment.HasWord("is") && !Segment.HasWord("are") && !Segment.HasWord("'s")) || Segment.Has(Cat.Off) || Course.Pending is { HasPlace: true } || (Course.Pending is not null && Course.Topic is { HasPlace: true } && Segment.Joint is ":") || (Course.Last is { Kind: EntryKind.Adjustment } && Course.LastInSentence is not { Kind: EntryKind.Note })
                : (Segment.Has(Cat.Off) && (HasPlace || Blade is not null || Side is not null || Course.Topic is not null)) || (amount.Words is not null && IsWorkNoun) || (amount.Bare && amount.Strokes is not null && (((HasPlace || Side is not null || Blade is not null) && Course.LastInSentence is { Kind: EntryKind.Adjustment }) || (HasPlace && Course.Last is null or { Kind: EntryKind.Adjustment } && (Segment.Word(amount.End) is "on" or "off" or "from" or "each" || Segment.Has(Cat.More))) || (Course.Pending is { HasPlace: true } && Segment.Word(amount.End) is "each" or "apiece"))));
        }
    }

    /// <summary>“Dusted the heart, two strokes”: how much, said after what was done.</summary>
    internal bool IsMeasure => Verb is null && Object is null && Amount is not null && !Segment.Has(Cat.Off) && !(Segment.Has(Cat.More) && Course.LastInSentence?.Slots is not { Words: null, Kind: not ("clip" or "clip-hair") }) && !Segment.Has(Cat.Again) && Segment.Joint is "," or "" or "but" or ":"
        && Course.LastInSentence is { Kind: EntryKind.Adjustment } last && last.Last == Course.At - 1 && (last.PlaceCarried || last.Slots is { Strokes: null, Mm: null });

    // “Corners 2”, “gutter two left”: a place and how many, and nothing else.
    private bool IsBareLine => Amount is { Bare: true, Strokes: not null } amount && Object is { Zone: not (Zone.Opening or Zone.WholeReed or Zone.Eye or Zone.Cork or Zone.Thread or Zone.Wire or Zone.Inside or Zone.TipEdge) } && Course.Last is null or { Kind: EntryKind.Adjustment }
        && Segment.Items.All(item => item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Side or Cat.Blade or Cat.Filler or Cat.Now or Cat.Both or Cat.Only or Cat.Also)
        && Enumerable.Range(Segment.First, Segment.End - Segment.First).All(at => Segment.Tokens[at].Kind is TokenKind.Break or TokenKind.Symbol || (at >= amount.First && at < amount.End) || Segment.Items.Any(item => item.First <= at && at < item.End)
            || Segment.Word(at) is "each" or "ea" or "apiece" or "right" or "left" or "the" or "and" or "on" or "in" or "of");

    // “Corners first: two”: the place stands before a colon.
    private bool IsBareAfter => Segment.Joint is ":" && Amount is { Bare: true, Strokes: not null } && Object is null && (Course.Pending is { HasPlace: true } ? Course.Pending : Course.Pending is { Side: not null } or { Blade: not null } ? Course.Topic : null) is { HasPlace: true, Zone: not (Zone.Opening or Zone.WholeReed or Zone.Eye or Zone.Cork or Zone.Thread or Zone.Wire or Zone.Inside or Zone.TipEdge) }
        && Segment.Items.All(item => item.Cat is Cat.Side or Cat.Blade or Cat.Filler or Cat.Now or Cat.Both or Cat.Only);

    // “.2 mm off”, “windows down 1 mm”: a length, and where it goes.
    private bool IsLength => Amount is { Mm: not null and <= 5 } && !Segment.Has(Cat.Not) && !Segment.Has(Cat.Hedge)
        && (HasPlace ? Object?.Zone is Zone.Windows or Zone.WindowBase or Zone.Rooftop && Segment.HasWord("down") | Segment.HasWord("back") | Segment.HasWord("further") : Segment.HasWord("off") && Course.Topic is null && Course.Drafts.Count == 0);

    private bool IsWorkNoun => HasPlace && (Segment.HasWord("knife") || Segment.HasWord("dusting") || Segment.HasWord("lick") || Segment.HasWord("brush") || Segment.HasWord("scrape") || Segment.HasWord("pass") || Segment.HasWord("skim") || Segment.HasWord("flick"));

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
