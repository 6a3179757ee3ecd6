namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“High notes barely hold”, “scarcely seals”: what only just does it, or hardly does, has no best value and is no praise.</summary>
internal static class Barely
{
    private static readonly HashSet<string> Scarcely = ["hardly", "barely", "scarcely"];

    private static readonly HashSet<string> Best = ["holds", "speaks at once", "starts softly", "starts on a breath", "clean every time", "keeps its place", "in tune", "full", "enough", "right", "the sides close first", "holds, then opens with a small pop"];

    // “Hardly any push”, “barely a breath”, “hardly needs one”: how little it takes.
    private static readonly HashSet<string> Little = ["any", "a", "an", "anything", "ever", "needs", "need", "takes", "breathe", "breathing", "touch", "touching", "blow", "blowing", "have", "worth", "more", "no", "noticeable", "used"];

    private static readonly Doubt Praise = new("kind", "barely or hardly so, and no praise, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Strength } when Is(Spoken.Whole(course, draft)):
                case { Kind: EntryKind.Finding, Slots.Kind: "closes-in-play" } when Is(Spoken.Whole(course, draft)):
                    Spoken.Unmake(draft, Praise);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: not (TestKind.Effort or TestKind.Length), Step: { } step } } when Best.Contains(step) && Is(Spoken.Whole(course, draft)):
                    Spoken.Unscale(draft, draft.Slots, "barely or hardly so: which word of the scale that is wasn’t said, so its words are kept");
                    break;
            }
        }
    }

    private static bool Is(Segment said)
    {
        var at = Enumerable.Range(said.First, said.End - said.First).FirstOrDefault(word => Scarcely.Contains(said.Word(word)) || said.Word(word) is "only" && said.Word(word + 1) is "just", -1);
        var next = at < 0 ? at : said.Word(at) is "only" ? at + 2 : at + 1;
        return at >= 0 && !said.Asked && !said.HasWord("i") && !Little.Contains(said.Word(next)) && said.Word(next) is not ("clipped" or "scraped" or "started" or "arrived" or "tied" or "made" or "now" or "right");
    }
}
