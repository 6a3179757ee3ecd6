namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Stop because it is in tune now”: why the work stops is kept with that it stops, and is no entry of its own; a verdict is one.</summary>
internal static class Reasons
{
    internal static void Keep(Course course)
    {
        for (var i = 0; i < course.Drafts.Count; i++)
        {
            if (course.Drafts[i] is { Kind: EntryKind.Stopped } stopped && Why(course, stopped) is { } why)
            {
                Take(course, i, why);
            }
        }
    }

    private static int? Why(Course course, Draft stopped)
    {
        for (var at = stopped.Head + 1; at < course.Segments.Count && course.Segments[at].Sentence == stopped.Sentence; at++)
        {
            if (course.Segments[at] is var segment && segment.Word(segment.First) is "because" or "since" or "as")
            {
                return at;
            }
        }

        return null;
    }

    private static void Take(Course course, int index, int why)
    {
        var stopped = course.Drafts[index];
        var verdict = course.Drafts.FindIndex(index + 1, draft => draft.Kind is EntryKind.Verdict && draft.Sentence == stopped.Sentence);
        var end = verdict >= 0 ? course.Drafts[verdict].First : course.Segments.Count;
        course.Drafts.RemoveAll(draft => draft != stopped && draft.First >= why && draft.First < end && draft.Sentence == stopped.Sentence && draft.Kind is not EntryKind.Verdict);
        while (stopped.Last + 1 < end && course.Segments[stopped.Last + 1].Sentence == stopped.Sentence && course.Drafts.TrueForAll(draft => draft.First != stopped.Last + 1))
        {
            stopped.Last++;
        }
    }
}
