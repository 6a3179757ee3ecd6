namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Stopped to protect it” is a stop and what became of the reed, in whatever order and form it is said.</summary>
internal static class Protections
{
    internal static void Keep(Course course)
    {
        Stop(course);
        var at = Enumerable.Range(0, course.Segments.Count).Where(segment => Says(course.Segments[segment])).DefaultIfEmpty(-1).First();
        if (at < 0 || course.Drafts.FindIndex(draft => draft.Kind is EntryKind.Stopped && draft.Sentence == course.Segments[at].Sentence) is not (>= 0 and var index) || course.Drafts.Exists(draft => draft.Kind is EntryKind.Verdict))
        {
            return;
        }

        var stopped = course.Drafts[index];
        course.At = Math.Max(at, stopped.Head);
        var verdict = new Draft { Kind = EntryKind.Verdict, Slots = new ReadSlots { Verdict = VerdictKind.StoppedToProtectIt }, Head = course.At, First = course.At, Last = course.At, Sentence = stopped.Sentence };
        course.Drafts.Insert(index + 1, verdict);
        course.At = course.Segments.Count;
    }

    // “Stopped there to protect the tip”, where only what became of the reed was read.
    private static void Stop(Course course)
    {
        var index = course.Drafts.FindIndex(draft => draft is { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.StoppedToProtectIt });
        if (index >= 0 && course.Drafts[index] is var verdict && course.Segments[verdict.Head] is var segment && Says(segment) && !segment.HasWord("verdict") && !course.Drafts.Exists(draft => draft.Kind is EntryKind.Stopped) && Spoken.HasStem(segment, "stop", "cease", "quit", "finish"))
        {
            course.Drafts.Insert(index, new Draft { Kind = EntryKind.Stopped, Slots = ReadSlots.None, Head = verdict.Head, First = verdict.First, Last = verdict.Head, Sentence = verdict.Sentence });
        }
    }

    private static bool Says(Segment segment) => !segment.Asked && !segment.Has(Cat.Not) && !segment.Has(Cat.Cond) && (segment.HasWord("protect") || segment.HasWord("protecting"));
}
