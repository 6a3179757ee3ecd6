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

        return qualities.FirstOrDefault(item => item.Cat is Cat.Good) is { Value: not null } good && !segment.Has(Cat.Test) && !segment.Has(Cat.Plan) && Praise(course, mentions, good);
    }

    private static bool One(Course course, List<Mention> mentions, Item quality)
    {
        var segment = course.Segment;
        var place = PlaceOf(course, mentions, quality);
        var value = quality.Value;
        if (segment.Has(Cat.Taste))
        {
            return Taste(course, place, value);
        }

        if (FindingTable.Kind(place, value) is not { } kind)
        {
            return value is "squashed" or "loose" or "mould" or "cut" or "broken" or "cracked" or "thick" or "thin" or "crooked" or "bent" && place?.HasPlace == true && !IsDenied(segment, quality)
                && Add(course, place, "something-else", FindingCharacter.Fault, quality);
        }

        if (IsDenied(segment, quality) || (segment.Joint is "or" or "nor" && course.LastInSentence is { Kind: EntryKind.LookedFor }))
        {
            return Denied(course, kind, place, quality);
        }

        var character = FindingCatalogue.Find(new FindingKindId(kind))!.Usually;
        return character is FindingCharacter.Taste
            ? Plain(course, place, kind, quality)
            : Add(course, place, kind, character, quality);
    }

    /// <summary>“Open” and “bright” are a matter of taste only when they are called so.</summary>
    private static bool Plain(Course course, Mention? place, string kind, Item quality) => kind switch
    {
        "tip-blunter-than-liked" => Add(course, place, kind, FindingCharacter.Taste, quality),
        "more-open-than-liked" when course.Segment.HasWord("too") && place?.Zone is Zone.Opening => Add(course, place, "opening-wide", FindingCharacter.Fault, quality),
        "more-open-than-liked" when place?.Zone is Zone.Opening && course.Segments.Any(other => other.Sentence == course.Segment.Sentence && other.Has(Cat.Taste)) => Add(course, place, kind, FindingCharacter.Taste, quality),
        "brighter-than-liked" when course.Segments.Any(other => other.Sentence == course.Segment.Sentence && other.Has(Cat.Taste)) => Add(course, place, kind, FindingCharacter.Taste, quality),
        _ => false,
    };

    private static bool Taste(Course course, Mention? place, string quality)
    {
        var kind = quality switch
        {
            "open" or "wide" => "more-open-than-liked",
            "bright" => "brighter-than-liked",
            "blunt" => "tip-blunter-than-liked",
            _ => "something-else",
        };
        var at = course.Segment.Items.First(item => item.Cat == Cat.Quality && item.Value == quality);
        return Add(course, place, kind, FindingCharacter.Taste, at);
    }

    private static bool Praise(Course course, List<Mention> mentions, Item good)
    {
        var place = PlaceOf(course, mentions, good);
        if (course.Segment.HasWord("cane") && place?.HasPlace != true && !IsDenied(course.Segment, good))
        {
            return Add(course, new Mention { Zone = Zone.WholeReed }, "something-else", FindingCharacter.Strength, good);
        }

        if (mentions.Count == 0 && course.Segment.HasWord("it") && course.LastInSentence is { Kind: EntryKind.LeaveAlone } && course.Topic is { HasPlace: true } left)
        {
            return Add(course, left, FindingTable.Kind(left, "good") ?? "something-else", FindingCharacter.Strength, good);
        }

        if (place?.HasPlace != true || IsDenied(course.Segment, good) || mentions.All(mention => !mention.HasPlace))
        {
            return false;
        }

        var kind = FindingTable.Kind(place, "good") ?? "something-else";
        return Add(course, place, kind, FindingCharacter.Strength, good);
    }

    internal static bool IsDenied(Segment segment, Item quality)
    {
        foreach (var not in segment.All(Cat.Not))
        {
            if (not.End <= quality.First && quality.First - not.End <= 6 && segment.Word(not.End) is not ("only" or "just" or "much")
                && segment.Word(not.First) is not "any" | segment.HasWord("not"))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Denied(Course course, string kind, Mention? place, Item quality)
    {
        var segment = course.Segment;
        var character = FindingCatalogue.Find(new FindingKindId(kind))!.Usually;
        if (character is not FindingCharacter.Fault)
        {
            var opposite = kind switch
            {
                "quadrants-matched" => place?.Blade is null ? "left-right-uneven" : "blades-uneven",
                "opening-even" => "opening-lopsided",
                "tip-well-separated" => "tip-not-separate",
                "blend-smooth" => "step-abrupt",
                "seals-well" => "side-leak",
                "tied-straight" => "crooked-on-staple",
                "tip-falls-to-sides" => "tip-even-across",
                _ => null,
            };
            return opposite is not null && Add(course, place, opposite, FindingCharacter.Fault, quality);
        }

        if (kind is "no-slip" or "tip-not-separate" && !segment.HasWord("not"))
        {
            return Add(course, place, kind, character, quality);
        }

        if (segment.Has(Cat.NoMore) && course.Before.LastFinding is not null)
        {
            course.Add(EntryKind.FindingEnded, new ReadSlots { Kind = kind, Ending = FindingEnding.Gone });
            return true;
        }

        course.Add(EntryKind.LookedFor, new ReadSlots { Kind = kind, Known = Known(segment) ?? course.Ahead.Known });
        course.Ahead = ReadSlots.None;
        return true;
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

    private static bool NeedsTopic(Course course, Item quality) => course.Pending is not null || Faults.Contains(quality.Value)
        || (quality.Value is "cracked" or "uneven" or "even" or "smooth" or "clear" or "intact" or "loose" && course.Segment.HasWord("it"));

    internal static bool Add(Course course, Mention? place, string kind, FindingCharacter character, Item quality)
    {
        var segment = course.Segment;
        if (segment.Asked || segment.Has(Cat.Habit))
        {
            course.AddNote();
            return true;
        }

        kind = BladeKind(segment, kind, place);
        if (course.LastInSentence is { Kind: EntryKind.Finding } same && same.Slots.Kind == kind && kind is not "something-else" && Again(same.Slots, place))
        {
            same.Slots = same.Slots with { Blades = same.Slots.Blades ?? place?.OneBlade, Sides = same.Slots.Sides ?? place?.OneSide };
            return course.Absorb(aside: false);
        }

        var usual = FindingCatalogue.Find(new FindingKindId(kind))?.Zone;
        var zone = place?.Zone ?? (kind is "something-else" || usual is null || place?.Region is "back" or "lay" || (place?.Region == "heart" && usual is Zone.HeartSides) ? place?.Usual : null) ?? usual ?? Zone.WholeReed;
        zone = kind is "centre-closes-first" or "closes-in-play" ? Zone.Opening : zone;
        zone = kind is "crooked-on-staple" or "side-leak" or "thread-too-high" or "worn" or "seals-well" or "quadrants-matched" && usual is { } own && zone is Zone.Opening or Zone.WholeReed or Zone.Eye or Zone.Thread ? own : zone;
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

    // The same finding said in other words; another blade, side or part would be another one.
    private static bool Again(ReadSlots said, Mention? place) => place is null
        || ((place.OneBlade is null || said.Blades is null || place.OneBlade == said.Blades) && (place.OneSide is null || said.Sides is null || place.OneSide == said.Sides) && (place.Zone is null || place.Zone == said.Zone));

    private static string BladeKind(Segment segment, string kind, Mention? place) => kind is "left-right-uneven" && place?.HasPlace != true
        && segment.HasWord("blades") | place?.Blade is not null ? "blades-uneven" : kind;

    /// <summary>What a finding may have besides: how sure, how known, how it came.</summary>
    internal static ReadSlots Details(Course course, ReadSlots slots)
    {
        var segment = course.Segment;
        var arose = segment.Has(Cat.Caused) ? Arose.CausedByTheWork : segment.Has(Cat.SeenLater) ? Arose.SeenLaterAlreadyThere : slots.Arose ?? course.Ahead.Arose;
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
            known = (known ?? KnownBy.NotSaid) | Enum.Parse<KnownBy>(item.Value);
        }

        return known;
    }

    internal static string? Degree(Segment segment, Item quality)
    {
        foreach (var degree in segment.All(Cat.Degree))
        {
            if (degree.First < quality.End + 2 && quality.First - degree.End <= 3)
            {
                return degree.Value;
            }
        }

        return null;
    }
}
