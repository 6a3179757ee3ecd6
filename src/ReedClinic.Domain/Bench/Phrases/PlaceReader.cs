using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Puts words for zones, blades and sides together to places.</summary>
internal static class PlaceReader
{
    private static readonly HashSet<string> Glue = ["the", "a", "of", "on", "in", "at", "my", "your", "its", "'s", "that", "this", "those", "these", "one", "", "'", "both", "all", "very", "only", "just", "too", "his", "her", "far", "outer", "each", "every", "either", "four", "two", "wet"];

    private static readonly HashSet<string> BeforeSide = ["the", "on", "and", "than", "upper", "lower", "to", "far", "", "top", "bottom", "or", "that", "blade", "your", "its", "from", "off", "at", "then", "in", "this", "both", "my", "same", "one", "left", "right", "but", "ditto", "likewise", "again"];

    private static readonly HashSet<string> NotSideBefore = ["the", "it", "that", "this", "them", "a", "alone", "plenty", "enough", "some", "over", "away", "across", "through", "off", "down", "up", "to", "at", "amount", "place", "way", "now", "all", "into", "between", "as", "along", "from", "here", "there", "size", "where"];

    internal static List<Mention> Read(Segment segment)
    {
        List<Mention> found = [];
        Mention? open = null;
        for (var i = segment.First; i < segment.End; i++)
        {
            var item = PlaceAt(segment, i);
            if (item is not { } place)
            {
                open = open is not null && Glue.Contains(segment.Tokens[i].Text) ? open : null;
                continue;
            }

            if (open is not null && Merge(open, place) is { } both)
            {
                found[^1] = open = both;
            }
            else
            {
                open = Merge(new Mention { First = place.First, End = place.End }, place)!;
                found.Add(open);
            }

            i = place.End - 1;
        }

        return found;
    }

    private static Item? PlaceAt(Segment segment, int at)
    {
        if (segment.Tokens[at].Is("right") && IsSide(segment, at) && !segment.Items.Any(item => item.First == at && item.Cat is Cat.Side or Cat.Blade))
        {
            return new Item(Cat.Side, "Right", at, at + 1);
        }

        Item? best = null;
        foreach (var item in segment.Items)
        {
            if (item.First == at && item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Side or Cat.Blade && IsMeant(segment, item)
                && (best is null || item.End > best.Value.End || (item.End == best.Value.End && item.Cat < best.Value.Cat)))
            {
                best = item;
            }
        }

        // “Left side of the heart”: the side belongs to the heart, and “left” is left.
        return best is { Cat: Cat.Side or Cat.Blade, Count: > 1 } side && segment.Items.FirstOrDefault(item => item.Cat is Cat.Zone && item.First > side.First && item.First < side.End && item.End > side.End) is { Value: not null } zone
            ? side with { End = zone.First }
            : best;
    }

    private static bool IsMeant(Segment segment, Item item) => item switch
    {
        { Cat: Cat.Side, Value: "Left", Count: 1 } => IsSide(segment, item.First),
        { Cat: Cat.Zone or Cat.Region } when segment.Word(item.End) is "of" && segment.Word(item.End + 1) is "the" or "my" && segment.Word(item.End + 2) is "knife" or "file" or "plaque" or "blade" && segment.Word(item.First) is "spine" or "back" or "tip" or "heel" or "edge" or "end" or "point" && !(segment.Word(item.End + 2) is "blade") => false,
        { Cat: Cat.Region, Value: "back" } => IsBack(segment, item.First),
        { Cat: Cat.Zone, Value: "WholeReed" } => !(segment.Word(item.First) is "all" && segment.Word(item.End) is "the" or "your" or "both"),
        { Cat: Cat.Zone, Count: 1 } when segment.Word(item.First) is "catches" or "catch" && segment.Word(item.First - 1) is "it" or "that" or "which" or "and" or "knife" or "to" or "i" or "you" or "not" => false,
        { Cat: Cat.Zone, Count: 1 } when segment.Word(item.First) is "tie" && segment.Items.Any(other => other.Cat is Cat.Good && other.End == item.First) => true,
        { Cat: Cat.Zone } when segment.Word(item.First) is "tie" or "tube" or "string" or "gap" or "slit" or "knot" =>
            segment.Word(item.First - 1) is "the" or "that" or "your" or "this" or "'s" or "my" or "of" or "a",
        { Cat: Cat.Zone, Count: 1 } when segment.Word(item.First) is "end" or "ends" => IsEnd(segment, item.First),
        { Cat: Cat.Zone, Count: 1 } when segment.Word(item.First) is "edge" => segment.Word(item.First - 1) is not ("an" or "more" or "some"),
        { Cat: Cat.Zone, Count: 1 } when segment.Word(item.First) is "blend" => segment.Word(item.First - 1) is "the" or "that" or "your" or "this" or "'s" or "my" or "of" or "a"
            || segment.Items.Any(other => other.Cat is Cat.Quality or Cat.Good && (other.End == item.First || (other.First <= item.End + 2 && other.First >= item.End && (other.First == item.End || segment.Word(item.End) is "is" or "'s" or "looks" or "feels" or "too" or "very")))),
        { Cat: Cat.Blade, Value: "Lower", Count: 1 } when segment.Word(item.First) is "lower" => segment.Word(item.First - 1) is not ("it" or "them" or "that" or "sits" or "sit" or "bit" or "little" or "much" or "far" or "even" or "goes" or "go" or "moved" or "hair" or "touch" or "tad" or "lot" or "further" or "turns" or "turn" or "wraps" or "mm" or "back" or "down" or "tenth" or "tenths"),
        { Cat: Cat.Blade, Value: "Both", Count: 2 } when segment.Word(item.First) is "a" => true,
        _ => true,
    };

