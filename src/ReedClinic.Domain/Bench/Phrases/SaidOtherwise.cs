namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Holds a deed to what the phrase says: which way a squeeze went, whether a reed put aside is back.</summary>
internal static class SaidOtherwise
{
    private static readonly Doubt Way = new("kind", "it was said to close it and to open it: which way was it squeezed?");

    internal static void Keep(Course course)
    {
        JoinWays(course);
        foreach (var draft in course.Drafts)
        {
            var segment = course.Segments[draft.Head];
            switch (draft)
            {
                case { Kind: EntryKind.Adjustment, Slots.Kind: "open-squeeze" } when IsTo(segment, "close", "shut"):
                    draft.Slots = IsSides(segment) ? draft.Slots : draft.Slots with { Kind = "close-press" };
                    draft.Doubts.Add(Way);
                    break;
                case { Kind: EntryKind.Adjustment, Slots.Kind: "close-press" } when IsTo(segment, "open", "open") || IsSides(segment):
                    draft.Doubts.Add(Way);
                    break;
                case { Kind: EntryKind.Adjustment, Slots.Kind: "rest-dry" } when segment.HasWord("aside") || segment.HasWord("away") || segment.HasWord("overnight") && IsTo(segment, "dry", "rest"):
                    draft.Doubts.Add(Doubt.Done);
                    break;
            }
        }
    }

    // “Squeezed it a little more closed”: the way it went, and no test of its own.
    private static void JoinWays(Course course)
    {
        for (var at = course.Drafts.Count - 1; at > 0; at--)
        {
            if (course.Drafts[at] is { Kind: EntryKind.Test, Slots: { Test: TestKind.Opening, Step: { } step } } test && course.Drafts[at - 1] is { Kind: EntryKind.Adjustment, Slots.Kind: "open-squeeze" or "close-press" } squeeze
                && test.Sentence == squeeze.Sentence && test.First == squeeze.Last + 1 && course.Segments[test.First] is { Joint: "" } said && !said.HasWord("is") && !said.HasWord("'s") && !said.HasWord("now")
                && (step.Contains("closed", StringComparison.Ordinal) || step.Contains("open", StringComparison.Ordinal)))
            {
                squeeze.Slots = squeeze.Slots with { Kind = step.Contains("closed", StringComparison.Ordinal) ? "close-press" : "open-squeeze", Words = squeeze.Slots.Words ?? AmountReader.Read(said, said.First, said.End)?.Words };
                squeeze.Doubts.RemoveAll(doubt => doubt.Slot is "kind");
                squeeze.Last = test.Last;
                course.Drafts.RemoveAt(at);
            }
        }
    }

    internal static bool IsTo(Segment segment, string one, string other) => Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "to" && (segment.Word(at + 1) == one || segment.Word(at + 1) == other));

    internal static bool IsSides(Segment segment) => segment.HasWord("sides") || segment.HasWord("side") || segment.HasWord("edges") || segment.HasWord("flanks");
}
