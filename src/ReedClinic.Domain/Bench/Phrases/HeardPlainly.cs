using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What is said plainly of a test and was not taken: a push that is needed or isn’t, notes that hold without help, both octaves at once, “again:” before it; and “very thin, this tip”.</summary>
internal static class HeardPlainly
{
    private static readonly string[] Pushes = ["push", "shove", "nudge", "kick", "poke", "jolt"];

    private static readonly string[] Helps = ["help", "support", "lip", "coax", "nurs", "careful", "push", "care", "lean", "assist", "barely", "just", "only", "if", "almost", "nearly", "mostly", "effort", "work", "encourag", "but", "though"];

    private static readonly HashSet<string> Again = ["again", "once", "more", "and", "so", "now", "then", "right", "ok", "okay", "um"];

    private static readonly HashSet<string> Measure = ["very", "too", "so", "quite", "rather", "a", "bit", "little", "touch", "really", "much", "far", "pretty", "slightly", "still", "awfully", "terribly", "hair", ""];

    internal static void Keep(Course course)
    {
        Before(course);
        Feared(course);
        foreach (var draft in course.Drafts)
        {
            if (draft is { Kind: EntryKind.Test, Slots: { Test: TestKind.SoftestStart, Step: "starts softly" or "needs a push" } })
            {
                Push(course, draft);
            }
            else if (draft is { Kind: EntryKind.Test, Slots: { Test: TestKind.HighSteadiness, Step: "holds with help" } } && Spoken.Sentence(course, draft) is var said && Spoken.Whole(course, draft) is var own && own.HasWord("hold") | own.HasWord("holds") | own.HasWord("holding") && !own.Has(Cat.Not) && !Spoken.HasStem(said, Helps))
            {
                draft.Slots = draft.Slots with { Step = "holds" };
                draft.Doubts.RemoveAll(doubt => doubt.Slot is "step");
            }
            else if (draft is { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Cents: null } } && Spoken.Whole(course, draft) is var crow)
            {
                Crow(draft, crow);
            }
        }

