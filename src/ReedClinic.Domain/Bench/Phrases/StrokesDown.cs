using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Upper: three down the ramp”, “a third of a millimetre off”, “gave up on this”, “once more” where nothing was: strokes that are no pitch, a part of a millimetre, a reed that is given up, and work that has no name.</summary>
internal static class StrokesDown
{
    private static readonly HashSet<string> Across = ["down", "up", "along", "across", "off"];

    private static readonly HashSet<string> GivenUp = [.. "i 've have we gave given give giving up on this that it one the reed now just then finally so ok okay and well is 's right".Split(' ')];

    private static readonly HashSet<string> Nameless = [.. "same again once more twice the other on and blade side one time times do did it that another go as before too now ok okay so then just a of this thing".Split(' ')];

    private static readonly Dictionary<string, decimal> Parts = new() { ["half"] = 0.5m, ["third"] = 0.33m, ["quarter"] = 0.25m, ["fifth"] = 0.2m, ["tenth"] = 0.1m };

    private static readonly Doubt Counted = new("kind", "strokes along that part, with no word for the work");

    private static readonly Doubt Nothing = new("kind", "no work stands before it, so it is kept as a note: which was done again?");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment }).ToList())
        {
            var whole = Spoken.Whole(course, draft);
            if (draft.Slots.Mm is not null && Part(whole) is { } part)
            {
                draft.Slots = draft.Slots with { Mm = part, Kind = draft.Slots.Kind is "clip" or "clip-hair" ? part < 0.3m ? "clip-hair" : "clip" : draft.Slots.Kind };
            }
            else if (course.Before.Last is null && !course.Drafts.Exists(other => other.Kind is EntryKind.Adjustment && other.Head < draft.Head) && IsAll(whole, Nameless) && (whole.HasWord("again") || whole.HasWord("more") || whole.HasWord("same")))
            {
                Spoken.Unmake(draft, Nothing);
            }
        }

        for (var at = 0; at < course.Segments.Count; at++)
        {
            Count(course, at);
            GiveUp(course, at);
        }
    }

    // “A third of a millimetre”, “half a millimetre”, “a quarter mm”.
    private static decimal? Part(Segment whole)
    {
        for (var at = whole.First; at < whole.End; at++)
        {
            if (!Parts.TryGetValue(whole.Word(at), out var part) || whole.Word(at - 1) is "and" or "a" && whole.Word(at - 2) is "and")
            {
                continue;
            }

            var unit = at + 1;
            while (whole.Word(unit) is "of" or "a" or "an")
            {
                unit++;
            }

            if (whole.Word(unit) is "mm" or "millimetre" or "millimeter" or "mil" or "mill" && (whole.Word(at - 1) is not "two" and not "three"))
            {
                return part;
            }
        }

        return null;
    }

    // A bare number down a part of the reed, heard as cents or as a fault.
    private static void Count(Course course, int at)
    {
        var segment = course.Segments[at];
        if (segment.Asked || course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is not { Kind: EntryKind.Test or EntryKind.Finding } over || over.Head != at || Strokes(segment) is not { } said || PlaceReader.Read(segment).FindAll(place => place is { HasPlace: true, Usual: not Zone.WholeReed }) is not [var place] || place.First <= said.At
            || DeedTable.Kind("scrape", MorePlaces.Key(place)) is not { } kind)
        {
            return;
        }

        var lead = PlaceReader.Read(Spoken.Whole(course, Spoken.Lead(course, over), over.Last)).Find(mention => mention.OneBlade is not null);
        (over.Kind, over.HasAside) = (EntryKind.Adjustment, true);
        over.Slots = new ReadSlots { Kind = kind, Zone = place.Usual, Blades = place.OneBlade ?? lead?.OneBlade, Sides = place.OneSide, Strokes = said.Strokes };
        over.Doubts.Clear();
        over.Doubts.Add(Counted);
        over.Doubts.Add(Doubt.Done);
    }

    // Every word before the number names a place only.
    private static (int Strokes, int At)? Strokes(Segment segment)
    {
        for (var at = segment.First; at < segment.End; at++)
        {
            if (Numbers.At(segment.Tokens, at, segment.End) is { Value: >= 1 and <= 12 and var value } number)
            {
                var next = segment.Word(number.End) is "strokes" or "stroke" or "light" or "more" ? number.End + 1 : number.End;
                return decimal.Truncate(value) == value && Across.Contains(segment.Word(next)) && segment.Word(next + 1) is "the" or "each" or "both" ? ((int)value, at) : null;
            }

            if (segment.Tokens[at].Kind is not (TokenKind.Break or TokenKind.Symbol) && segment.Word(at).Length > 0 && segment.Word(at) is not ("the" or "on" or "and" or "then" or "blade") && !segment.Covered(at, Cat.Blade) && !segment.Covered(at, Cat.Side) && !segment.Covered(at, Cat.Filler))
            {
                return null;
            }
        }

        return null;
    }

    // “Gave up on this”, “I’ve given up”: of the reed, and of no part or person.
    private static void GiveUp(Course course, int at)
    {
        var segment = course.Segments[at];
        if (segment.Asked || !(segment.HasWord("gave") || segment.HasWord("given")) || !segment.HasWord("up") || !IsAll(segment, GivenUp) || course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is { Kind: EntryKind.Verdict } || Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        (draft.Kind, draft.Slots, draft.HasAside) = (EntryKind.Verdict, new ReadSlots { Verdict = VerdictKind.NotToBeSaved }, true);
        draft.Doubts.Clear();
    }

    private static bool IsAll(Segment segment, HashSet<string> words) => Enumerable.Range(segment.First, segment.End - segment.First).All(at => segment.Tokens[at].Kind is TokenKind.Break || segment.Word(at).Length == 0 || words.Contains(segment.Word(at)) || segment.Covered(at, Cat.Filler));
}
