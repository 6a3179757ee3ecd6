namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Corners are whisper thin, good”: what is called good isn’t a fault; which strength it is wasn’t said.</summary>
internal static class FineAsItIs
{
    private static readonly HashSet<string> Good = ["good", "nice", "lovely", "fine", "great", "perfect", "excellent", "splendid", "ideal"];

    private static readonly Doubt Doubt = new("kind", "it was called good, and which strength that is wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Relation: null } }))
        {
            var said = Spoken.Whole(course, draft);
            var last = said.End - 1;
            while (last > said.First && said.Tokens[last].Kind is TokenKind.Break)
            {
                last--;
            }

            if (Good.Contains(said.Word(last)) && said.Tokens[last - 1].Kind is TokenKind.Break && !said.HasWord("too") && !said.HasWord("not") && !said.HasWord("otherwise") && !said.HasWord("but") && !said.HasWord("rest"))
            {
                Spoken.Unmake(draft, Doubt);
            }
        }
    }
}
