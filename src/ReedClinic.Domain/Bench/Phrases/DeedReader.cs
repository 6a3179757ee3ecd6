using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Reads what was done to the reed; what was not done, or not here, or not by the speaker, becomes a remark.</summary>
internal static class DeedReader
{
    internal static bool TryRead(Course course)
    {
        var whole = course.Segment;
        var segment = Purpose.Trim(course, out var sake);
        var verb = Deed(segment) ?? Moods.Head(segment) ?? OpeningVerb(segment);
        var mentions = PlaceReader.Read(segment);
        mentions.RemoveAll(mention => verb is { } opens && mention.First == opens.First && mention.End <= opens.End + 1 && mention.Zone is Zone.Opening);
        var deed = new DeedParts(course, segment, verb, mentions, AmountReader.Read(segment, segment.First, segment.End));
        if ((deed.IsAgain && AgainReader.TryRead(deed, sake)) || deed.IsLook)
        {
            return true;
        }

        if (!deed.IsDeed)
        {
            return false;
        }

        var mood = Moods.Of(course, segment, verb) is var told && told is Mood.Done && IsNameless(deed) ? Mood.Unsure : told;
        if (IsLeftToOthers(deed, mood, mentions))
        {
            return false;
        }

        if (mood is not Mood.Done)
        {
            course.Carried = mood is Mood.Unsure ? course.Carried : mood;
            course.Topic = deed.Object ?? course.Topic;
            course.AddNote(unsure: mood is Mood.Unsure);
            return true;
        }

        if (verb is { } head && Moods.Form(head) is 'P' or 'N' && whole.Joint is not ("and" or "or"))
        {
            course.Carried = Mood.None;
        }

        Write(deed, sake);
        return true;
    }

    // A bare verb that makes no adjustment with a name: “run down the middle of the blade”.
    private static bool IsNameless(DeedParts deed) => deed.Verb is { } bare && Moods.Form(bare) is 'B' && deed.Amount is null && Moods.Action(bare) is not ("other" or "clip") && DeedKind.Of(deed) is "something-else";

    /// <summary>Whether what wasn’t done says something else: a finding, praise, or once more what the reed does (“just closes”).</summary>
    private static bool IsLeftToOthers(DeedParts deed, Mood mood, List<Mention> mentions)
    {
        var (course, segment) = (deed.Course, deed.Segment);
        return mood is Mood.Harm
            || (mood is Mood.NotDone && deed.Verb is { } same && segment.Items.Any(item => item.Cat == Cat.Quality && item.First == same.First))
            || (mood is Mood.Others or Mood.Unsure && (FindingReader.WouldRead(course, mentions) || (segment.Has(Cat.Good) && mentions.Any(mention => mention.HasPlace))))
            || (mood is Mood.Others && deed.Verb is { } does && Moods.Form(does) is 'S' && deed.Object is null && deed.Amount is null && course.LastInSentence is not null && !segment.Has(Cat.Other));
    }

    // “Opening up the channels”: the same word as the gap at the tip.
    private static Item? OpeningVerb(Segment segment)
    {
        if (segment.Word(segment.First) is "another" or "further" || (segment.Word(segment.First) is "one" && segment.Word(segment.First + 1) is "more"))
        {
            var noun = segment.Items.FirstOrDefault(item => item.Cat == Cat.Verb && item.First > segment.First && item.First <= segment.First + 3 && Moods.Form(item) is 'B' && Moods.Action(item) is "clip" or "dust" or "soak");
            return noun.Value is null || segment.Has(Cat.Quality) ? null : noun with { Value = Moods.Action(noun) + "/P" };
        }

        var at = segment.IndexOfWord("opening");
        var opens = at >= 0 && (segment.Word(at + 1) is "up" || (segment.Items.Any(item => item.Value is "Windows" or "HeartBottom" && item.First > at && item.First <= at + 3)
            && segment.Word(at - 1) is not ("the" or "an")));
        opens |= at > segment.First && segment.Word(at - 1) is "am" or "'m" or "been" && segment.Items.Any(item => item.Value is "Windows" or "HeartBottom" or "back");
        return opens ? new Item(Cat.Verb, "open/G", at, at + 1) : null;
    }

