namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Squeezed the sides of the tube to open it”: by its sides an eye gets rounder and opens, by top and bottom it gets flatter and closes.</summary>
internal static class RoundEyes
{
    private static readonly Doubt Way = new("kind", "which way the tube was pressed isn’t clear: rounder, or flatter?");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots.Kind: "flatten-eye" or "round-eye" }))
        {
            var segment = course.Segments[draft.Head];
            var opens = SaidOtherwise.IsTo(segment, "open", "round") || segment.HasWord("rounder") || segment.HasWord("wider");
            var closes = SaidOtherwise.IsTo(segment, "close", "flatten") || segment.HasWord("flat") || segment.HasWord("flatter");
            var (sides, faces) = (SaidOtherwise.IsSides(segment), segment.HasWord("top") || segment.HasWord("bottom") || segment.HasWord("faces"));
            if (draft.Slots.Kind is "round-eye" && !sides && !faces && !closes || !IsPressed(segment))
            {
                continue;
            }

            var (round, flat) = (opens || sides && !closes, closes || faces && !opens);
            draft.Slots = draft.Slots with { Kind = round && !flat ? "round-eye" : "flatten-eye" };
            if (round == flat || sides && closes || faces && opens)
            {
                draft.Doubts.Add(Way);
                draft.HasAside = true;
            }
        }
    }

    private static bool IsPressed(Segment segment) => Spoken.HasStem(segment, "squeez", "press", "pinch", "nip");
}