    // “More open left than right”, “window left deeper than right”.
    private static bool IsCompared(Segment segment, int at) => (segment.Word(at + 1) is "than" && segment.Items.Any(item => item.Cat is Cat.Quality && item.End <= at)) || (segment.Word(at - 1) is "than" && at + 1 >= segment.End)
        || (segment.Items.Any(item => item.End == at && item.Cat is Cat.Zone or Cat.Region) && segment.Word(at + 1) is ":" || segment.Items.Any(item => item.End == at && item.Cat is Cat.Zone or Cat.Region) && (segment.Items.Any(item => item.First == at + 1 && item.Cat is Cat.Quality) || segment.Word(at + 1) is "is" or "'s" or "too") && (segment.Tokens[at].Is("right") || segment.Has(Cat.Than)));

    // “Off the end”; not “in the end”, “the end of the scrape”, “end on”.
    private static bool IsEnd(Segment segment, int at) => segment.Word(at - 1) is "off" or "from" || segment.Word(at - 1) is "the" or "both" or "its" or "their" or "your" && segment.Word(at - 2) is not ("in" or "stop" or "by" or "to" or "over" or "until")
        && segment.Word(at + 1) is not ("on" or "up") && !(segment.Word(at + 1) is "of" && segment.Word(at + 3) is not ("tip" or "reed" or "blade" or "blades"))
        && (segment.Word(at - 2) is "off" or "from" or "along" or "across" or "of" or "at" or "clip" or "clipped" or "cut" or "trim" or "trimmed" or "square" or "squared" || segment.Word(at + 1) is "is" or "'s" or "looks" or "are" || at + 1 >= segment.End || segment.Tokens[at + 1].Kind is TokenKind.Break);

    private static readonly HashSet<string> RightThings = ["way", "size", "place", "amount", "length", "thickness", "depth", "note", "pitch", "spot", "moment", "time", "kind", "sort", "sound", "idea", "direction", "order", "angle", "shape", "response", "feel", "proportion", "proportions", "thing", "balance", "strength", "width", "height", "side-up", "track", "lines", "answer", "hands", "reed", "one-off", "opening", "resistance", "weight"];

