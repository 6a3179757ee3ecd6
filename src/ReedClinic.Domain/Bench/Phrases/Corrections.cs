namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Clipped, sorry, squared the tip”; “too thick – scrap that, too long”: of what is put right only the later words count.</summary>
internal static class Corrections
{
    private const int Reach = 3;
    private const int ShortLine = 12;

    internal static void Keep(Course course)
    {
        for (var at = 1; at < course.Segments.Count; at++)
        {
            if (PutsRight(course.Segments[at], out var surely) && Wrong(course, at) is { } wrong && Right(course, at) is { } right && IsSame(course, wrong, right, surely))
            {
                right.Slots = Merged(wrong.Slots, right.Slots);
                course.Drafts.Remove(wrong);
                course.Drafts.RemoveAll(draft => draft.Kind is EntryKind.Note && draft.First > wrong.Head && draft.Last < right.Head);
            }
        }
    }

    /// <summary>“No, the right corner”, as all that is said: it puts right the entry before, and says nothing new.</summary>
    internal static void KeepAlone(Course course)
    {
        if (course.Before.Last is null || course.Segments.Count == 0 || course.Segments.Any(segment => segment.Asked) || !(IsAlone(course.Segments) || IsTestAnew(course)))
        {
            return;
        }

        course.Drafts.Clear();
        course.Left.Clear();
        course.At = 0;
        var note = course.Add(EntryKind.Note, ReadSlots.None);
        note.Last = course.Segments.Count - 1;
        note.Doubts.Add(new Doubt("kind", "unsure whether this puts right the entry before, so it is kept as a note"));
    }

    // “Whoops, that peep was a C”, right after a peep: it puts right that one.
    private static bool IsTestAnew(Course course) => course.Before.Last is Test last && course.Drafts.All(draft => draft is { Kind: EntryKind.Test } && draft.Slots.Test == last.TestKind) && course.Drafts.Count > 0
        && course.Segments[0] is var first && RightWords.Startled.Contains(first.Word(first.First))
        && course.Segments.Any(segment => segment.HasWord("that") || segment.HasWord("was")) && course.Segments.Sum(segment => segment.End - segment.First) <= ShortLine;

    // Words that put right, then a place and nothing said of it.
    private static bool IsAlone(IReadOnlyList<Segment> segments)
    {
        var tokens = segments[0].Tokens;
        var first = segments[0].First;
        var rights = tokens[first].Text is "no" or "nope" && first + 1 < tokens.Count && (tokens[first + 1].Kind is TokenKind.Break || tokens[first + 1].Text is "the" or "it" or "sorry" or "wait" or "not" or "i" or "on")
            || RightWords.Startled.Contains(tokens[first].Text) || tokens[first].Text is "wait" || tokens[first].Text is "i" && first + 1 < tokens.Count && tokens[first + 1].Text is "mean" or "meant";
        return rights && segments.Any(segment => segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Side or Cat.Blade))
            && segments.All(segment => Enumerable.Range(segment.First, segment.End - segment.First).All(at => IsOfPlace(segment, at)));
    }

    private static bool IsOfPlace(Segment segment, int at) => segment.Tokens[at].Kind is TokenKind.Break
        || segment.Word(at).Length == 0 || RightWords.Beside.Contains(segment.Word(at))
        || segment.Items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Side or Cat.Blade or Cat.Filler or Cat.Fix);

    // A segment that begins with words that put something right, or is nothing else.
    private static bool PutsRight(Segment segment, out bool surely)
    {
        surely = false;
        var at = segment.First;
        while (at < segment.End && segment.Items.FirstOrDefault(item => item.First == at && item.Cat is Cat.Fix) is { Value: null } && (segment.Word(at) is "or" or "and" or "but" or "" || segment.Covered(at, Cat.Filler)))
        {
            at++;
        }

        if (segment.Items.FirstOrDefault(item => item.First == at && item.Cat is Cat.Fix) is not { Value: not null } fix)
        {
            return false;
        }

        surely = fix.Count > 1 && segment.Word(fix.First) is not "i" || segment.Word(fix.First) is "sorry" or "correction" or "pardon";
        return surely || segment.Word(fix.First) is "no" && (fix.End >= segment.End || segment.Tokens[fix.End].Kind is TokenKind.Break);
    }

    private static Draft? Wrong(Course course, int at) => course.Drafts.LastOrDefault(draft => draft.Head < at && draft.Kind is not EntryKind.Note && at - draft.Last <= 1);

    private static Draft? Right(Course course, int at) => course.Drafts.FirstOrDefault(draft => draft.Head >= at && draft.Kind is not EntryKind.Note && draft.Head - at < Reach);

    private static bool IsSame(Course course, Draft wrong, Draft right, bool surely) => wrong.Kind == right.Kind && (surely || wrong.Sentence == right.Sentence) && wrong.Kind switch
    {
        EntryKind.Test => wrong.Slots.Test == right.Slots.Test,
        EntryKind.Finding => right.Head - wrong.Head == 1 || surely,
        EntryKind.Adjustment => right.Head - wrong.Head <= Reach && !course.Segments[right.Head].Has(Cat.Again) && !course.Segments[right.Head].Has(Cat.Same),
        _ => false,
    };

    // A test keeps what isn’t said anew.
    private static ReadSlots Merged(ReadSlots wrong, ReadSlots right) => right.Test is null ? right : right with
    {
        Step = right.Step ?? wrong.Step,
        Pitch = right.Pitch ?? wrong.Pitch,
    };
}
