using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Reads praise, and what is only a matter of taste.</summary>
internal static class Praises
{
    /// <summary>“Open” and “bright” are a matter of taste only when they are called so.</summary>
    internal static bool Plain(Course course, Mention? place, string kind, Item quality) => kind switch
    {
        "tip-blunter-than-liked" => FindingReader.Add(course, place, kind, FindingCharacter.Taste, quality),
        "more-open-than-liked" when course.Segment.HasWord("too") && place?.Zone is Zone.Opening => FindingReader.Add(course, place, "opening-wide", FindingCharacter.Fault, quality),
        "more-open-than-liked" when place?.Zone is Zone.Opening && course.Segments.Any(other => other.Sentence == course.Segment.Sentence && other.Has(Cat.Taste)) => FindingReader.Add(course, place, kind, FindingCharacter.Taste, quality),
        "brighter-than-liked" when course.Segments.Any(other => other.Sentence == course.Segment.Sentence && other.Has(Cat.Taste)) => FindingReader.Add(course, place, kind, FindingCharacter.Taste, quality),
        _ => false,
    };

    internal static bool Taste(Course course, Mention? place, string quality)
    {
        var kind = quality switch
        {
            "open" or "wide" => "more-open-than-liked",
            "bright" => "brighter-than-liked",
            "blunt" => "tip-blunter-than-liked",
            _ => "something-else",
        };
        var at = course.Segment.Items.First(item => item.Cat == Cat.Quality && item.Value == quality);
        return FindingReader.Add(course, place, kind, FindingCharacter.Taste, at);
    }

    internal static bool Read(Course course, List<Mention> mentions, Item good)
    {
        var place = FindingReader.PlaceOf(course, mentions, good);
        if (course.Segment.HasWord("cane") && place?.HasPlace != true && !Denials.IsDenied(course.Segment, good))
        {
            return FindingReader.Add(course, new Mention { Zone = Zone.WholeReed }, "something-else", FindingCharacter.Strength, good);
        }

        if (mentions.Count == 0 && course.Segment.HasWord("it") && course.LastInSentence is { Kind: EntryKind.LeaveAlone } && course.Topic is { HasPlace: true } left)
        {
            return FindingReader.Add(course, left, FindingTable.Kind(left, "good") ?? "something-else", FindingCharacter.Strength, good);
        }

        if (place?.HasPlace != true || Denials.IsDenied(course.Segment, good) || mentions.All(mention => !mention.HasPlace))
        {
            return false;
        }

        var kind = FindingTable.Kind(place, "good") ?? "something-else";
        return FindingReader.Add(course, place, kind, FindingCharacter.Strength, good);
    }
}
