namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Hardly any resistance”, “not enough to blow against”: too little of it is too easy, and never right.</summary>
internal static class ScarcelyAny
{
    private static readonly HashSet<string> Scarcely = ["hardly", "barely", "scarcely"];

    private static readonly HashSet<string> Wanting = ["lacks", "lacking", "lacked", "wants", "misses", "missing"];

    private static readonly HashSet<string> Between = ["any", "a", "real", "of", "the", "proper", "noticeable", "enough", "much", "lot", "great", "deal", "in", "way", "to"];

    private static readonly HashSet<string> Compared = ["more", "less", "change", "difference", "used", "than", "right", "comfortable", "fine", "good", "like", "nice"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots.Test: TestKind.Effort }))
        {
            var said = Spoken.Whole(course, draft);
            if (!said.Asked && said.IndexOfWord("resistance") is >= 0 and var at && !Spoken.HasAny(said, Compared) && Step(said, at) is { } step)
            {
                draft.Slots = draft.Slots with { Step = step };
                draft.Doubts.RemoveAll(doubt => doubt.Slot is "step" or "kind");
            }
        }
    }

    private static string? Step(Segment said, int resistance)
    {
        var at = resistance - 1;
        while (at >= said.First && Between.Contains(said.Word(at)))
        {
            at--;
        }

        var between = Enumerable.Range(at + 1, resistance - at - 1).Select(said.Word).ToList();
        return said.Word(at) switch
        {
            var word when Scarcely.Contains(word) => between.Contains("any") ? "far too easy" : between.Contains("enough") || between.Contains("much") || between.Contains("a") ? "a little too easy" : null,
            "not" when between.Exists(word => word is "enough" or "much" or "lot" or "deal") => "a little too easy",
            "so" or "that" when said.Word(at - 1) is "not" && between.Contains("much") => "a little too easy",
            "too" or "very" or "so" or "that" => null,
            var word when Wanting.Contains(word) && between.TrueForAll(one => one is "any" or "real" or "proper" or "enough") => "a little too easy",
            "little" when said.Word(at - 1) is "too" or "very" => "a little too easy",
            _ => null,
        };
    }
}
