namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Work that has no left and no right: “no, the left one” behind a press puts right something else.</summary>
internal static class Sideless
{
    private static readonly HashSet<string> Kinds = ["close-press", "open-squeeze", "round-eye", "flatten-eye", "soak", "rest-dry", "draw-air", "clean-inside", "retie", "seal-thread", "refit-cork", "add-wire", "retire"];

    private static readonly Doubt Whose = new("sides", "such work has no side, so the side that was said is kept in its words");

    /// <summary>Whether a side that is said behind it can’t be its own.</summary>
    internal static bool Is(Adjustment work) => work is { Sides: Reeds.Sides.Both } && Kinds.Contains(work.AdjustmentKind.Value);

    // “Pressed it closed, no, the left one”: not in the words of the press itself.
    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots: { Sides: not null, Kind: { } kind } } && Kinds.Contains(kind) && !course.Segments[draft.Head].Has(Cat.Side) && course.Segments.Skip(draft.Head + 1).Any(segment => segment.Has(Cat.Fix))))
        {
            draft.Slots = draft.Slots with { Sides = null };
            draft.HasAside = true;
            draft.Doubts.Add(Whose);
        }
    }
}
