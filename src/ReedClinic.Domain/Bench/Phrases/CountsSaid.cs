using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“A millimetre and a half”, “two dusting strokes”, “wings: two left, one right”, “thinned it right across”: how much and how wide, as it was said.</summary>
internal static class CountsSaid
{
    private const decimal Hair = 0.3m;

    private static readonly HashSet<string> Light = ["feather", "light", "whisper", "hairline", "clean", "even"];

    private static readonly Doubt Nowhere = new("zone", "how many on each side, and of what wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Adjustment).ToList())
        {
            if (course.Drafts.Count(other => other.Sentence == draft.Sentence && other.Kind is EntryKind.Adjustment) == 1)
            {
                Half(course, draft, Spoken.Sentence(course, draft));
            }

            var own = Spoken.Whole(course, draft);
            if (IsBothCounts(Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last)) && draft.Slots is { Strokes: not null, Mm: null })
            {
                Spoken.Unmake(draft, Nowhere);
                continue;
            }

            if (draft.Slots is { Strokes: null, Mm: null, Words: null, Kind: not "burnish" } && Dusting(own) is { } strokes)
            {
                draft.Slots = draft.Slots with { Strokes = strokes };
            }

            if ((draft.Slots.Sides is not null || draft.Slots.Kind is "thin-tip-sides" && !Spoken.HasStem(own, "wing", "side")) && IsRightAcross(own))
            {
                draft.Slots = Across(draft.Slots);
            }
        }

