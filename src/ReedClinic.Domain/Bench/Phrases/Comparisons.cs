using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>One place against another: “left thinner than right”, “sides as thick as the middle”.</summary>
internal static class Comparisons
{
    internal static bool TryRead(Course course, List<Mention> mentions)
    {
        var segment = course.Segment;
        if (segment.Has(Cat.Taste) || Link(segment) is not { } link)
        {
            return false;
        }

        if (OfOther(course, segment, link, mentions))
        {
            return true;
        }

        var one = Joined(mentions.Where(mention => mention.First < link.First));
        var other = Joined(mentions.Where(mention => mention.First >= link.End));
        if (other is null || (one is null && (course.Topic is null || (other.HasPlace && !segment.HasWord("it")))))
        {
            return false;
        }

        if (one is { HasPlace: false, Part: null } && !other.HasPlace && segment.HasWord("it") | (course.LastInSentence is { Kind: EntryKind.Finding }) && course.Topic is { HasPlace: true } topic && topic.Blade is null | one.Side is not null)
        {
            one = one with { Zone = topic.Usual };
        }

        one = Whole(course, one ?? course.Topic!, other);
        if (one.Usual is null && other.Usual is null && one.Blade is null && one.Side is null)
        {
            return false;
        }

        Write(course, one, Whole(course, other, one), link);
        return true;
    }

    /// <summary>“One window thicker than the other”.</summary>
    private static bool OfOther(Course course, Segment segment, (Relation Relation, int First, int End, Item Quality) link, List<Mention> mentions)
    {
        var after = segment.Word(link.End) is "the" ? link.End + 1 : link.End;
        if (segment.Word(after) is not "other" || mentions.Any(mention => mention.First >= link.End && (mention.HasPlace || mention.Side is not (null or "Other") || mention.Blade is not (null or "Other")))
            || mentions.FirstOrDefault(mention => mention.First < link.First && (mention.HasPlace || mention.Side is not null || mention.Blade is not null || mention.Part is not null)) is not { } one)
        {
            return false;
        }

        var other = one.Blade is "Upper" or "Lower" && one.OneSide is null ? new Mention { Blade = "Other" } : new Mention { Side = "Other" };
        Write(course, one, other, link, sides: other.Side is not null && !segment.HasWord("blade"));
        return true;
    }

    private static void Write(Course course, Mention one, Mention other, (Relation Relation, int First, int End, Item Quality) link, bool? sides = null)
    {
        var segment = course.Segment;
        var relation = FindingReader.IsDenied(segment, link.Quality) && link.Relation is not Relation.SameAs ? Relation.SameAs : link.Relation;
        var zone = one.Usual ?? other.Usual ?? Zone.WholeReed;
        var otherZone = other.HasPlace || other.Zone is not null ? other.Usual : null;
        sides ??= one.OneSide is not null || other.OneSide is not null;
        var (kind, at) = Kind(zone, otherZone == zone ? null : otherZone, sides.Value, relation, one.HasPlace);
        var character = FindingCatalogue.Find(new FindingKindId(kind))?.Usually ?? (relation is Relation.SameAs ? FindingCharacter.Strength : FindingCharacter.Fault);
        var told = FindingReader.Details(course, new ReadSlots
        {
            Kind = kind,
            Character = character,
            Zone = at,
            Blades = one.OneBlade,
            Sides = one.OneSide ?? (other.Side is "Other" ? null : null),
            Relation = relation,
            OtherZone = other.HasPlace && other.Zone is not null && otherZone != zone ? otherZone : null,
            OtherBlades = Opposite(other.Blade, one.OneBlade),
            OtherSides = OppositeSide(other.Side, one.OneSide),
            Degree = FindingReader.Degree(segment, link.Quality),
        });
        if (course.LastInSentence is { Kind: EntryKind.Finding } same && same.Slots.Kind == kind && same.Slots.Relation is null)
        {
            same.Slots = told with { Blades = told.Blades ?? same.Slots.Blades, Degree = told.Degree ?? same.Slots.Degree, Certainty = told.Certainty ?? same.Slots.Certainty, Known = told.Known ?? same.Slots.Known };
            course.Absorb(aside: false);
        }
        else
        {
            course.Add(EntryKind.Finding, told);
        }

        course.Topic = one;
        course.Pending = null;
    }

    private static Blades? Opposite(string? said, Blades? one) => said switch
    {
        "Upper" => Blades.Upper,
        "Lower" => Blades.Lower,
        "Other" => one is Blades.Upper ? Blades.Lower : one is Blades.Lower ? Blades.Upper : null,
        _ => null,
    };

    private static Sides? OppositeSide(string? said, Sides? one) => said switch
    {
        "Left" => Sides.Left,
        "Right" => Sides.Right,
        "Other" => one is Sides.Left ? Sides.Right : one is Sides.Right ? Sides.Left : null,
        _ => null,
    };

