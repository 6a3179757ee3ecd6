namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Half-holed D is slow”, “octave on C is narrow”, “crow C, in tune”: a note that was fingered is no crow’s, and a crow that is in tune is no tuning note’s.</summary>
internal static class FingeredNotes
{
    private static readonly HashSet<string> Played = ["play", "plays", "playing", "played", "tuner", "tuning", "note", "notes", "reed", "scale", "oboe", "drone", "pitch", "everything", "all", "register", "octave", "octaves", "low", "high", "d", "e", "f", "g"];

    private static readonly Doubt Fingered = new("test", "a note that was fingered, and no crow: which test it was wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots.Test: TestKind.Crow or TestKind.Peep or TestKind.TuningNote }).ToList())
        {
            var said = Spoken.Whole(course, draft);
            if (IsFingered(said) && !Spoken.HasStem(said, "crow", "peep", "tuning"))
            {
                Spoken.Unmake(draft, Fingered);
            }
            else if (draft.Slots is { Test: TestKind.TuningNote, Step: "in tune" } && course.Drafts.IndexOf(draft) is > 0 and var at && course.Drafts[at - 1] is { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow or TestKind.Peep, Cents: null, Lean: null } } crow
                && crow.Last + 1 == draft.First && crow.Sentence == draft.Sentence && IsItsOwn(said) && Note(crow, draft) is { } note)
            {
                crow.Slots = crow.Slots with { Pitch = note };
                crow.Doubts.RemoveAll(doubt => doubt.Slot is "step");
                Spoken.Join(course, crow, draft);
            }
        }
    }

    private static string? Note(Draft crow, Draft tuned) => tuned.Slots.Pitch is not { } other ? crow.Slots.Pitch : crow.Slots.Pitch is not { } own || own == other ? other : null;

    // Nothing that is tuned by stands in it, and no A.
    private static bool IsItsOwn(Segment said) => !Spoken.HasAny(said, Played) && PitchReader.NotesIn(said).TrueForAll(note => note.Name is not "A") && !Enumerable.Range(said.First, said.End - said.First).Any(at => said.Tokens[at] is { IsCapital: true, Text: "a" });

    // “Half-holed D”, “forked F”, “octave on C”, “octave D”; not “low octave C”.
    private static bool IsFingered(Segment said)
    {
        for (var at = said.First; at < said.End; at++)
        {
            if (said.Word(at).StartsWith("half-hol", StringComparison.Ordinal) || said.Word(at) is "half" && said.Word(at + 1).StartsWith("hol", StringComparison.Ordinal) || said.Word(at) is "half" && said.Word(at + 2).StartsWith("hol", StringComparison.Ordinal) || said.Word(at) is "forked" or "fork"
                || said.Word(at) is "octave" or "octaves" && (said.Word(at + 1) is "on" or "from" or "key" || said.Word(at - 1) is not ("low" or "high" or "both" or "top" or "bottom" or "upper" or "lower" or "one") && PitchReader.NotesIn(said).Exists(note => note.First == at + 1 && note.Name is not "C")))
            {
                return true;
            }
        }

        return false;
    }
}
