using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What a deed’s own words say of it and was not taken: how many strokes, for the sake of what, and that a tip that is set off is not made longer.</summary>
internal static class SaidOfDeeds
{
    private static readonly HashSet<string> BetweenStrokes = ["more", "light", "little", "small", "tiny", "good", "careful", "gentle", "single", "of", "very", "fine", "short", "long", "quick"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Adjustment))
        {
            var whole = course.Segments[draft.First].With(course.Segments[draft.Last]);
            Define(draft, whole);
            draft.Slots = draft.Slots with { Sake = draft.Slots.Sake ?? Sake(whole, draft.Slots.Zone) };
            Count(course, draft);
        }
    }

    // “Set the tip off from the heart”: cane was taken in front of the line, and the tip is as long as it was.
    private static void Define(Draft draft, Segment whole)
    {
        var set = Enumerable.Range(whole.First, whole.End - whole.First).FirstOrDefault(at => whole.Word(at) is "set" or "setting", -1);
        if (draft.Slots is { Kind: "lengthen-tip", Mm: null } && set >= 0 && Enumerable.Range(set + 1, 4).Any(at => whole.Word(at) is "off") && !Spoken.HasStem(whole, "length", "long"))
        {
            draft.Slots = draft.Slots with { Kind = "define-tip", Zone = Zone.Rooftop };
        }

        if (draft.Slots is { Kind: "define-tip", Sake: Zone.TipSides or Zone.TipCentre or Zone.TipEdge or Zone.TipCorners })
        {
            draft.Slots = draft.Slots with { Sake = null };
        }
    }

    // “So that the middle stands fuller”: the middle of what was worked beside it.
    private static Zone? Sake(Segment whole, Zone? worked)
    {
        var so = whole.IndexOfWord("so");
        var middle = so < 0 ? -1 : Enumerable.Range(so, whole.End - so).FirstOrDefault(at => whole.Word(at) is "middle" or "centre", -1);
        return middle < 0 || middle - so > 4 || !Enumerable.Range(middle + 1, 7).Any(at => whole.Word(at) is "stand" or "stands" or "fuller" or "thicker" or "proud" or "prouder" or "comparison") ? null : worked switch
        {
            Zone.HeartSides => Zone.HeartCentre,
            Zone.TipSides or Zone.TipCorners => Zone.TipCentre,
            _ => null,
        };
    }

    // “Five strokes, left window”: said ahead of the place, or behind what was taken over from before.
    private static void Count(Course course, Draft draft)
    {
        var slots = draft.Slots;
        if (slots is not { Mm: null, Words: null } || slots.Kind is "clip" or "clip-hair" or "soak" or "rest-dry" or "retie" or "seal-sides" or "seal-thread")
        {
            return;
        }

        var own = Strokes(Spoken.Of(course, draft));
        if (slots.Strokes is { } taken)
        {
            draft.Slots = own is [var other] && other != taken && !IsSaid(course, draft, taken) ? slots with { Strokes = other } : slots;
            return;
        }

        var lead = course.Drafts.Where(other => other != draft && other.Last < draft.First).Select(other => other.Last).DefaultIfEmpty(-1).Max() + 1;
        var ahead = own.Count > 0 || lead >= draft.First || course.Segments[lead].Sentence != draft.Sentence ? own : Strokes([.. course.Segments.Skip(lead).Take(draft.First - lead)]);
        if (ahead is [var strokes])
        {
            draft.Slots = slots with { Strokes = strokes };
            draft.First = own.Count > 0 ? draft.First : lead;
            course.Left.RemoveAll(at => at >= draft.First && at <= draft.Last);
        }
    }

    private static List<int> Strokes(IReadOnlyList<Segment> segments) => [.. segments.Where(segment => !segment.Asked && !segment.Has(Cat.Not) && !segment.Has(Cat.Cond) && !segment.Has(Cat.Plan)).SelectMany(segment => segment.All(Cat.Stroke).Select(item => Before(segment, item)).OfType<int>())];

    // The number right before the strokes.
    private static int? Before(Segment segment, Item strokes)
    {
        for (var at = strokes.First - 1; at >= segment.First && at >= strokes.First - 3; at--)
        {
            if (Numbers.At(segment.Tokens, at, segment.End) is { } number && number.Value is >= 1 and <= 30 && number.Value == decimal.Truncate(number.Value)
                && Enumerable.Range(number.End, Math.Max(0, strokes.First - number.End)).All(between => BetweenStrokes.Contains(segment.Word(between)))
                && segment.Word(at - 1) is not ("after" or "than" or "or" or "to" or "maybe" or "perhaps" or "no" or "not" or "another"))
            {
                return (int)number.Value;
            }
        }

        return null;
    }

    // “Two strokes in each, four in all”: what was taken was said.
    private static bool IsSaid(Course course, Draft draft, int taken) => Spoken.Of(course, draft).Any(segment => !segment.HasWord("mean") && Enumerable.Range(segment.First, segment.End - segment.First).Any(at => Numbers.At(segment.Tokens, at, segment.End) is { } number && number.Value == taken));
}
