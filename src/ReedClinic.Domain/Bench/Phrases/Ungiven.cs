namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Easy now”, “E’s a bit sharp but fine”, “dull up top”: a test has a result where its words give one, and else keeps the words.</summary>
internal static class Ungiven
{
    private static readonly string[] Answering = ["respon", "speak", "spok", "start", "attack", "tongu", "come", "came", "crack", "slow", "late", "slugg", "hesit", "drop", "articul", "lag", "once"];

    private static readonly string[] Low = ["low", "bottom", "note", "regist", "lower"];

    private static readonly string[] Tuned = ["sharp", "flat", "pitch", "tun", "inton"];

    private static readonly string[] Blown = ["blow", "effort", "eff", "resist", "hard", "easy", "easi", "stiff", "heavy", "push", "light", "air", "work", "tough", "free", "tir", "stuff", "press", "back", "tight"];

    private static readonly string[] Coloured = ["dull", "dark", "bright", "thin", "shrill", "brill", "warm", "cover", "muff", "edgy", "sweet", "harsh"];

    private static readonly string[] Steadiness = ["hold", "held", "wander", "sag", "drop", "wobb", "stead", "unstead", "fall", "sink", "sank", "drift", "shak", "waver", "slip", "slid", "climb", "rise", "go", "flat", "sharp", "pitch", "move", "stay", "sway", "creep", "bend", "stab", "unstab", "float", "swim"];

    private static readonly string[] Started = ["start", "attack", "entr", "onset", "begin", "began", "speak", "spok", "come", "came", "respon", "tongu", "articul", "late", "push"];

    private static readonly string[] Falling = ["slow", "late", "drop", "sometimes", "hesit", "lag", "slugg"];

    private static readonly Doubt Unknown = new("kind", "unsure which test was meant, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Step: not null, Cents: null } }))
        {
            var whole = Spoken.Whole(course, draft);
            var isNamed = whole.Has(Cat.Test);
            switch (draft.Slots)
            {
                case { Test: TestKind.LowResponse } when !isNamed && (!IsOfLowNotes(whole) || IsOfPitch(whole, Answering)):
                case { Test: TestKind.SoftestStart } when !Spoken.HasStem(whole, Started) && (IsOfPitch(whole, Started) || Spoken.HasStem(whole, "hold", "sag", "drop")):
                case { Test: TestKind.Effort } when !isNamed && IsOfPitch(whole, Blown):
                case { Test: TestKind.HighSteadiness, Step: "wanders" } when Spoken.HasStem(whole, Coloured) && !Spoken.HasStem(whole, Steadiness):
                    Spoken.Unmake(draft, Unknown);
                    break;
                case { Test: TestKind.LowResponse, Step: "speaks at once" } when Spoken.HasStem(whole, Falling) && !whole.Has(Cat.Not):
                    Spoken.Unscale(draft, draft.Slots, "two things were said of it, so its words are kept");
                    break;
                case { Test: TestKind.Effort, Step: "a little too easy" } when !isNamed && IsOnlyEasy(whole):
                    Spoken.Unscale(draft, draft.Slots, "that it is easy is no word of its scale, so its words are kept");
                    break;
            }
        }
    }

    private static bool IsOfLowNotes(Segment whole) => Spoken.HasStem(whole, Low) || Spoken.HasStem(whole, Answering) || PitchReader.NotesIn(whole).Count > 0;

    // A note that is sharp or flat, and nothing of how it speaks or blows.
    private static bool IsOfPitch(Segment whole, string[] own) => Spoken.HasStem(whole, Tuned) && !Spoken.HasStem(whole, own);

    private static bool IsOnlyEasy(Segment whole) => (whole.HasWord("easy") || whole.HasWord("easily")) && !whole.HasWord("too") && !whole.Has(Cat.Degree) && !whole.HasWord("very") && !Spoken.HasStem(whole, "eff");
}
