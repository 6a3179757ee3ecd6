namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Leave it, done for today”, “leave it there for tonight”: the work stops for the day, and no place is kept off.</summary>
internal static class LeftForToday
{
    private static readonly HashSet<string> Leaving = ["leave", "leaving", "left"];

    private static readonly HashSet<string> Beside = [.. "i will 'll am 'm shall let 's us going to now and so then ok okay right well just it this that reed one there here at be for now with as is me we but let's".Split(' ')];

    private static readonly HashSet<string> Days = ["today", "tonight", "evening", "day", "night", "afternoon", "morning", "tomorrow"];

    private static readonly HashSet<string> Ended = [.. "done finished enough that 's is will do all for today tonight now the this evening day night i am 'm we are it me and good of with here there calling call a tomorrow is another until till more".Split(' ')];

    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Segments.Count; at++)
        {
            if (course.Segments[at] is not { Asked: false } segment || !Leaves(segment, out var isDay))
            {
                continue;
            }

            var next = at + 1 < course.Segments.Count && Ends(course.Segments[at + 1]) ? at + 1 : -1;
            if (!(isDay || next > 0) || Over(course, at) is not { } draft)
            {
                continue;
            }

            (draft.Kind, draft.Slots, draft.HasAside) = (EntryKind.Stopped, ReadSlots.None, true);
            draft.Doubts.Clear();
            if (next > 0)
            {
                course.Drafts.RemoveAll(other => other != draft && other.First == next && other.Last == next);
                draft.Last = Math.Max(draft.Last, course.Drafts.Exists(other => other != draft && other.First <= next && next <= other.Last) ? at : next);
                course.Left.RemoveAll(left => left == next);
            }
        }
    }

    private static Draft? Over(Course course, int at) => course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is { Kind: EntryKind.Stopped or EntryKind.Verdict } ? null : Alone.Of(course, at);

    // “Leave it”, “leaving it there for tonight”: no part of the reed, and not “alone”.
    private static bool Leaves(Segment segment, out bool isDay)
    {
        isDay = false;
        if (!Spoken.HasAny(segment, Leaving))
        {
            return false;
        }

        var words = Words(segment);
        isDay = words.Exists(Days.Contains);
        return words.Exists(Leaving.Contains) && words.Exists(word => word is "it" or "this" or "that") && words.TrueForAll(word => Leaving.Contains(word) || Beside.Contains(word) || Days.Contains(word) || word is "the")
            && PlaceReader.Read(segment).Count == 0;
    }

    private static bool Ends(Segment segment) => Words(segment) is { Count: > 0 } words && words.TrueForAll(Ended.Contains) && words.Exists(word => word is "done" or "finished" or "enough" or "tomorrow" || Days.Contains(word));

    private static List<string> Words(Segment segment) => [.. Enumerable.Range(segment.First, segment.End - segment.First).Where(at => segment.Tokens[at].Kind is not TokenKind.Break && segment.Word(at).Length > 0 && !(segment.Covered(at, Cat.Filler) && !Beside.Contains(segment.Word(at)))).Select(segment.Word)];
}
