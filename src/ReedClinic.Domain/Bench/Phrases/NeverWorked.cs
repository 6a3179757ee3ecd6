using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Never touched the spine”, “kept off the heart”, “gave up on the corners”: what wasn’t worked on is neither praised, nor worked on, nor a verdict.</summary>
internal static class NeverWorked
{
    private static readonly HashSet<string> Was = ["was", "were", "been", "is", "'s", "are", "has", "have", "had"];

    private static readonly HashSet<string> Others = ["she", "he", "they", "you", "she's", "he's", "they've", "you've", "student", "pupil", "scrape", "knife", "player", "somebody", "someone", "who"];

    private static readonly Doubt Not = new("kind", "no work there, and no word of how it is, so it is kept as a note");

    private static readonly Doubt Gave = new("kind", "given up there, and no work and no verdict, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Strength, Kind: "spine-intact" or "rails-intact" or "heart-well-kept" or "something-else" } } when NeverTouched(said):
                    Spoken.Unmake(draft, Not);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Strength, Zone: { } zone } } when KeptOff(said):
                    (draft.Kind, draft.Slots) = (EntryKind.LeaveAlone, new ReadSlots { Zone = zone, Blades = draft.Slots.Blades, Sides = draft.Slots.Sides });
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null, Words: null, Zone: { } zone } } when KeptOff(said):
                    (draft.Kind, draft.Slots) = (EntryKind.LeaveAlone, new ReadSlots { Zone = zone, Blades = draft.Slots.Blades, Sides = draft.Slots.Sides });
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.LeaveAlone, Slots.Sides: Sides.Left } when said.IndexOfWord("left") is >= 0 and var verb && said.Word(verb + 1) is "both" or "all" or "each" && Enumerable.Range(said.First, said.End - said.First).Count(at => said.Word(at) is "left") == 1:
                    draft.Slots = draft.Slots with { Sides = null };
                    break;
                case { Kind: EntryKind.LeaveAlone, Slots.Zone: Zone.WholeReed } when said.IndexOfWord("left") is >= 0 and var left && said.Word(left + 1) is "no" or "a" or "nothing" or "not":
                    Spoken.Unmake(draft, Not);
                    break;
                case { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.LeftAsItCame } when (said.HasWord("nothing") || said.HasWord("no")) && PlaceReader.Read(said).Exists(place => place.HasPlace):
                    Spoken.Unmake(draft, Not);
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null } } when GaveUp(said):
                    Spoken.Unmake(draft, Gave);
                    break;
            }
        }
    }

    // “I never touched it”; that it never was touched says how it is.
    private static bool NeverTouched(Segment said)
    {
        var never = said.IndexOfWord("never");
        return never >= 0 && (said.Word(never + 1) is "touched" or "scraped" or "worked" or "thinned" or "cut" || said.Word(never + 1) is "went" or "got" or "came" && said.Word(never + 2) is "near") && !Was.Contains(said.Word(never - 1));
    }

    // “She kept off the spine”: that is hers, and the teacher’s praise.
    private static bool KeptOff(Segment said) => !Spoken.HasAny(said, Others) && Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "kept" or "keeping" or "keep" or "stayed" or "staying"
        && (said.Word(at + 1) is "off" or "away" or "clear" || said.Word(at + 1) is "well" or "right" && said.Word(at + 2) is "off" or "away" or "clear"));

    private static bool GaveUp(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "gave" or "given" or "giving" && said.Word(at + 1) is "up" && said.Word(at + 2) is "on" or "with");
}
