using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What a finding’s own words say of it and was not taken: on which side an opening is higher, that a tip is as thin here as there, which leak it was; and what “the left one” is.</summary>
internal static class SaidOfFindings
{
    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var whole = course.Segments[draft.First].With(course.Segments[draft.Last]);
            if (draft is { Kind: EntryKind.LeaveAlone, Slots.Zone: Zone.Wire } && Spoken.HasStem(whole, "put", "fit", "add"))
            {
                // “I’m not putting a wire on”: there is none that could be kept off.
                (draft.Kind, draft.Slots) = (EntryKind.Note, ReadSlots.None);
            }

            draft.Slots = draft switch
            {
                { Kind: EntryKind.Finding, Slots: { Kind: "opening-lopsided", Relation: null } } => Higher(draft.Slots, whole),
                { Kind: EntryKind.Finding, Slots: { Kind: "tip-even-across", Relation: null } } when IsSame(whole) => draft.Slots with { Zone = Zone.TipCentre, Relation = Relation.SameAs, OtherZone = Zone.TipSides },
                { Kind: EntryKind.FindingEnded, Slots.Kind: "side-leak" } when !EndedReader.WasFound(course, "side-leak") && EndedReader.WasFound(course, "thread-leak") => draft.Slots with { Kind = "thread-leak" },
                { Kind: EntryKind.Finding, Slots: { Kind: "heart-well-kept", Character: FindingCharacter.Strength } } when Spoken.HasStem(whole, "symmetr") && !Spoken.HasStem(whole, "heart") => draft.Slots with { Kind = "quadrants-matched", Zone = Zone.WholeReed },
                { Kind: EntryKind.Finding, Slots.Kind: "bark-island" } when IsWornAway(whole) => draft.Slots with { Kind = "heart-thin" },
                { Kind: EntryKind.LeaveAlone, Slots: { Zone: Zone.WholeReed, Sides: not null } } when whole.HasWord("one") && OfLast(course, draft) is { } place => draft.Slots with { Zone = place.Zone, Blades = draft.Slots.Blades ?? place.Blades },
                { Kind: EntryKind.Risk, Slots.Zone: null } when PlaceReader.Read(Spoken.Sentence(course, draft)).Where(mention => mention is { HasPlace: true } and not { Region: "back" }).ToList() is [{ Usual: { } risked }] && course.Drafts.Count(other => other.Sentence == draft.Sentence) is 1 => draft.Slots with { Zone = risked },
                { Kind: EntryKind.Finding, Slots: { Kind: "tip-not-separate", Zone: Zone.TipEdge } } => draft.Slots with { Zone = Zone.Rooftop },
                { Kind: EntryKind.Finding, Slots.Certainty: Certainty.Suspected } when IsCause(whole) => draft.Slots with { Certainty = null },
                { Kind: EntryKind.LeaveAlone, Slots: { Blades: null, Sides: null } } when whole.HasWord("it") && PlaceReader.Read(whole).Count is 0 && course.Drafts.LastOrDefault(other => other.Head < draft.Head) is { Kind: EntryKind.Finding, Slots: { } found } meant && meant.Sentence == draft.Sentence && found.Zone == draft.Slots.Zone => draft.Slots with { Blades = found.Blades, Sides = found.Sides },
                { Kind: EntryKind.RiskClosed, Slots.Outcome: RiskOutcome.Happened } when IsDenied(whole) => draft.Slots with { Outcome = RiskOutcome.DidNotHappen },
                _ => draft.Slots,
            };
        }
    }

    // “Higher on the left”, “more open on the right than on the left”.
    private static ReadSlots Higher(ReadSlots slots, Segment whole)
    {
        var at = Enumerable.Range(whole.First, whole.End - whole.First).FirstOrDefault(at => whole.Word(at) is "higher" || whole.Word(at) is "open" && whole.Word(at - 1) is "more", -1);
        if (at < 0 || whole.Has(Cat.Not) || SideAfter(whole, at) is not { } side)
        {
            return slots;
        }

        var than = whole.IndexOfWord("than");
        return slots with { Relation = whole.Word(at) is "higher" ? Relation.HigherThan : Relation.MoreOpenThan, Sides = side, OtherSides = than > at ? SideAfter(whole, than) : null };
    }

    private static Sides? SideAfter(Segment whole, int at)
    {
        var side = Enumerable.Range(at + 1, 4).FirstOrDefault(word => whole.Word(word) is "left" or "right", -1);
        return side < 0 ? null : whole.Word(side) is "left" ? Sides.Left : Sides.Right;
    }

    // “As thin in the middle as it is at the sides”.
    private static bool IsSame(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "as" && whole.Word(at + 1) is "thin" or "thick" && whole.Word(at + 2) is "in" && Enumerable.Range(at + 3, 2).Any(word => whole.Word(word) is "middle" or "centre")) && !whole.Has(Cat.Not);

    // “Two strokes off the right wing, and I’m leaving the left one”: the left wing.
    private static (Zone Zone, Blades? Blades)? OfLast(Course course, Draft draft)
    {
        if (course.Drafts.LastOrDefault(other => other.Head < draft.Head && other.Slots.Zone is not null) is { Slots: { Zone: { } zone } slots })
        {
            return zone is Zone.WholeReed ? null : (zone, slots.Blades);
        }

        return course.Before.LastPlace is { Zone: not Zone.WholeReed } place ? (place.Zone, place.Blades is Blades.Both ? null : place.Blades) : null;
    }

    // “Next to no heart left”.
    private static bool IsWornAway(Segment whole) => whole.HasWord("heart") && whole.HasWord("left") && !Spoken.HasStem(whole, "bark") && (whole.HasWord("no") || whole.HasWord("hardly") || whole.HasWord("barely") || whole.HasWord("little"));

    // “Which may be why it leaks”: why is supposed, and not that it does.
    private static bool IsCause(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "be" && whole.Word(at + 1) is "why" && whole.Word(at - 1) is "may" or "might" or "could");

    // “What I feared did not happen”.
    private static bool IsDenied(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "not" && whole.Word(at + 1) is "happen" or "happened" || whole.Word(at) is "never" && whole.Word(at + 1) is "happened");
}
