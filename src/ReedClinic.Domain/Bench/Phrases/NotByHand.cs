namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“It warped while drying”, “blades overlap to the left”, “tip finely blended”, “took one more off the left” after a clip: how the reed is and what became of it is no work, and strokes are no clip.</summary>
internal static class NotByHand
{
    private static readonly string[] Became = ["warp", "curl", "twist", "shr", "swell", "swol", "bent", "bow", "split", "open", "clos", "went", "gone", "chang", "lost", "drop"];

    private static readonly string[] Moved = ["set", "mov", "slid", "shift", "push", "nudg", "adjust", "realign", "straight", "turn", "put", "slip", "correct", "fix", "reset", "align", "evened", "gave"];

    private static readonly HashSet<string> Praising = ["finely", "nicely", "well", "beautifully", "smoothly", "neatly", "perfectly", "cleanly", "wonderfully"];

    private static readonly HashSet<string> Done = ["soaked", "soak", "dried", "dry", "rested", "left", "let", "wet", "wetted", "dunked", "waited"];

    private static readonly Doubt ByItself = new("kind", "it may have become so by itself, so it is kept as a note");

    private static readonly Doubt Overlap = new("kind", "how the blades lie over one another, and not which fault that is, so it is kept as a note");

    private static readonly Doubt Nowhere = new("kind", "strokes, and of which part wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList())
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "rest-dry" or "wait" or "soak" or "realign", Strokes: null } } when !Done.Contains(said.Word(said.First)) && BecameSo(Spoken.Sentence(course, draft)):
                    Leave(course, draft);
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "realign", Strokes: null } } or { Kind: EntryKind.Finding, Slots: { Kind: "no-slip", Sides: not null } } when Overlaps(said):
                    Spoken.Unmake(draft, Overlap);
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "blend", Strokes: null, Mm: null, Words: null } slots } when IsPraised(said):
                    draft.Kind = EntryKind.Finding;
                    draft.Slots = new ReadSlots { Kind = "blend-smooth", Character = FindingCharacter.Strength, Zone = slots.Zone, Blades = slots.Blades, Sides = slots.Sides };
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "clip" or "clip-hair", Mm: null, Sides: not null } } when IsStroke(said):
                    Spoken.Unmake(draft, Nowhere);
                    break;
            }
        }
    }

    // “It warped while drying”, “the reed twisted while it dried out”: nobody dried it.
    private static bool BecameSo(Segment said)
    {
        for (var at = said.First + 1; at + 1 < said.End; at++)
        {
            if (said.Word(at) is "while" or "whilst" or "as" or "when" && Enumerable.Range(at + 1, Math.Min(4, said.End - at - 1)).Any(next => said.Word(next).StartsWith("dry", StringComparison.Ordinal) || said.Word(next).StartsWith("dried", StringComparison.Ordinal) || said.Word(next).StartsWith("soak", StringComparison.Ordinal) || said.Word(next).StartsWith("rest", StringComparison.Ordinal)))
            {
                return Spoken.HasStem(said.Part(said.First, at), Became) && !said.HasWord("i") && !said.HasWord("we");
            }
        }

        return false;
    }

    // Beside what is said of the reed in the same sentence it is an aside.
    private static void Leave(Course course, Draft draft)
    {
        if (course.Drafts.Find(other => other.Sentence == draft.Sentence && other.Last + 1 == draft.First && other.Kind is EntryKind.Finding or EntryKind.Note) is { } before)
        {
            Spoken.Join(course, before, draft);
        }
        else
        {
            Spoken.Unmake(draft, ByItself);
        }
    }

    private static bool Overlaps(Segment said) => (said.HasWord("overlap") || said.HasWord("overlaps")) && !said.Has(Cat.Not) && !said.HasWord("no") && !said.HasWord("without") && !said.HasWord("the") && !said.HasWord("i") && !Spoken.HasStem(said, Moved);

    private static bool IsPraised(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => Praising.Contains(said.Word(at)) && said.Word(at + 1) is "blended") && !said.HasWord("i");

    // “Took one more off the left”: a clip has no side, and nothing of a tip was said.
    private static bool IsStroke(Segment said) => !Spoken.HasStem(said, "clip", "trim", "cut", "nip", "tip", "edge", "corner", "square", "short");
}
