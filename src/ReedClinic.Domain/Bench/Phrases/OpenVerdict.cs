namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Verdict: have a go and see”: called a verdict, and none that is known; the words are a note, which says that the verdict is still open.</summary>
internal static class OpenVerdict
{
    internal static readonly Doubt Open = new("verdict", "no verdict was named, so the verdict is still open and the words are kept as a note");

    internal static void Keep(Course course)
    {
        if (course.Segments.Count == 0 || course.Segments[0] is not { Asked: false } first || !IsCalled(first) || course.Drafts.Exists(draft => draft.Kind is EntryKind.Verdict))
        {
            return;
        }

        var last = course.Segments.ToList().FindLastIndex(segment => segment.Sentence == first.Sentence);
        var words = course.Segments.Take(last + 1).SelectMany(segment => Enumerable.Range(segment.First, segment.End - segment.First).Where(at => segment.Tokens[at].Kind is not TokenKind.Break));
        if (words.Count() < 2)
        {
            return;
        }

        course.Drafts.RemoveAll(draft => draft.First <= last);
        course.Left.RemoveAll(at => at <= last);
        var note = new Draft { Kind = EntryKind.Note, Slots = ReadSlots.None, Head = 0, First = 0, Last = last, Sentence = first.Sentence };
        note.Doubts.Add(Open);
        course.Drafts.Insert(0, note);
    }

    private static bool IsCalled(Segment first) => first.Word(first.First) is "verdict" || first.Word(first.First) is "my" or "the" or "no" or "final" && first.Word(first.First + 1) is "verdict" && first.Word(first.First + 2) is not ("of" or "on" or "was" or "from");
}
