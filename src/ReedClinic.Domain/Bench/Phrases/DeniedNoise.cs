namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Low D doesn’t growl”, “put it aside”: a noise that isn’t made is no bad answer of the reed, and a reed that is put aside wasn’t left to settle.</summary>
internal static class DeniedNoise
{
    private static readonly string[] Noises = ["growl", "squeak", "chirp", "hiss", "buzz", "sag", "crack", "chok", "stick", "stuck", "honk", "gurgl", "rattl", "squawk", "squeal", "burbl", "warbl", "wobbl", "gargl"];

    private static readonly HashSet<string> Between = ["at", "all", "any", "anymore", "more", "longer", "really", "even", "a", "the", "much", "so", "now", "ever"];

    private static readonly HashSet<string> PutAside = ["i", "i'll", "i've", "'ll", "'ve", "we", "let's", "put", "putting", "set", "setting", "lay", "laid", "it", "this", "that", "one", "the", "reed", "aside", "for", "now", "moment", "today", "so", "and", "ok", "okay"];

    private static readonly Doubt Aside = new("kind", "put aside has a key of its own, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Test, Slots: { Test: { } test, Step: { } step } slots } when !said.Asked && TestScale.Of(test) is { } scale && scale.Steps[scale.Good] != step && IsDenied(said):
                    Spoken.Unscale(draft, slots, "a noise that it doesn’t make: which word of the scale that is wasn’t said, so its words are kept");
                    break;
                case { Kind: EntryKind.Adjustment, Slots.Kind: "wait" } when IsPutAside(said):
                    Spoken.Unmake(draft, Aside);
                    break;
            }
        }
    }

    // “Put it aside for now”; till Thursday it is left to settle.
    private static bool IsPutAside(Segment said) => said.HasWord("aside") && Enumerable.Range(said.First, said.End - said.First).All(at => said.Tokens[at].Kind is TokenKind.Break || said.Word(at).Length == 0 || PutAside.Contains(said.Word(at)));

    private static bool IsDenied(Segment said)
    {
        for (var at = said.First; at < said.End; at++)
        {
            if (!IsNoise(said.Word(at)))
            {
                continue;
            }

            var before = at - 1;
            while (before > said.First && Between.Contains(said.Word(before)))
            {
                before--;
            }

            if (before >= said.First && (said.Word(before) is "not" or "never" or "no" or "without" or "stopped" || said.Word(before).EndsWith("n't", StringComparison.Ordinal)))
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsNoise(string word) => Array.Exists(Noises, noise => word.StartsWith(noise, StringComparison.Ordinal));
}
