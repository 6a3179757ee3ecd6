namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“The low notes grumble”: a complaint of a note is never the best word of its scale, unless that is said as well; what was said is kept.</summary>
internal static class Grumbling
{
    private static readonly string[] Stems =
        ["grumbl", "growl", "groan", "moan", "mutter", "mumbl", "stutter", "stammer", "splutter", "sputter", "cough", "chok", "gurgl", "burbl", "rumbl", "sulk", "balk", "protest", "complain", "struggl", "crack", "squawk", "rattl", "hesitat"];

    private static readonly HashSet<string> Best = ["speaks at once", "starts softly", "starts on a breath", "clean", "steady"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Step: { } step, Test: TestKind.LowResponse or TestKind.HighSteadiness or TestKind.TonguedStarts or TestKind.SoftestStart } } && Best.Contains(step) && IsComplained(course.Segments[draft.Head], draft.Slots.Test.Value)))
        {
            draft.Slots = draft.Slots with { Step = null };
            draft.HasAside = true;
            draft.Doubts.Add(new Doubt("step", "unsure which test or which word of its scale was meant"));
        }
    }

    private static bool IsComplained(Segment segment, TestKind test) => !segment.Has(Cat.Not) && !segment.HasWord("without") && !segment.HasWord("no") && StepWays.Find(segment, test) is null
        && Enumerable.Range(segment.First, segment.End - segment.First).Any(at => Array.Exists(Stems, stem => segment.Word(at).StartsWith(stem, StringComparison.Ordinal)));
}
