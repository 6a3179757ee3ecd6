using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What is said of a finding in the other breaths of its sentence: how much, how sure, on which side, how it is known, in which part.</summary>
internal static class SaidOfFaults
{
    private const int Few = 6;

    private static readonly HashSet<string> Sure = ["i", "think", "reckon", "guess", "suspect", "maybe", "perhaps", "probably", "possibly", "there", "here", "it", "is", "'s", "mostly", "mainly"];

    private static readonly HashSet<string> Ways = ["up", "past", "down", "across", "along", "through", "over", "to", "into", "at", "where", "by", "on", "under", "beyond"];

    private static readonly HashSet<string> Closing = ["a", "bit", "little", "touch", "lot", "slightly", "hair"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            if (draft.Kind is EntryKind.Finding && draft.Slots.Character is not null)
            {
                var whole = Spoken.Whole(course, draft);
                draft.Slots = Narrowed(draft.Slots, Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last));
                draft.Slots = Compared(Sided(course, draft, whole), whole);
                draft.Slots = draft.Slots with { Degree = draft.Slots.Degree ?? (draft.Slots.Character is FindingCharacter.Taste ? null : Degree(whole)), Certainty = draft.Slots.Certainty ?? (IsSuspected(course, draft) ? Certainty.Suspected : null) };
                draft.Slots = draft.Slots with { Known = Known(course, draft, whole) };
            }
            else if (draft is { Kind: EntryKind.LookedFor, Slots.Known: null })
            {
                draft.Slots = draft.Slots with { Known = Known(course, draft, Spoken.Whole(course, draft)) };
            }
        }
    }

    // “The right corner, bottom blade, is still thick”: the part that is named, and not its neighbours. “The left side of the reed”: all of it.
    private static ReadSlots Narrowed(ReadSlots slots, Segment whole)
    {
        if (slots is { Kind: "left-right-uneven", Zone: Zone.SideEdges } && whole.HasWord("reed"))
        {
            return slots with { Zone = Zone.WholeReed };
        }

        if (slots is { Kind: "tip-edge-ragged" or "bumps" } && Spoken.HasStem(whole, "nick", "tooth", "teeth") && !Spoken.HasStem(whole, "rag", "rough", "fray", "bump", "ridge", "torn", "corner"))
        {
            return slots with { Kind = "something-else", Zone = PlaceReader.Read(whole).FirstOrDefault(mention => mention.HasPlace)?.Usual ?? slots.Zone };
        }

        var places = PlaceReader.Read(whole).Where(mention => mention.HasPlace).ToList();
        return places is [var place] && slots is { Kind: "tip-thick" or "tip-thin" or "heart-thick", Zone: { } zone, Relation: null } && place.Usual is { } named && named != zone && PlaceReader.Of(named) == PlaceReader.Of(zone)
            && whole.Find(Cat.Quality) is { } quality && FindingTable.Kind(place, quality.Value) is { } kind && kind != slots.Kind && FindingCatalogue.Find(new FindingKindId(kind))?.Usually == slots.Character
                ? slots with { Kind = kind, Zone = named }
                : slots;
    }

    // “It leaks, left side I think”; “right up past where it should stop” is no side.
    private static ReadSlots Sided(Course course, Draft draft, Segment whole)
    {
        var slots = draft.Slots;
        if (slots.Sides is Sides.Right && Words(whole, "right") is [var right] && Ways.Contains(whole.Word(right + 1)) && !whole.HasWord("the") | whole.Word(right - 1) is not "the" && whole.Word(right - 1) is not ("on" or "upper" or "lower"))
        {
            return slots with { Sides = null };
        }

        if (slots is not { Blades: null, Sides: null, Relation: null } || slots.Kind is "thread-too-high" or "dirty-inside")
        {
            return slots;
        }

        var behind = Spoken.Of(course, draft).SkipWhile(segment => segment.First <= course.Segments[draft.Head].First).FirstOrDefault(IsWhere);
        var said = behind is null ? [] : PlaceReader.Read(behind);
        return said.Exists(mention => mention.HasPlace && PlaceReader.Of(mention.Usual!.Value) != PlaceReader.Of(slots.Zone!.Value)) ? slots
            : slots with { Blades = said.Select(mention => mention.OneBlade).FirstOrDefault(one => one is not null), Sides = said.Select(mention => mention.OneSide).FirstOrDefault(one => one is not null) };
    }

    private static bool IsWhere(Segment segment) => !segment.Asked && PlaceReader.Read(segment).Count == 1 && Enumerable.Range(segment.First, segment.End - segment.First).All(at => PlaceSaidAfter.IsOfPlace(segment, at) || Sure.Contains(segment.Word(at)) || segment.Covered(at, Cat.Hedge));

    // “The right window was the thicker”.
    private static ReadSlots Compared(ReadSlots slots, Segment whole)
    {
        if (slots is not { Kind: "windows-uneven" or "heart-lopsided" or "left-right-uneven" or "blades-uneven", Relation: null } || slots is { Sides: null, Blades: null })
        {
            return slots;
        }

        var at = Words(whole, "the").Find(the => whole.Word(the + 1) is "thicker" or "heavier" or "stronger" or "thinner" or "weaker" or "lighter");
        return at == 0 && whole.Word(1) is not ("thicker" or "thinner") ? slots : slots with { Relation = whole.Word(at + 1) is "thicker" or "heavier" or "stronger" ? Relation.ThickerThan : Relation.ThinnerThan };
    }

    private static List<int> Words(Segment whole, string word) => [.. Enumerable.Range(whole.First, whole.End - whole.First).Where(at => whole.Word(at) == word)];

    // “A lot thicker”, “bit more open”, “slopes a bit”: the words that count as degrees, wherever they stand by a word for how it is.
    private static string? Degree(Segment whole)
    {
        for (var at = whole.First; at < whole.End; at++)
        {
            var value = whole.Word(at) switch
            {
                "very" or "really" or "far" => "strong",
                "much" when whole.Word(at - 1) is not ("too" or "so" or "how" or "not" or "as") => "strong",
                "lot" when whole.Word(at - 1) is "a" => "strong",
                "slightly" => "slight",
                "bit" or "little" or "touch" or "hair" when whole.Word(at - 1) is "a" && whole.Word(at - 2) is not ("quite" or "not" or "than") || at == whole.First || whole.Tokens[at - 1].Kind is TokenKind.Break => "slight",
                _ => null,
            };
            if (value is not null && (IsOfQuality(whole, at + 1) || value is "slight" && IsAtEnd(whole, at)))
            {
                return value;
            }
        }

        return null;
    }

    private static bool IsOfQuality(Segment whole, int at)
    {
        if (whole.Word(at) is "more" && whole.Items.Any(item => item.Cat is Cat.Quality && item.First == at && item.Count > 1))
        {
            return true;
        }

        at = whole.Word(at) is "too" or "more" ? at + 1 : at;
        return whole.Items.Any(item => item.Cat is Cat.Quality && item.First == at) && (whole.Word(at).EndsWith("er", StringComparison.Ordinal) || whole.Word(at - 1) is "more" or "very" or "really" or "too" or "slightly" or "bit" or "little" or "touch" or "hair");
    }

    // “…, slopes a bit”: one word, and how much.
    private static bool IsAtEnd(Segment whole, int at)
    {
        var first = at;
        while (first > whole.First && whole.Tokens[first - 1].Kind is not TokenKind.Break)
        {
            first--;
        }

        return (at + 1 >= whole.End || whole.Tokens[at + 1].Kind is TokenKind.Break) && first > whole.First && Enumerable.Range(first, at - first + 1).Count(word => !Closing.Contains(whole.Word(word))) is 1 && !whole.Items.Any(item => item.First >= first && item.End <= at + 1 && item.Cat is Cat.Leave or Cat.Plan or Cat.Not or Cat.Verb or Cat.Ended);
    }

    // “I suspect the right corner, …”.
    private static bool IsSuspected(Course course, Draft draft) => draft.Slots.Character is FindingCharacter.Fault && Spoken.Lead(course, draft) is var first && first < draft.Last
        && course.Segments.Skip(first).Take(draft.Last - first + 1).Any(segment => segment.Has(Cat.Hedge) && !segment.Has(Cat.Plan) && !segment.Has(Cat.Not) && segment.Joint is not ("which" or "because" or "but" or "so" or "and") && segment.End - segment.First <= Few + 1 && !segment.Has(Cat.Test));

    // “I can hear that much” behind it; “hard to tell in this lamp”, “lamp on” say nothing of how.
    private static KnownBy? Known(Course course, Draft draft, Segment whole)
    {
        var known = draft.Slots.Known;
        if (known is KnownBy.Light && (whole.HasWord("hard") || whole.HasWord("difficult") || Words(whole, "lamp").Exists(at => whole.Word(at + 1) is "on" or "off")))
        {
            return null;
        }

        return known ?? Spoken.Of(course, draft).Where(segment => segment.First > course.Segments[draft.Head].First && segment.HasWord("i") && !segment.Has(Cat.Not) && !segment.Has(Cat.Plan)
            && segment.HasWord("hear") | segment.HasWord("see") | segment.HasWord("feel")).Select(FindingReader.Known).FirstOrDefault(said => said is not null);
    }
}
