namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Blades even now”, while they stand uneven in the log: how that ended, and no new strength; and which of two was compared with which.</summary>
internal static class EvenNow
{
    private static readonly HashSet<string> Even = ["even", "evened", "equal", "matched", "balanced", "alike", "same", "match", "matches"];

    private static readonly HashSet<string> Now = ["now", "again", "finally"];

    private static readonly Doubt Denied = new("kind", "said not to be even, so it is kept as a note");

    private static readonly Doubt Which = new("kind", "taken for the unevenness that was found before");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var whole = course.Segments[draft.First].With(course.Segments[draft.Last]);
            if (draft is { Kind: EntryKind.Finding, Slots: { Kind: "left-right-uneven", Blades: { } one, OtherBlades: { } other } slots } && one != other && IsOneSide(whole) && (slots.Sides ?? slots.OtherSides) is { } side && (slots.OtherSides ?? side) == side)
            {
                draft.Slots = slots with { Kind = "blades-uneven", Sides = side };
            }
            else if (draft is { Kind: EntryKind.FindingEnded, Slots.Ending: FindingEnding.Gone or FindingEnding.Better } && IsDenied(whole))
            {
                Spoken.Unmake(draft, Denied);
            }
            else if (draft.Kind is EntryKind.Finding or EntryKind.Note && IsEven(whole) && Standing(course, whole) is { } kind)
            {
                draft.Kind = EntryKind.FindingEnded;
                draft.Slots = new ReadSlots { Kind = kind, Ending = FindingEnding.Gone };
                draft.Doubts.Clear();
                draft.Doubts.Add(Which);
            }
        }
    }

    private static bool IsOneSide(Segment whole) => whole.HasWord("left") != whole.HasWord("right");

    // “Not even now”.
    private static bool IsDenied(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "not" && Even.Contains(whole.Word(at + 1)) && whole.Word(at + 1) is not "same");

    private static bool IsEven(Segment whole) => !whole.Asked && !whole.Has(Cat.Not) && !whole.Has(Cat.Plan) && !whole.Has(Cat.Cond) && !whole.Has(Cat.Than) && !whole.HasWord("almost") && !whole.HasWord("nearly") && !whole.HasWord("more") && !whole.HasWord("want")
        && Spoken.HasAny(whole, Even) && Spoken.HasAny(whole, Now) && !whole.Has(Cat.Test) && PlaceReader.Read(whole).All(mention => mention.Region is null && mention.Zone is null or Reeds.Zone.WholeReed or Reeds.Zone.SideEdges);

    // What stands of the two that were named; where only one of the kinds stands it is that one.
    private static string? Standing(Course course, Segment whole)
    {
        var open = course.Before.Log.Findings.Where(now => now.Ended is null).Select(now => now.Finding.FindingKind.Value).Where(kind => kind is "blades-uneven" or "left-right-uneven").Distinct().ToList();
        var named = Spoken.HasStem(whole, "blade") ? "blades-uneven" : Spoken.HasStem(whole, "side", "left") ? "left-right-uneven" : null;
        return named is null ? null : open.Contains(named) ? named : open is [var only] ? only : null;
    }
}
