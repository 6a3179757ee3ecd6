namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“No crack in the tip, I looked against the light”, “now I’ve made the tip too thin”: how what isn’t there was looked for, where it is all that its sentence says, and whose work a fault is.</summary>
internal static class KnownBehind
{
    private static readonly string[] Cuts = ["-thin", "-short", "-cut", "-scraped", "-narrow", "-broken"];

    // Between the deed and its fault: words that make it somebody else’s, or none.
    private static readonly HashSet<string> Others = ["still", "with", "that", "which", "a", "an", "it", "one", "out", "sure", "here", "to", "is", "'s", "was", "as", "this", "where", "because"];

    private static readonly Doubt Mine = new("arose", "taken for a fault of the work, so its words are kept");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            switch (draft)
            {
                case { Kind: EntryKind.LookedFor, Slots.Known: null } when course.Drafts.TrueForAll(other => other == draft || other.Sentence != draft.Sentence):
                    draft.Slots = draft.Slots with { Known = FindingReader.Known(Spoken.Sentence(course, draft)) is var known and not KnownBy.Lip ? known : null };
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Arose: null, Kind: { } kind } } when !IsLeft(kind) && IsMine(course.Segments[draft.Head], IsCut(kind)):
                    draft.Slots = draft.Slots with { Arose = Arose.CausedByTheWork };
                    draft.HasAside = true;
                    draft.Doubts.Add(Mine);
                    break;
            }
        }
    }

    // A knife makes thin, short or cut; what is thick or long was left so.
    private static bool IsCut(string kind) => Cuts.Any(cut => kind.EndsWith(cut, StringComparison.Ordinal));

    private static bool IsLeft(string kind) => kind.EndsWith("-thick", StringComparison.Ordinal) || kind is "tip-long" or "bark-island" or "bumps" or "heart-length";

    // “I’ve made the tip too thin”, “now I’ve got the tip too thin”, and not “I made it out” or “I’ve got a tip that’s too thin”.
    private static bool IsMine(Segment segment, bool cut)
    {
        var too = segment.IndexOfWord("too");
        if (too < 0 || segment.Asked || !segment.Has(Cat.Quality) || segment.Has(Cat.Not) || segment.Has(Cat.Cond) || segment.Has(Cat.Plan))
        {
            return false;
        }

        for (var made = segment.First; made < too; made++)
        {
            if (segment.Word(made) is "made" or "got" or "scraped" or "taken" && IsI(segment, made - 1))
            {
                return !IsOther(segment, made, too) && (segment.Word(made) is not "got" || cut && segment.HasWord("now") && segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region && item.First > made && item.End <= too));
            }
        }

        return false;
    }

    private static bool IsI(Segment segment, int at) => segment.Word(at) is "i" or "we" || segment.Word(at) is "have" or "'ve" or "just" or "now" && segment.Word(at - 1) is "i" or "we" or "have";

    private static bool IsOther(Segment segment, int made, int too)
    {
        for (var at = made + 1; at < too; at++)
        {
            if (Others.Contains(segment.Word(at)))
            {
                return true;
            }
        }

        return false;
    }
}
