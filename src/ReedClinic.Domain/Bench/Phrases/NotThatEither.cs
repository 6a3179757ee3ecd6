namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Opening is 1.3 now, that’s wide”, “plays in tune from low B to top E flat”, “soaked five minutes and it’s warped less”: no best word beside its contrary, no pitch out of a range, and no end of a finding that wasn’t named.</summary>
internal static class NotThatEither
{
    private static readonly string[] Off = ["wide", "narrow", "closed", "tight", "small", "big", "large", "shut"];

    private static readonly string[] Other = ["warped", "warps", "warping", "long", "short", "flat", "sharp", "loose"];

    private static readonly Doubt Unnamed = new("kind", "which finding that is of wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList())
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Opening, Step: "right" } slots } when Spoken.HasStem(said, Off) && !said.Has(Cat.Not) && !said.HasWord("right") && !said.HasWord("no") && !said.HasWord("was"):
                    Spoken.Unscale(draft, slots, "a size, and no word of its scale, so its words are kept");
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.TuningNote, Pitch: not null } slots } when said.HasWord("from") && said.HasWord("to") && PitchReader.NotesIn(said).Count > 1:
                    draft.Slots = slots with { Pitch = null, Octave = null, Lean = null };
                    draft.HasAside = true;
                    break;
                case { Kind: EntryKind.FindingEnded, Slots.Kind: { } kind } when Array.Exists(Other, word => !kind.Contains(word, StringComparison.Ordinal) && said.HasWord(word)) && PlaceReader.Read(said).Count == 0:
                    Spoken.Unmake(draft, Unnamed);
                    break;
                case { Kind: EntryKind.LookedFor, Slots.Kind: "bumps" } when course.Drafts.Find(test => test.Kind is EntryKind.Test && test.Sentence == draft.Sentence && test.Last + 1 == draft.First && test.Slots.Test is TestKind.TonguedStarts or TestKind.SoftestStart or TestKind.LowResponse) is { } before:
                    Spoken.Join(course, before, draft);
                    break;
            }
        }
    }
}
