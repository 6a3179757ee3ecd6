namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“High notes sag”: notes that fall in pitch neither wander nor drop out, and their scale has no word for it; what was said is kept.</summary>
internal static class Sagging
{
    private static readonly HashSet<string> Words =
    [
        "sag", "sags", "sagging", "sagged", "saggy", "droop", "droops", "drooping", "drooped", "sink", "sinks", "sinking", "sank", "sunk", "slump", "slumps", "slumping", "slumped", "dip", "dips", "dipping", "dipped", "flatten", "flattens",
    ];

    private static readonly HashSet<string> Ways = ["flat", "flattish", "sharp", "sharpish", "flatter", "sharper", .. Words];

    internal static void Keep(Course course)
    {
        Hear(course);
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Step: not null, Test: TestKind.HighSteadiness or TestKind.LowResponse } } && IsSaid(course, draft)))
        {
            draft.Slots = draft.Slots with { Step = null };
            draft.HasAside = true;
        }
    }

    // “High notes go flat”, “the top register is a bit sharp”: of the tests that one with those notes, whatever else it was taken for.
    private static void Hear(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Test: TestKind.HighSteadiness or TestKind.LowResponse or TestKind.TuningNote or TestKind.Crow, Cents: null, Change: null, Pitch: null } } or { Kind: EntryKind.Note } && draft.First == draft.Last))
        {
            var segment = course.Segments[draft.Head];
            if (Register(segment) is { } register && Ways.Any(segment.HasWord) && !IsTalked(segment) && StepWays.Find(segment, register) is null)
            {
                draft.Kind = EntryKind.Test;
                draft.Slots = new ReadSlots { Test = register };
                draft.HasAside = true;
                draft.Doubts.Clear();
            }
        }
    }

    private static TestKind? Register(Segment segment)
    {
        for (var at = segment.First; at + 1 < segment.End; at++)
        {
            if (segment.Word(at + 1) is "notes" or "register" or "ones" or "range")
            {
                return segment.Word(at) switch { "high" or "top" or "upper" or "highest" => TestKind.HighSteadiness, "low" or "bottom" or "lowest" => TestKind.LowResponse, _ => null };
            }
        }

        return null;
    }

    private static bool IsTalked(Segment segment) => segment.Asked || segment.Items.Any(item => item.Cat is Cat.Plan or Cat.Cond or Cat.Habit or Cat.Other or Cat.Not or Cat.May) || segment.Has(Cat.Test, "Crow") || segment.Has(Cat.Octave) || segment.HasWord("makes") || segment.HasWord("because");

    private static bool IsSaid(Course course, Draft draft)
    {
        var segments = Enumerable.Range(draft.First, draft.Last - draft.First + 1).Select(at => course.Segments[at]).ToList();
        return segments.Exists(segment => Words.Any(segment.HasWord)) && segments.TrueForAll(segment => StepWays.Find(segment, draft.Slots.Test!.Value) is null);
    }
}
