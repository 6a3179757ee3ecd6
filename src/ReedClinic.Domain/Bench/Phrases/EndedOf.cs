namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Tone’s gone thin”, “better: A holds”, “left side’s better now”: what only sounds like an end, or names another place, ends no finding.</summary>
internal static class EndedOf
{
    private static readonly HashSet<string> Turned = ["thin", "flat", "sharp", "dull", "soft", "hard", "dead", "bright", "dark", "stuffy", "quiet", "loud", "odd", "weird", "funny", "fuzzy", "mushy", "stiff", "heavy", "light", "wild", "shrill", "sour", "wobbly", "loose", "tight", "cloudy", "harsh", "edgy", "woolly", "hollow", "limp", "nasal", "muffled", "covered", "wide", "narrow", "weak", "further", "deeper", "worse", "longer", "bigger", "through"];

    private static readonly HashSet<string> By = ["a", "bit", "little", "touch", "very", "rather", "all", "quite", "too", "so", "really", "slightly", "somewhat", "of", "shade", "lot"];

    private static readonly Doubt Unsure = new("kind", "which finding that was isn’t clear, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.FindingEnded, Slots: { Kind: not null, Ending: FindingEnding.Better or FindingEnding.Gone } }).ToList())
        {
            var segment = course.Segments[draft.Head];
            if (draft.Slots.Ending is FindingEnding.Gone && (IsTurned(segment) || IsWished(segment)) || IsAnotherSide(course, draft, segment))
            {
                Spoken.Unmake(draft, Unsure);
            }
            else if (IsOnlyBetter(segment) && course.Drafts.Find(other => other.Sentence == draft.Sentence && other.First == draft.Last + 1) is { Kind: EntryKind.Test } test)
            {
                (test.First, test.HasAside) = (draft.First, true);
                course.Drafts.Remove(draft);
            }
        }
    }

    // “Gone a bit thin” is what it has become.
    private static bool IsTurned(Segment segment)
    {
        var at = segment.IndexOfWord("gone") + 1;
        while (at > 0 && By.Contains(segment.Word(at)))
        {
            at++;
        }

        return at > 0 && Turned.Contains(segment.Word(at));
    }

    // “Is the bump gone?”, “I want that bump gone”.
    private static bool IsWished(Segment segment) => segment.Asked && !segment.Has(Cat.Me) || Enumerable.Range(segment.First, Math.Min(4, segment.End - segment.First)).Any(at => segment.Word(at) is "want" or "wanted" or "wants" or "wish");

    private static bool IsOnlyBetter(Segment segment) => Enumerable.Range(segment.First, segment.End - segment.First).All(at => segment.Tokens[at].Kind is TokenKind.Break || segment.Word(at) is "better" or "much" or "now" or "" or ":" or "," or "-");

    // A side alone, where nothing was found on it.
    private static bool IsAnotherSide(Course course, Draft draft, Segment segment) =>
        !segment.Has(Cat.Quality) && PlaceReader.Read(segment) is [{ HasPlace: false, OneSide: { } side }]
        && !course.Before.Log.Findings.Any(now => now.Finding.FindingKind.Value == draft.Slots.Kind && now.Finding.Sides == side)
        && !course.Drafts.Exists(other => other.Kind is EntryKind.Finding && other.Slots.Kind == draft.Slots.Kind && other.Slots.Sides == side);
}
