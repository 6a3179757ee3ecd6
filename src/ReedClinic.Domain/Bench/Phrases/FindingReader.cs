using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Reads what was found, and what was looked for and isn't there.</summary>
internal static class FindingReader
{
    private static readonly HashSet<string> Faults = ["thick", "stiff", "thin", "soft", "long", "short", "high", "low"];

    /// <summary>Words that say more than the word beside them.</summary>
    private static readonly HashSet<string> Special = ["against", "noslip", "even_across", "centrefirst", "barkspot", "merged", "closesinplay"];

    internal static bool WouldRead(Course course, List<Mention> mentions) => course.Segment.Items.Any(item => item.Cat == Cat.Quality
        && FindingTable.Kind(mentions.FirstOrDefault(mention => mention.HasPlace), item.Value) is not null);

    internal static bool TryRead(Course course)
    {
        var segment = course.Segment;
        var mentions = PlaceReader.Read(segment);
        if (HarmReader.TryRead(course, mentions))
        {
            return true;
        }

        if (Comparisons.TryRead(course, mentions))
        {
            return true;
        }

        var qualities = segment.Items.Where(item => item.Cat is Cat.Quality or Cat.Good).ToList();
        foreach (var quality in qualities.Where(item => item.Cat is Cat.Quality).OrderByDescending(item => Special.Contains(item.Value)))
        {
            if (One(course, mentions, quality))
            {
                return true;
            }
        }

        if (Comparisons.Half(course, mentions))
        {
            return true;
        }

        return qualities.FirstOrDefault(item => item.Cat is Cat.Good) is { Value: not null } good && !segment.Has(Cat.Test) && !segment.Has(Cat.Plan) && Praises.Read(course, mentions, good);
    }

    private static bool One(Course course, List<Mention> mentions, Item quality)
    {
        var (segment, value) = (course.Segment, quality.Value);
        var place = PlaceOf(course, mentions, quality);
        if (NotOfReed.Says(segment, place, quality))
        {
            return false;
        }

        if (segment.Has(Cat.Taste))
        {
            return Praises.Taste(course, place, value);
        }

        if (value is "wide" or "open" or "big" or "narrow" or "small" && place is { Zone: Zone.Opening, OneSide: not null })
        {
            return Add(course, place, "opening-lopsided", FindingCharacter.Fault, quality);
        }

        if (FindingTable.Kind(place, value) is not { } kind)
        {
            return value is "squashed" or "loose" or "mould" or "cut" or "broken" or "cracked" or "thick" or "thin" or "crooked" or "bent" && place?.HasPlace == true && !Denials.IsDenied(segment, quality)
                && Add(course, place, "something-else", FindingCharacter.Fault, quality);
        }

        if (Denials.IsSought(segment, quality))
        {
            return Denials.Sought(course, kind, place, quality);
        }

        if (Denials.IsDenied(segment, quality) || (segment.Joint is "or" or "nor" && course.LastInSentence is { Kind: EntryKind.LookedFor }))
        {
            return Denials.Read(course, kind, place, quality);
        }

        var character = FindingCatalogue.Find(new FindingKindId(kind))!.Usually;
        return character is FindingCharacter.Taste
            ? Praises.Plain(course, place, kind, quality)
            : Add(course, place, kind, character, quality);
    }

    /// <summary>The place a word is said of: the nearest before it, else the nearest after it, else what was last spoken of.</summary>
    internal static Mention? PlaceOf(Course course, List<Mention> mentions, Item quality)
    {
        var named = mentions.LastOrDefault(mention => mention.HasPlace && mention.First <= quality.First && !IsBehind(course.Segment, mention))
            ?? mentions.FirstOrDefault(mention => mention.HasPlace && !IsBehind(course.Segment, mention))
            ?? mentions.FirstOrDefault(mention => mention.HasPlace);
        if (quality.Value is "bump" or "barkspot" or "cracked" or "leak" && mentions.FirstOrDefault(mention => mention.HasPlace && mention.First >= quality.End) is { } after)
        {
            named = after;
        }

        if (quality.Value is "broken" && mentions.FirstOrDefault(mention => mention.Zone is Zone.TipCorners) is { } corner)
        {
            named = corner;
        }

        named ??= Enumerable.Range(quality.First, quality.Count).Any(at => course.Segment.Word(at) is "corner" or "corners" or "ear" or "ears") ? new Mention { Zone = Zone.TipCorners } : null;
        named ??= OfPart(course, mentions, quality);
        var place = named ?? (NeedsTopic(course, quality) ? course.Pending ?? course.Topic : null) ?? new Mention();
        foreach (var other in mentions.Where(mention => !ReferenceEquals(mention, named)))
        {
            place = place with { Blade = place.Blade ?? other.Blade, Side = place.Side ?? other.Side };
        }

        return place with { Blade = place.Blade ?? (named is null ? null : course.Pending?.Blade), Side = place.Side ?? (named is null ? null : course.Pending?.Side) };
    }

