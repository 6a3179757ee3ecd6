namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Segments that say nothing of their own but colour a finding.</summary>
internal static class Colours
{
    /// <summary>Words that only colour a finding: how sure, how known, how it came.</summary>
    internal static bool TryRead(Course course)
    {
        var segment = course.Segment;
        if (segment.Has(Cat.Known) && !segment.Has(Cat.Quality) && !segment.Has(Cat.Good) && !segment.Has(Cat.Plan) && segment.Joint is not "so" && course.LastInSentence is null && Ahead(course) && course.Segments[course.At + 1].Sentence == segment.Sentence)
        {
            course.Topic = PlaceReader.Read(segment).FirstOrDefault(mention => mention.HasPlace) ?? course.Topic;
            course.Ahead = course.Ahead with { Known = FindingReader.Known(segment) };
            return true;
        }

        if (PlaceReader.Read(segment).Any(mention => mention.HasPlace))
        {
            return false;
        }

        if (segment.Has(Cat.Caused) || segment.Has(Cat.SeenLater))
        {
            return Arises(course);
        }

        if (segment.Has(Cat.Taste))
        {
            return course.LastInSentence is { Kind: EntryKind.Finding } && course.Absorb(aside: false);
        }

        if (FindingReader.Known(segment) is { } known)
        {
            return Colour(course, slots => slots with { Known = slots.Known ?? known });
        }

        return segment.Has(Cat.Hedge) && !segment.Has(Cat.Verb) && !segment.Has(Cat.Plan) && !segment.Has(Cat.Stage)
            && Colour(course, slots => slots with { Certainty = Certainty.Suspected });
    }

    // How it came: by the speaker’s work, or seen late.
    private static bool Arises(Course course)
    {
        var segment = course.Segment;
        if (segment.Find(Cat.Caused) is { } mine && segment.Word(mine.First - 1) is "not" or "never")
        {
            return course.Absorb(aside: false);
        }

        var arose = segment.Has(Cat.Caused) ? Arose.CausedByTheWork : Arose.SeenLaterAlreadyThere;
        if (course.LastInSentence is { Kind: EntryKind.Finding } found && found.Slots.Arose is null)
        {
            found.Slots = found.Slots with { Arose = arose };
            return course.Absorb(aside: false);
        }

        course.Ahead = course.Ahead with { Arose = arose };
        return course.Absorb(aside: false) || Ahead(course);
    }

    /// <summary>“…, it catches my finger every time”: how the finding before is known.</summary>
    internal static bool KnownToo(Course course)
    {
        var segment = course.Segment;
        if (course.LastInSentence is not { Kind: EntryKind.Finding, Slots.Known: null } found || FindingReader.Known(segment) is not { } known || segment.Has(Cat.Quality) || segment.Has(Cat.Good) || segment.Has(Cat.Test) || segment.Has(Cat.Plan)
            || Moods.Head(segment) is { } verb && Moods.Action(verb) is not ("light" or "other" or "take") || PlaceReader.Read(segment).Any(mention => mention.HasPlace))
        {
            return false;
        }

        found.Slots = found.Slots with { Known = known };
        return course.Absorb(aside: false);
    }

    private static bool Colour(Course course, Func<ReadSlots, ReadSlots> change)
    {
        if (course.LastInSentence is { Kind: EntryKind.Finding } found)
        {
            found.Slots = change(found.Slots);
            return course.Absorb(aside: false);
        }

        if (course.LastInSentence is { Kind: EntryKind.Adjustment } deed && deed.Last == course.At - 1 && course.Segment.Has(Cat.Hedge) && Moods.Head(course.Segments[deed.First]) is { } verb && Moods.Form(verb) is 'B' && deed.First == deed.Last)
        {
            deed.Kind = EntryKind.Note;
            deed.Slots = ReadSlots.None;
            deed.Doubts.Add(new Doubt("kind", "unsure whether this was done, so it is kept as a note"));
            return course.Absorb(aside: false);
        }

        if (course.LastInSentence is { } other)
        {
            return other.Kind is EntryKind.Test or EntryKind.Adjustment && course.Absorb();
        }

        course.Ahead = change(course.Ahead);
        return Ahead(course);
    }

    private static bool Ahead(Course course) => course.At + 1 < course.Segments.Count;
}