        for (var at = 1; at < course.Segments.Count; at++)
        {
            OtherSide(course, at);
        }
    }

    // “Two left, one right”, and no part.
    private static bool IsBothCounts(Segment own)
    {
        var words = Enumerable.Range(own.First, own.End - own.First).Where(at => own.Tokens[at].Kind is not TokenKind.Break && own.Word(at) is not ("and" or "strokes" or "stroke" or "on" or "the")).Select(at => own.Tokens[at]).ToList();
        return words is [var one, var left, var other, var right] && IsNumber(one) && IsNumber(other) && (left.Text, right.Text) is ("left", "right") or ("right", "left") && one.Text != other.Text;
    }

    private static bool IsNumber(Token token) => token.Kind is TokenKind.Number || Numbers.Word(token.Text) is not null;

    // “One and a half millimetres”, “a tenth and a half”.
    private static void Half(Course course, Draft draft, Segment said)
    {
        for (var and = said.First + 1; and + 1 < said.End; and++)
        {
            if (said.Word(and) is not "and" || Fraction(said, and + 1) is not (var part, var end))
            {
                continue;
            }

            var before = Unit(said.Word(and - 1));
            var unit = before ?? Unit(said.Word(end));
            var count = before is null ? Number(said, and - 1) : Number(said, and - 2);
            if (before is null && count is not null && said.Word(end) is "strokes" or "off")
            {
                draft.Slots = draft.Slots with { Strokes = null, Mm = null, Words = AmountReader.Text(said, and - 1, said.Word(end) is "off" ? end : end + 1) };
                Lead(course, draft);
                return;
            }

            if (unit is { } size && count is { } whole && (whole + part) * size <= Amount.MostMillimetres)
            {
                var mm = (whole + part) * size;
                var kind = draft.Slots.Kind is "clip" or "clip-hair" ? mm < Hair ? "clip-hair" : "clip" : draft.Slots.Kind;
                draft.Slots = draft.Slots with { Kind = kind, Mm = mm, Strokes = null, Words = null };
                return;
            }
        }
    }

    // “Took two and a half strokes”: the words ahead of “and” are no remark of their own.
    private static void Lead(Course course, Draft draft)
    {
        if (course.Drafts.Find(note => note.Kind is EntryKind.Note && note.Sentence == draft.Sentence && note.Last == draft.First - 1 && note.First == note.Last) is { } lead)
        {
            draft.First = lead.First;
            course.Drafts.Remove(lead);
        }
    }

    private static (decimal Part, int End)? Fraction(Segment said, int at)
    {
        at += said.Word(at) is "a" ? 1 : 0;
        return said.Word(at) switch
        {
            "half" => (0.5m, at + 1),
            "quarter" => (0.25m, at + 1),
            "three" when said.Word(at + 1) is "quarters" => (0.75m, at + 2),
            _ => null,
        };
    }

    private static decimal? Unit(string word) => word switch
    {
        "mm" or "millimetre" or "millimetres" or "millimeter" or "millimeters" or "mil" or "mils" => 1m,
        "tenth" or "tenths" => 0.1m,
        "hundredth" or "hundredths" => 0.01m,
        _ => null,
    };

    private static decimal? Number(Segment said, int at) => at < said.First ? null : said.Word(at) is "a" ? 1 : said.Tokens[at].Kind is TokenKind.Number ? said.Tokens[at].Number : Numbers.Word(said.Word(at));

    private static int? Dusting(Segment own)
    {
        for (var at = own.First; at + 2 < own.End; at++)
        {
            if (own.Word(at + 2) is "strokes" or "stroke" or "passes" && (own.Word(at + 1).EndsWith("ing", StringComparison.Ordinal) || Light.Contains(own.Word(at + 1))) && own.Word(at - 1) is not ("or" or "to" or "after" or "point")
                && (own.Tokens[at].Kind is TokenKind.Number ? own.Tokens[at].Number : Numbers.Word(own.Word(at))) is { } number && number is >= 1 and <= Amount.MostStrokes && number == Math.Truncate(number))
            {
                return (int)number;
            }
        }

        return null;
    }

    private static bool IsRightAcross(Segment own) => own.IndexOfWord("across") is > 0 and var at && own.Word(at - 1) is "right" or "straight" or "clean" or "way" or "all" && !(own.HasWord("left") || own.HasWord("corner") || own.HasWord("side")) && Enumerable.Range(own.First, own.End - own.First).Count(word => own.Word(word) is "right") <= 1;

    // The whole width of the part that was told of last.
    private static ReadSlots Across(ReadSlots slots) => slots.Kind switch
    {
        "thin-corners" or "thin-tip-sides" => slots with { Kind = "thin-whole-tip", Zone = Zone.TipSides, Sides = null },
        "take-heart-sides" => slots with { Kind = "dust-heart", Zone = Zone.HeartCentre, Sides = null },
        _ => slots with { Sides = null },
    };

    // “Two left, one right”.
    private static void OtherSide(Course course, int at)
    {
        var segment = course.Segments[at];
        var words = Enumerable.Range(segment.First, segment.End - segment.First).Where(word => segment.Tokens[word].Kind is not TokenKind.Break && segment.Word(word) is not ("and" or "then" or "but" or "only" or "just" or "on" or "the" or "strokes" or "stroke")).ToList();
        if (segment.Asked || words is not [var count, var side] || (segment.Tokens[count].Kind is TokenKind.Number ? segment.Tokens[count].Number : Numbers.Word(segment.Word(count))) is not { } number || number is < 1 or > Amount.MostStrokes || number != Math.Truncate(number)
            || segment.Word(side) is not ("left" or "right") || course.Segments[at - 1].Sentence != segment.Sentence || course.Segments[at - 1].IndexOfWord(segment.Word(side) is "left" ? "right" : "left") < 0)
        {
            return;
        }

        var other = segment.Word(side) is "left" ? Sides.Left : Sides.Right;
        if (course.Drafts.LastOrDefault(draft => draft.Head < at && draft.Sentence == segment.Sentence) is not { Kind: EntryKind.Adjustment, Slots: { Strokes: not null, Sides: { } first } slots } before || first == other || Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        (draft.Kind, draft.Slots) = (EntryKind.Adjustment, slots with { Strokes = (int)number, Sides = other });
        draft.Doubts.Clear();
        draft.Doubts.AddRange(before.Doubts);
    }
}
