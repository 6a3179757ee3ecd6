namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Verdict: have a go and see”: called a verdict, and none that is known; the words are a note, which says that none was named.</summary>
public static class OpenVerdict
{
    private static readonly Doubt Open = new("verdict", "no verdict was named, so the words are kept as a note");

    /// <summary>Whether words that are kept as a note are called a verdict, so that whoever reads them must be told that they are none.</summary>
    /// <param name="words">The words.</param>
    public static bool Says(string? words)
    {
        if (words?.Contains("verdict", StringComparison.OrdinalIgnoreCase) != true)
        {
            return false;
        }

        var tokens = Tokenizer.Cut(words);
        var end = tokens.FindIndex(token => token.Kind is TokenKind.Break && token.Text is "." or "?" or "!" or ";") is >= 0 and var stop ? stop : tokens.Count;
        return (end == tokens.Count || !tokens[end].Is("?")) && IsCalled(at => at < end ? tokens[at].Text : "");
    }

    internal static void Keep(Course course)
    {
        if (course.Segments.Count == 0 || course.Segments[0] is not { Asked: false } first || !IsCalled(at => first.Word(first.First + at)) || course.Drafts.Exists(draft => draft.Kind is EntryKind.Verdict))
        {
            return;
        }

        var last = End(course, first, Named(first)) - 1;
        if (WordsIn(course, last) < 2)
        {
            return;
        }

        course.Drafts.RemoveAll(draft => draft.First <= last && draft.Head <= last);
        course.Drafts.ForEach(draft => draft.First = Math.Max(draft.First, last + 1));
        course.Left.RemoveAll(at => at <= last);
        var note = new Draft { Kind = EntryKind.Note, Slots = ReadSlots.None, Head = 0, First = 0, Last = last, Sentence = first.Sentence };
        note.Doubts.Add(Open);
        course.Drafts.Insert(0, note);
    }

    // The last segment that the call itself needs: “verdict:” alone says nothing.
    private static int Named(Segment first) => WordsIn(first) > (first.Word(first.First) is "verdict" ? 1 : 2) ? 0 : 1;

    // What was done, found or tried in the same sentence is its own: the note ends before it.
    private static int End(Course course, Segment first, int named)
    {
        var end = course.Segments.ToList().FindLastIndex(segment => segment.Sentence == first.Sentence) + 1;
        foreach (var draft in course.Drafts.Where(draft => draft.Sentence == first.Sentence && draft.Kind is not EntryKind.Note))
        {
            if (draft.Head > named)
            {
                end = Math.Min(end, Math.Max(draft.First, named + 1));
            }
            else if (draft is { Kind: EntryKind.Adjustment, Slots: { Strokes: not null } or { Mm: not null } })
            {
                end = Math.Min(end, draft.Head);
            }
        }

        return end;
    }

    private static int WordsIn(Course course, int last) => course.Segments.Take(last + 1).Sum(WordsIn);

    private static int WordsIn(Segment segment) => Enumerable.Range(segment.First, segment.End - segment.First).Count(at => segment.Tokens[at].Kind is not TokenKind.Break);

    // “No verdict yet”, “final verdict: …”, and not “the verdict of the band”.
    private static bool IsCalled(Func<int, string> word) => word(0) is "verdict" || word(0) is "my" or "the" or "no" or "final" && word(1) is "verdict" && word(2) is not ("of" or "on" or "was" or "from");
}
