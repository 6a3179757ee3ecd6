using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Intact on the upper, cut into on the lower”, “clean inside, I looked”, “oh dear, I tore it off”, “seals well, no hiss”: what was found, looked for, or caused.</summary>
internal static class ToldOfFaults
{
    private static readonly HashSet<string> Harming = ["tore", "torn", "broke", "broken", "cracked", "chipped", "split", "nicked", "snapped", "ripped", "knocked", "creased"];

    private static readonly HashSet<string> Cutting = [.. "cut into scraped away gone through nicked but and though the on blade side one half is 's are been slightly a bit badly right".Split(' ')];

    private static readonly HashSet<string> Clean = [.. "it it's is 's clean inside in there all nice and nicely perfectly quite lovely spotless bore the of reed nothing i looked checked can see had a look".Split(' ')];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList().Where(course.Drafts.Contains))
        {
            var whole = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots: { Kind: "spine-intact" or "rails-intact", Relation: null } } when HasNotBeen(whole):
                    (draft.Kind, draft.Slots) = (EntryKind.LookedFor, new ReadSlots { Kind = draft.Slots.Kind is "spine-intact" ? "spine-scraped" : "rails-cut", Known = draft.Slots.Known });
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Arose: null } } when !whole.Asked && Arisen(whole) is { } arose:
                    draft.Slots = draft.Slots with { Arose = arose };
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "worn" } } when whole.HasWord("stick") || whole.HasWord("cane") && whole.HasWord("came"):
                    Spoken.Unmake(draft, new Doubt("kind", "where the cane is from, and no fault, so it is kept as a note"));
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Relation: null, Sides: { } side, Zone: not null } } when Against(whole, side) is { } relation:
                    draft.Slots = draft.Slots with { Kind = draft.Slots.Kind is "heart-sides-thick" or "heart-sides-thin" ? "heart-lopsided" : draft.Slots.Kind is "heart-lopsided" ? "heart-lopsided" : "left-right-uneven", Relation = relation, OtherSides = side is Sides.Left ? Sides.Right : Sides.Left };
                    break;
                case { Kind: EntryKind.LookedFor, Slots.Kind: "side-leak" } when Sealed(course, draft) is { } seal && PlaceReader.Read(whole).Count == 0:
                    Spoken.Join(course, seal, draft);
                    break;
                case { Kind: EntryKind.Note } when IsCleanInside(whole):
                    (draft.Kind, draft.Slots) = (EntryKind.LookedFor, new ReadSlots { Kind = "dirty-inside" });
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "something-else", Character: FindingCharacter.Fault, Zone: Zone.WholeReed } } when course.Drafts.Find(next => next.Kind is EntryKind.Verdict && next.First == draft.Last + 1 && next.Sentence == draft.Sentence) is { } verdict && course.Segments[verdict.First].Joint is "so" && PlaceReader.Read(whole).Count == 0:
                    (verdict.First, verdict.HasAside) = (draft.First, true);
                    course.Drafts.Remove(draft);
                    break;
            }
        }

        for (var at = 1; at < course.Segments.Count; at++)
        {
            OtherBlade(course, at);
        }
    }

    private static bool HasNotBeen(Segment whole) => !whole.HasWord("intact") && !whole.HasWord("whole") && Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "not" && whole.Word(at - 1) is "has" or "have" && whole.Word(at + 1) is "been");

    // “I tore it off”; “only now I notice”.
    private static Arose? Arisen(Segment whole)
    {
        for (var at = whole.First; at < whole.End; at++)
        {
            if (whole.Word(at) is "i" && Enumerable.Range(at + 1, Math.Min(2, whole.End - at - 1)).FirstOrDefault(next => Harming.Contains(whole.Word(next)), -1) is > 0 and var harm && (harm == at + 1 || whole.Word(at + 1) is "just" or "have" or "'ve" or "accidentally"))
            {
                return Arose.CausedByTheWork;
            }

            if (whole.Word(at) is "only" && whole.Word(at + 1) is "now" && (whole.HasWord("i") || whole.HasWord("we")) && Spoken.HasStem(whole, "notic", "see", "saw", "spot", "find", "found", "feel"))
            {
                return Arose.SeenLaterAlreadyThere;
            }
        }

        return null;
    }

    // “Right shoulder heavy against the left”, “left half thinner than right”.
    private static Relation? Against(Segment whole, Sides side)
    {
        var (own, other) = side is Sides.Left ? ("left", "right") : ("right", "left");
        var than = Enumerable.Range(whole.First, whole.End - whole.First).FirstOrDefault(at => whole.Word(at) is "than" or "against" || whole.Word(at) is "to" or "with" && whole.Word(at - 1) is "compared", -1);
        if (than < 0 || whole.Has(Cat.Not) || whole.IndexOfWord(own) is not (>= 0 and var first) || first > than || !(whole.Word(than + 1) == other || whole.Word(than + 1) is "the" && whole.Word(than + 2) == other))
        {
            return null;
        }

        var said = Enumerable.Range(first, than - first).Select(whole.Word).ToList();
        return said.Exists(word => word is "thin" or "thinner" or "light" or "lighter") ? Relation.ThinnerThan : said.Exists(word => word is "thick" or "thicker" or "heavy" or "heavier") ? Relation.ThickerThan : null;
    }

    private static Draft? Sealed(Course course, Draft draft) => course.Drafts.Find(seal => seal is { Kind: EntryKind.Finding, Slots.Kind: "seals-well" } && seal.Last == draft.First - 1 && seal.Sentence == draft.Sentence);

    private static bool IsCleanInside(Segment whole) => !whole.Asked && whole.HasWord("clean") && whole.HasWord("inside") && Enumerable.Range(whole.First, whole.End - whole.First).All(at => whole.Tokens[at].Kind is TokenKind.Break || Clean.Contains(whole.Word(at)) || whole.Word(at).Length == 0) && (whole.Word(whole.First) is not "clean" || whole.Word(whole.First + 1) is "inside");

    // “Rails intact on the upper, cut into on the lower”.
    private static void OtherBlade(Course course, int at)
    {
        var segment = course.Segments[at];
        if (segment.Asked || segment.Has(Cat.Not) || PlaceReader.Read(segment) is not [{ HasPlace: false, Part: null } part] || part.OneBlade is null == part.OneSide is null || !(segment.HasWord("cut") || segment.HasWord("scraped") || segment.HasWord("nicked") || segment.HasWord("gone"))
            || !Enumerable.Range(segment.First, segment.End - segment.First).All(word => segment.Tokens[word].Kind is TokenKind.Break || Cutting.Contains(segment.Word(word)) || part.First <= word && word < part.End) || !segment.HasWord("on")
            || course.Drafts.LastOrDefault(draft => draft.Head < at && draft.Sentence == segment.Sentence) is not { Kind: EntryKind.Finding, Slots: { Kind: "rails-intact" or "spine-intact" } } first || first.Slots.Blades is null && part.OneBlade is not null || first.Slots.Sides is null && part.OneSide is not null || Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        (draft.Kind, draft.Slots) = (EntryKind.Finding, new ReadSlots { Kind = first.Slots.Kind is "rails-intact" ? "rails-cut" : "spine-scraped", Character = FindingCharacter.Fault, Zone = first.Slots.Zone, Blades = part.OneBlade, Sides = part.OneSide });
        draft.Doubts.Clear();
    }
}
