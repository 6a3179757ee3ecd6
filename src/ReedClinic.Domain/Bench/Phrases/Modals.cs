namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“The leak should be gone” ends nothing; “gone, as it should be” and “better than I would have thought” do, and are shown with a doubt.</summary>
internal static class Modals
{
    private static readonly Doubt SoNow = new("kind", "“would” or “should” was said: taken for what is so now");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            if (draft is { Kind: EntryKind.Note } or { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.Improved } && EndedBeyond(course, draft) is { } kind)
            {
                draft.Kind = EntryKind.FindingEnded;
                draft.Slots = new ReadSlots { Kind = kind, Ending = FindingEnding.Better };
                draft.Doubts.Clear();
            }

            if (draft.Kind is EntryKind.FindingEnded)
            {
                Keep(course, draft);
            }
        }
    }

    // “Better than I would have thought”, where something was found and no test is spoken of.
    private static string? EndedBeyond(Course course, Draft draft)
    {
        var segment = course.Segments[draft.Head];
        var thought = Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "than" && segment.Word(at + 1) is "i" or "we" or "you" && segment.Word(at + 2) is "would" or "'d" or "had" && segment.Word(at + 3) is "have" && segment.Word(at + 4) is "thought" or "expected" or "hoped" or "feared" or "guessed");
        return draft.First == draft.Last && thought && course.Before.LastFinding is not null && segment.Find(Cat.Ended) is { Value: nameof(FindingEnding.Better) } && !segment.Has(Cat.Test) && !segment.HasWord("notes") && !segment.Has(Cat.Not) && !segment.Asked
            ? EndedReader.KindAt(course, draft.Head, segment)
            : null;
    }

    private static void Keep(Course course, Draft ended)
    {
        var whole = course.Segments[ended.First].With(course.Segments[ended.Last]);
        var modals = Enumerable.Range(whole.First, whole.End - whole.First).Where(at => whole.Word(at) is "would" or "should").ToList();
        if (modals.Count == 0)
        {
            return;
        }

        if (ended.Slots.Ending is FindingEnding.LeftOnPurpose || End(course.Segments[ended.Head]) is not { } end || modals.Exists(at => at < end && !IsAside(whole, at)))
        {
            ended.Kind = EntryKind.Note;
            ended.Slots = ReadSlots.None;
            return;
        }

        ended.Doubts.Add(SoNow);
    }

    // The word that says that it ended.
    private static int? End(Segment segment) => (segment.Find(Cat.Ended) ?? segment.Find(Cat.Good) ?? segment.Find(Cat.Quality))?.First;

    // “As they should”, “than I would have thought”, “I should say”.
    private static bool IsAside(Segment segment, int modal) => segment.Word(modal - 1) is "i" or "we" && segment.Word(modal + 1) is "say" or "think" or "call"
        || Enumerable.Range(modal - 3, 3).Any(at => segment.Word(at) is "as" or "than");
}
