namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Took it down to 70.5”, “crow B flat to B”, “three up the middle, two either side”: a length that was come to, a crow that came to its second note, and strokes up the middle that are no cents.</summary>
internal static class CameTo
{
    private static readonly Doubt Strokes = new("kind", "strokes, and of which part wasn’t said, so it is kept as a note");

    private static readonly Doubt Tenths = new("kind", "less than a cent is no change of pitch, so it is kept as a note");

    private static readonly Doubt Wanted = new("kind", "the note is wished for, so it is kept as a note");

    private static readonly Doubt Measure = new("kind", "a measure, and nothing that is wrong, so it is kept as a note");

    internal static void Keep(Course course)
    {
        KeepCrows(course);
        foreach (var draft in course.Drafts)
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Adjustment, ZoneSaid: false, Slots: { Strokes: null, Mm: null, Kind: not ("clip" or "clip-hair") } } when Length(said) is { } length:
                    draft.Kind = EntryKind.Test;
                    draft.Slots = new ReadSlots { Test = TestKind.Length, Length = length };
                    draft.HasAside = true;
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.Note } when Length(said) is { } length && said.HasWord("down") && !IsOnlyTalk(said) && Spoken.HasStem(said, "took", "brought", "got", "came", "cut"):
                    draft.Kind = EntryKind.Test;
                    draft.Slots = new ReadSlots { Test = TestKind.Length, Length = length };
                    draft.Doubts.Clear();
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Change: > -1 and < 1 and not 0, Pitch: null } } when !Spoken.HasStem(said, "crow", "pitch") && !said.Has(Cat.Cent):
                    Spoken.Unmake(draft, Tenths);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow or TestKind.Peep, Pitch: not null } } when IsWanted(said):
                    Spoken.Unmake(draft, Wanted);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "tip-long" or "tip-short", Relation: null } } when said.HasWord("length") && !Spoken.HasStem(said, "long", "short") && !said.HasWord("too"):
                    Spoken.Unmake(draft, Measure);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Opening or TestKind.Peep, Step: not null } } when Spoken.HasStem(said, "pp", "pianissimo"):
                    Spoken.Unscale(draft, new ReadSlots { Test = TestKind.SoftestStart }, "no word of its scale was said, so its words are kept");
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Change: not null, Pitch: null } } when IsUpThe(said):
                    Spoken.Unmake(draft, Strokes);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Pitch: not null, Between: null, Cents: null, Change: null } slots } when Second(said) is { } note:
                    draft.Slots = slots with { Pitch = note.Name, Lean = note.Lean };
                    break;
            }
        }
    }

    // “Needs C”, “should be a C”: it isn’t one.
    private static bool IsWanted(Segment said) => PitchReader.NotesIn(said) is [var only] && Enumerable.Range(said.First, Math.Max(0, only.First - said.First)).Any(at => said.Word(at) is "needs" or "wants" || said.Word(at) is "be" && said.Word(at - 1) is "should" or "must" or "to");

    // “Crow C minus 30, five strokes each, now minus 38”: the crow’s, as no other pitch was spoken of.
    private static void KeepCrows(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            if (draft is { Kind: EntryKind.Test, Slots: { Test: TestKind.TuningNote, Pitch: null, Cents: not null, Step: null } slots } && !Spoken.HasStem(Spoken.Whole(course, draft), "tun") && course.Drafts.Exists(before => before is { Kind: EntryKind.Test, Slots.Test: TestKind.Crow } && before.Last < draft.First))
            {
                draft.Slots = slots with { Test = TestKind.Crow };
            }
        }
    }

    // A reed’s length in millimetres, come to by a clip or said to a tenth or with its unit; what is said of the pitch or the opening is none.
    private static decimal? Length(Segment said)
    {
        if (said.Has(Cat.Lean) || said.Has(Cat.Cent) || Spoken.HasStem(said, "pitch", "crow", "open", "gap", "squeez", "tun", "cent"))
        {
            return null;
        }

        for (var at = said.First + 1; at < said.End; at++)
        {
            if (said.Word(at - 1) is "to" && Numbers.At(said.Tokens, at, said.End) is { Value: >= 55 and <= 80 } number && (number.End == said.End || said.Tokens[number.End].Kind is TokenKind.Break || said.Items.Any(item => item.First == number.End && item.Cat is Cat.Mm)) && said.Word(at - 2) is "down" or "it" or "back"
                && (number.Value != decimal.Truncate(number.Value) || said.Has(Cat.Mm) || Spoken.HasStem(said, "clip", "cut", "trim", "short", "length", "long")))
            {
                return number.Value;
            }
        }

        return null;
    }

    private static bool IsOnlyTalk(Segment said) => said.Asked || said.Has(Cat.Plan) || said.Has(Cat.Cond) || said.Has(Cat.Not) || said.Has(Cat.Habit) || said.Has(Cat.May) || said.HasWord("nearly") || said.HasWord("almost");

    // “Three up the middle”: up goes the knife.
    private static bool IsUpThe(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "up" or "down" && said.Word(at + 1) is "the" or "each" or "either") && !said.Has(Cat.Cent) && !Spoken.HasStem(said, "crow");

    // “B flat to B”: two notes with “to” or “now” between them and nothing else.
    private static NamedNote? Second(Segment said) => PitchReader.NotesIn(said) is [var from, var to] && from.Name != to.Name && to.First - from.End == 1 && said.Word(from.End) is "to" or "now" or "then" ? to : null;
}
