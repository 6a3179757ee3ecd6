namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Between B and C, nearer the C”: nearer to which is no pitch of its own.</summary>
internal static class Nearers
{
    internal static void Drop(Course course)
    {
        for (var i = course.Drafts.Count - 1; i > 0; i--)
        {
            var (one, other) = (course.Drafts[i - 1], course.Drafts[i]);
            var segment = course.Segments[other.Head];
            if (one is { Kind: EntryKind.Test, Slots: { Between: not null } pair } && other is { Kind: EntryKind.Test, Slots: { Between: null, Cents: null, Change: null } said } && one.Sentence == other.Sentence && said.Test == pair.Test && (said.Pitch is null || said.Pitch == pair.Pitch || said.Pitch == pair.Between)
                && (segment.HasWord("nearer") || segment.HasWord("closer") || segment.HasWord("neither")))
            {
                (one.Last, one.HasAside) = (other.Last, true);
                course.Drafts.RemoveAt(i);
            }
        }
    }
}
