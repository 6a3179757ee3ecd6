namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Three strokes, no more than that”: how much it was, and no end of what was found.</summary>
internal static class NoMoreThanThat
{
    private static readonly HashSet<string> Words = ["no", "not", "and", "but", "or", "more", "than", "that", "this", "those", "it", "them", "nothing", "further", "only", "just", "so", "then", "now", "for", "definitely", "certainly", "a", "stroke", "ok", ""];

    private static readonly Doubt Limit = new("kind", "that it was no more, and not whether what was found is gone, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.FindingEnded).ToList())
        {
            var said = Spoken.Whole(course, draft);
            if (!said.Asked && (said.HasWord("more") || said.HasWord("further")) && Enumerable.Range(said.First, said.End - said.First).All(at => said.Tokens[at].Kind is TokenKind.Break || Words.Contains(said.Word(at))))
            {
                Settle(course, draft);
            }
        }
    }

    private static void Settle(Course course, Draft draft)
    {
        if (course.Drafts.IndexOf(draft) is > 0 and var at && course.Drafts[at - 1] is { Kind: EntryKind.Adjustment } work && work.Last + 1 == draft.First)
        {
            Spoken.Join(course, work, draft);
        }
        else
        {
            Spoken.Unmake(draft, Limit);
        }
    }
}