    private static (string Kind, Zone Zone) Kind(Zone zone, Zone? other, bool sides, Relation relation, bool said)
    {
        if (other is { } second)
        {
            return (OfZones(zone, second, relation), zone);
        }

        if (relation is Relation.SameAs)
        {
            return ("quadrants-matched", zone);
        }

        if (!sides)
        {
            return ("blades-uneven", said ? zone : Zone.WholeReed);
        }

        return zone switch
        {
            Zone.Windows or Zone.WindowBase => ("windows-uneven", zone),
            Zone.HeartCentre or Zone.HeartSides => ("heart-lopsided", Zone.HeartSides),
            Zone.Opening => ("opening-lopsided", zone),
            Zone.TipCorners or Zone.TipEdge when relation is Relation.LongerThan or Relation.HigherThan or Relation.ShorterThan or Relation.LowerThan => ("tip-line-slanted", zone),
            Zone.WholeReed when relation is Relation.LongerThan or Relation.ShorterThan => ("tip-line-slanted", Zone.TipEdge),
            _ => ("left-right-uneven", zone),
        };
    }

    private static string OfZones(Zone one, Zone other, Relation relation) => (one, other, relation) switch
    {
        (Zone.TipCorners, Zone.TipCentre or Zone.TipSides, Relation.ThickerThan or Relation.SameAs or Relation.StifferThan) => "tip-corners-thick",
        (Zone.TipCentre or Zone.TipSides, Zone.TipCorners, Relation.ThinnerThan or Relation.SameAs) => "tip-corners-thick",
        (Zone.TipSides, Zone.TipCentre, Relation.SameAs) or (Zone.TipCentre, Zone.TipSides, Relation.SameAs) => "tip-even-across",
        (Zone.TipCentre, Zone.TipSides or Zone.TipCorners, Relation.ThinnerThan) => "tip-centre-thin",
        (Zone.TipSides, Zone.TipCentre, Relation.ThinnerThan) or (Zone.TipCentre, Zone.TipSides or Zone.TipCorners, Relation.ThickerThan) => "tip-falls-to-sides",
        (Zone.TipSides, Zone.TipCentre, Relation.ThickerThan) => "tip-thick",
        (Zone.HeartSides, Zone.HeartCentre, Relation.SameAs or Relation.ThickerThan or Relation.StifferThan) => "heart-sides-thick",
        (Zone.HeartCentre, Zone.HeartSides, Relation.SameAs or Relation.ThinnerThan) => "heart-sides-thick",
        (Zone.TipSides or Zone.TipEdge or Zone.TipCentre, Zone.HeartCentre or Zone.HeartSides, Relation.SameAs) => "tip-not-separate",
        (Zone.Windows or Zone.WindowBase, _, Relation.ThickerThan or Relation.SameAs or Relation.StifferThan) => "back-thick",
        (_, Zone.Windows, Relation.ThinnerThan) => "back-thick",
        (Zone.HeartCentre or Zone.HeartSides, Zone.TipSides, Relation.SameAs) => "tip-not-separate",
        (Zone.HeartCentre, _, Relation.ThinnerThan or Relation.SameAs) => "heart-thin",
        _ => "something-else",
    };

    // “The sides as thick as the middle”: parts of what was last named, else of the tip.
    private static Mention Whole(Course course, Mention mention, Mention other)
    {
        if (mention.HasPlace || mention.Part is null)
        {
            return mention;
        }

        var region = Region(other) ?? (course.Topic is { } topic ? Region(topic) : null) ?? "tip";
        return mention with { Zone = PlaceReader.Named(mention.Part, region) ?? (mention.Part is "centre" ? Zone.TipCentre : Zone.TipSides) };
    }

    private static string? Region(Mention mention) => mention.Region ?? (mention.Zone is { } zone && PlaceReader.Of(zone) is { Length: > 0 } region ? region : null);

    private static Mention? Joined(IEnumerable<Mention> mentions)
    {
        Mention? all = null;
        foreach (var mention in mentions)
        {
            all = all is null ? mention : all with
            {
                Zone = all.Zone ?? mention.Zone,
                Region = all.Region ?? (all.Zone is null ? mention.Region : null),
                Part = all.Part ?? mention.Part,
                Blade = all.Blade ?? mention.Blade,
                Side = all.Side ?? mention.Side,
            };
        }

        return all;
    }

    private static (Relation Relation, int First, int End, Item Quality)? Link(Segment segment)
    {
        if (segment.Find(Cat.SameAs) is { } same)
        {
            return (Relation.SameAs, same.First, same.End, same);
        }

        if (segment.Items.FirstOrDefault(item => item.Is(Cat.Quality, "matched") && segment.Word(item.End - 1) is "match" or "equal" or "matches" or "matched") is { Value: not null } match
            && segment.Word(match.End) is "the" or "to" or "with" or "its")
        {
            return (Relation.SameAs, match.First, match.End, match);
        }

        foreach (var quality in segment.All(Cat.Quality))
        {
            if (segment.Items.FirstOrDefault(item => item.Is(Cat.Than) && item.First >= quality.End && item.First - quality.End <= 3) is { Value: not null } than && Of(quality.Value) is { } relation)
            {
                return (relation, quality.First, than.End, quality);
            }

            if (segment.Word(quality.End) is "as" && segment.Word(quality.First - 1) is "as" or "just" or "every")
            {
                return (Relation.SameAs, quality.First - 1, quality.End + 1, quality);
            }
        }

        return null;
    }

    private static Relation? Of(string quality) => quality switch
    {
        "thick" => Relation.ThickerThan,
        "thin" or "soft" => Relation.ThinnerThan,
        "long" => Relation.LongerThan,
        "short" => Relation.ShorterThan,
        "high" => Relation.HigherThan,
        "low" => Relation.LowerThan,
        "open" or "wide" => Relation.MoreOpenThan,
        "stiff" => Relation.StifferThan,
        _ => null,
    };
}
