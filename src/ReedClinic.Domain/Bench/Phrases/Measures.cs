namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Reads what was measured: the reed’s length, and the tuning note in hertz.</summary>
internal static class Measures
{
    internal static bool TryRead(Course course) => Length(course) || Hertz(course);

    private static bool Length(Course course)
    {
        var segment = course.Segment;
        if (segment.HasWord("measures") || segment.HasWord("measured") || segment.HasWord("long") || (segment.Has(Cat.Mm) && (segment.HasWord("now") || segment.HasWord("before"))) || IsByRuler(course))
        {
            for (var i = segment.First; i < segment.End; i++)
            {
                if (segment.Tokens[i].Kind is TokenKind.Number && segment.Tokens[i].Number is >= 64 and <= 80 and var whole && !segment.Has(Cat.Stroke) && !segment.Has(Cat.Cent))
                {
                    course.Add(EntryKind.Test, new ReadSlots { Test = TestKind.Length, Length = whole });
                    return true;
                }
            }
        }

        if (!segment.Has(Cat.Length) && !(segment.HasWord("long") && AmountReader.Read(segment, segment.First, segment.End) is { Mm: > 30 } or { Strokes: > 40 and < 90 }))
        {
            return false;
        }

        for (var i = segment.First; i < segment.End; i++)
        {
            if (Numbers.At(segment.Tokens, i, segment.End) is { Value: >= 30 and <= 120 } number)
            {
                course.Add(EntryKind.Test, new ReadSlots { Test = TestKind.Length, Length = number.Value });
                return true;
            }
        }

        return false;
    }

    /// <summary>“Ruler: 71 mm”, “71 mm over all”.</summary>
    private static bool IsByRuler(Course course)
    {
        var segment = course.Segment;
        return (segment.Has(Cat.Mm) || segment.HasWord("mm")) && !segment.Has(Cat.Verb)
            && (segment.HasWord("ruler") || (segment.HasWord("over") && segment.HasWord("all")) || (course.At > 0 && segment.Joint is ":" && course.Segments[course.At - 1].HasWord("ruler")));
    }

    /// <summary>“438 on the tuner”: the tuning A in hertz, told in cents from the one that is tuned to.</summary>
    private static bool Hertz(Course course)
    {
        var segment = course.Segment;
        if (!(segment.HasWord("tuner") || segment.HasWord("hertz") || segment.HasWord("hz") || segment.HasWord("pitch") || segment.Has(Cat.Test, "TuningNote") || segment.Word(segment.First) is "a" || segment.Tokens[segment.First].Kind is TokenKind.Number && segment.HasWord("nose")) || segment.Has(Cat.Stroke) || segment.Has(Cat.Cent))
        {
            return false;
        }

        for (var i = segment.First; i < segment.End; i++)
        {
            if (segment.Tokens[i].Kind is TokenKind.Number && segment.Tokens[i].Number is >= 425 and <= 460 and var heard)
            {
                var cents = Math.Round((decimal)(1200 * Math.Log2((double)heard / course.A4)));
                course.Add(EntryKind.Test, new ReadSlots { Test = TestKind.TuningNote, Pitch = "A", Cents = cents });
                return true;
            }
        }

        return false;
    }
}
