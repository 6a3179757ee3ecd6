namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Easier to blow”, after “far too hard”: nearer to right, and not yet beyond it.</summary>
internal static class Comparers
{
    private static readonly HashSet<string> Words = ["easier", "harder", "freer", "lighter", "heavier", "stiffer", "softer", "looser", "tighter", "flatter", "sharper", "darker", "brighter", "wider", "narrower", "closer", "opener", "more", "less"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Step: not null, Test: { } test, Cents: null } } && TestScale.Of(test).Shape is ScaleShape.TwoSided && IsCompared(course.Segments[draft.Head])))
        {
            var scale = TestScale.Of(draft.Slots.Test!.Value);
            if (scale.Steps.ToList().IndexOf(draft.Slots.Step!) - scale.Good is var now && now != 0 && Before(course, draft, scale) is var before && (before == 0 ? scale.TestKind is TestKind.Effort : before > 0 != now > 0))
            {
                Spoken.Unscale(draft, draft.Slots, "only compared: which word of the scale it is now wasn’t said");
            }
        }
    }

    // How far from right it was when last told, here or in the log.
    private static int Before(Course course, Draft draft, TestScale scale)
    {
        var step = course.Drafts.LastOrDefault(other => other.Head < draft.Head && other.Kind is EntryKind.Test && other.Slots.Test == scale.TestKind && other.Slots.Step is not null)?.Slots.Step
            ?? course.Before.Log.TestsSaid.LastOrDefault(told => told.Now.TestKind == scale.TestKind && told.Now.StepWord is not null)?.Now.StepWord;
        return step is null ? 0 : scale.Steps.ToList().IndexOf(step) - scale.Good;
    }

    private static bool IsCompared(Segment segment) => Spoken.HasAny(segment, Words) && !segment.HasWord("too") && !segment.HasWord("want") && !segment.HasWord("like");
}
