namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Came up to a C”, after a peep; “the reed is shut, closed completely”; “any more and I’d lose the A”; “the train was late”: which test is meant, or that none is.</summary>
internal static class ToldOfTests
{
    private static readonly HashSet<string> Moved = ["came", "come", "went", "gone", "rose", "dropped", "fell", "climbed", "moved", "jumped", "slid", "crept"];

    private static readonly HashSet<string> Both = ["both", "all", "octave", "octaves", "high", "low", "once", "together", "full", "chord", "cackle", "rattle"];

    private static readonly HashSet<string> Shut = [.. "the reed tip it opening mouth gap is 's has been are shut closed completely tight tightly right up fully totally quite entirely clean flat clamped clammed and now just this one blades".Split(' ')];

    private static readonly HashSet<string> Others = ["train", "bus", "tram", "car", "ferry", "plane", "post", "postman", "parcel", "kettle", "coffee", "tea", "lunch", "supper", "dinner", "weather", "concert", "rehearsal", "lesson", "class", "student", "conductor", "delivery", "taxi", "meeting", "bell", "telephone", "phone", "orchestra", "pianist", "choir"];

    private static readonly Doubt Else = new("test", "said of something else than the reed, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var whole = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Test or EntryKind.Finding } when IsOfElse(whole):
                    Spoken.Unmake(draft, Else);
                    break;
                case { Kind: EntryKind.Test } when IsFeared(Ahead(course, draft)):
                    draft.First = Ahead(course, draft).First < course.Segments[draft.First].First && !course.Drafts.Exists(other => other.First <= draft.First - 1 && draft.First - 1 <= other.Last) ? draft.First - 1 : draft.First;
                    course.Left.RemoveAll(left => left == draft.First);
                    (draft.Kind, draft.Slots) = (EntryKind.Risk, ReadSlots.None);
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Pitch: not null } } when GoesOn(course, draft, whole):
                    draft.Slots = draft.Slots with { Test = TestKind.Peep, Step = null };
                    break;
                case { Kind: EntryKind.Test, Slots: { Between: not null, Step: "high and low all at once" } } when !Spoken.HasAny(whole, Both):
                    draft.Slots = draft.Slots with { Step = null };
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.TuningNote, Pitch: null, Cents: not null } } when whole.Word(whole.First) is "a" && whole.Word(whole.First + 1) is "is" or "'s" or "sits" or "was":
                    draft.Slots = draft.Slots with { Pitch = "A" };
                    break;
            }
        }

        for (var at = 0; at < course.Segments.Count; at++)
        {
            Closed(course, at);
        }
    }

    // The words with those right before them in the sentence.
    private static Segment Ahead(Course course, Draft draft) => Spoken.Whole(course, draft.First > 0 && course.Segments[draft.First - 1].Sentence == draft.Sentence ? draft.First - 1 : draft.First, draft.Last);

    // “The train was late”.
    private static bool IsOfElse(Segment whole)
    {
        var verb = Enumerable.Range(whole.First, whole.End - whole.First).FirstOrDefault(at => whole.Word(at) is "is" or "was" or "'s" or "were" or "are" or "ran" or "started" or "came", -1);
        return verb > whole.First && Others.Contains(whole.Word(verb - 1)) && whole.Word(verb - 2) is "the" or "my" or "our" or "a" or "" or "his" or "her" or "today" && PlaceReader.Read(whole).Count == 0 && !Spoken.HasStem(whole, "crow", "peep", "reed", "note", "blow");
    }

    // “Any more and I’d lose the A”.
    private static bool IsFeared(Segment whole)
    {
        for (var at = whole.First; at < whole.End; at++)
        {
            if (whole.Word(at) is "and" && whole.Word(at - 1) is "more" or "stroke" or "further" or "clip" or "scrape" or "that" or "off" && Enumerable.Range(whole.First, at - whole.First).Any(word => whole.Word(word) is "any" or "another" or "more") && Enumerable.Range(at + 1, Math.Min(3, whole.End - at - 1)).Any(word => whole.Word(word) is "would" or "'d" or "'ll" or "will" or "might" or "could"))
            {
                return Spoken.HasStem(whole, "lose", "wreck", "ruin", "kill", "spoil", "gone", "go", "sag", "drop", "collapse");
            }
        }

        return false;
    }

    // “Came up to a C”: which note it is now, of the test that was told of last.
    private static bool GoesOn(Course course, Draft draft, Segment whole)
    {
        if (Spoken.HasStem(whole, "crow", "cackl", "octave") || !Spoken.HasAny(whole, Moved) || whole.Has(Cat.Test))
        {
            return false;
        }

        var here = course.Drafts.LastOrDefault(other => other.Head < draft.Head && other.Kind is EntryKind.Test && other.Slots.Test is TestKind.Crow or TestKind.Peep);
        return here is not null ? here.Slots.Test is TestKind.Peep : course.Before.Log.Live<Test>().OrderBy(fact => fact.Sequence).LastOrDefault(fact => fact.Now.TestKind is TestKind.Crow or TestKind.Peep)?.Now.TestKind is TestKind.Peep;
    }

    // “The reed is shut”, “the tip’s closed completely”: what nobody squeezed.
    private static void Closed(Course course, int at)
    {
        var segment = course.Segments[at];
        if (segment.Asked || !(segment.HasWord("shut") || segment.HasWord("closed")) || !(segment.HasWord("is") || segment.HasWord("'s") || segment.HasWord("are")) || !(segment.HasWord("reed") || segment.HasWord("tip") || segment.HasWord("opening") || segment.HasWord("mouth") || segment.HasWord("gap"))
            || !Enumerable.Range(segment.First, segment.End - segment.First).All(word => segment.Tokens[word].Kind is TokenKind.Break || Shut.Contains(segment.Word(word)) || segment.Word(word).Length == 0) || course.Drafts.Exists(draft => draft.First <= at && at <= draft.Last && !(draft.Kind is EntryKind.Note || draft is { Kind: EntryKind.Finding, Slots.Kind: "seals-well" or "opening-narrow" } && draft.Head == at)) || Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        (draft.Kind, draft.Slots) = (EntryKind.Test, new ReadSlots { Test = TestKind.Opening, Step = "closed" });
        draft.Doubts.Clear();
        while (draft.Last + 1 < course.Segments.Count && course.Segments[draft.Last + 1] is var more && more.Sentence == segment.Sentence && !course.Drafts.Exists(other => other.First <= draft.Last + 1 && draft.Last + 1 <= other.Last) && Enumerable.Range(more.First, more.End - more.First).All(word => more.Tokens[word].Kind is TokenKind.Break || Shut.Contains(more.Word(word))))
        {
            draft.Last++;
            course.Left.RemoveAll(left => left == draft.Last);
        }
    }
}
