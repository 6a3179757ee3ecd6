namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Gives a segment an entry of its own, where it was part of another one or of none.</summary>
internal static class Alone
{
    /// <summary>The entry that is made of this segment and of no other; null where it belongs to one that stays.</summary>
    /// <param name="course">What was understood.</param>
    /// <param name="at">The segment.</param>
    internal static Draft? Of(Course course, int at)
    {
        var index = course.Drafts.FindIndex(draft => draft.First <= at && at <= draft.Last);
        if (index < 0)
        {
            return Put(course, at, course.Drafts.TakeWhile(draft => draft.Last < at).Count());
        }

        var over = course.Drafts[index];
        if (over.Head == at)
        {
            return over;
        }

        if (over.Kind is EntryKind.Note && over.First == at && over.Last > at)
        {
            (over.First, over.HasAside) = (at + 1, true);
            return Put(course, at, index);
        }

        if (over.Last != at || over.Head >= at)
        {
            return null;
        }

        over.Last = at - 1;
        return Put(course, at, index + 1);
    }

    private static Draft Put(Course course, int at, int index)
    {
        course.Left.RemoveAll(left => left == at);
        var draft = new Draft { Kind = EntryKind.Note, Slots = ReadSlots.None, Head = at, First = at, Last = at, Sentence = course.Segments[at].Sentence };
        course.Drafts.Insert(index, draft);
        return draft;
    }
}
