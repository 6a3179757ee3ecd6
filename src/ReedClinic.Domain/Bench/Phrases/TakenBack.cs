namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Undo that”, “take back the crack”: what is taken back is not said once more; the words are kept as a remark.</summary>
internal static class TakenBack
{
    internal static void Keep(Course course)
    {
        if (course.Segments.Count == 0 || !Says(course.Segments[0]))
        {
            return;
        }

        course.Drafts.Clear();
        course.Left.Clear();
        course.At = 0;
        var note = course.Add(EntryKind.Note, ReadSlots.None);
        note.Last = course.Segments.Count - 1;
        note.Doubts.Add(new Doubt("kind", "unsure whether this takes something back, so it is kept as a note"));
    }

    private static bool Says(Segment segment) => (segment.Word(segment.First), segment.Word(segment.First + 1), segment.Word(segment.First + 2)) switch
    {
        ("undo" or "delete" or "erase", _, _) => true,
        ("remove", "that", _) or ("remove", "the" or "my", "last") => true,
        ("take", "back", _) or ("take", "that" or "it", "back") => !segment.Has(Cat.Stroke) && !segment.Has(Cat.Mm),
        _ => false,
    };
}
