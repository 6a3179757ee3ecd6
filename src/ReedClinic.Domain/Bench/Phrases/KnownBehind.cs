namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“No crack in the tip, I looked against the light”, “now I’ve made the tip too thin”: how what isn’t there was looked for, where it is all that its sentence says, and whose work a fault is.</summary>
internal static class KnownBehind
{
    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            draft.Slots = draft switch
            {
                { Kind: EntryKind.LookedFor, Slots.Known: null } when course.Drafts.TrueForAll(other => other == draft || other.Sentence != draft.Sentence) => draft.Slots with { Known = FindingReader.Known(Spoken.Sentence(course, draft)) is var known and not KnownBy.Lip ? known : null },
                { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Arose: null } } when IsMine(course.Segments[draft.Head]) => draft.Slots with { Arose = Arose.CausedByTheWork },
                _ => draft.Slots,
            };
        }
    }

    // “I’ve made the tip too thin”, and not “I made it out”.
    private static bool IsMine(Segment segment)
    {
        var made = Enumerable.Range(segment.First, segment.End - segment.First).FirstOrDefault(at => segment.Word(at) is "made" or "got" or "scraped" or "taken" && (segment.Word(at - 1) is "i" or "we" || segment.Word(at - 1) is "have" or "'ve" or "just" && segment.Word(at - 2) is "i" or "we" or "have"), -1);
        return made >= 0 && !segment.Asked && !segment.Has(Cat.Not) && segment.HasWord("too") && segment.IndexOfWord("too") > made && segment.Has(Cat.Quality) && !segment.Has(Cat.Cond) && !segment.Has(Cat.Plan);
    }
}
