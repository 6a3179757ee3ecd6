namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Crow C minus 40 single octave”: one octave alone, and not which; its words stay with the crow.</summary>
internal static class Octaves
{
    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots.Test: TestKind.Crow }))
        {
            var segment = Spoken.Of(course, draft).FirstOrDefault(IsSingle);
            if (segment is not null && !segment.HasWord("low") && !segment.HasWord("high") && !segment.HasWord("bottom") && !segment.HasWord("top") && !segment.HasWord("lower") && !segment.HasWord("upper") && draft.Slots.Step is null or "low only" or "high only")
            {
                Spoken.Unscale(draft, draft.Slots, "one octave, and not which: its words are kept");
            }
        }
    }

    private static bool IsSingle(Segment segment) => Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "octave" && segment.Word(at - 1) is "single" or "one" or "only" or "just");
}
