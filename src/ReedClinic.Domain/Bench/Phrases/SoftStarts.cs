namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Pp start comes late”, “attack at pp is good”: how softly it starts, and nothing of the lowest notes or of repeated tonguing.</summary>
internal static class SoftStarts
{
    private static readonly HashSet<string> Soft = ["pp", "ppp", "pianissimo", "soft", "softest", "softly", "quiet", "quietest", "quietly", "whisper"];

    private static readonly HashSet<string> Loudness = ["pp", "ppp", "pianissimo"];

    private static readonly HashSet<string> Start = ["start", "starts", "attack", "attacks", "entry", "entries", "onset", "onsets"];

    private static readonly HashSet<string> Coming = ["comes", "come", "coming", "speaks", "speak", "late", "response", "responds", "respond", "responding"];

    private static readonly HashSet<string> Others = ["low", "lowest", "bottom", "high", "highest", "top", "upper", "notes", "note", "tongued", "tongue", "tonguing", "staccato", "short", "repeated", "slur", "slurred"];

    private static readonly HashSet<string> Good = ["good", "clean", "clear", "fine", "nice", "ok", "okay", "well", "lovely", "great", "easy", "easily", "right", "sure", "reliable"];

    private static readonly HashSet<string> Compared = ["better", "easier", "nicer", "worse", "freer", "quicker", "cleaner"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Pitch: null, Cents: null, Change: null, Test: TestKind.LowResponse or TestKind.TonguedStarts or TestKind.Peep or TestKind.SoftestStart or TestKind.Effort or TestKind.Opening } }))
        {
            var whole = course.Segments[draft.First].With(course.Segments[draft.Last]);
            if (draft.Slots.Test is TestKind.Opening && Spoken.HasStem(whole, "open", "gap", "clos") || !Spoken.HasAny(whole, Soft) || Spoken.HasAny(whole, Others) || Spoken.HasStem(whole, "peep") || !(Spoken.HasAny(whole, Start) || Spoken.HasAny(whole, Loudness) && Spoken.HasAny(whole, Coming)))
            {
                continue;
            }

            if (Spoken.HasStem(whole, "late", "slow", "delay", "hesita", "lag"))
            {
                Spoken.Unscale(draft, new ReadSlots { Test = TestKind.SoftestStart }, "that it comes late is no word of its scale, so its words are kept");
            }
            else if (draft.Slots.Test is TestKind.SoftestStart ? draft.Slots.Step is not null && Spoken.HasAny(whole, Compared) && !whole.HasWord("softly") : !IsGood(whole))
            {
                Spoken.Unscale(draft, new ReadSlots { Test = TestKind.SoftestStart }, "which word of the scale was meant isn’t clear, so its words are kept");
            }
            else if (draft.Slots.Test is not TestKind.SoftestStart)
            {
                draft.Slots = new ReadSlots { Test = TestKind.SoftestStart, Step = "starts softly" };
                draft.Doubts.RemoveAll(doubt => doubt.Slot is "step");
            }
        }
    }

    private static bool IsGood(Segment whole) => !whole.Has(Cat.Not) && !Spoken.HasAny(whole, Compared) && Spoken.HasAny(whole, Good);
}
