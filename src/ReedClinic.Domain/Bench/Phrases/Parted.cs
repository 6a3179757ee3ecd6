namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Low notes good, high notes wander a bit”: another test with a word of its scale is none of the words of the test before it.</summary>
internal static class Parted
{
    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Step: not null, Test: { } test } } && draft.Last > draft.Head && !TestScale.Of(test).TakesPitch).ToList())
        {
            for (var at = draft.Head + 1; at <= draft.Last; at++)
            {
                if (Other(course.Segments[at], draft.Slots.Test!.Value) is { } slots)
                {
                    var other = new Draft { Kind = EntryKind.Test, Slots = slots, Head = at, First = at, Last = draft.Last, Sentence = course.Segments[at].Sentence, HasAside = draft.Last > at };
                    draft.Last = at - 1;
                    draft.HasAside = draft.HasAside && draft.Last > draft.First;
                    course.Drafts.Insert(course.Drafts.IndexOf(draft) + 1, other);
                    break;
                }
            }
        }
    }

    private static ReadSlots? Other(Segment segment, TestKind test) =>
        !segment.Asked && segment.All(Cat.Test).Select(item => Enum.Parse<TestKind>(item.Value)).Distinct().ToList() is [var named] && named != test && named is not TestKind.Effort && TestScale.Of(named) is { TakesPitch: false }
            && !segment.Items.Any(item => item.Cat is Cat.Plan or Cat.Cond or Cat.May or Cat.Other or Cat.Than or Cat.Habit or Cat.Risk) && PitchReader.NotesIn(segment).Count == 0
            && StepReader.Step(segment, named, null, new HeardPitch()) is { } step ? new ReadSlots { Test = named, Step = step } : null;
}
