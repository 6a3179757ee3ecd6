namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“The E flat is sharp”, “middle D cracks”: a note that is played, and named in passing, is neither a crow nor a peep; and what is gone on it was no bump that was found.</summary>
internal static class PlayedNotes
{
    private static readonly HashSet<string> Where = ["middle", "half-hole", "halfhole", "hole", "forked", "fork", "hand"];

    private static readonly string[] Playing = ["crack", "bump", "speak", "split", "fluff", "burst", "chok", "stick", "late", "hesit", "wobbl", "wander", "gurgl", "brok", "break", "thud", "bark", "spit", "sag", "stuff"];

    private static readonly HashSet<string> Being = ["is", "'s", "was", "sounds", "sits", "plays", "runs", "comes", "feels", "goes"];

    private static readonly HashSet<string> Leading = ["the", "my", "your", "that", "this", "and", "but", "so", "now", "still", "also", "then", "octave", ""];

    private static readonly Doubt Whose = new("test", "a note that was played, and no crow: which test it was wasn’t said, so it is kept as a note");

    private static readonly Doubt Which = new("kind", "of a note that was played, and of no part of the reed, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var whole = course.Segments[draft.First].With(course.Segments[draft.Last]);
            switch (draft)
            {
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow or TestKind.Peep, Pitch: { } note } } when !IsCalled(whole) && (IsPlayed(whole) || IsSubject(course, whole, note) || IsBeside(course, draft, whole, note)):
                    Spoken.Unmake(draft, Whose);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "bumps", Character: FindingCharacter.Fault } } when PitchReader.NotesIn(whole).Count > 0 && PlaceReader.Read(whole).All(mention => !mention.HasPlace):
                case { Kind: EntryKind.FindingEnded, Slots.Kind: "bumps" } when PitchReader.NotesIn(whole).Count > 0:
                    Spoken.Unmake(draft, Which);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.LowResponse or TestKind.HighSteadiness, Step: not null } } when IsNoiseGone(whole):
                    Spoken.Unscale(draft, draft.Slots, "what is gone there is no word of that scale, so its words are kept");
                    break;
            }
        }
    }

    private static bool IsCalled(Segment whole) => whole.Items.Any(item => item.Cat is Cat.Test && item.Value is nameof(TestKind.Crow) or nameof(TestKind.Peep)) || Spoken.HasStem(whole, "crow", "peep");

    // “Half-hole D”, “the D cracks”.
    private static bool IsPlayed(Segment whole) => Spoken.HasStem(whole, Playing) || PitchReader.NotesIn(whole).Any(note => Where.Contains(whole.Word(note.First - 1)));

    // “E flat is flat a bit”: told of a note by its name, far from where the reed was last heard to crow.
    private static bool IsSubject(Course course, Segment whole, string note) => IsLeaning(whole) && IsFar(course, note)
        && PitchReader.NotesIn(whole) is [var named, ..] && Enumerable.Range(whole.First, named.First - whole.First).All(at => Leading.Contains(whole.Word(at)) || whole.Covered(at, Cat.Filler))
        && (Being.Contains(whole.Word(named.End)) || whole.Word(named.First - 1) is "the" or "my" or "your");

    private static bool IsLeaning(Segment whole) => Spoken.HasStem(whole, "flat", "sharp") || whole.Has(Cat.Lean);

    private static bool IsFar(Course course, string note)
    {
        var last = course.Before.LastPitched is { TestKind: not TestKind.TuningNote, Pitch.PitchClass: var heard } ? heard.Value : 0;
        return Math.Min(Steps(note, 0), Steps(note, last)) > 1;
    }

    private static int Steps(string note, int from) => Math.Abs((PitchReader.Semitone(note) - from + 18) % 12 - 6);

    // “Crow C, E flat a bit flat”: where the crow stands was just said, or no crow was heard and hardly any stands there.
    private static bool IsBeside(Course course, Draft draft, Segment whole, string note) => IsLeaning(whole) && draft.Slots is { Lean: not null, Cents: null } && PitchReader.NotesIn(whole) is [var named, ..]
        && Enumerable.Range(whole.First, named.First - whole.First).All(at => Leading.Contains(whole.Word(at)) || whole.Covered(at, Cat.Filler))
        && (course.Drafts.Exists(other => other.Head < draft.Head && other is { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Pitch: { } crow } } && Steps(crow, PitchReader.Semitone(note)) > 1)
            || course.Before.LastPitched is null && !course.Drafts.Exists(other => other.Head < draft.Head && other.Slots.Test is TestKind.Crow or TestKind.Peep or TestKind.TuningNote) && Steps(note, 0) > 2);

    // “The buzz is gone on the low D”: nothing of how it speaks.
    private static bool IsNoiseGone(Segment whole) => (whole.HasWord("gone") || whole.HasWord("vanished") || whole.HasWord("disappeared")) && Spoken.HasStem(whole, "bump", "buzz", "rattl", "crack", "squeak", "thud", "wobbl", "gurgl", "whistl", "fuzz", "burr")
        && !Spoken.HasStem(whole, "speak", "hold", "late", "start", "drop", "wander", "steady");
}
