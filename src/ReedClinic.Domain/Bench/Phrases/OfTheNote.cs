namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“C sharp crow, that’s high”, “A: it’s a bit flat”, “low notes just right”, “low D takes a shove”: what is said of a note, and which value it has.</summary>
internal static class OfTheNote
{
    private static readonly string[] Pushes = ["push", "shove", "nudge", "kick", "poke", "jolt"];

    private static readonly HashSet<string> Starting = ["soft", "softly", "start", "starts", "starting", "quiet", "quietly", "pp", "pianissimo", "attack", "tongue", "tongued", "without", "no", "not", "never"];

    private static readonly HashSet<string> Just = [.. "low high top bottom notes note register the are is 's feel sound seem all now just right spot on exactly quite reed these this and so".Split(' ')];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Test))
        {
            var said = Spoken.Whole(course, draft);
            switch (draft.Slots)
            {
                case { Test: TestKind.Crow or TestKind.Peep, Pitch: not (null or "C"), Lean: not null, Cents: null } when IsOnlyJudged(course, draft):
                    draft.Slots = draft.Slots with { Lean = null };
                    break;
                case { Test: TestKind.TuningNote, Pitch: null } when Ahead(course, draft) is "a":
                    draft.Slots = draft.Slots with { Pitch = "A" };
                    break;
                case { Test: TestKind.Crow, Pitch: "D" or "E" or "F" or "G" or "A" or "F#" or "Eb" or "Ab", Cents: null, Step: null } when Ahead(course, draft) is { Length: 1 } && !Spoken.HasStem(said, "crow"):
                    Spoken.Unmake(draft, new Doubt("test", "a note that was named ahead, and no crow, so it is kept as a note"));
                    break;
                case { Test: TestKind.LowResponse or TestKind.HighSteadiness, Step: null, Pitch: null } when IsJustRight(said):
                    draft.Slots = draft.Slots with { Step = draft.Slots.Test is TestKind.LowResponse ? "speaks at once" : "holds" };
                    break;
                case { Test: TestKind.SoftestStart, Step: "needs a push" } or { Test: TestKind.LowResponse, Step: "speaks at once" or "late" or "speaks with care" } when IsLowShove(said):
                    Spoken.Unscale(draft, draft.Slots with { Test = TestKind.LowResponse }, "a low note that needs a push: which word of the scale that is wasn’t said, so its words are kept");
                    break;
            }
        }
    }

    // “…, that’s high”: what is thought of that note, and not where beside it it stands.
    private static bool IsOnlyJudged(Course course, Draft draft) => Spoken.Of(course, draft).Skip(1).Any(segment => segment.Joint is "," && segment.Word(segment.First) is "that" or "which" && segment.Word(segment.First + 1) is "is" or "'s"
        && Enumerable.Range(segment.First + 2, segment.End - segment.First - 2).All(at => segment.Tokens[at].Kind is TokenKind.Break || segment.Word(at) is "high" or "low" or "too" or "a" or "bit" or "rather" or "quite" or "very" or "still"));

    // “A: it’s a bit flat”.
    private static string? Ahead(Course course, Draft draft)
    {
        var said = Spoken.Sentence(course, draft);
        return said.End - said.First > 2 && said.Tokens[said.First + 1].Is(":") ? said.Tokens[said.First].Text : null;
    }

    private static bool IsJustRight(Segment said) => !said.Asked && Enumerable.Range(said.First, said.End - said.First - 1).Any(at => said.Word(at) is "just" or "exactly" && said.Word(at + 1) is "right") && Enumerable.Range(said.First, said.End - said.First).All(at => said.Tokens[at].Kind is TokenKind.Break || Just.Contains(said.Word(at)));

    private static bool IsLowShove(Segment said) => !said.Asked && said.IndexOfWord("low") is >= 0 and var low && (said.Tokens[Math.Min(low + 1, said.End - 1)].Kind is TokenKind.Note || said.Word(low + 1) is "notes" or "note" || said.Word(low + 1).Length == 1)
        && Enumerable.Range(low, said.End - low).Any(at => Pushes.Any(push => said.Word(at) == push) && said.Word(at - 1) is "a" or "another" or "good" or "real" or "little" or "bit") && !Spoken.HasAny(said, Starting);
}
