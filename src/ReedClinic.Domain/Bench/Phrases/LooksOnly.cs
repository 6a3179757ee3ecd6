using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Side seams look tight”, “tip’s nice and even”, “hump behind the tip”: what was only looked at has passed no test, and what is praised or found is of the place that was named.</summary>
internal static class LooksOnly
{
    private static readonly HashSet<string> Looks = ["look", "looks", "looked", "looking", "appear", "appears", "appeared", "seem", "seems", "seemed"];

    private static readonly string[] Tried = ["suck", "draw", "drew", "air", "pop", "vacuum", "bubble", "seal", "hold", "leak", "hiss", "blow", "blew", "water", "breath", "test"];

    private static readonly string[] Humps = ["hump", "bump", "lump", "ridge", "bulge", "mound", "swelling", "hillock"];

    private static readonly HashSet<string> Past = ["behind", "below", "beneath", "under"];

    private static readonly HashSet<string> Between = ["the", "of", "just", "right", "its", "back", "your", "this"];

    private static readonly Doubt Seen = new("kind", "a look, and no test of whether it seals, so its words are kept");

    private static readonly Doubt Praised = new("kind", "even, and no word of the opening, so its words are kept");

    private static readonly Doubt Place = new("zone", "behind the tip is taken for where the heart comes down to it");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var whole = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots.Kind: "seals-well" } when Spoken.HasAny(whole, Looks) && !HasTrial(whole):
                    Become(draft, draft.Slots with { Kind = "something-else" }, Seen);
                    break;
                case { Kind: EntryKind.Finding, Slots.Kind: "opening-even" } when Named(whole) is { } place && !Spoken.HasStem(whole, "open", "apertur", "gap", "mouth", "slit"):
                    Become(draft, draft.Slots with { Kind = "something-else", Zone = place.Usual, Blades = place.OneBlade ?? draft.Slots.Blades, Sides = place.OneSide ?? draft.Slots.Sides }, Praised);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Relation: null, Kind: "heart-thick" or "tip-thick" or "tip-wavy" or "bumps" or "heart-sides-thick" or "something-else" } } when IsBehindTip(whole):
                    Find(draft, whole);
                    break;
                case { Kind: EntryKind.Adjustment, Slots.Kind: "thin-whole-tip" or "dust-heart" or "thin-tip-sides" } when IsBehindTip(whole):
                    draft.Slots = draft.Slots with { Kind = "blend", Zone = Zone.Transition };
                    draft.HasAside = true;
                    draft.Doubts.Add(Place);
                    break;
            }
        }
    }

    // “Sealed” is how it looks; “seals” and “the seal” are what was tried.
    private static bool HasTrial(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is not ("sealed" or "airtight") && Tried.Any(stem => whole.Word(at).StartsWith(stem, StringComparison.Ordinal)));

    private static void Become(Draft draft, ReadSlots slots, Doubt doubt)
    {
        (draft.Slots, draft.HasAside) = (slots with { Certainty = null }, true);
        draft.Doubts.RemoveAll(old => old.Slot is "kind");
        draft.Doubts.Add(doubt);
    }

    private static void Find(Draft draft, Segment whole)
    {
        var humped = Spoken.HasStem(whole, Humps);
        var kind = humped ? "bumps" : "something-else";
        if (draft.Slots.Kind == kind && draft.Slots.Zone is Zone.Transition)
        {
            return;
        }

        Become(draft, draft.Slots with { Kind = kind, Zone = Zone.Transition, Certainty = draft.Slots.Certainty }, Place);
    }

    private static Mention? Named(Segment whole) => PlaceReader.Read(whole) is [{ HasPlace: true, Usual: not (null or Zone.Opening or Zone.WholeReed) } place] ? place : null;

    // “Behind the tip”, “just below the tip”, “at the back of the tip”, and no part that has a name of its own.
    private static bool IsBehindTip(Segment whole)
    {
        var tip = whole.IndexOfWord("tip");
        if (tip <= whole.First || whole.HasWord("heart") || whole.Word(tip + 1) is "line" or "corner" or "corners")
        {
            return false;
        }

        var at = tip - 1;
        while (at > whole.First && Between.Contains(whole.Word(at)) && whole.Word(at) is not "back")
        {
            at--;
        }

        return Past.Contains(whole.Word(at)) || whole.Word(at) is "back" && whole.Word(at + 1) is "of";
    }
}
