namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“High notes sag”: notes that fall in pitch neither wander nor drop out, and their scale has no word for it; what was said is kept.</summary>
internal static class Sagging
{
    private static readonly HashSet<string> Words =
    [
        "sag", "sags", "sagging", "sagged", "saggy", "droop", "droops", "drooping", "drooped", "sink", "sinks", "sinking", "sank", "sunk", "slump", "slumps", "slumping", "slumped", "dip", "dips", "dipping", "dipped", "flatten", "flattens",
    ];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Step: not null, Test: TestKind.HighSteadiness or TestKind.LowResponse } } && IsSaid(course, draft)))
        {
            draft.Slots = draft.Slots with { Step = null };
            draft.HasAside = true;
        }
    }

    private static bool IsSaid(Course course, Draft draft)
    {
        var segments = Enumerable.Range(draft.First, draft.Last - draft.First + 1).Select(at => course.Segments[at]).ToList();
        return segments.Exists(segment => Words.Any(segment.HasWord)) && segments.TrueForAll(segment => StepWays.Find(segment, draft.Slots.Test!.Value) is null);
    }
}
