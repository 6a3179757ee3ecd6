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

    private static readonly string[] Tied = ["thread", "tie", "tying", "wrap", "whip", "wind", "wound", "turn", "string", "bind", "bound", "overlap"];

    private static readonly HashSet<string> Cleaner = ["cleaner", "crisper", "clearer", "quicker", "better", "nicer", "sharper", "neater", "surer", "faster", "easier"];

    private static readonly Doubt Unknown = new("kind", "unsure which test was meant, so it is kept as a note");

    internal static void Keep(Course course)
    {
        KeepTied(course);
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
                case { Test: TestKind.TonguedStarts, Step: "clean every time" } when Spoken.HasAny(whole, Cleaner) && !whole.HasWord("every") && !whole.HasWord("always"):
                    Spoken.Unscale(draft, draft.Slots, "only compared: which word of the scale it is now wasn’t said");
                    break;
                case { Test: TestKind.Crow, Step: "low only" } when !Spoken.HasStem(whole, "low", "deep", "bottom"):
                case { Test: TestKind.Crow, Step: "high only" } when Spoken.HasStem(whole, "too", "far") && Spoken.HasStem(whole, "high") && !Spoken.HasStem(whole, "only"):
                    Spoken.Unscale(draft, draft.Slots, "that it is too high or too low says nothing of its sounds, so its words are kept");
                    break;
                case { Test: TestKind.TuningNote, Pitch: null } when Spoken.HasStem(whole, "crow") && !Spoken.HasStem(whole, "tun", "oboe", "note"):
                    Spoken.Unscale(draft, new ReadSlots { Test = TestKind.Crow }, "how high it crows was said without a pitch, so its words are kept");
                    break;
                case { Test: TestKind.Effort } when IsOfANote(whole) && !Spoken.HasStem(whole, "blow", "eff", "resist"):
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

    // “Far too high” behind a crow: nobody spoke of the thread.
    private static void KeepTied(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Finding, ZoneSaid: false, Slots.Kind: "thread-too-high" or "thread-too-low" }).ToList())
        {
            if (!Spoken.HasStem(Spoken.Sentence(course, draft), Tied))
            {
                if (course.Drafts.FindLast(other => other.Head < draft.Head && other.Sentence == draft.Sentence && other.Kind is EntryKind.Test) is { } test)
                {
                    Spoken.Join(course, test, draft);
                }
                else
                {
                    Spoken.Unmake(draft, Unknown);
                }
            }
        }
    }

    // “Forked F is stuffy”: one note, and not the whole reed.
    private static bool IsOfANote(Segment whole) => Spoken.HasStem(whole, "fork", "half-hole", "halfhole") || (PitchReader.NotesIn(whole).Count > 0 && Spoken.HasStem(whole, "stuff", "muff", "fuzz", "clos"));

    private static bool IsOfLowNotes(Segment whole) => Spoken.HasStem(whole, Low) || Spoken.HasStem(whole, Answering) || PitchReader.NotesIn(whole).Count > 0;

    // A note that is sharp or flat, and nothing of how it speaks or blows.
    private static bool IsOfPitch(Segment whole, string[] own) => Spoken.HasStem(whole, Tuned) && !Spoken.HasStem(whole, own);

    private static bool IsOnlyEasy(Segment whole) => (whole.HasWord("easy") || whole.HasWord("easily")) && !whole.HasWord("too") && !whole.Has(Cat.Degree) && !whole.HasWord("very") && !Spoken.HasStem(whole, "eff");
}
