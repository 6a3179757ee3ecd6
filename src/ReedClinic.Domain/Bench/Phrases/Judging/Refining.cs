using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>Where rules and judge agree on the kind of entry, and the judge is sure of what else it says.</summary>
internal static class Refining
{
    private const double Sure = 0.5;

    internal static void Refine(Sight sight)
    {
        if (Questions.Of(sight.Said) is not { } question || sight.Ruled.Drafts.LastOrDefault(draft => draft.Head >= sight.Before.At) is not { } draft
            || sight.Opinion.Best(question) is var said && sight.Opinion.Chance(question, said) <= Sure)
        {
            return;
        }

        draft.Slots = question switch
        {
            Questions.Finding when !Opposites.Contradicts(sight.Before.Segments[draft.Head], said, draft.Kind is EntryKind.LookedFor) => OfFinding(draft, said),
            Questions.Test => OfTest(draft.Slots, said.Split('/')),
            _ => draft.Slots,
        };
        if (question is Questions.Adjustment && draft.Slots.Kind is "something-else" && said is not "something-else")
        {
            draft.Slots = draft.Slots with { Kind = said, Zone = draft.ZoneSaid ? draft.Slots.Zone : AdjustmentCatalogue.Find(new AdjustmentKindId(said))?.Zone ?? draft.Slots.Zone };
        }
    }

    private static ReadSlots OfFinding(Draft draft, string kind)
    {
        var slots = draft.Slots;
        if (slots.Kind == kind || slots.Relation is not null || kind is "something-else")
        {
            return slots;
        }

        var (old, known) = (slots.Kind is null ? null : FindingCatalogue.Find(new FindingKindId(slots.Kind)), FindingCatalogue.Find(new FindingKindId(kind)));
        return draft.Kind is EntryKind.Finding
            ? slots with { Kind = kind, Character = known?.Usually ?? slots.Character, Zone = old?.Zone == slots.Zone ? known?.Zone ?? slots.Zone : slots.Zone }
            : slots with { Kind = kind };
    }

    private static ReadSlots OfTest(ReadSlots slots, string[] said)
    {
        var test = Enum.Parse<TestKind>(said[0]);
        var step = said[1] is Judge.Nothing ? null : said[1];
        return test == slots.Test
            ? slots with { Step = step ?? slots.Step }
            : slots is { Cents: null, Change: null, Lean: null, Between: null, Length: null } || TestScale.Of(test).TakesPitch ? slots with { Test = test, Step = step } : slots;
    }
}
