namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Clipped, sorry, squared the tip”; “too thick – scrap that, too long”: of what is put right only the later words count.</summary>
internal static class Corrections
{
    private const int Reach = 3;

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
