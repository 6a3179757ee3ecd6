using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>Reads a segment as the kind of entry that it was judged to be.</summary>
internal static class Judged
{
    // Below this chance what the judge alone made of a segment is shown as doubtful.
    private const double SureEnough = 0.6;

    internal static bool Read(Course course, string kind, Sight sight)
    {
        Enter(course);
        var before = course.Drafts.Count;
        var read = As(course, kind, sight);
        if (read && course.Drafts.Count > before && kind is not "note" && kind != sight.Said && sight.Opinion.Chance(Questions.Kind, kind) < SureEnough)
        {
            course.Drafts[^1].Doubts.Add(new Doubt("kind", "unsure whether this is what was meant"));
        }

        return read;
    }

    private static bool As(Course course, string kind, Sight sight)
    {
        var opinion = sight.Opinion;
        return kind switch
        {
            Judge.Nothing => Drop(course),
            "note" => Note(course, sight.Said),
            "stopped" => Add(course, EntryKind.Stopped, ReadSlots.None),
            "verdict" => Add(course, EntryKind.Verdict, new ReadSlots { Verdict = Enum.Parse<VerdictKind>(opinion.Best(Questions.Verdict)) }),
            "risk" => Add(course, EntryKind.Risk, new ReadSlots { Zone = Place(course)?.Usual }),
            "riskclosed" => Add(course, EntryKind.RiskClosed, new ReadSlots { Outcome = Enum.Parse<RiskOutcome>(opinion.Best(Questions.RiskClosed)) }),
            "leavealone" => Leave(course),
            "ended" => Ended(course, opinion),
            "lookedfor" => LookedFor(course, opinion),
            "finding" => Find(course, opinion),
            "test" => Test(course, opinion),
            "adjustment" => Deed(course, opinion),
            _ => false,
        };
    }

    private static void Enter(Course course)
    {
        if (course.At > 0 && course.Segments[course.At - 1].Sentence != course.Segment.Sentence)
        {
            course.Carried = Mood.None;
            course.Sake = null;
            course.BreathBlade = null;
            course.BreathSide = null;
        }
    }

    private static bool Add(Course course, EntryKind kind, ReadSlots slots)
    {
        course.Add(kind, slots);
        return true;
    }

    private static bool Drop(Course course)
    {
        if (course.LastInSentence is not null)
        {
            return course.Absorb();
        }

        course.Left.Add(course.At);
        return true;
    }

    private static bool Note(Course course, string said)
    {
        course.AddNote(unsure: said is "adjustment");
        return true;
    }

    private static Mention? Place(Course course)
    {
        var mentions = PlaceReader.Read(course.Segment);
        var place = mentions.FirstOrDefault(mention => mention.HasPlace);
        foreach (var other in mentions.Where(mention => !ReferenceEquals(mention, place)))
        {
            place = (place ?? new Mention()) with { Blade = place?.Blade ?? other.Blade, Side = place?.Side ?? other.Side };
        }

        return place;
    }

    private static bool Leave(Course course)
    {
        var place = Place(course) is { } named ? named.HasPlace ? named : named with { Zone = Zone.WholeReed } : course.Pending ?? LeaveReader.SpokenOf(course);
        if (place is null)
        {
            return false;
        }

        course.Topic = place;
        return Add(course, EntryKind.LeaveAlone, new ReadSlots { Zone = place.Usual, Blades = place.OneBlade, Sides = place.OneSide });
    }

    private static bool Ended(Course course, Opinion opinion)
    {
        var kind = EndedReader.Kind(course, course.Segment, PlaceReader.Read(course.Segment));
        return kind is not null && Add(course, EntryKind.FindingEnded, new ReadSlots { Kind = kind, Ending = Enum.Parse<FindingEnding>(opinion.Best(Questions.Ended)) });
    }

