namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Low notes much better”: what is only compared names no step of a scale, and ends nothing that it doesn’t name.</summary>
internal static class Betters
{
    private static readonly HashSet<string> Comparing = ["better", "worse", "freer", "improved", "improving", "improves", "nicer", "easier"];

    // Words beside them that say no more.
    private static readonly HashSet<string> Empty =
    [
        .. ("the a an is are was were be been 's it they this that these those of on in at to for and but so than before now today again already still yet much far way lot bit little touch hair tad shade somewhat slightly really very quite too as ever yesterday earlier "
        + "get gets getting got feel feels sound sounds seem seems play plays playing speak speaks come comes coming hold holds holding go goes going notes note ones one register response low high bottom top lower upper lowest highest end all whole i think my no not any more last time start starts starting attack attacks entry entries pp").Split(' '),
    ];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Pitch: null, Cents: null } or { Step: not null } } && (draft.Slots.Step is not null || course.Segments[draft.Head] is var bare && bare.HasWord("easier") && IsUnnamed(bare)) && IsOnlyCompared(course.Segments[draft.First].With(course.Segments[draft.Last]))))
        {
            var segment = course.Segments[draft.Head];
            var unnamed = segment.HasWord("freer") | segment.HasWord("easier") && IsUnnamed(segment);
            draft.Slots = draft.Slots with { Test = unnamed ? TestKind.Effort : draft.Slots.Test, Step = null };
            draft.HasAside = true;
            draft.Doubts.RemoveAll(doubt => doubt.Slot is "step");
            draft.Doubts.Add(new Doubt("step", "only compared: which word of the scale it is now wasn’t said"));
        }

        foreach (var ended in course.Drafts.Where(draft => draft.Kind is EntryKind.FindingEnded && IsBare(course, draft)).ToList())
        {
            Settle(course, ended);
        }
    }

    // No test, no note and no register.
    private static bool IsUnnamed(Segment segment) => !segment.Has(Cat.Test) && PitchReader.NotesIn(segment).Count == 0 && !segment.HasWord("notes") && !segment.HasWord("low") && !segment.HasWord("high") && !segment.HasWord("start") && !segment.HasWord("starts") && !segment.HasWord("attack");

    // “Low D late but better than before”: of the test, and of no finding. Alone, of the only one that stands, or in doubt which.
    private static void Settle(Course course, Draft ended)
    {
        if (course.Drafts.LastOrDefault(other => other.Head < ended.Head && other.Sentence == ended.Sentence) is { Kind: EntryKind.Test } test)
        {
            (test.Last, test.HasAside) = (Math.Max(test.Last, ended.Last), true);
            course.Drafts.Remove(ended);
        }
        else if (course.Before.Log.Findings.Select(now => now.Finding.FindingKind).Distinct().Count() > 1 && !course.Drafts.Exists(other => other.Head < ended.Head))
        {
            ended.Doubts.Add(new Doubt("kind", "which finding wasn’t said, so the last one was taken"));
        }
    }

    private static bool IsOnlyCompared(Segment segment) => !segment.Has(Cat.Not) && !segment.HasWord("softly") && Enumerable.Range(segment.First, segment.End - segment.First) is var all && all.Any(at => Comparing.Contains(segment.Word(at)))
        && all.All(at => segment.Tokens[at].Kind is TokenKind.Note or TokenKind.Break || segment.Word(at).Length <= 1 || Comparing.Contains(segment.Word(at)) || Empty.Contains(segment.Word(at))
            || segment.Items.Any(item => item.First <= at && at < item.End && (item.Cat is Cat.Test or Cat.Degree or Cat.Now or Cat.Filler or Cat.Octave or Cat.Hedge or Cat.Than || item.Cat is Cat.Sound && item.Count == 1)));

    // It names no finding and no place.
    private static bool IsBare(Course course, Draft ended) => !Enumerable.Range(ended.First, ended.Last - ended.First + 1).Select(at => course.Segments[at])
        .Any(segment => segment.Has(Cat.Quality) || segment.Has(Cat.Leave) || PlaceReader.Read(segment).Any(mention => mention.HasPlace || mention.Part is not null));
}
