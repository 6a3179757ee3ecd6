namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What is taken for a step or a fault where only a number or another trial was told: no bubbles under water, an opening in millimetres, an effort that is too easy, a crow that is flat.</summary>
internal static class OtherTrials
{
    private static readonly HashSet<string> Plain = ["effort", "is", "'s", "it", "the", "a", "too", "easy", "hard", "light", "heavy", "stiff", "now", "still", "to", "blow", "this", "one", "reed", "feels", "that", ":", ","];

    private static readonly HashSet<string> Measuring = ["opening", "about", "a", "mil", "mm", "is", "'s", "half", "just", "over", "under", "at", "the", "of", "and", "around", "roughly", "now"];

    private static readonly Doubt Water = new("kind", "held under water: no word of the drawn air was said, so it is kept as a note");

    private static readonly Doubt Sized = new("kind", "a size, and no word for wide or narrow, so it is kept as a note");

    private static readonly Doubt Milder = new("step", "how much wasn’t said, so the milder word was taken");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var whole = course.Segments[draft.First].With(course.Segments[draft.Last]);
            switch (draft)
            {
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Seal, Step: not null } } when (whole.HasWord("water") || Spoken.HasStem(whole, "bubbl")) && !Spoken.HasStem(whole, "pop", "air", "suck", "suction", "vacuum", "drew", "draw", "drawn"):
                    Submerged(draft, whole);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: { } kind, Zone: Reeds.Zone.Opening } } when kind.StartsWith("opening-", StringComparison.Ordinal) && IsSize(whole):
                    Spoken.Unmake(draft, Sized);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Opening, Step: not null } } when IsOnlySized(whole):
                    Spoken.Unscale(draft, draft.Slots, "a size, and no word of its scale, so its words are kept");
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow or TestKind.Peep or TestKind.TuningNote, Cents: not null, Pitch: null } } when whole.HasWord("opening") && IsMeasure(whole):
                    Spoken.Unmake(draft, Sized);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Effort, Step: "far too easy" or "far too hard" } } when IsOnlyToo(whole):
                    draft.Slots = draft.Slots with { Step = draft.Slots.Step!.Replace("far", "a little", StringComparison.Ordinal) };
                    draft.Doubts.Add(Milder);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Step: "low only" or "high only" } } when IsOnlyLeaning(whole):
                    draft.Slots = draft.Slots with { Step = null };
                    draft.HasAside = true;
                    break;
            }
        }
    }

    // “No bubbles”: a leak that was looked for.
    private static void Submerged(Draft draft, Segment whole)
    {
        if (Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "no" or "without" or "not" && Enumerable.Range(at + 1, 3).Any(word => whole.Word(word).StartsWith("bubbl", StringComparison.Ordinal))))
        {
            draft.Kind = EntryKind.LookedFor;
            draft.Slots = new ReadSlots { Kind = "side-leak" };
            draft.Doubts.Clear();
            draft.HasAside = true;
        }
        else
        {
            Spoken.Unmake(draft, Water);
        }
    }

    // “Opening half a mil”.
    private static bool IsSize(Segment whole) => !whole.Has(Cat.Quality) && !whole.Has(Cat.Taste) && !whole.Has(Cat.Good) && !whole.HasWord("too") && IsMeasure(whole);

    private static bool IsMeasure(Segment whole) => (whole.Has(Cat.Mm) || whole.Has(Cat.Tenth) || whole.Has(Cat.Hundredth) || whole.HasWord("mil") || whole.HasWord("mm") || whole.HasWord("millimetre"));

    // “Opening 0.6”, “opening about a mil”.
    private static bool IsOnlySized(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).All(at => whole.Tokens[at].Kind is TokenKind.Break or TokenKind.Number or TokenKind.Symbol || whole.Word(at).Length == 0 || Measuring.Contains(whole.Word(at)) || Numbers.At(whole.Tokens, at, whole.End) is not null || whole.Covered(at, Cat.Mm) || whole.Covered(at, Cat.Filler))
        && (IsMeasure(whole) || whole.Tokens.Skip(whole.First).Take(whole.End - whole.First).Any(token => token.Kind is TokenKind.Number));

    private static bool IsOnlyToo(Segment whole) => whole.HasWord("too") && !whole.Has(Cat.Not) && Enumerable.Range(whole.First, whole.End - whole.First).All(at => whole.Tokens[at].Kind is TokenKind.Break || whole.Word(at).Length == 0 || Plain.Contains(whole.Word(at)) || whole.Covered(at, Cat.Filler));

    // “Crow is flat, B and a bit”: nothing of its octaves.
    private static bool IsOnlyLeaning(Segment whole) => (Spoken.HasStem(whole, "flat", "sharp") || IsLow(whole)) && (!whole.HasWord("low") || IsLow(whole)) && !Spoken.HasStem(whole, "lower", "high", "top", "bottom", "upper", "oct", "only", "alone", "single", "one", "deep", "up", "down", "miss", "no", "just");

    // “Crow is low, B”: flat, and nothing of its octaves.
    private static bool IsLow(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "low" && whole.Word(at - 1) is "is" or "'s" or "bit" or "little" or "touch" && (at + 1 >= whole.End || whole.Tokens[at + 1].Kind is TokenKind.Break)) && PitchReader.NotesIn(whole).Count > 0;
}
