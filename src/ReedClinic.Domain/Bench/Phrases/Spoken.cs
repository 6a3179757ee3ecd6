namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What the guards behind the judge ask of an entry’s words, and how an entry is made a remark again.</summary>
internal static class Spoken
{
    /// <summary>The segments an entry was read from.</summary>
    internal static IReadOnlyList<Segment> Of(Course course, Draft draft) => [.. course.Segments.Skip(draft.First).Take(draft.Last - draft.First + 1)];

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
    internal static bool HasAny(Segment segment, IReadOnlySet<string> words) => Enumerable.Range(segment.First, segment.End - segment.First).Any(at => words.Contains(segment.Word(at)));

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
