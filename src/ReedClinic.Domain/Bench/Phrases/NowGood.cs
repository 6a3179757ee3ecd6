namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“It seals now”, while a leak stands in the log: how that ended, and no strength beside it.</summary>
internal static class NowGood
{
    private static readonly Dictionary<string, string[]> Ends = new()
    {
        ["seals-well"] = ["side-leak", "thread-leak"],
        ["opening-even"] = ["opening-lopsided"],
        ["blend-smooth"] = ["bumps", "step-abrupt"],
        ["tip-well-separated"] = ["tip-not-separate"],
        ["quadrants-matched"] = ["left-right-uneven", "blades-uneven", "windows-uneven"],
        ["tied-straight"] = ["crooked-on-staple"],
    };

    private static readonly HashSet<string> Now = ["now", "again", "finally", "last"];

    private static readonly Doubt Before = new("kind", "taken for the end of what was found before");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Strength, Relation: null, Kind: not null } }))
        {
            var segment = course.Segments[draft.Head];
            if (!segment.Asked && Spoken.HasAny(segment, Now) && !segment.Has(Cat.Not) && !segment.Has(Cat.Than) && !segment.Has(Cat.Plan) && Ends.TryGetValue(draft.Slots.Kind!, out var faults) && Standing(course, faults, draft.Slots) is { } kind)
            {
                draft.Kind = EntryKind.FindingEnded;
                draft.Slots = new ReadSlots { Kind = kind, Ending = FindingEnding.Gone };
                draft.Doubts.Clear();
                draft.Doubts.Add(Before);
            }
        }
    }

    private static string? Standing(Course course, string[] faults, ReadSlots said) => course.Before.Log.Findings.Where(now => now.Ended is null && faults.Contains(now.Finding.FindingKind.Value) && (said.Sides is null || now.Finding.Sides == said.Sides) && (said.Blades is null || now.Finding.Blades == said.Blades))
        .Select(now => now.Finding.FindingKind.Value).Distinct().ToList() is [var only] ? only : null;
}
