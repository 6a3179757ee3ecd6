namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Off limits, that spine”, “too thick, the corners”: the place is named after what is said of it.</summary>
internal static class Afterthought
{
    /// <summary>The place that the next breath names for this one; its segment is then part of it.</summary>
    internal static Mention? Of(Course course)
    {
        if (course.At + 1 >= course.Segments.Count || course.Pending is not null)
        {
            return null;
        }

        var (segment, next) = (course.Segment, course.Segments[course.At + 1]);
        if (next.Sentence != segment.Sentence || next.Joint is not ("," or "" or ":") || !segment.Items.Any(item => item.Cat is Cat.Quality or Cat.Good or Cat.Leave) || segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region or Cat.Test or Cat.Thing)
            || segment.Word(segment.First) is "and" || Moods.Head(segment) is { } verb && Moods.Form(verb) is 'P' or 'N')
        {
            return null;
        }

        var determined = next.Word(next.First) is "that" or "those" or "the" or "this" or "these" or "your";
        var mentions = PlaceReader.Read(next);
        return mentions.Count == 1 && mentions[0].HasPlace && (determined || next.Joint is ":") && Covers(next, mentions[0]) && IsLast(course) ? mentions[0] : null;
    }

    private static bool Covers(Segment next, Mention mention)
    {
        for (var i = next.First; i < next.End; i++)
        {
            if (next.Tokens[i].Kind is TokenKind.Word or TokenKind.Number or TokenKind.Note && (i < mention.First || i >= mention.End) && next.Word(i) is not ("that" or "those" or "the" or "this" or "these" or "your" or "of" or "yours" or "ones") && !next.Covered(i, Cat.Filler))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsLast(Course course) => course.At + 2 >= course.Segments.Count || course.Segments[course.At + 2].Sentence != course.Segment.Sentence || course.Segments[course.At + 2].Joint is "and" or "but" or "so";
}
