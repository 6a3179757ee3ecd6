namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Spine too strong”, “ramp too gentle”: too much of a good thing isn’t praise.</summary>
internal static class Overmuch
{
    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            if (draft is { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Strength, Kind: not "something-else" } slots } && IsTooMuch(Spoken.Whole(course, draft)))
            {
                draft.Slots = slots with { Kind = "something-else", Character = FindingCharacter.Fault };
                draft.HasAside = true;
                draft.Doubts.Clear();
                draft.Doubts.Add(new Doubt("kind", "too much of it, and no fault of that name, so its words are kept"));
            }
        }
    }

    // “Too strong”; “none too strong”, “not too long” and “the right one too” say nothing of the kind.
    private static bool IsTooMuch(Segment said)
    {
        for (var at = said.First + 1; at < said.End - 1; at++)
        {
            if (said.Word(at) is "too" && said.Tokens[at + 1].Kind is TokenKind.Word && said.Word(at + 1) is not ("many" or "few" or "much" or "and" or "now") && said.Word(at - 1) is not ("not" or "none" or "never" or "nothing" or "neither" or "n't" or "all") && !said.Word(at - 1).EndsWith("n't", StringComparison.Ordinal) && !said.Has(Cat.Not))
            {
                return true;
            }
        }

        return false;
    }
}
