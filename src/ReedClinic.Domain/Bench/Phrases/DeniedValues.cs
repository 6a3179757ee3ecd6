namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Low D no good”, “seal: none”, “no low octave”, “not bright enough”, “sharp when loud”: a value that the words deny is none.</summary>
internal static class DeniedValues
{
    private static readonly HashSet<string> Bad = ["good", "use", "luck", "joy", "chance", "go", "way", "response", "hope"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots.Step: not null }))
        {
            var said = Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last);
            switch (draft.Slots)
            {
                case { Test: TestKind.LowResponse or TestKind.HighSteadiness or TestKind.Seal } slots when NoneToo(said):
                    Spoken.Unscale(draft, slots, "none too good: which word of the scale that is wasn’t said, so its words are kept");
                    break;
                case { Test: TestKind.LowResponse or TestKind.HighSteadiness, Step: "speaks at once" or "holds" } slots when IsNoGood(said):
                    Spoken.Unscale(draft, slots, "no, or no good: which word of the scale that is wasn’t said, so its words are kept");
                    break;
                case { Test: TestKind.Seal, Step: not "does not hold" } slots when IsNone(said):
                    draft.Slots = slots with { Step = "does not hold" };
                    break;
                case { Test: TestKind.Crow, Step: "low only" } slots when Lacks(said, "low", "bottom", "lower"):
                    draft.Slots = slots with { Step = "high only" };
                    break;
                case { Test: TestKind.Crow, Step: "high only" } slots when Lacks(said, "high", "top", "upper"):
                    draft.Slots = slots with { Step = "low only" };
                    break;
                case { Test: TestKind.Edge, Step: "right" or "a little edgy" or "very edgy" } slots when NotEnough(said, "bright", "edgy", "brilliant", "sparkling"):
                    draft.Slots = slots with { Step = "a little covered" };
                    break;
                case { Test: TestKind.Edge, Step: "right" or "a little covered" or "covered" } slots when NotEnough(said, "dark", "covered", "mellow", "round"):
                    draft.Slots = slots with { Step = "a little edgy" };
                    break;
                case { Test: TestKind.Swell, Step: "sags when loud" } slots when said.HasWord("sharp") && !Spoken.HasStem(said, "sag", "flat", "drop", "droop"):
                    Spoken.Unscale(draft, slots, "sharp, and no sagging: the scale has no word for it, so its words are kept");
                    break;
                case { Test: TestKind.Opening, Step: "right" } when draft.Doubts.Exists(doubt => doubt.Slot is "kind") && !Spoken.HasStem(said, "open", "mouth", "gap", "aperture") && PlaceReader.Read(said).Exists(place => place.HasPlace):
                    Spoken.Unmake(draft, new Doubt("kind", "well enough, and no word of the opening, so it is kept as a note"));
                    break;
            }
        }
    }

    // “Low D no”, “low D no good”.
    private static bool IsNoGood(Segment said) => !said.Asked && Enumerable.Range(said.First + 1, Math.Max(0, said.End - said.First - 1)).Any(at => said.Word(at) is "no" && (Ends(said, at + 1) || Bad.Contains(said.Word(at + 1)) && Ends(said, at + 2)));

    private static bool NoneToo(Segment said) => said.IndexOfWord("none") is >= 0 and var at && said.Word(at + 1) is "too";

    private static bool Ends(Segment said, int at) => at >= said.End || said.Tokens[at].Kind is TokenKind.Break && said.Tokens[at].Text is not "," || said.Word(at) is "at" && said.Word(at + 1) is "all";

    private static bool IsNone(Segment said) => said.HasWord("seal") && Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "none" or "nothing" or "no" && (Ends(said, at + 1) || said.Word(at) is "no" && said.Word(at + 1) is "seal"));

    private static bool Lacks(Segment said, params ReadOnlySpan<string> which)
    {
        for (var at = said.First; at + 2 < said.End + 1; at++)
        {
            if (said.Word(at) is "no" or "without" or "lacks" && (which.Contains(said.Word(at + 1)) && said.Word(at + 2) is "octave" or "one" or "note" || said.Word(at + 1) is "the" or "a" && which.Contains(said.Word(at + 2)) && said.Word(at + 3) is "octave" or "one" or "note"))
            {
                return true;
            }
        }

        return false;
    }

    private static bool NotEnough(Segment said, params ReadOnlySpan<string> words)
    {
        for (var at = said.First; at + 2 < said.End; at++)
        {
            if (said.Word(at) is "not" && words.Contains(said.Word(at + 1)) && said.Word(at + 2) is "enough")
            {
                return true;
            }
        }

        return false;
    }
}
