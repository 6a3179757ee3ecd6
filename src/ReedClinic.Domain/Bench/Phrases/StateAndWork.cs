using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Right too thick, took one stroke off the right”, “upper heart strong, lower heart weak”, “tip left too thick”: how it is stands beside what was done for it, and the blade and side that are named are kept.</summary>
internal static class StateAndWork
{
    private static readonly HashSet<string> Reason = ["because", "since", "as", "so", "where", "which", "while", "when", "if", "not", "was", "were"];

    private static readonly Doubt Praised = new("kind", "praise, and no fault: of what wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList())
        {
            switch (draft)
            {
                case { Kind: EntryKind.Adjustment, Slots.Zone: not null } when draft.Head > draft.First || draft.First > 0 && Spoken.Lead(course, draft) < draft.First:
                    Split(course, draft);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "heart-thick" or "back-thick", Character: FindingCharacter.Fault } } when IsGoodAndStrong(Spoken.Whole(course, draft)):
                    Spoken.Unmake(draft, Praised);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Zone: not null, Sides: null } } when Leaning(course.Segments[draft.Head]) is { } side:
                    draft.Slots = draft.Slots with { Sides = side };
                    Follow(course, draft, side);
                    break;
            }
        }

        foreach (var draft in course.Drafts.Where(draft => draft.Slots.Zone is Zone.HeartBottom && draft.Kind is EntryKind.Finding or EntryKind.Adjustment or EntryKind.LeaveAlone))
        {
            Lower(course, draft);
        }
    }

    // “Right too thick, took one off the right”: how it is leads up to the work, and is a fact of its own.
    private static void Split(Course course, Draft work)
    {
        var (first, last) = work.Head > work.First ? (work.First, work.Head - 1) : (work.First - 1, work.First - 1);
        var how = course.Segments[first];
        if (how.Asked || course.Segments[work.Head].Joint is not ("," or "so" or "and" or "") || how.Find(Cat.Quality) is not { } quality || FindingTable.IsPraise(quality.Value) || !how.HasWord("too") || Spoken.HasAny(how, Reason) || how.Has(Cat.Verb) || how.Has(Cat.Plan) || how.Has(Cat.Cond)
            || PlaceReader.Read(how) is not [var place] || !Agrees(place, work.Slots))
        {
            return;
        }

        var whole = place.HasPlace ? place : place with { Zone = work.Slots.Zone, Part = null };
        if (FindingTable.Kind(whole, quality.Value) is not { } kind)
        {
            return;
        }

        var index = course.Drafts.IndexOf(work);
        work.First = work.Head;
        course.Left.RemoveAll(left => left == first);
        course.Drafts.Insert(index, new Draft { Kind = EntryKind.Finding, Slots = new ReadSlots { Kind = kind, Character = FindingCatalogue.Find(new FindingKindId(kind))?.Usually ?? FindingCharacter.Fault, Zone = whole.Usual, Blades = place.OneBlade ?? work.Slots.Blades, Sides = place.OneSide, Degree = FindingReader.Degree(how, quality) }, Head = first, First = first, Last = last, Sentence = work.Sentence, ZoneSaid = place.HasPlace });
    }

    private static bool Agrees(Mention place, ReadSlots work) => (place.OneSide is not null || place.HasPlace) && (place.OneSide is null || work.Sides is null || place.OneSide == work.Sides) && (place.OneBlade is null || work.Blades is null || place.OneBlade == work.Blades)
        && (!place.HasPlace || place.Usual == work.Zone || PlaceReader.Of(place.Usual!.Value) is { Length: > 0 } region && region == PlaceReader.Of(work.Zone!.Value));

    private static bool IsGoodAndStrong(Segment said) => said.HasWord("strong") && (said.HasWord("good") || said.HasWord("nice") || said.HasWord("nicely") || said.HasWord("sounds") || said.HasWord("pleasantly")) && !said.HasWord("too") && !said.Asked;

    // “Tip left too thick”.
    private static Sides? Leaning(Segment said)
    {
        for (var at = said.First + 1; at + 1 < said.End; at++)
        {
            if (said.Word(at) is "left" or "right" && said.Items.Any(item => item.End == at && item.Cat is Cat.Zone or Cat.Region) && said.Word(at + 1) is "too" or "still" or "very" or "much" && said.Word(at - 2) is not "is" && said.Has(Cat.Quality) && !said.Asked && !said.Has(Cat.Than) && !said.HasWord("by") && !said.HasWord("them") && !said.HasWord("long"))
            {
                return said.Word(at) is "left" ? Sides.Left : Sides.Right;
            }
        }

        return null;
    }

    // “…, took one off”: there.
    private static void Follow(Course course, Draft found, Sides side)
    {
        if (course.Drafts.IndexOf(found) + 1 is var next && next < course.Drafts.Count && course.Drafts[next] is { Kind: EntryKind.Adjustment, Slots: { Sides: null } slots } work && work.Sentence == found.Sentence && work.First == found.Last + 1 && slots.Zone == found.Slots.Zone && PlaceReader.Read(Spoken.Whole(course, work)).Count == 0)
        {
            work.Slots = slots with { Sides = side };
        }
    }

    // “Upper heart strong, lower heart weak”: of the lower blade, and not the heart’s lower end.
    private static void Lower(Course course, Draft draft)
    {
        var said = Spoken.Whole(course, draft);
        var at = said.IndexOfWord("lower");
        if (at < 0 || said.Word(at + 1) is not "heart" || !Enumerable.Range(0, said.Tokens.Count).Any(token => said.Tokens[token].Text is "upper" or "top") || said.HasWord("end") || said.HasWord("part"))
        {
            return;
        }

        draft.Slots = draft.Slots with { Zone = Zone.HeartCentre, Blades = Blades.Lower, Kind = draft.Slots.Kind switch { "free-heart-bottom" => "dust-heart", "back-thick" => "heart-thick", "back-thin" => "heart-thin", var kind => kind } };
    }
}
