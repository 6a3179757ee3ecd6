namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Seventy and a half over all”, “A has come down five”, “crow C with the low octave underneath”: a length is no pitch, a tuning note no crow, and an octave doesn’t lean.</summary>
internal static class OfWhichTest
{
    private const decimal Least = 40;

    private const decimal Most = 90;

    private static readonly HashSet<string> Beside = [.. "it it's is 's the reed now this one measures measure measured length long over all overall in total at mm millimetre millimetres and a half quarter to exactly just about tip end by gauge ruler on".Split(' ')];

    private static readonly HashSet<string> Moving = ["has", "is", "'s", "came", "went", "come", "goes", "up", "down", "rose", "fell", "dropped", "climbed"];

    private static readonly HashSet<string> Sounded = ["octave", "octaves", "one", "note", "notes", "c", "b", "end", "part"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Test))
        {
            var said = Spoken.Whole(course, draft);
            switch (draft.Slots)
            {
                case { Test: TestKind.Crow, Change: not null, Pitch: null } when IsOfTheA(Spoken.Sentence(course, draft)):
                    draft.Slots = draft.Slots with { Test = TestKind.TuningNote, Pitch = "A" };
                    break;
                case { Test: TestKind.Crow, Lean: "flat", Cents: null } when IsOctave(said):
                    draft.Slots = draft.Slots with { Lean = null };
                    break;
            }
        }

        for (var at = 0; at < course.Segments.Count; at++)
        {
            Length(course, at);
        }
    }

    private static bool IsOfTheA(Segment said)
    {
        var at = said.Word(said.First) is "the" ? said.First + 1 : said.First;
        return said.Word(at) is "a" && Moving.Contains(said.Word(at + 1)) && !Spoken.HasStem(said, "crow", "peep");
    }

    // “With the low octave underneath”.
    private static bool IsOctave(Segment said)
    {
        var low = said.IndexOfWord("low");
        return low >= 0 && Sounded.Contains(said.Word(low + 1)) && !Spoken.HasStem(said, "flat", "under-", "sag") && !(said.Word(low + 1) is "end" && said.Word(low + 2) is "of");
    }

    // “Sixty nine and a half long”.
    private static void Length(Course course, int at)
    {
        var last = at;
        while (last + 1 < course.Segments.Count && course.Segments[last + 1].Sentence == course.Segments[at].Sentence && course.Segments[last + 1].Joint is "and" or "")
        {
            last++;
        }

        var said = Spoken.Whole(course, at, last);
        if (said.Asked || at > 0 && course.Segments[at - 1].Sentence == said.Sentence || Millimetres(said) is not { } length || course.Drafts.Exists(draft => draft.First <= last && at <= draft.Last && !(draft.First >= at && draft.Last <= last)))
        {
            return;
        }

        course.Drafts.RemoveAll(draft => draft.First >= at && draft.Last <= last);
        if (Alone.Of(course, at) is { } made)
        {
            course.Left.RemoveAll(left => left >= at && left <= last);
            (made.Kind, made.Slots, made.Last) = (EntryKind.Test, new ReadSlots { Test = TestKind.Length, Length = length }, last);
            made.Doubts.Clear();
        }
    }

    private static decimal? Millimetres(Segment said)
    {
        decimal? length = null;
        var measured = false;
        for (var at = said.First; at < said.End;)
        {
            if (length is null && Numbers.At(said.Tokens, at, said.End) is { Value: >= Least and <= Most } number)
            {
                (length, at) = (number.Value, number.End);
                if (said.Word(at) is "and" && said.Word(at + 1) is "a" && said.Word(at + 2) is "half" or "quarter")
                {
                    (length, at) = (length + (said.Word(at + 2) is "half" ? 0.5m : 0.25m), at + 3);
                }
                else if (said.Word(at) is "and" && said.Word(at + 1) is "three" && said.Word(at + 2) is "quarters")
                {
                    (length, at) = (length + 0.75m, at + 3);
                }

                continue;
            }

            if (said.Tokens[at].Kind is not TokenKind.Break && !Beside.Contains(said.Word(at)) && said.Word(at).Length > 0)
            {
                return null;
            }

            measured |= said.Word(at) is "long" or "length" or "overall" or "measures" or "measured" || said.Word(at) is "over" && said.Word(at + 1) is "all";
            at++;
        }

        return measured ? length : null;
    }
}
