namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Drew the air: holds, small pop”, “press, lightly: all at once”: how a test is done is no work, where what it showed follows.</summary>
internal static class Trials
{
    internal static void Keep(Course course)
    {
        for (var i = course.Drafts.Count - 2; i >= 0; i--)
        {
            var (deed, test) = (course.Drafts[i], course.Drafts[i + 1]);
            if (deed is { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null, Sake: null } } && test is { Kind: EntryKind.Test, Slots.Test: { } tried } && test.First == deed.Last + 1 && IsHow(deed.Slots.Kind, tried) && !course.Segments[test.Head].HasWord("now")
                && !Enumerable.Range(deed.First, deed.Last - deed.First + 1).Any(at => course.Segments[at].Items.Any(item => item.Cat is Cat.Verb && Moods.Action(item) is "soak")))
            {
                course.Drafts.RemoveAt(i);
                test.First = deed.First;
            }
        }
    }

    private static bool IsHow(string? work, TestKind tried) => work switch
    {
        "draw-air" => tried is TestKind.Seal,
        "close-press" => tried is TestKind.ClosingOrder,
        _ => false,
    };
}
