using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Opened up overnight”, “today it’s twenty flat again”, “the tip’s feathering at the right”, “went a bit far on the heart”: what the reed did by itself, or what came of work, is no work of its own.</summary>
internal static class NoHandInIt
{
    private static readonly string[] Meanwhile = ["overnight", "yesterday", "itself", "soaking", "drying", "resting", "travelling", "meanwhile"];

    private static readonly string[] Fraying = ["feathering", "fraying", "splitting", "peeling", "flaking", "lifting", "curling", "crumbling", "splintering"];

    private static readonly string[] Hands = ["i", "i've", "we", "it", "them", "with", "squeezed", "pressed", "pinched", "thumb", "fingers", "pliers", "plaque"];

    private static readonly Doubt ByItself = new("kind", "it may have become so by itself, so it is kept as a note");

    private static readonly Doubt TooFar = new("kind", "unsure what that did to the reed, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Adjustment))
        {
            var said = Spoken.Whole(course, draft);
            if (HasGone(said, draft.Slots) || HasGoneMeanwhile(Spoken.Sentence(course, draft), draft.Slots) || IsPitchOnly(said, draft.Slots))
            {
                Spoken.Unmake(draft, ByItself);
            }
            else if (draft.Slots is { Strokes: null, Mm: null } && WentTooFar(said))
            {
                Spoken.Unmake(draft, TooFar);
            }
            else if (draft.Slots is { Strokes: null, Mm: null } && IsFraying(said))
            {
                draft.Kind = EntryKind.Finding;
                draft.Slots = new ReadSlots { Kind = "tip-edge-ragged", Character = FindingCharacter.Fault, Zone = Zone.TipEdge, Blades = draft.Slots.Blades, Sides = draft.Slots.Sides };
                draft.HasAside = true;
                draft.Doubts.Clear();
            }
        }
    }

    // “Opened up overnight”, “went closed while drying”; “opened it up overnight” had a hand in it.
    private static bool HasGone(Segment said, ReadSlots slots) => slots is { Kind: "open-squeeze" or "close-press" or "round-eye" or "flatten-eye", Strokes: null, Mm: null }
        && (Spoken.HasStem(said, Meanwhile) || said.HasWord("since") || said.HasWord("own")) && !Hands.Any(said.HasWord);

    // “Opened by itself while drying”.
    private static bool HasGoneMeanwhile(Segment said, ReadSlots slots) => slots.Kind is "rest-dry" or "wait" && (said.HasWord("itself") || said.HasWord("own")) && Spoken.HasStem(said, "open", "clos", "went", "gone") && !said.HasWord("i");

    // “Today it’s twenty flat again”: what it plays, and no rest.
    private static bool IsPitchOnly(Segment said, ReadSlots slots) => slots.Kind is "rest-dry" or "wait" or "soak" && said.Has(Cat.Lean) && Moods.Head(said) is null && !Spoken.HasStem(said, "rest", "dr", "left", "let", "wait", "soak", "settl");

    private static bool WentTooFar(Segment said) => said.IndexOfWord("far") is >= 0 and var at && said.Word(at + 1) is "on" or "with" or "into" && said.Word(at - 1) is "too" or "bit" or "little" or "touch" or "tad" or "shade" && Spoken.HasStem(said, "went", "gone");

    // “The tip’s feathering”: it does, and nobody feathers it.
    private static bool IsFraying(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => Array.IndexOf(Fraying, said.Word(at)) >= 0 && (said.Word(at - 1) is "'s" or "is" or "are" or "was" or "keeps"
        || said.Word(at - 1) is "tip" or "edge" or "corner" or "corners")) && !said.HasWord("i") && !said.HasWord("done");
}