    // “Tiny clip”, “second clip: 0.1”: the deed’s name and nothing that is said of it.
    private static Item? Deed(Segment segment)
    {
        var at = segment.First;
        while (at < segment.End && (segment.Word(at) is "tiny" or "small" or "little" or "micro" or "quick" or "second" or "third" or "final" or "last" or "one" or "more" or "and" or "then" or "a" or "another" or "light" or "wee" or "short" || segment.Covered(at, Cat.Filler)))
        {
            at++;
        }

        if (at == segment.First || segment.Word(at) is not ("clip" or "snip" or "nip" or "dusting" or "squeeze" or "soak" or "scrape") || (at + 1 < segment.End && segment.Tokens[at + 1].Kind is not TokenKind.Break && !segment.Covered(at + 1, Cat.Now) && segment.Word(at + 1) is not "then"))
        {
            return null;
        }

        return segment.Items.FirstOrDefault(item => item.Cat is Cat.Verb && item.First == at) is { Value: not null } noun && Moods.Action(noun) is "clip" or "squeeze" or "soak" ? noun with { Value = Moods.Action(noun) + "/P" } : null;
    }

    // “The bump in the slope, yes, I smoothed that out”: what the deed is done to is named first, and is no finding of its own.
    private static string? Named(DeedParts deed)
    {
        var course = deed.Course;
        if (!deed.Pronoun || deed.Object is not null || course.LastInSentence is not { Kind: EntryKind.Finding, Slots.Kind: "bumps" or "bark-island" } found || found.Last < course.At - 2
            || course.Segments[found.First] is var first && (first.HasWord("is") || first.HasWord("'s") || first.HasWord("has") || first.HasWord("there") || first.Word(first.First) is not ("the" or "that" or "those" or "this" or "your")))
        {
            return null;
        }

        course.Drafts.Remove(found);
        return found.Slots.Kind is "bumps" && DeedTable.Specific(deed.Action ?? "take", "bump") is { } kind ? kind : null;
    }

    internal static void Write(DeedParts deed, Zone? sake, string? judged = null)
    {
        var said = judged ?? Named(deed) ?? DeedKind.Of(deed);
        var squeezed = Squeezes.InDoubt(deed, said);
        var kind = squeezed?.Kind ?? said;
        var known = AdjustmentCatalogue.Find(new AdjustmentKindId(kind));
        var place = deed.Target;
        var zone = kind is "extend-windows" or "clip" or "clip-hair" or "clean-inside" || place?.Zone is null ? known?.Zone is Zone.WholeReed && place?.Usual is { } usual ? usual : known?.Zone ?? place?.Usual : place.Zone;
        if (deed.Verb is null && deed.Amount is not null && deed.Object is not null && deed.Course.LastInSentence is { Kind: EntryKind.Adjustment, ZoneSaid: false, PlaceCarried: false, Slots: { Strokes: null, Mm: null, Words: null, Kind: not ("soak" or "rest-dry" or "wait" or "retie" or "open-squeeze" or "close-press" or "seal-sides" or "retire" or "draw-air") } } bare
            && bare.Last == deed.Course.At - 1 && deed.Segment.Joint is "," or "" && !(bare.Slots.Kind is "clip" or "clip-hair" && zone is not Zone.TipEdge))
        {
            deed.Course.Drafts.Remove(bare);
        }

        if (SaidTwice(deed, kind))
        {
            deed.Course.Absorb(aside: false);
            return;
        }

        var draft = deed.Course.Add(EntryKind.Adjustment, Where(deed, kind, new ReadSlots
        {
            Kind = kind,
            Zone = zone ?? Zone.WholeReed,
            Strokes = kind is "clip" or "clip-hair" && deed.Amount?.Strokes is 1 ? null : deed.Amount?.Strokes,
            Mm = deed.Amount?.Mm,
            Words = deed.Amount?.Words,
            Sake = sake ?? deed.Course.Sake,
        }), deed.Action, deed.Object?.HasPlace == true);
        Unsure(draft, squeezed?.Doubt ?? BackAlone(deed, kind), zone is null);
        deed.Course.Topic = place ?? deed.Course.Topic;
        if (deed.Blade is "Upper" or "Lower" && deed.Segment.Joint is "and")
        {
            Backwards(deed.Course, draft);
        }

        Breath(deed.Course, draft);
    }

