using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What is said of a tip and has no name of its own, or is another fault than was taken: a corner clipped too short, a tip that is thin all round, a chip in the edge.</summary>
internal static class TipSaid
{
    private static readonly HashSet<string> Clipped = ["clipped", "cut", "trimmed", "nipped", "snipped", "cropped", "chopped"];

    private static readonly HashSet<string> Clipping = ["i", "we", "'ve"];

    private static readonly Doubt Short = new("kind", "a corner that was clipped short, and no word of the line of the tip, so its words are kept");

    private static readonly Doubt Round = new("zone", "said of the whole tip, which is no part of its own, so its words are kept");

    internal static void Keep(Course course)
    {
        Slopes.Keep(course);
        foreach (var draft in course.Drafts)
        {
            var whole = Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last);
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots.Kind: "tip-line-slanted" } when IsClippedShort(whole):
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "clip" or "clip-hair" or "thin-corners", Strokes: null, Mm: null } } when IsClippedShort(whole) && !Spoken.HasAny(whole, Clipping) && whole.HasWord("too"):
                    draft.Kind = EntryKind.Finding;
                    draft.Slots = new ReadSlots { Kind = "something-else", Character = FindingCharacter.Fault, Zone = Zone.TipCorners, Blades = draft.Slots.Blades, Sides = draft.Slots.Sides, Degree = draft.Slots.Degree, Certainty = draft.Slots.Certainty, Known = draft.Slots.Known, Arose = draft.Slots.Arose };
                    draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind" or "done");
                    draft.Doubts.Add(Short);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "tip-thin" or "tip-thick", Zone: Zone.TipSides, Sides: null } } when IsAllRound(whole):
                    draft.HasAside = true;
                    draft.Doubts.Add(Round);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "tip-corner-broken", Sides: null } } when Spoken.HasStem(whole, "chip") && Spoken.HasStem(whole, "tip", "edge") && !Spoken.HasStem(whole, "corner", "cor", "crn", "cnr", "ear", "wing"):
                    draft.Slots = draft.Slots with { Kind = "tip-edge-ragged", Zone = Zone.TipEdge };
                    break;
            }
        }
    }

    // “Left corner clipped a bit too short”: the verb behind the corner.
    private static bool IsClippedShort(Segment whole)
    {
        var corner = Enumerable.Range(whole.First, whole.End - whole.First).FirstOrDefault(at => whole.Word(at) is "corner" or "corners" or "ear", -1);
        var verb = Enumerable.Range(whole.First, whole.End - whole.First).FirstOrDefault(at => Clipped.Contains(whole.Word(at)), -1);
        return corner >= 0 && verb > corner && !whole.Has(Cat.Not) && Enumerable.Range(verb, whole.End - verb).Any(at => whole.Word(at) is "short" or "far" or "much" or "low" or "back");
    }

    private static bool IsAllRound(Segment whole) => whole.HasWord("everywhere") || whole.HasWord("throughout") || whole.HasWord("whole") || whole.HasWord("entire") || Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "all" && whole.Word(at + 1) is "round" or "around" or "over" or "through" || whole.Word(at) is "all" && whole.Word(at + 1) is "four" or "sides");
}
