using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>
/// “A is a touch flat”, “high A sags, down 20 cents”: a note that is not called the crow’s or the peep’s, and stands far from both, is none of theirs.
/// What crows of oboes and their kin are near, and how far they stray, is common practice.
/// </summary>
internal static class NoCrow
{
    private const int Reach = 3;

    /// <summary>Said of a crow that is named and stands where hardly any does.</summary>
    internal static readonly Doubt Far = new("pitch", "far from where a crow stands: is that its note?");

    private static readonly Doubt Whose = new("test", "no crow stands there, and which test it was wasn’t said, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots.Test: { } test } && TestScale.Of(test).TakesPitch && !IsNamed(course, draft)).ToList())
        {
            Settle(course, draft);
        }

        AskFar(course);
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Test: TestKind.LowResponse or TestKind.HighSteadiness, Pitch: not null, Step: not null } } && Spoken.Of(course, draft).All(IsOnlyLeaning)))
        {
            Spoken.Unscale(draft, draft.Slots, "flat or sharp is no word of that scale, so its words are kept");
        }
    }

    /// <summary>Whether a bare pitch may be the crow’s or the peep’s that was last heard.</summary>
    internal static bool MayBe(string note, Before before) => Distance(note, before) <= Reach;

    /// <summary>Whether an A with something said of it is the tuning note: no crow was heard there.</summary>
    internal static bool IsTuning(Before before) => Distance("A", before) > 1;

    // “Crow is a G”: it may be so, and is asked.
    private static void AskFar(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Pitch: { } note } } && !MayBe(note, course.Before) && !(draft.Slots.Between is { } upper && MayBe(upper, course.Before))))
        {
            draft.Doubts.Add(Far);
        }
    }

    private static void Settle(Course course, Draft draft)
    {
        var segment = course.Segments[draft.Head];
        var at = course.Drafts.IndexOf(draft);
        var note = draft.Slots.Pitch ?? Letter(segment);
        if ((TestReader.NoteWithHeight(segment) ?? HighLetter(segment)) is { } register && register is TestKind.LowResponse or TestKind.HighSteadiness)
        {
            Spoken.Unscale(draft, new ReadSlots { Test = register, Pitch = note ?? "A" }, "how far it is off is no word of that scale, so its words are kept");
        }
        else if (draft.Slots is { Change: not null, Pitch: null } && at > 0 && course.Drafts[at - 1] is { Kind: EntryKind.Test, Slots.Test: TestKind.LowResponse or TestKind.HighSteadiness } heard && heard.Sentence == draft.Sentence)
        {
            Spoken.Join(course, heard, draft);
        }
        else if (note is null)
        {
            return;
        }
        else if (draft.Slots is { Test: TestKind.TuningNote } && note is "A" && (draft.Slots.Step ?? draft.Slots.Cents?.ToString(System.Globalization.CultureInfo.InvariantCulture)) is not null)
        {
            draft.Slots = draft.Slots with { Lean = null, Pitch = draft.Slots.Pitch ?? (draft.Slots.Cents is null ? note : null) };
        }
        else if (draft.Slots is { Step: null, Cents: null } && !MayBe(note, course.Before) && at > 0 && course.Drafts[at - 1] is { Kind: EntryKind.Test, Slots.Test: TestKind.LowResponse or TestKind.HighSteadiness } range && range.Sentence == draft.Sentence)
        {
            Spoken.Unscale(draft, new ReadSlots { Test = range.Slots.Test, Pitch = note }, "which word of its scale was meant isn’t clear, so its words are kept");
        }
        else if (note is "A" or "Ab" or "A#" && Leaning(segment, draft.Slots) is { } lean && IsTuning(course.Before))
        {
            Tune(draft, segment, lean);
        }
        else if (!MayBe(note, course.Before))
        {
            Spoken.Unmake(draft, Whose);
        }
        else if (draft.Slots is { Test: TestKind.TuningNote } && note is not "A" && course.Before.LastPitched?.TestKind is not TestKind.TuningNote)
        {
            draft.Slots = new ReadSlots { Test = TestKind.Crow, Pitch = note, Lean = draft.Slots.Lean, Cents = draft.Slots.Cents };
            draft.Doubts.Add(new Doubt("test", "taken for the crow’s"));
        }
    }

    // Flat and sharp of the tuning note are words of its scale; with a number they are cents.
    private static void Tune(Draft draft, Segment segment, string lean)
    {
        var cents = draft.Slots.Cents;
        var slight = segment.Has(Cat.Degree, "slight") || draft.Slots.Step is { } step && step.StartsWith("a little", StringComparison.Ordinal);
        draft.Slots = new ReadSlots { Test = TestKind.TuningNote, Pitch = draft.Slots.Pitch is null && cents is not null ? null : "A", Cents = cents, Change = draft.Slots.Change, Step = cents is null && draft.Slots.Change is null ? slight ? $"a little {lean}" : lean : null };
    }

    private static string? Leaning(Segment segment, ReadSlots slots) => slots.Cents is { } cents ? cents < 0 ? "flat" : "sharp"
        : slots.Change is { } change ? change < 0 ? "flat" : "sharp"
        : slots.Lean ?? (segment.HasWord("flat") || segment.HasWord("flattish") ? "flat" : segment.HasWord("sharp") || segment.HasWord("sharpish") ? "sharp" : null);

    // “A is sharp now”, “a minus 10”: a letter with something said of it is no article.
    private static string? Letter(Segment segment) => Enumerable.Range(segment.First, segment.End - segment.First)
        .Any(at => segment.Word(at) is "a" && segment.Word(at - 1) is "" or "the" or "and" or "tuning" && (segment.Word(at + 1) is "is" or "'s" or "was" or "sits" or "minus" or "plus" or "flat" or "sharp" or "a" || at + 1 < segment.End && segment.Tokens[at + 1].Kind is TokenKind.Number && segment.Covered(at + 2, Cat.Lean) | segment.Covered(at + 2, Cat.Cent) | segment.End == at + 2)) ? "A" : null;

    // “High A down 20”: the letter alone looks like an article.
    private static TestKind? HighLetter(Segment segment)
    {
        var letter = Enumerable.Range(segment.First, segment.End - segment.First).FirstOrDefault(at => segment.Word(at) is "a" && segment.Tokens[at].IsCapital, -1);
        return letter < 0 ? null : segment.Word(letter - 1) switch { "high" or "top" => TestKind.HighSteadiness, "low" or "bottom" => TestKind.LowResponse, _ => null };
    }

    private static bool IsNamed(Course course, Draft draft) => Spoken.Of(course, draft).Any(segment => segment.Items.Any(item => item.Cat is Cat.Test && item.Value is nameof(TestKind.Crow) or nameof(TestKind.Peep) or nameof(TestKind.TuningNote)))
        || course.Drafts.Exists(other => other != draft && other.Head < draft.Head && other is { Kind: EntryKind.Test, Slots.Test: { } test } && test == draft.Slots.Test && IsNamed(course, other));

    // “Low D flat”: nothing of how it speaks.
    private static bool IsOnlyLeaning(Segment segment) => Leaning(segment, ReadSlots.None) is not null && Enumerable.Range(segment.First, segment.End - segment.First).All(at => segment.Tokens[at].Kind is TokenKind.Note or TokenKind.Number or TokenKind.Break
        || segment.Word(at) is "low" or "high" or "top" or "bottom" or "the" or "a" or "is" or "'s" or "flat" or "sharp" or "bit" or "touch" or "little" or "still" or "now" or "very" or "too" or "cents" or "by" or "and" || segment.Word(at).Length == 1 || segment.Items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Lean or Cat.Degree or Cat.Filler or Cat.Cent));

    private static int Distance(string note, Before before)
    {
        var heard = before.LastPitched is { TestKind: not TestKind.TuningNote, Pitch.PitchClass: var last } ? last : new PitchClass(0);
        return Math.Min(Steps(note, 0), Steps(note, heard.Value));
    }

    private static int Steps(string note, int from) => Math.Abs((PitchReader.Semitone(note) - from + 18) % 12 - 6);
}
