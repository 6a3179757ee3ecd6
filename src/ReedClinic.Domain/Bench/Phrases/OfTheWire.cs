using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Wire is loose, nipped it up”, “wire taken off altogether”: what is nipped is the wire and no tip, and a wire that comes off wasn’t put on.</summary>
internal static class OfTheWire
{
    private static readonly HashSet<string> Nips = ["nipped", "snugged", "cinched", "tweaked", "snug"];

    private static readonly Doubt Which = new("kind", "work at the wire that has no name of its own, so its words are kept");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Adjustment))
        {
            var said = Spoken.Whole(course, draft);
            if (IsNipped(course, draft, said) || IsTakenOff(draft, said))
            {
                draft.Slots = new ReadSlots { Kind = "something-else", Zone = Zone.Wire, Words = draft.Slots.Words };
                draft.HasAside = true;
                draft.Doubts.Clear();
                draft.Doubts.Add(Which);
            }
        }
    }

    // A wire that was spoken of right before, in the same sentence.
    private static bool IsNipped(Course course, Draft draft, Segment said) => draft.Slots is { Kind: "clip" or "clip-hair" or "close-press" or "open-squeeze", Mm: null } && !Spoken.HasStem(said, "clip", "cut", "trim")
        && Spoken.HasAny(said, Nips) && (said.HasWord("wire") || draft.First > 0 && course.Segments[draft.First - 1] is var before && before.Sentence == draft.Sentence && before.HasWord("wire"));

    private static bool IsTakenOff(Draft draft, Segment said) => draft.Slots.Kind is "add-wire" && !said.HasWord("on") && !said.HasWord("back") && !said.HasWord("new") && !said.HasWord("another")
        && (said.HasWord("off") || said.HasWord("removed") || said.HasWord("without") || said.HasWord("gone") || said.HasWord("out"));
}
