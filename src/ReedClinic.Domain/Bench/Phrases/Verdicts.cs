namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Verdict improved, needs a couple of days playing in”: one verdict, named by the later words, with the rest as its reason.</summary>
internal static class Verdicts
{
    internal static void Join(Course course)
    {
        for (var at = course.Drafts.Count - 1; at > 0; at--)
        {
            var (first, then) = (course.Drafts[at - 1], course.Drafts[at]);
            if (first.Kind is EntryKind.Verdict && then.Kind is EntryKind.Verdict && first.Sentence == then.Sentence && then.First <= first.Last + 1)
            {
                first.Slots = then.Slots;
                Spoken.Join(course, first, then);
            }
        }

        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.Improved } && Spoken.Of(course, draft).Any(OutcomeReader.IsToBePlayedIn)))
        {
            draft.Slots = draft.Slots with { Verdict = VerdictKind.NeedsPlayingIn };
            draft.HasAside = true;
        }
    }
}
