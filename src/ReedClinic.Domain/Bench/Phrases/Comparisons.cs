using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>One place against another: “left thinner than right”, “sides as thick as the middle”.</summary>
internal static class Comparisons
{
    internal static bool TryRead(Course course, List<Mention> mentions)
    {
        var segment = course.Segment;
        if (segment.Has(Cat.Taste) || Linked(segment) is not { } link)
        {
            return false;
        }

        if (OfOther(course, segment, link, mentions))
        {
            return true;
        }

        var one = Joined(mentions.Where(mention => mention.First < link.Middle));
        var other = Joined(mentions.Where(mention => mention.First >= link.End));
        if (other is null || (one is null && (course.Topic is null || (other.HasPlace && !segment.HasWord("it")))))
        {
            return false;
        }

        if (one is { HasPlace: false, Part: null } && !other.HasPlace && segment.HasWord("it") | (course.LastInSentence is { Kind: EntryKind.Finding } && one.Blade is null) && course.Topic is { HasPlace: true } topic && topic.Blade is null | one.Side is not null)
        {
            one = one with { Zone = topic.Usual };
        }

        if (one is { HasPlace: false, Part: null } && !other.HasPlace && course.Pending is { HasPlace: true } pending)
        {
            one = one! with { Zone = pending.Usual };
        }

        (one, other) = Shared(course, one, other);
        one = Whole(course, one ?? course.Topic!, other);
        if (one.Usual is null && other.Usual is null && one.Blade is null && one.Side is null)
        {
            return false;
        }

        Write(course, one, Whole(course, other, one), link);
        return true;
    }

    /// <summary>“Lower blade a hair longer”, “left window narrower”: against what isn’t said.</summary>
    internal static bool Half(Course course, List<Mention> mentions)
    {
        var segment = course.Segment;
        if (segment.Has(Cat.Than) || segment.Has(Cat.Not) || segment.Has(Cat.Taste) || Joined(mentions) is not { } one || (one.OneSide is null && one.OneBlade is null)
            || segment.All(Cat.Quality).FirstOrDefault(item => segment.Word(item.First).EndsWith("er", StringComparison.Ordinal) && Of(item.Value) is not null) is not { Value: not null } quality)
        {
            return false;
        }

        one = !one.HasPlace && course.Topic is { HasPlace: true } topic ? one with { Zone = topic.Usual } : one;
        Write(course, one, new Mention(), new Link(Of(quality.Value)!.Value, quality.First, quality.First, quality.End, quality));
        return true;
    }

    // “Thicker than the right on the top blade”, “upper: right higher than left”: the blade holds for both.
    private static (Mention? One, Mention Other) Shared(Course course, Mention? one, Mention other)
    {
        if (one is { Blade: null, OneSide: not null } && other is { Blade: "Upper" or "Lower", OneSide: not null })
        {
            return (one with { Blade = other.Blade }, other with { Blade = null });
        }

        return (one is { Blade: null } && other.Blade is null && course.Pending is { Blade: "Upper" or "Lower" } ahead ? one with { Blade = ahead.Blade } : one, other);
    }

    /// <summary>“One window thicker than the other”.</summary>
    private static bool OfOther(Course course, Segment segment, Link link, List<Mention> mentions)
    {
        var after = segment.Word(link.End) is "the" or "its" or "his" or "her" ? link.End + 1 : link.End;
        if (segment.Word(after) is not ("other" or "mate" or "twin" or "partner" or "fellow" or "counterpart" or "neighbour" or "brother" or "sister" or "companion" or "opposite") || mentions.Any(mention => mention.First >= link.End && (mention.HasPlace || mention.Side is not (null or "Other") || mention.Blade is not (null or "Other")))
            || mentions.FirstOrDefault(mention => mention.First < link.First && (mention.HasPlace || mention.Side is not null || mention.Blade is not null || mention.Part is not null)) is not { } one)
        {
            return false;
        }

        var other = one.Blade is "Upper" or "Lower" && one.OneSide is null ? new Mention { Blade = "Other" } : new Mention { Side = "Other" };
        Write(course, one, other, link, sides: other.Side is not null && !segment.HasWord("blade"));
        return true;
    }

    private static void Write(Course course, Mention one, Mention other, Link link, bool? sides = null)
    {
        var segment = course.Segment;
        var relation = Denials.IsDenied(segment, link.Quality) && link.Relation is not Relation.SameAs ? Relation.SameAs : link.Relation;
        var zone = one.Usual ?? other.Usual ?? (relation is Relation.MoreOpenThan && one.OneSide is not null ? Zone.Opening : Zone.WholeReed);
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
            OtherZone = other.HasPlace && otherZone != zone ? otherZone : null,
            OtherBlades = Opposite(other.Blade, one.OneBlade),
            OtherSides = OppositeSide(other.Side, one.OneSide),
            Degree = FindingReader.Degree(segment, link.Quality) ?? segment.All(Cat.Quality).Select(other => FindingReader.Degree(segment, other)).FirstOrDefault(degree => degree is not null),
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

    private static Link? Linked(Segment segment)
    {
        if (segment.Find(Cat.SameAs) is { } same)
        {
            return new Link(Relation.SameAs, same.First, same.First, same.End, same);
        }

        if (segment.Items.FirstOrDefault(item => item.Is(Cat.Quality, "matched") && segment.Word(item.End - 1) is "match" or "equal" or "matches" or "matched") is { Value: not null } match
            && segment.Word(match.End) is "the" or "to" or "with" or "its")
        {
            return new Link(Relation.SameAs, match.First, match.First, match.End, match);
        }

        foreach (var quality in segment.All(Cat.Quality))
        {
            if (segment.Items.FirstOrDefault(item => item.Is(Cat.Than) && item.First >= quality.End && item.First - quality.End <= 4) is { Value: not null } than && Of(quality.Value) is { } relation)
            {
                return new Link(relation, quality.First, than.First, than.End, quality);
            }

            if (segment.Word(quality.End) is "as" && (segment.Word(quality.First - 1) is "more" || (segment.Word(quality.First).EndsWith("er", StringComparison.Ordinal) && segment.Word(quality.First - 1) is not "as")) && Of(quality.Value) is { } more)
            {
                return new Link(more, quality.First, quality.End, quality.End + 1, quality);
            }

            if (segment.Word(quality.End) is "as" && segment.Word(quality.First - 1) is "as" or "just" or "every")
            {
                return new Link(Relation.SameAs, quality.First - 1, quality.First - 1, quality.End + 1, quality);
            }
        }

        return null;
    }

    /// <summary>The words that join two places.</summary>
    /// <param name="Relation">How one stands to the other.</param>
    /// <param name="First">The first token.</param>
    /// <param name="Middle">What is named before it is the one place.</param>
    /// <param name="End">The token after the last; what follows is the other place.</param>
    /// <param name="Quality">The word that tells it.</param>
    private readonly record struct Link(Relation Relation, int First, int Middle, int End, Item Quality);

    private static Relation? Of(string quality) => quality switch
    {
        "thick" => Relation.ThickerThan,
        "thin" or "soft" or "deep" => Relation.ThinnerThan,
        "shallow" => Relation.ThickerThan,
        "long" => Relation.LongerThan,
        "short" => Relation.ShorterThan,
        "high" => Relation.HigherThan,
        "low" => Relation.LowerThan,
        "open" or "wide" => Relation.MoreOpenThan,
        "stiff" => Relation.StifferThan,
        _ => null,
    };
}
