namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Opening too small, high A sags”: a test that is named behind the comma is one of its own, and no aside to the finding before it.</summary>
internal static class OfItself
{
    private static readonly string[] Doing = ["sag", "droop", "wander", "drop", "wobbl", "sink", "crack", "late", "slow"];

    internal static void Keep(Course course)
    {
        for (var at = course.Segments.Count - 1; at > 0; at--)
        {
            if (course.Segments[at] is not { Asked: false, Joint: "," or ";" } segment || course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is not { Kind: EntryKind.Finding } over || over.Head >= at || !IsFree(segment) || Test(course, at) is not { } slots || Alone.Of(course, at) is not { } draft)
            {
                continue;
            }

            (draft.Kind, draft.Slots, draft.HasAside) = (EntryKind.Test, slots, slots.Step is null);
            draft.Doubts.Clear();
        }
    }

    private static bool IsFree(Segment segment) => !segment.Items.Any(item => item.Cat is Cat.Not or Cat.Plan or Cat.Cond or Cat.Habit or Cat.Other or Cat.Risk or Cat.Taste or Cat.Hedge or Cat.May or Cat.Than or Cat.Ended) && !Moods.IsQuestion(segment);

    // A note or a register that is named, and what it does.
    private static ReadSlots? Test(Course course, int at)
    {
        var segment = course.Segments[at];
        var note = Note(segment);
        if ((note is { } known ? known.Test : Register(segment)) is not { } heard || note is null && !Spoken.HasStem(segment, Doing))
        {
            return null;
        }

        var ruled = course.Copy();
        (ruled.At, ruled.Carried) = (at, Mood.None);
        return TestReader.TryRead(ruled) && ruled.Last is { Kind: EntryKind.Test, Slots: { Test: { } test } slots } last && last.Head == at && test == heard ? slots
            : new ReadSlots { Test = heard, Pitch = note?.Name, Step = StepWays.Find(segment, heard) is { } step ? TestScale.Of(heard).Steps[step] : null };
    }

    // “High A”, “low D”, and something said of it.
    private static (TestKind Test, string Name)? Note(Segment segment)
    {
        for (var at = segment.First; at + 2 < segment.End; at++)
        {
            var height = segment.Word(at) switch { "high" or "top" or "highest" => TestKind.HighSteadiness, "low" or "bottom" or "lowest" => TestKind.LowResponse, _ => (TestKind?)null };
            if (height is { } test && segment.Tokens[at + 1] is { Length: 1, IsCapital: true } token && token.Text[0] is >= 'a' and <= 'g' && segment.Tokens[at + 2].Kind is TokenKind.Word)
            {
                return (test, token.Text.ToUpperInvariant());
            }
        }

        return null;
    }

    private static TestKind? Register(Segment segment) => segment.HasWord("notes") || segment.HasWord("register")
        ? Spoken.HasStem(segment, "high", "top", "upper") ? TestKind.HighSteadiness : Spoken.HasStem(segment, "low", "bottom") ? TestKind.LowResponse : null
        : null;
}