        for (var at = 0; at < course.Segments.Count; at++)
        {
            Octaves(course, at);
            Ahead(course, at);
        }
    }

    // “Again: crow C”: heard again, and no work.
    private static void Before(Course course)
    {
        for (var at = course.Drafts.Count - 2; at >= 0; at--)
        {
            var (deed, test) = (course.Drafts[at], course.Drafts[at + 1]);
            if (deed.Kind is EntryKind.Adjustment && test.Kind is EntryKind.Test && test.First == deed.Last + 1 && course.Segments[test.First].Joint is ":" && Spoken.Whole(course, deed) is var said && Enumerable.Range(said.First, said.End - said.First).All(word => said.Tokens[word].Kind is TokenKind.Break || Again.Contains(said.Word(word))))
            {
                test.First = deed.First;
                course.Drafts.RemoveAt(at);
            }
        }
    }

    // “I have to give it a push” needs one; “without a push” doesn’t.
    private static void Push(Course course, Draft draft)
    {
        var own = Spoken.Whole(course, draft);
        var alone = course.Drafts.TrueForAll(other => other == draft || other.Sentence != draft.Sentence || other.Kind is EntryKind.Note);
        var said = alone && !Spoken.HasStem(own, Pushes) ? Spoken.Sentence(course, draft) : own;
        var push = Enumerable.Range(said.First, said.End - said.First).FirstOrDefault(at => Pushes.Any(stem => said.Word(at).StartsWith(stem, StringComparison.Ordinal)), -1);
        if (push < 0 || said.Asked || Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "anymore" or "longer" or "used" or "less" or "before"))
        {
            return;
        }

        var without = Enumerable.Range(push - 3, 3).Any(at => said.Word(at) is "without");
        var denied = without || said.Word(push - 1) is "no" || said.Word(push - 2) is "no" && said.Word(push - 1) is not ("a" or "the") || Enumerable.Range(push - 4, 4).Any(at => said.Word(at) is "not" or "never" && said.Word(at + 1) is "need" or "have" or "take" or "want" or "require" or "needs" or "needed");
        var step = !denied ? said.HasWord("not") || said.HasWord("never") ? null : "needs a push" : without && (said.HasWord("not") || said.HasWord("never")) ? "needs a push" : "starts softly";
        if (step is not null && step != draft.Slots.Step)
        {
            draft.Slots = draft.Slots with { Step = step };
            draft.Doubts.RemoveAll(doubt => doubt.Slot is "step");
        }
    }

    private static void Crow(Draft draft, Segment crow)
    {
        if (draft.Slots.Lean is not null && !crow.Has(Cat.Lean) && !Spoken.HasStem(crow, "flat", "sharp", "high", "low", "under", "over", "up", "down"))
        {
            draft.Slots = draft.Slots with { Lean = null };
        }

        if (draft.Slots.Step is null && IsBoth(crow))
        {
            draft.Slots = draft.Slots with { Step = "high and low all at once", Lean = Spoken.HasStem(crow, "flat", "sharp") ? draft.Slots.Lean : null };
        }
    }

    private static bool IsBoth(Segment segment)
    {
        var once = segment.IndexOfWord("once");
        return once > segment.First && segment.Word(once - 1) is "at" && !segment.Has(Cat.Not) && !segment.HasWord("notes") && !segment.HasWord("note")
            && Enumerable.Range(segment.First, once - segment.First).Any(at => segment.Word(at) is "high" or "top" && segment.Word(at + 1) is "and" && segment.Word(at + 2) is "low" or "bottom" || segment.Word(at) is "low" or "bottom" && segment.Word(at + 1) is "and" && segment.Word(at + 2) is "high" or "top");
    }

    // “… and now it’s high and low at once”, where the crow was the last that was heard.
    private static void Octaves(Course course, int at)
    {
        var segment = course.Segments[at];
        if (segment.Asked || !IsBoth(segment) || segment.Items.Any(item => item.Cat is Cat.Plan or Cat.Cond or Cat.Hedge or Cat.May or Cat.Other or Cat.Verb) || course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is { } over && (over.Head == at || !IsLead(over, at) && over.Kind is not (EntryKind.Adjustment or EntryKind.Note))
            || (course.Drafts.LastOrDefault(draft => draft.Head < at && draft.Kind is EntryKind.Test)?.Slots.Test ?? course.Before.LastPitched?.TestKind) is not TestKind.Crow || Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        (draft.Kind, draft.Slots) = (EntryKind.Test, new ReadSlots { Test = TestKind.Crow, Step = "high and low all at once" });
        draft.Doubts.Clear();
    }

    private static bool IsLead(Draft over, int at)
    {
        if (over is { Kind: EntryKind.Test } && over.First == at && over.Head > at)
        {
            over.First = at + 1;
            return true;
        }

        return false;
    }

    // “Another clip might still send the high notes wild”: feared, and not heard.
    private static void Feared(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Test).ToList())
        {
            if (course.Drafts.Find(risk => risk.Kind is EntryKind.Risk && risk.Sentence == draft.Sentence && risk.Last == draft.First - 1) is { } named && course.Segments[draft.First].Joint.Length == 0)
            {
                Spoken.Join(course, named, draft);
                continue;
            }

            var segment = course.Segments[draft.Head];
            var may = Enumerable.Range(segment.First, segment.End - segment.First).FirstOrDefault(at => segment.Word(at) is "might" or "may" or "could" or "would" or "will" or "'ll", -1);
            if (segment.Asked || may < 0 || segment.Word(segment.First) is "if" || !Enumerable.Range(segment.First, may - segment.First).Any(at => segment.Word(at) is "another" or "more" or "further" && segment.Word(at + 1) is "clip" or "stroke" or "strokes" or "scrape" or "scraping" or "off" or "pass" or "clipping" or "work" or "snip"))
            {
                continue;
            }

            (draft.Kind, draft.Slots) = (EntryKind.Risk, ReadSlots.None);
            draft.Doubts.Clear();
            if (course.Drafts.Find(note => note.Kind is EntryKind.Note && note.Sentence == draft.Sentence && note.Last == draft.First - 1) is { } lead)
            {
                draft.First = lead.First;
                course.Drafts.Remove(lead);
            }
        }
    }

    // “Very thin, this tip”: how it is, and then what.
    private static void Ahead(Course course, int at)
    {
        if (at + 1 >= course.Segments.Count || course.Segments[at] is not { Asked: false } how || course.Segments[at + 1] is not { Joint: "," } what || what.Sentence != how.Sentence || how.Find(Cat.Quality) is not { Value: not null } quality || FindingTable.IsPraise(quality.Value)
            || !Enumerable.Range(how.First, how.End - how.First).All(word => how.Tokens[word].Kind is TokenKind.Break || Measure.Contains(how.Word(word)) || quality.First <= word && word < quality.End)
            || Place(what) is not { } place || FindingTable.Kind(place, quality.Value) is not { } kind || course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is { Kind: not (EntryKind.Test or EntryKind.Finding or EntryKind.Note) })
        {
            return;
        }

        course.Drafts.RemoveAll(draft => draft.Head > at && draft.Head <= at + 2 && draft.Sentence == how.Sentence && draft.Kind is EntryKind.Finding && draft.Slots.Kind == kind || draft.Head == at + 1 && draft.Last == at + 1);
        if (Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        draft.Kind = EntryKind.Finding;
        draft.Slots = new ReadSlots { Kind = kind, Character = FindingCatalogue.Find(new FindingKindId(kind))?.Usually ?? FindingCharacter.Fault, Zone = place.Zone ?? FindingCatalogue.Find(new FindingKindId(kind))?.Zone ?? place.Usual, Blades = place.OneBlade, Sides = place.OneSide, Degree = FindingReader.Degree(how, quality) };
        draft.Last = Math.Max(draft.Last, at + 1);
        draft.Doubts.Clear();
    }

    private static Mention? Place(Segment what)
    {
        var first = what.First;
        return what.Word(first) is "this" or "that" or "these" or "those" && PlaceReader.Read(what) is [{ HasPlace: true } place] && Enumerable.Range(first + 1, what.End - first - 1).All(at => what.Tokens[at].Kind is TokenKind.Break || what.Word(at) is "one" or "of" or "the" or "yours" or "" || place.First <= at && at < place.End) ? place : null;
    }
}
