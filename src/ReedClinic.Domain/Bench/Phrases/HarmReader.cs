namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>A slip of the knife: the finding it left, and no adjustment.</summary>
internal static class HarmReader
{
    internal static bool TryRead(Course course, List<Mention> mentions)
    {
        var segment = course.Segment;
        if (Moods.Head(segment) is not { } verb || Moods.Action(verb) != "harm" || segment.Has(Cat.May) || segment.Has(Cat.Plan) || Denials.IsDenied(segment, verb)
            || Moods.Form(verb) is 'B' or 'S' or 'G' && !segment.Items.Any(item => item.First == verb.First && item.Cat is Cat.Quality))
        {
            return false;
        }

        var mine = segment.HasWord("i") || segment.HasWord("i've") || segment.Has(Cat.Caused) || IsTold(segment, verb);
        var word = segment.Word(verb.First);
        var quality = segment.Items.FirstOrDefault(item => item.Cat == Cat.Quality);
        var place = FindingReader.PlaceOf(course, mentions, verb);
        place = place?.HasPlace != true && course.Topic is { HasPlace: true } topic && (segment.HasWord("one") || segment.HasWord("it")) && (mentions.Count > 0 || segment.HasWord("it")) ? topic with { Blade = place?.Blade, Side = place?.Side } : place;
        var value = quality.Value ?? OfWord(word);
        if (place?.HasPlace != true && value is "cut")
        {
            return false;
        }

        var kind = FindingTable.Kind(place, value) ?? FindingTable.Kind(place, OfWord(word)) ?? (place?.HasPlace == true ? "something-else" : null);
        if (kind is null)
        {
            return false;
        }

        FindingReader.Add(course, place, kind, FindingCharacter.Fault, verb);
        if (mine && course.Last is { Kind: EntryKind.Finding } found)
        {
            found.Slots = found.Slots with { Arose = Arose.CausedByTheWork };
        }

        return true;
    }

    // “Nicked the corner with the knife” is the speaker’s; “chipped on the left corner” is how it came.
    private static bool IsTold(Segment segment, Item verb)
    {
        for (var i = segment.First; i < verb.First; i++)
        {
            if (!segment.Covered(i, Cat.Filler) && segment.Word(i) is not ("and" or "then" or "just" or "but" or "so" or "have" or "gone" or "went" or "i" or "now" or "managed" or "to" or ""))
            {
                return false;
            }
        }

        return Moods.Form(verb) is 'P' or 'N' && segment.Word(verb.End) is "the" or "a" or "that" or "it" or "into" && segment.Items.Any(item => item.First >= verb.End && item.Cat is Cat.Zone or Cat.Region or Cat.Side or Cat.Blade);
    }

    private static string OfWord(string word) => word switch
    {
        "tore" or "torn" or "chipped" or "chip" or "snapped" or "broke" or "broken" or "tear" => "broken",
        "crack" or "cracked" or "split" => "cracked",
        "overscraped" or "overdid" or "overdone" or "overdo" => "thin",
        _ => "cut",
    };
}
