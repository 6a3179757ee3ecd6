namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Words for how something is, said of something else than the reed.</summary>
internal static class NotOfReed
{
    /// <summary>Whether a word for how something is is said of a tool, of somebody, of another thing, or of the way something goes: “straight on”.</summary>
    internal static bool Says(Segment segment, Mention? place, Item quality)
    {
        var value = quality.Value;
        var away = place?.HasPlace != true;
        if (value is "slipped" && quality.Count == 1 && segment.Word(quality.First) is "slipped" or "slip" && (segment.Has(Cat.Good) || segment.Word(quality.End) is "right" or "enough" or "about" or "correctly"))
        {
            return true;
        }

        return (away && (IsOfTool(segment) || (value is "narrow" or "wide" or "open" && (segment.HasWord("shape") || segment.HasWord("shaper") || segment.HasWord("staple") || segment.HasWord("cane") || segment.HasWord("gouge")))))
            || (away && IsOfElse(segment, quality))
            || (!segment.Has(Cat.Taste) && IsOfThing(segment, quality))
            || (value is "straight" && quality.Count == 1 && segment.Word(quality.First) is "straight" && segment.Word(quality.End) is "on" or "into" or "out" or "down" or "to" or "away" or "through" or "off" or "up" or "in" or "from" or "back" or "at" or "past" or "after" or "across");
    }

    // “My glasses are filthy”, “I’m holding it crooked”: said of something or somebody else.
    private static bool IsOfElse(Segment segment, Item quality)
    {
        for (var i = segment.First; i < quality.First; i++)
        {
            if (segment.Word(i) is "i" && segment.Word(i + 1) is "am" or "'m" or "was")
            {
                return segment.Word(quality.First - 1) is not ("the" or "a");
            }

            if (segment.Word(i) is "my" or "her" or "his" or "our" or "their" && i + 1 < quality.First && segment.Tokens[i + 1].Kind is TokenKind.Word && !segment.Items.Any(item => item.First <= i + 1 && i + 1 < item.End) && segment.Word(i + 2) is "is" or "are" or "'s" or "was" or "were" or "has" or "have" or "looks" or "feels")
            {
                return true;
            }
        }

        return false;
    }

    // “A long slow scrape”, “a short one”, “thick books”: how something else is.
    private static bool IsOfThing(Segment segment, Item quality)
    {
        var at = quality.End;
        while (at < segment.End && (segment.Word(at) is "slow" or "old" or "new" or "little" or "nice" || (segment.Covered(at, Cat.Quality) && !segment.Covered(at, Cat.Zone))))
        {
            at++;
        }

        return segment.Word(at) is "scrape" or "scrapes" or "one" or "ones" or "knife" or "letter" or "lesson" or "soak" or "practice" or "player" or "reeds" or "notes" or "note" or "sound" or "tone" or "student" or "staples" or "shaper" or "gouge"
            && !(segment.Word(at) is "one" or "ones" && segment.Word(at - 1) is not ("short" or "long" or "thick" or "thin")) && !segment.Covered(at, Cat.Zone);
    }

    // “The knife’s blunt”.
    private static bool IsOfTool(Segment segment) => (segment.HasWord("knife") || segment.HasWord("knives") || segment.HasWord("plaque") || segment.HasWord("block") || segment.HasWord("tuner") || segment.HasWord("letter")) && !segment.Has(Cat.Known);
}
