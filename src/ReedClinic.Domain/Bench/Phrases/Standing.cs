using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“The opening is still too wide”: unchanged where that was found before, and else a finding.</summary>
internal static class Standing
{
    internal static void Settle(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => course.Segments[draft.Head].HasWord("still")))
        {
            if (draft is { Kind: EntryKind.Finding, Slots: { Kind: { } found, Relation: null, Sides: null, Blades: null } } && course.Before.Log.Findings.Any(now => now.Finding.FindingKind.Value == found))
            {
                draft.Kind = EntryKind.FindingEnded;
                draft.Slots = new ReadSlots { Kind = found, Ending = FindingEnding.Unchanged };
            }
            else if (draft is { Kind: EntryKind.FindingEnded, Slots: { Kind: { } said, Ending: FindingEnding.Unchanged } } && !EndedReader.WasFound(course, said))
            {
                var known = FindingCatalogue.Find(new FindingKindId(said));
                draft.Kind = EntryKind.Finding;
                draft.Slots = new ReadSlots { Kind = said, Character = known?.Usually ?? FindingCharacter.Fault, Zone = known?.Zone ?? Zone.WholeReed };
            }
        }
    }
}
