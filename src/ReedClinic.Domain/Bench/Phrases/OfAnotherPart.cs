using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Cork is chipped at the bottom”, “the heart’s as good as it gets”, “nothing more on the heart”, “the step’s not level between the blades”: of the part that is named, and of no other.</summary>
internal static class OfAnotherPart
{
    private static readonly (string Stem, Zone Zone)[] Below = [("cork", Zone.Cork), ("staple", Zone.Cork), ("thread", Zone.Thread), ("binding", Zone.Thread), ("wire", Zone.Wire)];

    private static readonly string[] OfTheMouth = ["open", "gap", "apertur", "clos", "shut", "tight", "wide", "narrow", "small", "big", "large", "squeez", "mouth", "ellip", "slit", "flat", "collaps", "pinch", "gape", "gaping", "smil"];

    private static readonly Doubt Praise = new("kind", "a part of the reed was praised, and that is no verdict on the reed, so it is kept as a note");

    private static readonly Doubt NotTheMouth = new("kind", "which finding that is isn’t clear, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots: { Kind: "tip-corner-broken" or "tip-cracked" or "tip-edge-ragged", Relation: null } slots } when Lower(said) is { } zone:
                    draft.Slots = slots with { Kind = "something-else", Zone = zone, Sides = null, Blades = null };
                    draft.HasAside = true;
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "opening-narrow" or "opening-wide", Relation: null } } when Spoken.HasStem(said, "step", "slope", "blend", "spine", "rail", "ridge") && !Spoken.HasStem(said, OfTheMouth):
                    Spoken.Unmake(draft, NotTheMouth);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "body-cracked", Relation: null } slots } when PlaceReader.Read(said).Find(place => place.Region is "tip" || place.Zone is Zone.TipEdge or Zone.TipCentre or Zone.TipSides or Zone.TipCorners) is { } tip && !Spoken.HasStem(said, "down", "into", "deep", "heart", "body", "back", "runs", "from"):
                    draft.Slots = slots with { Kind = "tip-cracked", Zone = IsMiddle(said) ? Zone.TipCentre : tip.Usual, Blades = slots.Blades ?? tip.OneBlade, Sides = slots.Sides ?? tip.OneSide };
                    break;
                case { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.AsGoodAsThisCaneGets } when PlaceReader.Read(said) is [{ HasPlace: true } place, ..] && place.First - said.First <= 2 && !said.HasWord("reed") && !said.HasWord("cane"):
                    Spoken.Unmake(draft, Praise);
                    break;
                case { Kind: EntryKind.Finding or EntryKind.Adjustment, Slots: { Strokes: null, Mm: null, Relation: null } } when IsNoMoreOn(said) is { } kept:
                    draft.Kind = EntryKind.LeaveAlone;
                    draft.Slots = new ReadSlots { Zone = kept.Usual, Blades = kept.OneBlade, Sides = kept.OneSide };
                    draft.HasAside = true;
                    draft.Doubts.Clear();
                    break;
            }
        }
    }

    private static bool IsMiddle(Segment said) => said.HasWord("centre") || said.HasWord("center") || said.HasWord("middle");

    // What is chipped or split is named first, and it is below the blades.
    private static Zone? Lower(Segment said)
    {
        for (var at = said.First; at < said.End; at++)
        {
            foreach (var (stem, zone) in Below)
            {
                if (said.Word(at).StartsWith(stem, StringComparison.Ordinal) && !said.HasWord("tip") && !said.HasWord("blade") && !said.HasWord("corner") && said.Word(at - 1) is not ("above" or "over" or "near" or "to" or "from"))
                {
                    return zone;
                }
            }
        }

        return null;
    }

    // “Nothing more on the heart”, “no more off the back”: from now on.
    private static Mention? IsNoMoreOn(Segment said)
    {
        for (var at = said.First; at + 2 < said.End; at++)
        {
            if (said.Word(at) is "nothing" or "no" && said.Word(at + 1) is "more" or "further" && said.Word(at + 2) is "on" or "off" or "from" && PlaceReader.Read(said).Find(place => place.HasPlace && place.First > at + 2) is { } kept && !said.HasWord("there") && !said.HasWord("left"))
            {
                return kept;
            }
        }

        return null;
    }
}
