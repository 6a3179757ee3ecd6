namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Keeps from the log what no word of a phrase says: a fault where it is called fine, a step that is the opposite of what is heard, a clip of one side.</summary>
internal static class Unsaid
{
    private static readonly HashSet<string> Approving = ["okay", "ok", "fine", "steady", "good", "symmetric", "symmetrical", "even", "perfect", "great", "well", "nice"];

    private static readonly Doubt Unsure = new("kind", "unsure which finding was meant, so its words are kept");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var segment = course.Segments[draft.Head];
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Fault } when IsApproved(segment) || IsWobble(segment):
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Pitch: not null } } when !segment.Has(Cat.Test) && HasStem(segment, "squeak"):
                case { Kind: EntryKind.Adjustment, Slots.Kind: "clip" or "clip-hair" } when segment.Has(Cat.Same) && (segment.Has(Cat.Side) || segment.Has(Cat.Blade)):
                    Unmake(draft);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Edge, Step: not null } } when HasStem(segment, "bright") && !segment.Has(Cat.Not) && draft.Slots.Step is "right" or "covered" && !segment.HasWord("right"):
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Swell, Step: "sags when loud" } } when segment.HasWord("soft") || segment.HasWord("softly") || segment.HasWord("quietly") || segment.HasWord("steady"):
                    draft.Slots = draft.Slots with { Step = null };
                    draft.HasAside = true;
                    draft.Doubts.Add(new Doubt("step", "unsure which test or which word of its scale was meant"));
                    break;
            }
        }
    }

    // “Left channel ok”, “tip is thin enough”: praised, with no word for a fault.
    private static bool IsApproved(Segment segment) => !segment.Has(Cat.Not) && !segment.Has(Cat.NoMore) && !segment.Has(Cat.Than) && !segment.HasWord("too")
        && (segment.All(Cat.Quality).All(quality => quality.Guessed || segment.Word(quality.First).StartsWith("symmetric", StringComparison.Ordinal)) && Approving.Any(segment.HasWord) || segment.All(Cat.Quality).Any(quality => segment.Word(quality.End) is "enough") && !segment.HasWord("barely") && !segment.HasWord("hardly"));

    // What wobbles in the hand or in its pitch names no cork.
    private static bool IsWobble(Segment segment) => HasStem(segment, "wobbl") && !segment.HasWord("cork") && !segment.HasWord("thread");

    private static bool HasStem(Segment segment, string stem) => Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at).StartsWith(stem, StringComparison.Ordinal));

    private static void Unmake(Draft draft)
    {
        draft.Kind = EntryKind.Note;
        draft.Slots = ReadSlots.None;
        draft.Doubts.Clear();
        draft.Doubts.Add(Unsure);
    }
}