    // “Just behind it”, “towards the bark”: where else something is, not what is spoken of.
    private static bool IsBehind(Segment segment, Mention mention) =>
        segment.Word(mention.First - 1) is "towards" or "toward" or "near" || segment.Word(mention.First - 2) is "towards" or "toward" or "near";

    private static Mention? OfPart(Course course, List<Mention> mentions, Item quality)
    {
        if (mentions.FirstOrDefault(mention => mention.Part is not null) is not { } part || quality.Value is "leak" or "seals" or "slipped" or "noslip" or "matched" or "against")
        {
            return null;
        }

        var topic = course.Topic;
        var region = topic?.Region ?? (topic?.Zone is { } zone ? PlaceReader.Of(zone) : "tip");
        return PlaceReader.Named(part.Part, region) is { } named ? part with { Zone = named } : null;
    }

    private static bool NeedsTopic(Course course, Item quality) => course.Pending is not null || (course.Segment.IndexOfWord("there") is >= 0 and var there && there >= quality.End) || Faults.Contains(quality.Value)
        || (quality.Value is "cracked" or "uneven" or "even" or "smooth" or "clear" or "intact" or "loose" or "kept" or "deep" or "shallow" or "wide" or "narrow" or "slanted" or "ragged" or "lopsided" && course.Segment.HasWord("it") | course.Segment.HasWord("they") && course.Topic is { HasPlace: true });

    internal static bool Add(Course course, Mention? place, string kind, FindingCharacter character, Item quality)
    {
        var segment = course.Segment;
        if (segment.Asked || segment.Has(Cat.Habit))
        {
            course.AddNote();
            return true;
        }

        kind = BladeKind(segment, kind, place);
        place = There(course, place, quality);
        if (SaidTwice(course, place, kind, quality))
        {
            return true;
        }

        var zone = ZoneOf(place, kind);
        course.Add(EntryKind.Finding, Details(course, new ReadSlots
        {
            Kind = kind,
            Character = character,
            Zone = zone,
            Blades = place?.OneBlade,
            Sides = place?.OneSide,
            Degree = Degree(segment, quality),
        }));
        course.Topic = place?.HasPlace == true ? place : new Mention { Zone = zone, Blade = place?.Blade, Side = place?.Side };
        course.Pending = null;
        return true;
    }

    /// <summary>The same finding in other words adds to what was said.</summary>
    private static bool SaidTwice(Course course, Mention? place, string kind, Item quality)
    {
        var segment = course.Segment;
        if (course.Last is { Kind: EntryKind.Finding } said && said.Slots.Kind == kind && said.Sentence != segment.Sentence && said.Last == course.At - 1 && Again(said.Slots, place) && kind is "tip-not-separate")
        {
            said.Last = course.At;
            return true;
        }

        if (course.LastInSentence is { Kind: EntryKind.Finding, Slots.Kind: "side-leak" or "thread-leak" } leak && kind is "side-leak" or "thread-leak" && (place is null || place.OneSide is null && place.OneBlade is null && PlaceReader.Read(segment).All(mention => !mention.HasPlace)))
        {
            leak.Slots = leak.Slots with { Known = leak.Slots.Known ?? Known(segment) };
            return course.Absorb(aside: false);
        }

        if (course.LastInSentence is not { Kind: EntryKind.Finding } same || same.Slots.Kind != kind || kind is "something-else" || !Again(same.Slots, place))
        {
            return false;
        }

        same.Slots = same.Slots with
        {
            Blades = same.Slots.Blades ?? place?.OneBlade,
            Sides = same.Slots.Sides ?? place?.OneSide,
            Degree = same.Slots.Degree ?? Degree(segment, quality),
            Known = same.Slots.Known ?? Known(segment),
            Certainty = same.Slots.Certainty ?? (segment.Has(Cat.Hedge) ? Certainty.Suspected : null),
        };
        return course.Absorb(aside: false);
    }

    private static Zone ZoneOf(Mention? place, string kind)
    {
        var usual = FindingCatalogue.Find(new FindingKindId(kind))?.Zone;
        var zone = place?.Zone ?? (kind is "something-else" || usual is null || place?.Region is "back" or "lay" || (place?.Region == "heart" && usual is Zone.HeartSides) ? place?.Usual : null) ?? usual ?? Zone.WholeReed;
        zone = kind is "heart-lopsided" && zone is Zone.HeartCentre ? Zone.HeartSides : zone;
        zone = kind is "centre-closes-first" or "closes-in-play" ? Zone.Opening : zone;
        zone = kind is "crooked-on-staple" or "tied-straight" or "side-leak" or "thread-too-high" or "worn" or "seals-well" or "quadrants-matched" or "dirty-inside" && usual is { } own && zone is Zone.Opening or Zone.WholeReed or Zone.Eye or Zone.Thread ? own : zone;
        return kind is "side-leak" or "seals-well" or "no-slip" or "slipped-too-far" or "slipped-against-winding" && zone is Zone.TipEdge or Zone.TipSides or Zone.Opening or Zone.Eye ? Zone.SideEdges : zone;
    }

