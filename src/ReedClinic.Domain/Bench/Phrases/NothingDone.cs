namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Scraped nothing off the heart”, “eased nothing yet”, “haven’t touched the tip yet”: nothing was done, nothing got better by it, and no place is kept off for it.</summary>
internal static class NothingDone
{
    private static readonly HashSet<string> Touching = [.. "touched eased easing done did worked removed adjusted taken took shaved".Split(' ')];

    private static readonly HashSet<string> Saving = ["but", "more", "except", "like", "besides", "beyond", "short", "less", "further", "again"];

    private static readonly HashSet<string> Meant = ["purpose", "deliberately", "never", "will", "must", "should", "shall", "ever"];

    private static readonly Doubt Nothing = new("kind", "nothing was done there, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Adjustment or EntryKind.LeaveAlone or EntryKind.FindingEnded or EntryKind.LookedFor or EntryKind.Finding).ToList())
        {
            if (course.Segments[draft.Head] is { Asked: false } segment && Says(segment, draft.Kind, IsSoFar(segment) || IsSoFarBehind(course, draft)))
            {
                Spoken.Unmake(draft, Nothing);
            }
        }
    }

    private static bool Says(Segment segment, EntryKind kind, bool soFar)
    {
        var nothing = segment.IndexOfWord("nothing");
        if (nothing >= 0 && segment.Word(nothing - 1) is not ("to" or "almost" or "practically" or "virtually") && !Saving.Contains(segment.Word(nothing + 1)))
        {
            return IsWork(segment, nothing - 1) || segment.Word(nothing - 1) is "off" && IsWork(segment, nothing - 2) || Enumerable.Range(nothing + 1, 4).Any(at => segment.Word(at) is not "" && IsPast(segment, at)) || soFar;
        }

        return kind is not EntryKind.Finding && !Spoken.HasAny(segment, Meant) && (IsUntouched(segment, soFar, kind is not EntryKind.LookedFor) || kind is EntryKind.LeaveAlone && soFar && (segment.HasWord("no") || segment.HasWord("not")));
    }

    private static bool IsSoFarBehind(Course course, Draft draft) => draft.Head + 1 < course.Segments.Count && course.Segments[draft.Head + 1] is var next && next.Sentence == draft.Sentence && next.End - next.First <= 3 && (next.Joint is "yet" || IsSoFar(next));

    // “Yet”, “so far”: it may still come.
    private static bool IsSoFar(Segment segment) => segment.HasWord("yet") || segment.IndexOfWord("far") is >= 0 and var far && segment.Word(far - 1) is "so";

    private static bool IsWork(Segment segment, int at) => segment.Word(at) is not "" && (Touching.Contains(segment.Word(at)) || segment.Items.Any(item => item.Cat is Cat.Verb && item.End == at + 1 && Moods.Action(item) is not ("light" or "harm" or "keepoff")));

    private static bool IsPast(Segment segment, int at) => Touching.Contains(segment.Word(at)) || segment.Items.Any(item => item.Cat is Cat.Verb && item.First == at && Moods.Form(item) is 'P' or 'N' && Moods.Action(item) is not ("light" or "harm" or "keepoff" or "fit"));

    // “I haven’t taken anything off the tip”, “didn’t touch the corners”, “heart not touched yet”.
    private static bool IsUntouched(Segment segment, bool soFar, bool bare)
    {
        for (var at = segment.First; at < segment.End; at++)
        {
            if (segment.Word(at) is not "not" || segment.Word(at - 1) is "is" or "'s" or "are" or "do" or "am")
            {
                continue;
            }

            var did = segment.Word(at - 1) is "did" or "have" or "has" or "had" or "'ve" || soFar || bare && IsPast(segment, at + 1);
            if (Enumerable.Range(at + 1, 3).Any(verb => IsPast(segment, verb) && did || segment.Word(at - 1) is "did" && (segment.Word(verb) is "touch" or "do" || IsWork(segment, verb))))
            {
                return true;
            }
        }

        return false;
    }
}
