namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What is hardly a remark is none beside an entry of its sentence; and where nothing was read at all, what may be a remark is one.</summary>
internal static class Likelihood
{
    private const double Beside = 0.6;
    private const double Alone = 0.2;

    /// <summary>Settles what is a remark once the whole phrase has been read.</summary>
    internal static void Settle(Course course)
    {
        DropUnlikely(course);
        if (course.Drafts.Count == 0 && course.Segments.Count > 0 && (course.Remarks.Values.DefaultIfEmpty(0).Max() >= Alone || course.Segments.Any(IsAsked)))
        {
            course.At = 0;
            course.Left.Clear();
            course.Add(EntryKind.Note, ReadSlots.None).Last = course.Segments.Count - 1;
        }
    }

    // “Wait, where did I put the plaque”, “is this number two or three”: asked without a mark, of what lies on the bench.
    private static bool IsAsked(Segment segment) => (segment.HasWord("which") || segment.HasWord("number") || segment.HasWord("reed") || segment.HasWord("plaque") || segment.HasWord("knife"))
        && Enumerable.Range(segment.First, Math.Min(5, segment.End - segment.First)).Any(at => segment.Word(at) is "where" && segment.Word(at + 1) is "did" or "is" or "'s" or "are" or "have" or "has" || segment.Word(at) is "is" && segment.Word(at + 1) is "this" or "that" || segment.Word(at) is "which" && segment.Word(at + 1) is "of" or "one" or "reed");

    /// <summary>“Not clipping. Not yet.”: remarks in a row are one.</summary>
    internal static void Join(Course course)
    {
        for (var at = course.Drafts.Count - 1; at > 0; at--)
        {
            var (one, other) = (course.Drafts[at - 1], course.Drafts[at]);
            if (one.Kind is EntryKind.Note && other.Kind is EntryKind.Note)
            {
                one.Last = Math.Max(one.Last, other.Last);
                one.Doubts.AddRange(other.Doubts.Except(one.Doubts).ToList());
                course.Drafts.RemoveAt(at);
            }
        }
    }

    // “No wonder nothing moves” behind a finding: an aside.
    private static void DropUnlikely(Course course)
    {
        foreach (var note in course.Drafts.Where(draft => draft.Kind is EntryKind.Note && draft.Doubts.Count == 0 && course.Remarks.TryGetValue(draft.Head, out var remark) && remark < Beside).ToList())
        {
            if (course.Drafts.Exists(other => other != note && other.Sentence == note.Sentence && other.Kind is not EntryKind.Note))
            {
                Take(course, note);
            }
        }
    }

    // Its words go to the entry before it, or after it.
    private static void Take(Course course, Draft note)
    {
        if (course.Drafts.Find(other => other != note && other.Last == note.First - 1 && other.Sentence == note.Sentence) is { } before)
        {
            (before.Last, before.HasAside) = (note.Last, true);
        }
        else if (course.Drafts.Find(other => other != note && other.First == note.Last + 1 && other.Sentence == note.Sentence) is { } after)
        {
            (after.First, after.HasAside) = (note.First, true);
        }

        course.Drafts.Remove(note);
    }
}
