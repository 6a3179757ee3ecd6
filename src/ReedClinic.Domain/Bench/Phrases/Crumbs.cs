namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Next”, “tested”, “not yet”, beside what was found or done: small words are no notes of their own; what matters of them stays with the entry they were said with.</summary>
internal static class Crumbs
{
    // So many words beside an entry of their sentence are told with it.
    private const int Few = 4;

    private static readonly HashSet<string> Idle = [.. "next tested testing test tests correction correct ok okay right so well then now yes yeah yep and also done good again one reed the a um er hm hmm let me see us check checked checking verdict".Split(' ')];

    private static readonly HashSet<string> Again = ["again", "tried", "retested", "after", "replayed", "later"];

    internal static void Keep(Course course)
    {
        foreach (var note in course.Drafts.Where(draft => draft.Kind is EntryKind.Note && draft.Doubts.Count == 0 && Spoken.Of(course, draft).All(IsIdle)).ToList())
        {
            if (course.Drafts.Exists(draft => draft.Kind is not EntryKind.Note))
            {
                course.Drafts.Remove(note);
                course.Left.AddRange(Enumerable.Range(note.First, note.Last - note.First + 1));
            }
        }

        foreach (var note in course.Drafts.Where(draft => draft.Kind is EntryKind.Note).ToList())
        {
            LeadUp(course, note);
        }

        for (var at = 0; at < course.Segments.Count; at++)
        {
            if (!course.Drafts.Exists(draft => draft.First <= at && at <= draft.Last))
            {
                Take(course, at);
            }
        }
    }

    // “Tried again after a night’s drying: crow C”, “up eighteen, the crow, I’ll take that”: when it was heard, and that it will do.
    private static void LeadUp(Course course, Draft note)
    {
        var (at, whole) = (course.Drafts.IndexOf(note), Spoken.Whole(course, note));
        if (at + 1 < course.Drafts.Count && course.Drafts[at + 1] is { Kind: EntryKind.Test } test && test.First == note.Last + 1 && test.Sentence == note.Sentence && course.Segments[test.First].Joint is ":" && Spoken.HasAny(whole, Again) && !whole.Items.Any(item => item.Cat is Cat.Plan or Cat.Cond or Cat.Not or Cat.Other or Cat.Zone or Cat.Region))
        {
            (test.First, test.HasAside) = (note.First, true);
            course.Drafts.Remove(note);
        }
        else if (at > 0 && course.Drafts[at - 1] is { Kind: not EntryKind.Note } before && before.Last == note.First - 1 && before.Sentence == note.Sentence && IsContent(whole))
        {
            Spoken.Join(course, before, note);
        }
    }

    private static bool IsContent(Segment whole) => whole.End - whole.First <= Few + 1 && Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "take" or "having" or "settle" && whole.Word(at + 1) is "that" or "it" or "for" || whole.Word(at) is "fine" or "happy" && whole.Word(at + 1) is "by" or "with")
        && whole.HasWord("i") | whole.HasWord("me") && !whole.HasWord("off") && !whole.Items.Any(item => item.Cat is Cat.Zone or Cat.Region or Cat.Test or Cat.Quality);

    // With the entry before it in its sentence, or the one after; idle words go with whatever stands next to them.
    private static void Take(Course course, int at)
    {
        var segment = course.Segments[at];
        var idle = IsIdle(segment);
        var before = course.Drafts.Find(draft => draft.Last == at - 1 && (idle || draft.Sentence == segment.Sentence));
        var after = course.Drafts.Find(draft => draft.First == at + 1 && (idle || course.Segments[draft.First].Sentence == segment.Sentence));
        if ((before ?? after) is not { } entry || !idle && Enumerable.Range(segment.First, segment.End - segment.First).Count(word => segment.Tokens[word].Kind is TokenKind.Word) > Few)
        {
            return;
        }

        entry.HasAside |= !idle;
        (entry.First, entry.Last) = (Math.Min(entry.First, at), Math.Max(entry.Last, at));
        course.Left.Remove(at);
    }

    private static bool IsIdle(Segment segment) => !segment.Asked && Enumerable.Range(segment.First, segment.End - segment.First).All(at => segment.Tokens[at].Kind is TokenKind.Break || segment.Word(at).Length == 0 || Idle.Contains(segment.Word(at)));
}
