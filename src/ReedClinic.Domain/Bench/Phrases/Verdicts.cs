namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Verdict improved, needs a couple of days playing in”: one verdict, with the rest as its reason; that it has to be played in takes no other verdict’s place.</summary>
internal static class Verdicts
{
    internal static void Join(Course course)
    {
        for (var at = course.Drafts.Count - 1; at > 0; at--)
        {
            var (first, then) = (course.Drafts[at - 1], course.Drafts[at]);
            if (first.Kind is EntryKind.Verdict && then.Kind is EntryKind.Verdict && first.Sentence == then.Sentence && then.First <= first.Last + 1)
            {
                first.Slots = then.Slots.Verdict is VerdictKind.NeedsPlayingIn ? first.Slots : then.Slots;
                Spoken.Join(course, first, then);
            }
        }

        if (course.Drafts.Find(draft => draft is { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.NeedsPlayingIn } && IsBetter(Spoken.Sentence(course, draft))) is { } named)
        {
            var first = Enumerable.Range(0, named.Head + 1).First(at => course.Segments[at].Sentence == named.Sentence);
            course.Drafts.RemoveAll(draft => draft != named && draft.Head >= first && draft.Last < named.Head && draft.Kind is EntryKind.Test or EntryKind.Note);
            (named.Slots, named.HasAside, named.First) = (named.Slots with { Verdict = VerdictKind.Improved }, true, course.Drafts.Where(draft => draft != named && draft.Last < named.Head).Select(draft => draft.Last + 1).DefaultIfEmpty(0).Max() is var free && free > first ? free : first);
            course.Left.RemoveAll(at => at >= named.First && at <= named.Last);
        }

        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.Improved } && Spoken.Of(course, draft).Any(OutcomeReader.IsToBePlayedIn)))
        {
            draft.HasAside = true;
        }
    }

    // “Verdict better, needs playing in”, “improved but needs playing in”.
    private static bool IsBetter(Segment whole) => !whole.Asked && !whole.Has(Cat.Not) && Enumerable.Range(whole.First, Math.Min(4, whole.End - whole.First)).Any(at => whole.Word(at) is "improved" || whole.Word(at) is "better" && (whole.Word(at - 1) is "verdict" || whole.Word(at - 2) is "verdict"));
}