    // The same finding said in other words; another blade, side or part would be another one.
    private static bool Again(ReadSlots said, Mention? place) => place is null
        || ((place.OneBlade is null || said.Blades is null || place.OneBlade == said.Blades) && (place.OneSide is null || said.Sides is null || place.OneSide == said.Sides) && (place.Zone is null || place.Zone == said.Zone));

    // “Took too much out of the left channel, the back is thin there now”.
    private static Mention? There(Course course, Mention? place, Item quality) => course.LastInSentence is { Kind: EntryKind.Adjustment } deed && place is { Side: null, Blade: null } && deed.Slots is { Sides: not null } or { Blades: not null }
        && (course.Segment.HasWord("there") && course.Segment.Word(course.Segment.IndexOfWord("there") + 1) is not ("is" or "'s" or "are") || (course.Segment.HasWord("it") && quality.Value is "thin") || (place.First > course.Segment.First && course.Segment.Word(place.First - 1) is "that" or "this" or "same")) && place.Usual is { } zone && (zone == deed.Slots.Zone || PlaceReader.Of(zone) is { Length: > 0 } region && deed.Slots.Zone is { } at && region == PlaceReader.Of(at))
            ? place with { Zone = place.Zone ?? deed.Slots.Zone, Side = deed.Slots.Sides?.ToString(), Blade = deed.Slots.Blades?.ToString() }
            : place;

    private static string BladeKind(Segment segment, string kind, Mention? place) => kind is "left-right-uneven" && place?.HasPlace != true
        && segment.HasWord("blades") | place?.Blade is not null ? "blades-uneven" : kind;

    /// <summary>What a finding may have besides: how sure, how known, how it came.</summary>
    internal static ReadSlots Details(Course course, ReadSlots slots)
    {
        var segment = course.Segment;
        var arose = segment.Find(Cat.Caused) is { } mine && segment.Word(mine.First - 1) is not ("not" or "never") ? Arose.CausedByTheWork : segment.Has(Cat.SeenLater) ? Arose.SeenLaterAlreadyThere : slots.Arose ?? course.Ahead.Arose;
        var done = slots with
        {
            Certainty = segment.Has(Cat.Hedge) ? Certainty.Suspected : course.Ahead.Certainty,
            Known = Known(segment) ?? course.Ahead.Known,
            Arose = arose ?? (course.LastInSentence is { Kind: EntryKind.Adjustment, Slots.Words: "too much" or "far too much" } && slots.Character is FindingCharacter.Fault ? Arose.CausedByTheWork : null),
        };
        course.Ahead = ReadSlots.None;
        return done;
    }

    internal static KnownBy? Known(Segment segment)
    {
        KnownBy? known = null;
        foreach (var item in segment.All(Cat.Known))
        {
            if (item.Count == 1 && segment.Word(item.First) is "lip" or "lips" && segment.Word(item.First - 1) is not ("on" or "under" or "between" or "with" or "against" or "in" or "at" or "by" or "my" or "to") && segment.Word(item.End) is not ("says" or "say" or "tells" or "tell" or "feels"))
            {
                continue;
            }

            known = (known ?? KnownBy.NotSaid) | Enum.Parse<KnownBy>(item.Value);
        }

        return known;
    }

    // The degrees that are listed in the law of labelling; a “good bit” is none of them.
    private static bool IsListed(Segment segment, Item degree) => Enumerable.Range(degree.First, degree.Count).Any(at => segment.Word(at) is "hair" or "touch" or "little" or "slightly" or "bit" or "very" or "much" or "lot" or "really" or "far")
        && segment.Word(degree.First - 1) is not ("good" or "fair" or "quite") && segment.Word(degree.First) is not "quite";

    internal static string? Degree(Segment segment, Item quality)
    {
        foreach (var degree in segment.All(Cat.Degree))
        {
            var wrong = segment.Word(degree.First) is "way" && segment.Word(degree.First - 1) is "wrong" or "the" or "other";
            var far = degree.First >= quality.End && (segment.Word(degree.End - 1) is "too" || segment.Word(degree.End) is "too") && !segment.Items.Any(item => item.Cat is Cat.Quality && item.First > quality.First);
            if (!wrong && IsListed(segment, degree) && (far || (degree.First < quality.End + 2 && quality.First - degree.End <= 3)))
            {
                return degree.Value;
            }
        }

        return null;
    }
}
