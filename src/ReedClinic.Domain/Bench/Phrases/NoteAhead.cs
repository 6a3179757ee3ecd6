namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“A, it’s sharp by 15”, “a tone and a half flat”, “crow is C and a half”: a note that is named ahead is whose the number is, and no half of it is lost.</summary>
internal static class NoteAhead
{
    private static readonly HashSet<string> Lead = ["the", "my", "your", "tuning", "on", "now", "and", "so", "ok", "okay", ""];

    private static readonly HashSet<string> Parts = ["half", "bit", "quarter", "third", "hair", "touch"];

    private static readonly Doubt Beyond = new("pitch", "more than the note was said, and not which way, so its words are kept");

    /// <summary>Hears “a tone and a half” as one number of cents: the characters stay where they are.</summary>
    internal static void Quiet(List<Token> tokens)
    {
        for (var at = tokens.Count - 4; at >= 0; at--)
        {
            if (tokens[at].Text is "tone" or "semitone" && tokens[at + 1].Is("and") && tokens[at + 2].Is("a") && tokens[at + 3].Is("half") && (at == 0 || tokens[at - 1].Text is "a" or "one"))
            {
                var from = at > 0 ? at - 1 : at;
                tokens[from] = new Token("", tokens[from].Start, tokens[at + 3].End - tokens[from].Start, TokenKind.Number, tokens[at].Is("tone") ? 300 : 150);
                tokens.RemoveRange(from + 1, at + 3 - from);
                at = from;
            }
        }
    }

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots.Test: TestKind.Crow or TestKind.Peep or TestKind.TuningNote }))
        {
            if (draft.Slots is { Test: TestKind.Crow or TestKind.TuningNote, Pitch: null } && (draft.Slots.Cents ?? draft.Slots.Change) is not null && IsA(Spoken.Whole(course, Spoken.Lead(course, draft), draft.Head)))
            {
                draft.Slots = draft.Slots with { Test = TestKind.TuningNote, Pitch = "A" };
            }

            if (draft.Slots is { Pitch: not null, Cents: null, Lean: null, Change: null } && HasPart(Spoken.Whole(course, Spoken.Lead(course, draft), Behind(course, draft))))
            {
                draft.Last = Math.Max(draft.Last, Behind(course, draft));
                draft.HasAside = true;
                draft.Doubts.Add(Beyond);
            }
        }
    }

    // “A, …”, “the A: …”: the note that a player tunes with, alone before what is said of it.
    private static bool IsA(Segment whole)
    {
        var at = whole.First;
        while (at < whole.End && !whole.Tokens[at].Is("a") && Lead.Contains(whole.Word(at)))
        {
            at++;
        }

        return whole.Word(at) is "a" && at + 1 < whole.End && whole.Tokens[at + 1].Kind is TokenKind.Break or TokenKind.Symbol;
    }

    private static int Behind(Course course, Draft draft) => draft.Last + 1 < course.Segments.Count && course.Segments[draft.Last + 1] is { Joint: "and" } next && next.Sentence == draft.Sentence && next.End - next.First <= 4 && !course.Drafts.Exists(other => other.First <= draft.Last + 1 && draft.Last + 1 <= other.Last) ? draft.Last + 1 : draft.Last;

    // “C and a half”, “C and a bit”.
    private static bool HasPart(Segment whole) => PitchReader.NotesIn(whole) is [var note] && whole.Word(note.End) is "and" && whole.Word(note.End + 1) is "a" && Parts.Contains(whole.Word(note.End + 2)) && (note.End + 3 >= whole.End || whole.Tokens[note.End + 3].Kind is TokenKind.Break);
}
