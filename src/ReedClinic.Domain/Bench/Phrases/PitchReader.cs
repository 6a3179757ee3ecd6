namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>A pitch as it was said in a segment.</summary>
internal sealed record HeardPitch
{
    internal NamedNote? Note { get; init; }

    internal string? Between { get; init; }

    internal decimal? Cents { get; init; }

    internal string? Lean { get; init; }

    internal string? Degree { get; init; }

    internal decimal? Change { get; init; }

    internal bool IsSaid => Note is not null || Cents is not null || Change is not null;
}

/// <summary>Reads pitches.</summary>
internal static class PitchReader
{
    internal static HeardPitch Read(Segment segment, bool isLowNote = false)
    {
        var notes = NotesIn(segment);
        var pitch = new HeardPitch { Note = notes.Count > 0 ? notes[0] : null };
        if (notes.Count > 1 && segment.Has(Cat.Between))
        {
            return Lower(notes[0], notes[1]);
        }

        // “From B to C”, “was B, is now C”: where it came to.
        if (notes.Count == 2 && segment.Word(notes[1].First - 1) is "to" or "now" && Enumerable.Range(segment.First, notes[0].First - segment.First).Any(at => segment.Word(at) is "from"))
        {
            pitch = new HeardPitch { Note = notes[1] };
        }

        if (Number(segment, pitch) is { } said)
        {
            return said;
        }

        if (pitch.Note is { } note)
        {
            return pitch with { Lean = note.Lean ?? (isLowNote ? null : LeanNear(segment, note)) };
        }

        return pitch;
    }

    internal static List<NamedNote> NotesIn(Segment segment)
    {
        List<NamedNote> notes = [];
        for (var i = segment.First; i < segment.End; i++)
        {
            if (Notes.At(segment.Tokens, i, segment.End) is { } note)
            {
                notes.Add(note);
                i = note.End - 1;
            }
        }

        return notes;
    }

    private static HeardPitch Lower(NamedNote one, NamedNote other)
    {
        var up = ((Semitone(other.Name) - Semitone(one.Name)) % 12 + 12) % 12;
        var (low, high) = up is > 0 and <= 6 ? (one, other) : (other, one);
        return new HeardPitch { Note = low, Between = high.Name };
    }

    internal static int Semitone(string name)
    {
        var natural = name[0] switch
        {
            'C' => 0,
            'D' => 2,
            'E' => 4,
            'F' => 5,
            'G' => 7,
            'A' => 9,
            _ => 11,
        };
        return (natural + (name.EndsWith('b') ? 11 : name.EndsWith('#') ? 1 : 0)) % 12;
    }

    private static HeardPitch? Number(Segment segment, HeardPitch pitch)
    {
        for (var i = segment.First; i < segment.End; i++)
        {
            if (Interval(segment, i) is { } interval && Signed(segment, pitch, i, interval.Cents, interval.End, unit: true) is { } moved)
            {
                return moved;
            }

            if (Numbers.At(segment.Tokens, i, segment.End) is not { } number)
            {
                continue;
            }

            var after = number.End;
            var unit = segment.Covered(after, Cat.Cent) && segment.Tokens[after].Text is not ("c" or "ct") | segment.Tokens[after].Start == segment.Tokens[after - 1].End;
            after += unit ? 1 : 0;
            if (!unit && segment.Tokens[i].Is("one") || !unit && segment.Items.Any(item => item.First == after && item.Cat is Cat.Stroke or Cat.Mm or Cat.Tenth or Cat.Hundredth))
            {
                i = number.End;
                continue;
            }

            if (Signed(segment, pitch, i, number.Value, after, unit) is { } said)
            {
                return said;
            }

            i = number.End - 1;
        }

        return null;
    }

    // “A quarter tone”, “half a semitone”, “a semitone”.
    private static (decimal Cents, int End)? Interval(Segment segment, int at)
    {
        var part = segment.Word(at) is "quarter" or "half";
        var noun = part ? at + 1 : at;
        while (part && segment.Word(noun) is "a" or "of")
        {
            noun++;
        }

        var whole = segment.Word(noun) switch
        {
            "semitone" or "semitones" => 100m,
            "tone" when part => 200m,
            "step" when part && segment.Word(at) is "half" => 200m,
            _ => 0m,
        };
        return whole == 0 ? null : (segment.Word(at) switch
        {
            "quarter" => whole / 4,
            "half" => whole / 2,
            _ => whole,
        }, noun + 1);
    }

    private static HeardPitch? Signed(Segment segment, HeardPitch pitch, int at, decimal value, int after, bool unit)
    {
        var token = segment.Tokens[at];
        var before = segment.Word(at - 1) is "by" or "about" or "maybe" or "some" or "around" or "another" or "good" or "perhaps" ? at - 2 : at - 1;
        before = segment.Word(before) is "a" or "by" ? before - 1 : before;
        if (segment.Word(before) is "minus" or "plus")
        {
            return pitch with { Cents = segment.Word(before) is "minus" ? -value : value };
        }

        if (token.Kind == TokenKind.Number && token.Text is "+" or "-" && token.Kind == TokenKind.Number)
        {
            return pitch.Note is null && !unit && !segment.Has(Cat.Test) ? pitch with { Cents = value } : pitch with { Cents = value };
        }

        var way = segment.Items.FirstOrDefault(item => item.First == after && item.Cat is Cat.Lean);
        if (way.Value is null)
        {
            way = segment.Items.FirstOrDefault(item => item.End == before + 1 && item.Cat is Cat.Lean && item.First <= before);
        }

        if (way.Value is not null)
        {
            return pitch with { Cents = way.Value == "flat" ? -value : value, Note = Plain(pitch.Note, way) };
        }

        var change = segment.Items.FirstOrDefault(item => item.Cat == Cat.Change && (item.First == after || item.End == before + 1 || item.End == at));
        change = change.Value is null && unit ? segment.Find(Cat.Change) ?? default : change;
        return change.Value is not null && value <= 1200
            ? pitch with { Change = change.Value == "down" ? -value : value }
            : unit && pitch.Note is not null ? pitch with { Cents = value } : null;
    }

    // “C flat by ten” and “15 cents flat”: the word belongs to the number, not to the note.
    private static NamedNote? Plain(NamedNote? note, Item way) => note is { } named && way.First == named.First + 1
        ? named with { Name = named.Name[..1], Lean = null }
        : note;

    private static string? LeanNear(Segment segment, NamedNote note)
    {
        foreach (var item in segment.All(Cat.Lean))
        {
            if (item.First >= note.First && item.End <= note.End)
            {
                continue;
            }

            if (item.End == note.First || item.First >= note.End || Close(segment, item.End, note.First))
            {
                return item.Value;
            }
        }

        return null;
    }

    private static bool Close(Segment segment, int first, int end) => end - first is >= 0 and <= 2 && first >= segment.First;
}
