namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Flattened the wire”, “rounded it at the wire”, “squeezed the wire”: a rounder wire opens and a flatter one closes, so the words that say which are kept; where none do, that is asked.</summary>
internal static class WireWays
{
    private static readonly string[] Ways = ["round", "flat", "open", "clos", "wide", "narrow", "side", "top", "face", "edge", "shut", "flank", "oval"];

    private static readonly Doubt Which = new("kind", "which way the wire was bent wasn’t said: rounder, to open it, or flatter, to close it?");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots.Kind: "bend-wire" }))
        {
            draft.HasAside = true;
            var whole = Spoken.Whole(course, draft);
            if (!Spoken.HasStem(whole, Ways) && Spoken.HasStem(whole, "squeez", "pinch", "press", "bend", "bent", "nudg", "push", "tweak", "adjust"))
            {
                draft.Doubts.Add(Which);
            }
        }
    }
}
