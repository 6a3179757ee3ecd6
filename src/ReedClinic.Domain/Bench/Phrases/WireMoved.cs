namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Took the wire down a hair”: a wire that is there already is worked on, and none is put on.</summary>
internal static class WireMoved
{
    private static readonly HashSet<string> Taken = ["took", "take", "taken", "taking", "brought", "ran"];

    private static readonly HashSet<string> Put = ["put", "add", "added", "adding", "fit", "fitted", "tied", "tie", "wound", "wrapped", "new", "second", "third", "another", "extra", "a"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots.Kind: "add-wire" }))
        {
            var whole = Spoken.Whole(course, draft);
            var wire = Enumerable.Range(whole.First, whole.End - whole.First).FirstOrDefault(at => whole.Word(at) is "wire" or "wires", -1);
            var before = Enumerable.Range(whole.First, Math.Max(0, wire - whole.First)).Select(whole.Word).ToList();
            if (before.Exists(Taken.Contains) && !before.Exists(Put.Contains))
            {
                draft.Slots = draft.Slots with { Kind = "bend-wire", Sake = draft.Slots.Sake is Reeds.Zone.Thread ? null : draft.Slots.Sake };
            }
        }
    }
}
