namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Crow is C, ten down”: a number beside a note that is named is how far from it, unless something has moved so far.</summary>
internal static class FromItsNote
{
    private static readonly HashSet<string> Moves =
    [
        "came", "come", "comes", "coming", "gone", "went", "go", "goes", "going", "got", "dropped", "drops", "drop", "fell", "fallen", "falls", "rose", "risen", "rises", "raised", "lifted", "moved", "jumped", "climbed",
        "slipped", "slid", "sank", "sunk", "crept", "brought", "took", "taken", "pulled", "pushed", "up'd", "gained", "lost", "another", "more", "further", "by", "from", "since",
    ];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow or TestKind.Peep or TestKind.TuningNote, Pitch: not null, Between: null, Cents: null, Change: not null } }))
        {
            var whole = Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last);
            if (IsFromIt(whole, draft.Slots.Pitch))
            {
                draft.Slots = draft.Slots with { Cents = draft.Slots.Change, Change = null, Lean = null };
            }
        }
    }

    // “Up ten, a C now” has moved; “come up to a C, ten down” ends at so far from it, and so does “C, down ten” where nothing moved.
    private static bool IsFromIt(Segment whole, string? pitch)
    {
        var at = whole.End - 1;
        while (at >= whole.First && whole.Word(at) is not ("down" or "up"))
        {
            at--;
        }

        return PitchReader.NotesIn(whole).FindLast(note => note.Name == pitch) is { } note && note.End <= at && (IsSaid(whole, note.End, at) ? !HasMoved(whole, note.End) : !HasMoved(whole, whole.First));
    }

    // The number stands between the note and the way.
    private static bool IsSaid(Segment whole, int from, int end) => Enumerable.Range(from, end - from).Any(at => Numbers.At(whole.Tokens, at, end) is not null);

    private static bool HasMoved(Segment whole, int from)
    {
        for (var at = from; at < whole.End; at++)
        {
            if (Moves.Contains(whole.Word(at)) && !(whole.Word(at) is "by" && whole.Word(at + 1) is "the" or "my"))
            {
                return true;
            }
        }

        return false;
    }
}
