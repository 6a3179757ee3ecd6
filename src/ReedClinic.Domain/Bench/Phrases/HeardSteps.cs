namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What the words of a test say of its scale, where they say it plainly: which octaves a crow has, a peep that crows already, blades that close all at once.</summary>
internal static class HeardSteps
{
    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var whole = course.Segments[draft.First].With(course.Segments[draft.Last]);
            switch (draft)
            {
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Pitch: null, Step: null, Change: not null } } when IsOfLast(course, draft, whole):
                    draft.Slots = draft.Slots with { Test = course.Before.LastPitched!.TestKind };
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Step: null or "low only" or "high only" } }:
                    draft.Slots = draft.Slots with { Step = Octaves(whole) ?? draft.Slots.Step };
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Peep, Step: "already crowing" } } when !Spoken.HasStem(whole, "crow", "alrdy", "already", "rattl", "octave", "buzz", "double", "both"):
                    Unstep(draft);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.LowResponse, Step: "will not speak" } } when !whole.HasWord("not") && Spoken.Sentence(course, draft) is var said && said.HasWord("late") && !said.HasWord("not") && !said.HasWord("no") && !said.HasWord("never"):
                    draft.Slots = draft.Slots with { Step = "late" };
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Depth, Step: "enough" } } when whole.HasWord("not") && whole.HasWord("yet") && Spoken.HasStem(whole, "depth"):
                    draft.Slots = draft.Slots with { Step = "thin" };
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.HighSteadiness, Pitch: null } } when IsHighA(whole):
                    draft.Slots = draft.Slots with { Pitch = "A" };
                    break;
                case { Kind: EntryKind.Note } when Spoken.HasStem(whole, "peep") && Peep(whole, ReadSlots.None) is { } crowing && !whole.Asked && !whole.Has(Cat.Cond) && !whole.Has(Cat.Other):
                    (draft.Kind, draft.Slots) = (EntryKind.Test, new ReadSlots { Test = TestKind.Peep, Step = crowing });
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Peep, Step: null or "clean" } } when Peep(whole, draft.Slots) is var step && step != draft.Slots.Step:
                    Unstep(draft, step);
                    break;
                case { Kind: EntryKind.Test, Slots.Test: TestKind.ClosingOrder } when IsAtOnce(whole):
                    draft.Slots = draft.Slots with { Step = "all at once" };
                    break;
                case { Kind: EntryKind.Finding, Slots.Kind: "closes-in-play" } when IsAtOnce(whole) && Closes(whole) && !Spoken.HasStem(whole, "play") && !whole.Asked:
                    Pressed(draft);
                    break;
            }
        }
    }

    private static void Unstep(Draft draft, string? step = null)
    {
        draft.Slots = draft.Slots with { Step = step };
        if (draft.Slots is { Step: null, Pitch: null })
        {
            draft.HasAside = true;
            draft.Doubts.RemoveAll(doubt => doubt.Slot is "step");
            draft.Doubts.Add(new Doubt("step", "no word of its scale was said, so its words are kept"));
        }
    }

    // “High A holds”: a note with a capital, and no article.
    private static bool IsHighA(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "high" or "top" && whole.Word(at + 1) is "a" && whole.Tokens[at + 1].IsCapital);

    private static void Pressed(Draft draft)
    {
        draft.Kind = EntryKind.Test;
        draft.Slots = new ReadSlots { Test = TestKind.ClosingOrder, Step = "all at once" };
        draft.Doubts.Clear();
        draft.Doubts.Add(new Doubt("kind", "taken for how it closes when it is pressed"));
    }

    // “Up six”, where it was the tuning note or the peep that was last heard.
    private static bool IsOfLast(Course course, Draft draft, Segment whole) => !whole.Has(Cat.Test) && course.Before.LastPitched?.TestKind is TestKind.TuningNote or TestKind.Peep
        && !course.Drafts.Exists(other => other.Head < draft.Head && other is { Kind: EntryKind.Test, Slots.Test: { } test } && TestScale.Of(test).TakesPitch);

    // “First comes the high, then the low joins”, “the low note only”.
    private static string? Octaves(Segment whole)
    {
        var all = Enumerable.Range(whole.First, whole.End - whole.First).ToList();
        var (high, low) = (all.FindIndex(at => IsHigh(whole.Word(at))), all.FindIndex(at => IsLow(whole.Word(at))));
        if (high >= 0 && low > high && Spoken.HasStem(whole, "join"))
        {
            return "high, then low joins";
        }

        var named = high >= 0 ? high : low;
        if (high >= 0 == low >= 0 || whole.Has(Cat.Not) || !(whole.HasWord("only") || whole.HasWord("alone")))
        {
            return null;
        }

        var at = all[named];
        return whole.Word(at + 1) is "octave" or "note" or "one" or "register" or "only" or "alone" || whole.Word(at - 1) is "only" ? high >= 0 ? "high only" : "low only" : null;
    }

    private static bool IsHigh(string word) => word is "high" or "higher" or "top" or "upper";

    private static bool IsLow(string word) => word is "low" or "lower" or "bottom";

    // “Peeps a B, and already crowing”; a note alone says nothing of how clean it is.
    private static string? Peep(Segment whole, ReadSlots slots)
    {
        if ((whole.HasWord("already") || whole.HasWord("alrdy")) && Spoken.HasStem(whole, "crow") && !whole.Has(Cat.Not))
        {
            return "already crowing";
        }

        // “Peep won’t go up”: nothing clean in it.
        if (slots is { Step: "clean", Pitch: null } && whole.HasWord("not") && !whole.Has(Cat.Good) && !Spoken.HasStem(whole, "clean", "clear", "rattl", "crow", "buzz", "bad"))
        {
            return null;
        }

        return slots is { Step: "clean" } && !whole.Has(Cat.Good) && !Spoken.HasStem(whole, "clean", "clear", "pure", "neat", "nice", "good", "tid", "single", "steady", "crow", "nothing", "one", "bell", "plain", "simple", "lovely", "sweet", "crisp", "no", "without", "cln") ? null : slots.Step;
    }

    private static bool IsAtOnce(Segment whole) => Enumerable.Range(whole.First, whole.End - whole.First).Any(at => whole.Word(at) is "all" && whole.Word(at + 1) is "at" && whole.Word(at + 2) is "once") && !whole.HasWord("first") && !whole.HasWord("last") && !whole.Has(Cat.Not);

    private static bool Closes(Segment whole) => Spoken.HasStem(whole, "close", "shut", "meet");
}