    // What is unsure keeps its words.
    private static void Unsure(Draft draft, Doubt? kind, bool where)
    {
        if (kind is { } doubt)
        {
            draft.Doubts.Add(doubt);
            draft.HasAside = true;
        }

        if (where)
        {
            draft.Doubts.Add(new Doubt("zone", "where?"));
        }
    }

    // “Scraped the back a little”: the trade has a name for work in its windows, and none for all of it.
    private static Doubt? BackAlone(DeedParts deed, string kind) => kind is "open-windows" && deed.Target?.Region is "back" && !deed.Segment.Has(Cat.Zone)
        ? new Doubt("kind", "the back was named and no window: taken for work in its windows")
        : null;

    // “Untied it and tied it again”, “wetted it and drew air through”: one adjustment, in two words.
    private static bool SaidTwice(DeedParts deed, string kind)
    {
        if (deed.Course.LastInSentence is not { Kind: EntryKind.Adjustment } same)
        {
            return false;
        }

        if (kind == "draw-air" && same.Slots is { Kind: "soak", Strokes: null, Words: null } && same.Last == deed.Course.At - 1 && deed.Segment.Joint is "and" or "then")
        {
            same.Slots = new ReadSlots { Kind = kind, Zone = Zone.Opening };
            return true;
        }

        if (same.Slots.Kind == kind && deed.Pronoun && deed.Object is null && deed.Amount is null && deed.Blade is null && deed.Side is null && same.Last == deed.Course.At - 1 && !deed.Segment.Has(Cat.Again))
        {
            return true;
        }

        return same.Slots.Kind == kind && kind is "retie" or "soak" or "rest-dry" or "realign" or "refit-cork" or "round-eye" or "clean-inside" or "wait" or "retire" or "draw-air"
            && (deed.Object is null || kind is "clean-inside" || deed.Object.Usual == same.Slots.Zone) && deed.Amount is null && deed.Blade is null && deed.Side is null;
    }

    private static ReadSlots Where(DeedParts deed, string kind, ReadSlots slots)
    {
        var course = deed.Course;
        var blade = Resolve(deed.Blade, deed.Target?.OneBlade, course.Pending?.OneBlade ?? course.BreathBlade, LastBlade(course));
        var side = ResolveSide(deed.Side, deed.Target?.OneSide, IsCentral(slots.Zone) ? null : course.Pending?.OneSide ?? course.BreathSide, LastSide(course));
        course.Pending = null;
        if (deed.Object is null && deed.Target is null && deed.Part is null && deed.Blade is null && deed.Side is null && course.Topic is { HasPlace: true } topic && topic.Usual == slots.Zone && deed.Verb is { } told && Moods.Form(told) is 'P' or 'N')
        {
            return slots with { Blades = topic.OneBlade, Sides = topic.OneSide };
        }

        if (kind == "even-up" && Stronger(course) is { } strong && deed.Object?.HasPlace != true)
        {
            return slots with { Zone = strong.Zone, Blades = strong.Blades ?? blade, Sides = strong.Sides ?? side };
        }

        return slots with { Blades = blade, Sides = side };
    }

