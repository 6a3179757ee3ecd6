namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Opening’s about 1.1, a touch closed”, “opening now 0.9, better”: a size of the opening is kept in its words, whatever is said behind it.</summary>
internal static class Sizes
{
    private const decimal Least = 0.2m;

    private const decimal Most = 3;

    private static readonly Doubt NoWord = new("step", "a size, and no word of its scale, so its words are kept");

    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Segments.Count; at++)
        {
            if (course.Segments[at] is not { Asked: false } segment || !IsSize(segment))
            {
                continue;
            }

            var over = course.Drafts.Find(draft => draft.First <= at && at <= draft.Last);
            if (over is { Kind: EntryKind.Test, Slots.Test: TestKind.Opening } test)
            {
                Part(course, test, at);
                test.HasAside = true;
            }
            else if (over is null or { Kind: EntryKind.Note } && IsOnlySize(segment) && Alone.Of(course, at) is { } draft)
            {
                (draft.Kind, draft.Slots, draft.HasAside) = (EntryKind.Test, new ReadSlots { Test = TestKind.Opening }, true);
                draft.Doubts.Clear();
                draft.Doubts.Add(NoWord);
            }
        }
    }

    // A word of the scale that was taken from what is said of another part is none of the opening’s.
    private static void Part(Course course, Draft test, int at)
    {
        if (test.Head == at && test.Slots.Step is not null && StepWays.Find(course.Segments[at], TestKind.Opening) is null
            && Enumerable.Range(at + 1, test.Last - at).Any(next => PlaceReader.Read(course.Segments[next]).Exists(place => place.HasPlace && place.Zone is not Reeds.Zone.Opening)))
        {
            Spoken.Unscale(test, test.Slots, NoWord.Words);
        }
    }

    private static bool IsSize(Segment segment) => (segment.HasWord("opening") || segment.HasWord("aperture")) && !segment.Items.Any(item => item.Cat is Cat.Not or Cat.Plan or Cat.Cond or Cat.Stroke or Cat.Cent or Cat.Other or Cat.Habit) && Moods.Head(segment) is null
        && segment.Tokens.Skip(segment.First).Take(segment.End - segment.First).Any(token => token.Kind is TokenKind.Number && token.Number is >= Least and <= Most);

    // “Opening now 0.9, …”: no other word of it is worth a remark.
    private static bool IsOnlySize(Segment segment) => Enumerable.Range(segment.First, segment.End - segment.First).All(at => segment.Tokens[at].Kind is TokenKind.Break or TokenKind.Number or TokenKind.Symbol || segment.Word(at) is "opening" or "aperture" or "the" or "is" or "'s" or "now" or "about" or "around" or "roughly" or "a" or "at" or "still" or "just" or "" || segment.Covered(at, Cat.Filler)) && !segment.Has(Cat.Mm);
}
