namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Shall I leave the back alone?”, “I dusted the heart last time”: what is asked, and what was done another day, is a remark, whoever says otherwise.</summary>
internal static class Inquiries
{
    private static readonly string[] Earlier =
    [
        "last time", "last week", "last month", "last year", "last term", "last winter", "last summer", "last spring", "last autumn", "last lesson", "last batch", "the last batch", "the other day", "the other week", "years ago", "months ago", "weeks ago", "a week ago", "a month ago", "in the spring", "in the autumn", "once upon a time",
        "on the last one", "on your last", "on the other reed", "on another reed", "on the one before", "on its sister", "on the previous one",
    ];

    private static readonly string[] Since = ["since", "than", "as", "like", "unlike", "from"];

    // What says that work named here wasn’t done, or not here: ordered, put off, refused, another’s.
    private static readonly string[] Undone =
    [
        "not needed", "not necessary", "no need", "waits", "can wait", "will wait", "ordered", "on order", "rejected", "refused", "declined", "not my work", "not my doing", "own work", "own doing", "owner's work", "before it came", "b4 it came", "before it arrived", "before i had it", "when it came", "on arrival", "considered and", "thought of", "turned down", "ruled out", "postponed", "put off", "some other day", "not today", "not now", "not yet", "no thanks", "pending", "to follow", "still to come", "yet to come", "still owing", "still to do", "says my list", "on my list", "on the list",
    ];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList())
        {
            var segment = course.Segments[draft.Head];
            if (draft.Kind is EntryKind.Adjustment && Foretells(course, draft) is { } what)
            {
                Unmake(course, draft, what);
            }
            else if (draft.Kind is EntryKind.Adjustment && (Says(segment, Earlier) || Says(segment, Undone) || Behind(course, draft) is { } behind && (Says(behind, Undone) || behind.HasWord("mine")) || IsTomorrow(course, draft) || draft.Slots.Kind is not ("soak" or "rest-dry" or "wait" or "retire") && IsUnfounded(segment) || IsAir(segment, draft.Slots.Kind)) || draft.Kind is EntryKind.Adjustment or EntryKind.Finding or EntryKind.LeaveAlone && IsAsked(segment))
            {
                Unmake(course, draft, draft);
            }
        }
    }

    // “Clip: not needed”; “another clip was considered and rejected”; “take two off, says my list”; “scraped. Not my work.”
    private static Segment? Behind(Course course, Draft draft) => draft.Head + 1 < course.Segments.Count && course.Segments[draft.Head + 1] is var behind
        && (behind.Joint is ":" && behind.Sentence == draft.Sentence || behind.Word(behind.Joint.Length > 1 ? behind.First + 1 : behind.First) is "says" or "rejected" or "refused" or "declined" or "ruled" or "turned" or "waits" || behind.Sentence > draft.Sentence && behind.HasWord("not") && behind.HasWord("my") | behind.HasWord("mine")) ? behind : null;

    // “Tomorrow when it is dry I set the overlap”.
    private static bool IsTomorrow(Course course, Draft draft)
    {
        var first = course.Segments.First(segment => segment.Sentence == draft.Sentence);
        return first.Word(first.First) is "tomorrow" or "tonight" or "later";
    }

    // “And it’s lost a little of that ease”: no work is named, nor where it was done.
    private static bool IsUnfounded(Segment segment) => !segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Thing or Cat.Side or Cat.Blade or Cat.Stroke or Cat.Mm or Cat.Tenth or Cat.Hundredth or Cat.Again or Cat.Same or Cat.More or Cat.Off or Cat.Also or Cat.Fix
        || item.Cat is Cat.Verb && Moods.Action(item) is not ("light" or "other" or "harm" or "keepoff")) && segment.HasWord("it") && segment.HasWord("'s") | segment.HasWord("has") | segment.HasWord("is");

    // “I’m giving it loads of air”: air that cleans nothing.
    private static bool IsAir(Segment segment, string? work) => work is "clean-inside" && segment.HasWord("air")
        && !segment.HasWord("out") && !segment.HasWord("clean") && !segment.HasWord("clear") && !segment.HasWord("dirt") && !segment.HasWord("water");

    // “Squeeze it and there’s fluff in there”: to look, not to work.
    private static bool IsTried(string? work) => work is "open-squeeze" or "close-press" or "clean-inside" or "draw-air";

    // Where its consequence is an entry already, the deed is no more than what it hangs on.
    private static void Unmake(Course course, Draft draft, Draft what)
    {
        if (!ReferenceEquals(draft, what))
        {
            course.Drafts.Remove(draft);
            return;
        }

        draft.Kind = EntryKind.Note;
        draft.Slots = ReadSlots.None;
        draft.Doubts.Clear();
    }

    // “One more off the back and the opening may drop”: what would come of it, not what was done. The risk in it, or itself.
    private static Draft? Foretells(Course course, Draft draft)
    {
        var next = draft.Last + 1;
        var head = Moods.Head(course.Segments[draft.Head]);
        if (next >= course.Segments.Count || course.Segments[next] is not { Joint: "and" } then || then.Sentence != draft.Sentence || head is { } verb && Moods.Form(verb) is not 'B' || then.HasWord("i") && !then.HasWord("be"))
        {
            return null;
        }

        var foretold = Enumerable.Range(then.First, Math.Min(5, then.End - then.First)).Any(at => IsTried(draft.Slots.Kind) && then.Word(at) is "there" || then.Word(at) is "may" or "might" or "will" or "would" or "could" or "'d" or "'ll" or "id");
        return foretold ? course.Drafts.Find(other => other.Kind is EntryKind.Risk && other.First <= next && next <= other.Last) ?? draft : null;
    }

    private static bool Says(Segment segment, string[] turns)
    {
        var words = $" {string.Join(' ', Enumerable.Range(segment.First, segment.End - segment.First).Where(at => segment.Tokens[at].Kind is TokenKind.Word).Select(segment.Word))} ";
        return Array.Exists(turns, turn => words.Contains($" {turn} ", StringComparison.Ordinal) && !Array.Exists(Since, word => words.Contains($" {word} {turn} ", StringComparison.Ordinal)));
    }

    private static bool IsAsked(Segment segment) => segment.Asked && Moods.IsQuestion(segment);
}