    private static bool LookedFor(Course course, Opinion opinion)
    {
        Add(course, EntryKind.LookedFor, new ReadSlots { Kind = opinion.Best(Questions.Finding), Known = FindingReader.Known(course.Segment) });
        Doubt(course, opinion, Questions.Finding, "kind", "unsure which finding was meant");
        return true;
    }

    // What the judge named by itself, and isn’t sure of, slot by slot.
    private static void Doubt(Course course, Opinion opinion, string question, string slot, string words)
    {
        if (opinion.Chance(question, opinion.Best(question)) < SureEnough)
        {
            course.Drafts[^1].Doubts.Add(new Doubt(slot, words));
        }
    }

    private static bool Find(Course course, Opinion opinion)
    {
        var ruled = course.Copy();
        if (FindingReader.TryRead(ruled) && ruled.Drafts.Count > course.Drafts.Count && ruled.Last is { Kind: EntryKind.Finding, Slots.Kind: not "something-else" } found)
        {
            course.Drafts.Add(found);
            course.Topic = ruled.Topic;
            course.Pending = null;
            course.Ahead = ruled.Ahead;
            return true;
        }

        var kind = opinion.Best(Questions.Finding);
        var known = FindingCatalogue.Find(new FindingKindId(kind));
        var place = Place(course) ?? course.Pending;
        var segment = course.Segment;
        course.Add(EntryKind.Finding, FindingReader.Details(course, new ReadSlots
        {
            Kind = kind,
            Character = known?.Usually ?? FindingCharacter.Fault,
            Zone = place?.Zone ?? (known?.Zone is null or Zone.WholeReed ? place?.Usual : null) ?? known?.Zone ?? Zone.WholeReed,
            Blades = place?.OneBlade,
            Sides = place?.OneSide,
            Degree = FindingReader.Degree(segment, new Item(Cat.Quality, "", segment.End, segment.End)),
        }));
        Doubt(course, opinion, Questions.Finding, "kind", "unsure which finding was meant");
        if (place is null && course.Drafts[^1].Slots.Zone is not Zone.WholeReed)
        {
            course.Drafts[^1].Doubts.Add(new Doubt("zone", "no place was said, so the usual one was taken"));
        }

        course.Topic = place ?? course.Topic;
        course.Pending = null;
        return true;
    }

    private static bool Test(Course course, Opinion opinion)
    {
        var ruled = course.Copy();
        if (TestReader.TryRead(ruled) && ruled.Drafts.Count > course.Drafts.Count && ruled.Last is { Kind: EntryKind.Test } read)
        {
            course.Drafts.Add(read);
            return true;
        }

        var answer = opinion.Best(Questions.Test).Split('/');
        var test = Enum.Parse<TestKind>(answer[0]);
        if (test is TestKind.Length)
        {
            // A length is its number, and that only the rules read.
            return false;
        }

        var pitch = PitchReader.Read(course.Segment, test is TestKind.LowResponse or TestKind.HighSteadiness);
        course.Add(EntryKind.Test, TestReader.Pitched(new ReadSlots { Test = test, Step = answer[1] is "-" ? null : answer[1], Pitch = pitch.Note?.Name }, test, pitch));
        Doubt(course, opinion, Questions.Test, "step", "unsure which test or which word of its scale was meant");
        return true;
    }

    private static bool Deed(Course course, Opinion opinion)
    {
        var segment = Purpose.Trim(course, out var sake);
        var mentions = PlaceReader.Read(segment);
        var deed = new DeedParts(course, segment, Moods.Head(segment), mentions, AmountReader.Read(segment, segment.First, segment.End));
        var ruled = DeedKind.Of(deed);
        var guessed = deed.Verb is null || ruled is "something-else";
        DeedReader.Write(deed, sake, guessed ? opinion.Best(Questions.Adjustment) : ruled);
        if (guessed)
        {
            Doubt(course, opinion, Questions.Adjustment, "kind", "unsure which work it was");
        }

        return true;
    }
}