    internal static Blades? Resolve(string? said, Blades? target, Blades? breath, Blades? last) => said switch
    {
        "Upper" => Blades.Upper,
        "Lower" => Blades.Lower,
        "Both" => null,
        "Other" => last switch
        {
            Blades.Upper => Blades.Lower,
            Blades.Lower => Blades.Upper,
            _ => null,
        },
        _ => target ?? breath,
    };

    internal static Sides? ResolveSide(string? said, Sides? target, Sides? breath, Sides? last) => said switch
    {
        "Left" => Sides.Left,
        "Right" => Sides.Right,
        "Both" => null,
        "Other" => last switch
        {
            Sides.Left => Sides.Right,
            Sides.Right => Sides.Left,
            _ => null,
        },
        _ => target ?? breath,
    };

    internal static Blades? LastBlade(Course course) => course.Drafts.LastOrDefault(draft => draft.Slots.Blades is not null)?.Slots.Blades
        ?? course.Topic?.OneBlade ?? (course.Before.LastPlace is { Blades: not Blades.Both } place ? place.Blades : null);

    internal static Sides? LastSide(Course course) => course.Drafts.LastOrDefault(draft => draft.Slots.Sides is not null)?.Slots.Sides
        ?? course.Topic?.OneSide ?? (course.Before.LastPlace is { Sides: not Sides.Both } place ? place.Sides : null);

    /// <summary>“One off the left shoulder and two off the right, top blade”: a blade said once holds for the deeds of the breath.</summary>
    internal static void Backwards(Course course, Draft last)
    {
        foreach (var earlier in course.Drafts.Where(draft => draft.Sentence == last.Sentence && draft is { Kind: EntryKind.Adjustment, Slots: { Blades: null, Zone: not null } } && !ReferenceEquals(draft, last) && draft.Verb is not ("clip" or "soak" or "seal")))
        {
            earlier.Slots = earlier.Slots with { Blades = last.Slots.Blades };
        }
    }

    private static bool IsCentral(Zone? zone) => zone is Zone.HeartCentre or Zone.TipCentre or Zone.Spine or Zone.Opening or Zone.WholeReed or Zone.Eye
        or Zone.Cork or Zone.Thread or Zone.Wire or Zone.Inside or Zone.TipEdge;

    private static void Breath(Course course, Draft draft)
    {
        course.BreathBlade = draft.Slots.Blades ?? course.BreathBlade;
        course.BreathSide = draft.Slots.Sides ?? course.BreathSide;
        if (course.Segment.Has(Cat.Caused) && draft.Slots.Words is null)
        {
            draft.HasAside = true;
        }
    }

    /// <summary>The place that was called the stronger, for evening up.</summary>
    private static ReadSlots? Stronger(Course course)
    {
        var slots = course.LastOf(EntryKind.Finding)?.Slots ?? (course.Before.LastFinding is { } finding ? OfFinding(finding) : null);
        return slots?.Relation switch
        {
            Relation.ThickerThan or Relation.StifferThan or Relation.LongerThan or Relation.HigherThan => slots,
            Relation.ThinnerThan or Relation.ShorterThan => slots with { Blades = slots.OtherBlades ?? slots.Blades, Sides = slots.OtherSides },
            _ => slots is { Kind: "left-right-uneven" or "blades-uneven" } ? slots : null,
        };
    }

    private static ReadSlots OfFinding(Finding finding) => new()
    {
        Kind = finding.FindingKind.Value,
        Zone = finding.Zone,
        Blades = finding.Blades is Blades.Both ? null : finding.Blades,
        Sides = finding.Sides is Sides.Both ? null : finding.Sides,
        Relation = finding.Relation,
        OtherBlades = finding.OtherBlades is Blades.Both ? null : finding.OtherBlades,
        OtherSides = finding.OtherSides is Sides.Both ? null : finding.OtherSides,
    };
}