    private static bool IsSide(Segment segment, int at)
    {
        var last = segment.Word(at - 1);
        var next = segment.Word(at + 1);
        var beforePlace = segment.Items.Any(item => item.First == at + 1 && item.Cat is Cat.Zone or Cat.Part or Cat.Region or Cat.Blade)
            || next is "one" or "quadrant" or "hand" or "side" or "ramp" or "of";
        if (beforePlace && !(next is "back") && !(next is "of" && last is not ("the" or "to")))
        {
            return true;
        }

        if (segment.Tokens[at].Length == 1 || (at == segment.First && next is ":") || IsCompared(segment, at))
        {
            return true;
        }

        var alone = at == segment.First || segment.Tokens[at - 1].Kind == TokenKind.Break;
        var closes = at + 1 >= segment.End || segment.Tokens[at + 1].Kind == TokenKind.Break;
        if (last == "the" || (last is "on" or "than" or "upper" or "lower" or "blade" && closes))
        {
            return segment.Tokens[at].Is("left") || (!RightThings.Contains(next) && (segment.Word(at - 2) is "than" or "as" || !NotSideBefore.Contains(next) || next is "now" or "all" or "to" or "at" or "off" or "down" or "up" or "there" or "here" or "it" or "a" or "from" or "as" or "than" or "over" or "across"));
        }

        if (at > segment.First && (segment.Tokens[at - 1].Kind is TokenKind.Number || last is "stroke" or "strokes" or "tenths" or "mm" or "two" or "three" or "four" or "five" or "six") && (closes || next is "side"))
        {
            return true;
        }

        if (segment.Tokens[at].Is("right") && closes && alone)
        {
            return segment.Joint is "and";
        }

        return (BeforeSide.Contains(last) || (alone && !closes) || (segment.Tokens[at].Is("left") && alone)) && !NotSideBefore.Contains(next)
            && !(segment.Tokens[at].Is("right") && closes && last is not ("on" or "its" or "than" or "upper" or "lower" or "and" or "blade"));
    }

    private static bool IsBack(Segment segment, int at)
    {
        var last = segment.Word(at - 1);
        var next = segment.Word(at + 1);
        if ((next is "is" or "'s" or "looks" or "feels" or "seems" && last is not ("it" or "them" or "come" or "came" or "go" or "went" or "put" or "sent" or "coming" or "going")) || last is "the" or "a" or "your" or "'s" or "my" or "its" or "whole" && next is not "of")
        {
            return true;
        }

        return next is not ("in" or "to" or "up" or "together" or "on" or "unplayed" or "as" or "into" or "home" or "again" or "down" or "out" or "off" or "towards" or "toward")
            && (last is "the" or "a" or "your" or "this" or "that" or "'s" or "my" or "its" or "thick" or "thin" or "upper" or "lower" or "left" or "right" or "of" or "whole"
                || at == segment.First || Splitter.Binds(last) || (last is "in" or "on" or "of" or "off" or "from" && (at + 1 >= segment.End || segment.Tokens[at + 1].Kind is TokenKind.Break)));
    }

    private static Mention? Merge(Mention open, Item item)
    {
        var next = open with { End = item.End };
        switch (item.Cat)
        {
            case Cat.Zone:
                var zone = Enum.Parse<Zone>(item.Value);
                return open.Zone is { } given && given != zone ? null : next with { Zone = zone, Region = null, Part = null };
            case Cat.Region:
                return open.Zone is not null && open.Region is null ? (Of(open.Zone.Value) == item.Value ? next : null)
                    : open.Region is { } region && region != item.Value ? null : Compose(next, open.Part, item.Value);
            case Cat.Part:
                return open.Zone is not null ? (open.Region is null && item.Value is "side" or "face" ? next : null)
                    : open.Region is { } whole ? Compose(next, item.Value, whole) : next with { Part = item.Value };
            case Cat.Blade:
                return open.Blade is { } blade && blade != item.Value ? null : next with { Blade = item.Value };
            default:
                return open.Side is { } side && side != item.Value && side != "Both" ? null : next with { Side = item.Value };
        }
    }

    private static Mention Compose(Mention mention, string? part, string region) => Named(part, region) is { } zone
        ? mention with { Zone = zone, Part = null, Region = null }
        : mention with { Region = region, Part = null };

    /// <summary>The part of a region.</summary>
    internal static Zone? Named(string? part, string? region) => (part, region) switch
    {
        ("centre", "tip") => Zone.TipCentre,
        ("side", "tip") => Zone.TipSides,
        ("centre", "heart") => Zone.HeartCentre,
        ("side", "heart") => Zone.HeartSides,
        ("bottom", "heart") => Zone.HeartBottom,
        ("side", "back") => Zone.Windows,
        ("bottom", "back" or "lay") => Zone.WindowBase,
        _ => null,
    };

    /// <summary>Which region a zone is in.</summary>
    internal static string Of(Zone zone) => zone switch
    {
        Zone.TipEdge or Zone.TipCorners or Zone.TipSides or Zone.TipCentre or Zone.Rooftop => "tip",
        Zone.HeartCentre or Zone.HeartSides or Zone.HeartBottom => "heart",
        Zone.Windows or Zone.WindowBase => "back",
        _ => "",
    };
}
