namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Take two off, says my list”, “two more strokes and I’d be through”, “came with a wire on”: what is only told of; and what is part of the work before it.</summary>
internal static class OnlyTold
{
    private static readonly HashSet<string> Wares = ["order", "ordered", "ordering", "buy", "bought", "buying"];

    private static readonly HashSet<string> Papers = ["list", "note", "notes", "slip", "plan", "letter", "book", "card"];

    private static readonly HashSet<string> Meeting = ["met", "meet", "meets", "closed", "close", "closes", "shut", "shuts", "touch", "touched", "touches"];

    /// <summary>Whether nothing was done.</summary>
    internal static bool Is(Course course, Draft draft)
    {
        var (segment, sentence) = (course.Segments[draft.Head], Spoken.Sentence(course, draft));
        return IsSaidByPaper(sentence) || IsIffy(course, draft) || IsPlaceOfTime(segment, draft.Slots)
            || draft.Slots.Kind is "seal-sides" or "seal-thread" or "refit-cork" or "add-wire" or "retie" && Spoken.HasAny(sentence, Wares)
            || draft.Slots.Kind is "add-wire" or "refit-cork" or "thin-corners" && Pairs(sentence, "came", "with") && !segment.HasWord("i")
            || draft.Slots.Kind is "draw-air" && segment.HasWord("drawing") && !Spoken.HasStem(segment, "air", "vacuum", "suck");
    }

    /// <summary>The work that it is part of: rinsed after paper, wetted to draw air, the eye rounded on what was just put in.</summary>
    internal static Draft? Before(Course course, Draft draft)
    {
        var at = course.Drafts.IndexOf(draft);
        if (at <= 0 || course.Drafts[at - 1] is not { Kind: EntryKind.Adjustment } before || before.Sentence != draft.Sentence || draft.Slots is not { Strokes: null, Mm: null, Words: null })
        {
            return null;
        }

        var segment = course.Segments[draft.Head];
        return (before.Slots.Kind, draft.Slots.Kind) switch
        {
            ("smooth-edge", "clean-inside") when Spoken.HasStem(segment, "rins") => before,
            ("draw-air", "soak") when Spoken.HasStem(segment, "moist", "wet", "damp") => before,
            ("round-eye", "round-eye") => before,
            _ => null,
        };
    }

    /// <summary>“Pressed it between finger and thumb and the middle met first”: looked at, and what was seen.</summary>
    internal static string? Pressed(Course course, Draft draft)
    {
        if (draft.Slots is not { Kind: "close-press" or "open-squeeze", Strokes: null, Words: null } || Spoken.Sentence(course, draft) is not { Asked: false } sentence || !sentence.HasWord("first") || !Spoken.HasAny(sentence, Meeting) || course.Drafts.Exists(other => other.Slots.Test is TestKind.ClosingOrder))
        {
            return null;
        }

        return StepRules.Closing(sentence) is { } step ? TestScale.Of(TestKind.ClosingOrder).Steps[step] : (sentence.HasWord("middle") || sentence.HasWord("centre") ? "the centre closes first" : null);
    }

    // “…, says my list”, “but not till I’ve heard it”.
    private static bool IsSaidByPaper(Segment sentence) => Enumerable.Range(sentence.First, sentence.End - sentence.First).Any(at => sentence.Word(at) is "says" or "said" && (Papers.Contains(sentence.Word(at + 1)) || Papers.Contains(sentence.Word(at + 2)) || Papers.Contains(sentence.Word(at - 1)))
        || sentence.Word(at) is "not" && sentence.Word(at + 1) is "till" or "until" or "before" && sentence.Word(at - 1) is "but");

    // “Two more strokes there and I’d be through”: strokes without a verb, and what would come of them.
    private static bool IsIffy(Course course, Draft draft) => Moods.Head(course.Segments[draft.Head]) is null && draft.Last + 1 < course.Segments.Count && course.Segments[draft.Last + 1] is { Joint: "and" } next && next.Sentence == draft.Sentence && next.HasWord("would");

    // “Went a little closed after the spine”: when, and not where.
    private static bool IsPlaceOfTime(Segment segment, ReadSlots slots) => slots is { Strokes: null, Mm: null } && PlaceReader.Read(segment).Where(mention => mention.HasPlace && mention.Zone is not Reeds.Zone.Opening).ToList() is [var place]
        && Enumerable.Range(Math.Max(segment.First, place.First - 2), Math.Min(2, place.First - segment.First)).Any(at => segment.Word(at) is "after" or "since") && (segment.Has(Cat.Test) || segment.HasWord("opening"));

    private static bool Pairs(Segment segment, string one, string other) => Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) == one && segment.Word(at + 1) == other);
}
