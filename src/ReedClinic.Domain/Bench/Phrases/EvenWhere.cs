using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Tip is even, both blades”: even is praise of the part that is named, and neither a fault of it nor an even opening.</summary>
internal static class EvenWhere
{
    private static readonly HashSet<string> Behind = ["on", "across", "in", "left", "both", "all", "over", "throughout", "too", "from", "to", "along", "through", "between", "there", "here", "as", "and", ""];

    private static readonly Doubt More = new("kind", "even more than something else, and no praise, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Finding, Slots.Relation: null }))
        {
            var said = Spoken.Whole(course, draft);
            if (draft.Slots.Character is FindingCharacter.Strength && IsMore(said))
            {
                Spoken.Unmake(draft, More);
                continue;
            }

            if (!IsEven(said) || said.Items.Any(item => item.Cat is Cat.Not or Cat.Than or Cat.Hedge or Cat.Plan or Cat.Cond || item.Cat is Cat.Quality && item.Value is not "even"))
            {
                continue;
            }

            var places = PlaceReader.Read(said).FindAll(place => place.HasPlace);
            if (places is [{ Usual: { } zone } place] && zone is not (Zone.Opening or Zone.Inside) && (draft.Slots.Character is FindingCharacter.Fault || PlaceReader.Of(draft.Slots.Zone ?? Zone.WholeReed) != PlaceReader.Of(zone)))
            {
                Praise(draft, zone, place.OneBlade ?? draft.Slots.Blades, place.OneSide ?? draft.Slots.Sides);
            }
            else if (places.Count == 0 && draft.Slots is { Character: FindingCharacter.Fault, Zone: Zone.WholeReed } && (said.HasWord("blades") || said.HasWord("sides") || said.HasWord("halves")))
            {
                Praise(draft, Zone.WholeReed, null, null);
            }
        }
    }

    private static void Praise(Draft draft, Zone zone, Blades? blades, Sides? sides)
    {
        draft.Slots = new ReadSlots { Kind = "quadrants-matched", Character = FindingCharacter.Strength, Zone = zone, Blades = blades, Sides = sides, Known = draft.Slots.Known };
        draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind" or "zone");
    }

    // “Even thicker on the left”, “even more cane there”.
    private static bool IsMore(Segment said) => said.IndexOfWord("even") is >= 0 and var at && (said.Word(at + 1) is "thicker" or "thinner" or "longer" or "shorter" or "wider" or "narrower" or "heavier" or "fuller" or "flatter" or "sharper" or "darker" or "harder" or "rougher" or "worse" || said.Word(at + 1) is "more" or "less" && said.Word(at + 2) is not "so");

    // “… is even”, and not “even thicker”.
    private static bool IsEven(Segment said)
    {
        var at = said.IndexOfWord("even");
        return at > said.First && !said.Asked && (Behind.Contains(said.Word(at + 1)) || said.Tokens[at + 1].Kind is TokenKind.Break) && Enumerable.Range(said.First, at - said.First).Any(word => said.Word(word) is "is" or "'s" or "are" or "looks" or "look" or "feels");
    }
}
