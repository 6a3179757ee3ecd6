namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Cut two hairs”: hairs are an amount, too, and one is as little as the other.</summary>
internal static class Hairs
{
    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots: { Kind: "clip" or "clip-hair", Strokes: null, Mm: null, Words: null } }))
        {
            var segment = course.Segments[draft.Head];
            if (segment.IndexOfWord("hairs") is var at && at > segment.First && First(segment, at) is { } first)
            {
                draft.Slots = draft.Slots with { Kind = "clip-hair", Words = PhraseText.Of(segment.Tokens, first, at + 1) };
            }
        }
    }

    // “Two hairs”, “a couple of hairs”, “a few hairs”.
    private static int? First(Segment segment, int at) => (Numbers.At(segment.Tokens, at - 1, at), segment.Word(at - 1)) switch
    {
        (not null, _) or (_, "some" or "couple") => at - 1,
        (_, "few") => segment.Word(at - 2) is "a" ? at - 2 : at - 1,
        (_, "of") when segment.Word(at - 2) is "couple" => segment.Word(at - 3) is "a" ? at - 3 : at - 2,
        _ => null,
    };
}
