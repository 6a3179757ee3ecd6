namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What the guards behind the judge ask of an entry’s words, and how an entry is made a remark again.</summary>
internal static class Spoken
{
    /// <summary>The segments an entry was read from.</summary>
    internal static IReadOnlyList<Segment> Of(Course course, Draft draft) => [.. course.Segments.Skip(draft.First).Take(draft.Last - draft.First + 1)];

    /// <summary>All its words as one, with what stands in each of its segments.</summary>
    internal static Segment Whole(Course course, Draft draft) => Whole(course, draft.First, draft.Last);

    /// <summary>The first of the segments that lead up to an entry in its sentence, and belong to nothing else.</summary>
    internal static int Lead(Course course, Draft draft)
    {
        var first = draft.First;
        while (first > 0 && course.Segments[first - 1].Sentence == course.Segments[draft.First].Sentence && !course.Drafts.Exists(other => other.First <= first - 1 && first - 1 <= other.Last))
        {
            first--;
        }

        return first;
    }

    /// <summary>Its whole sentence, with what stands in each segment.</summary>
    internal static Segment Sentence(Course course, Draft draft)
    {
        var (first, last) = (draft.Head, draft.Head);
        while (first > 0 && course.Segments[first - 1].Sentence == draft.Sentence)
        {
            first--;
        }

        while (last + 1 < course.Segments.Count && course.Segments[last + 1].Sentence == draft.Sentence)
        {
            last++;
        }

        return Whole(course, first, last);
    }

    /// <summary>Some segments as one.</summary>
    internal static Segment Whole(Course course, int first, int last) => new()
    {
        Tokens = course.Segments[first].Tokens,
        First = course.Segments[first].First,
        End = course.Segments[last].End,
        Joint = course.Segments[first].Joint,
        Sentence = course.Segments[first].Sentence,
        Asked = course.Segments[first].Asked,
        Items = [.. course.Segments.Skip(first).Take(last - first + 1).SelectMany(segment => segment.Items)],
    };

    /// <summary>Whether one of the words begins so.</summary>
    internal static bool HasStem(Segment segment, params ReadOnlySpan<string> stems)
    {
        for (var at = segment.First; at < segment.End; at++)
        {
            foreach (var stem in stems)
            {
                if (segment.Word(at).StartsWith(stem, StringComparison.Ordinal))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>Whether one of these words stands in it.</summary>
    internal static bool HasAny(Segment segment, HashSet<string> words)
    {
        for (var at = segment.First; at < segment.End; at++)
        {
            if (words.Contains(segment.Tokens[at].Text))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The entry’s words are kept as a remark, with what was unsure about them.</summary>
    internal static void Unmake(Draft draft, Doubt doubt)
    {
        draft.Kind = EntryKind.Note;
        draft.Slots = ReadSlots.None;
        draft.Doubts.Clear();
        draft.Doubts.Add(doubt);
    }

    /// <summary>A test without a word of its scale, in its own words.</summary>
    internal static void Unscale(Draft draft, ReadSlots slots, string doubt)
    {
        draft.Slots = slots with { Step = null };
        draft.HasAside = true;
        draft.Doubts.RemoveAll(old => old.Slot is "step");
        draft.Doubts.Add(new Doubt("step", doubt));
    }

    /// <summary>Takes an entry’s words into the one before it.</summary>
    internal static void Join(Course course, Draft into, Draft from)
    {
        (into.Last, into.HasAside) = (Math.Max(into.Last, from.Last), true);
        course.Drafts.Remove(from);
    }
}
