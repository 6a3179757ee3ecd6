namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Turns what was understood into the answer, and looks after every visible character.</summary>
internal static class Reading
{
    internal static PhraseReading Of(string text, IReadOnlyList<Segment> segments, Course? course, int from = 0)
    {
        if (course is not null)
        {
            Gather(course);
        }

        List<ReadEntry> entries = [.. (course?.Drafts ?? []).Select(draft => Entry(text, segments, draft))];
        GatherWords(text, entries, from);
        return new PhraseReading(text, entries, LeftOver(text, entries, from));
    }

    /// <summary>Segments at the beginning that only lead up to an entry belong to it.</summary>
    private static void Gather(Course course)
    {
        var taken = new bool[course.Segments.Count];
        foreach (var draft in course.Drafts)
        {
            Array.Fill(taken, true, draft.First, draft.Last - draft.First + 1);
        }

        for (var i = taken.Length - 2; i >= 0; i--)
        {
            var next = course.Drafts.FindIndex(draft => draft.First == i + 1);
            if (!taken[i] && next >= 0 && !course.Left.Contains(i))
            {
                Move(course, next, i);
                taken[i] = true;
            }
        }
    }

    /// <summary>Words that nothing could be made of, right before a remark or behind one, are part of it: one remark with all its words.</summary>
    private static void GatherWords(string text, List<ReadEntry> entries, int from)
    {
        foreach (var span in LeftOver(text, entries, from).Where(span => LeftWords.Kept(text, span) is not null))
        {
            var before = entries.FindLastIndex(entry => entry.Span.End <= span.Start);
            var at = before >= 0 && entries[before].Kind is EntryKind.Note ? before : entries.FindIndex(entry => entry.Span.Start >= span.End);
            if (at >= 0 && entries[at] is { Kind: EntryKind.Note } note)
            {
                var whole = note.Span.With(span);
                entries[at] = note with { Span = whole, Said = text.Substring(whole.Start, whole.Length) };
            }
        }
    }

    private static void Move(Course course, int index, int first)
    {
        var draft = course.Drafts[index];
        var longer = new Draft { Kind = draft.Kind, Slots = draft.Slots, Head = draft.Head, First = first, Last = draft.Last, Sentence = draft.Sentence, HasAside = draft.HasAside };
        longer.Doubts.AddRange(draft.Doubts);
        course.Drafts[index] = longer;
    }

    private static ReadEntry Entry(string text, IReadOnlyList<Segment> segments, Draft draft)
    {
        var span = segments[draft.First].Span.With(segments[draft.Last].Span);
        if (draft.Slots.Certainty is Certainty.Suspected)
        {
            draft.Doubts.Add(new Doubt("certainty", "taken as suspected"));
        }

        return new ReadEntry(span, draft.Kind, draft.Slots, draft.Doubts)
        {
            Said = text.Substring(span.Start, span.Length),
            HasAside = draft.HasAside,
        };
    }

    private static List<TextSpan> LeftOver(string text, List<ReadEntry> entries, int at)
    {
        List<TextSpan> left = [];
        var ordered = entries.Select(entry => entry.Span).OrderBy(span => span.Start).ToList();
        foreach (var span in ordered.Append(new TextSpan(text.Length, 0)))
        {
            if (span.Start > at && Visible(text, at, span.Start) is { } gap)
            {
                left.Add(gap);
            }

            at = Math.Max(at, span.End);
        }

        return left;
    }

    private static TextSpan? Visible(string text, int start, int end)
    {
        while (start < end && char.IsWhiteSpace(text[start]))
        {
            start++;
        }

        while (end > start && char.IsWhiteSpace(text[end - 1]))
        {
            end--;
        }

        return end > start ? new TextSpan(start, end - start) : null;
    }
}
