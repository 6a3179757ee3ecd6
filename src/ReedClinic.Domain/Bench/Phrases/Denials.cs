using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Reads what was looked for and isn't there.</summary>
internal static class Denials
{
    /// <summary>Whether a word for how a place is has a denial before it, in its own part of the segment.</summary>
    internal static bool IsDenied(Segment segment, Item quality)
    {
        foreach (var not in segment.All(Cat.Not))
        {
            if (not.End <= quality.First && quality.First - not.End <= 6 && !IsOfAnother(segment, not, quality) && segment.Word(not.End) is not ("only" or "just" or "much")
                && segment.Word(not.First) is not "any" | segment.HasWord("not"))
            {
                return true;
            }
        }

        return false;
    }

    // “Not the left that is thick”, “not enough off, still thick”: what is denied is something else.
    private static bool IsOfAnother(Segment segment, Item not, Item quality)
    {
        for (var i = not.End; i < quality.First; i++)
        {
            if (segment.Word(i) is "but" or "still" or "although" or "though" or "enough")
            {
                return true;
            }
        }

        return false;
    }

    internal static bool Read(Course course, string kind, Mention? place, Item quality)
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
                "spine-intact" => "spine-scraped",
                "rails-intact" => "rails-cut",
                _ => null,
            };
            return opposite is not null && FindingReader.Add(course, place, opposite, FindingCharacter.Fault, quality);
        }

        if (kind is "no-slip" or "tip-not-separate" && !segment.HasWord("not"))
        {
            return FindingReader.Add(course, place, kind, character, quality);
        }

        if (segment.Has(Cat.NoMore) && course.Before.LastFinding is not null)
        {
            course.Add(EntryKind.FindingEnded, new ReadSlots { Kind = kind, Ending = FindingEnding.Gone });
            return true;
        }

        course.Topic = place?.HasPlace == true ? place : course.Topic;
        course.Add(EntryKind.LookedFor, new ReadSlots { Kind = kind, Known = FindingReader.Known(segment) ?? course.Ahead.Known });
        course.Ahead = ReadSlots.None;
        course.Pending = null;
        return true;
    }

    /// <summary>“I’d have called it thin, but the gauge says no”: what was just said isn’t so.</summary>
    internal static bool Refutes(Course course)
    {
        var segment = course.Segment;
        if (course.LastInSentence is not { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Kind: { } kind } } found || found.Last != course.At - 1 || segment.Joint is not "but" || segment.Has(Cat.Quality) || segment.Has(Cat.Good) || segment.Has(Cat.Test) || Moods.Head(segment) is not null
            || PlaceReader.Read(segment).Any(mention => mention.HasPlace) || !(segment.Has(Cat.Not) && (segment.Word(segment.End - 1) is "not" or "no" || segment.Word(segment.End - 2) is "not" or "no" || segment.HasWord("says"))))
        {
            return false;
        }

        found.Kind = EntryKind.LookedFor;
        found.Slots = new ReadSlots { Kind = kind, Known = found.Slots.Known ?? FindingReader.Known(segment) };
        return course.Absorb(aside: false);
    }

    // “I went looking for a crack”.
    internal static bool IsSought(Segment segment, Item quality) => Enumerable.Range(segment.First, quality.First - segment.First).Any(at => segment.Word(at) is "for"
        && Enumerable.Range(segment.First, at - segment.First).Any(before => segment.Word(before) is "looking" or "looked" or "look" or "searched" or "searching" or "checked" or "checking" or "hunted" or "hunting" or "felt" or "feeling" or "listened" or "listening" or "tested"));

    /// <summary>“… and there isn’t one”: what becomes of the search is said in the next breath, or the search is a remark.</summary>
    internal static bool Sought(Course course, string kind, Mention? place, Item quality)
    {
        var next = course.At + 1 < course.Segments.Count ? course.Segments[course.At + 1] : null;
        if (next is null || next.Sentence > course.Segment.Sentence + 1 || !(next.Has(Cat.Not) || next.HasWord("none") || next.HasWord("nothing")) || next.Has(Cat.Zone))
        {
            course.AddNote();
            return true;
        }

        Read(course, kind, place, quality);
        course.Last!.Last = ++course.At;
        return true;
    }
}
