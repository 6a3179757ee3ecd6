using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“c-15” or “bb +5” as it is typed after a stroke: the strict reader of pitches knows it better than any sentence does.</summary>
internal static class BarePitch
{
    private const int MostTokens = 8;

    internal static ReadEntry? Read(string text, IReadOnlyList<Token> tokens, PhraseContext context, IReadOnlyList<ReadEntry> entries)
    {
        if (tokens.Count > MostTokens || PlainText.Tidy(text) is not { Length: <= SaidPitch.LongestText } line
            || SaidPitch.Read(line, context.Tuning) is not Outcome<SaidPitch>.Done(var pitch))
        {
            return null;
        }

        if (entries is [{ Kind: EntryKind.Test, Slots: { Pitch: { } heard } said }] && PitchReader.Semitone(heard) == pitch.PitchClass.Value && (double)(said.Cents ?? 0) == pitch.Cents.Value
            && said.Octave == pitch.Octave && (said.Between is null) == (pitch.Between is null) && (said.Lean is null) == (pitch.Lean is null))
        {
            return null;
        }

        if (IsNoName(tokens) || IsOfAnother(pitch, context, tokens))
        {
            return null;
        }

        var span = new TextSpan(tokens[0].Start, tokens[^1].End - tokens[0].Start);
        var test = Test(context, entries);
        return new ReadEntry(span, EntryKind.Test, Slots(pitch, test), test is TestKind.Crow && !NoCrow.MayBe(Name(pitch.PitchClass), new Before(context.Log)) ? [NoCrow.Far] : []) { Said = text.Substring(span.Start, span.Length) };
    }

    private static TestKind Test(PhraseContext context, IReadOnlyList<ReadEntry> entries) => entries is [{ Kind: EntryKind.Test, Slots.Test: { } said }] && TestScale.Of(said).TakesPitch
        ? said
        : new Before(context.Log).LastPitched?.TestKind ?? TestKind.Crow;

    // “C flat”: a C that is flat, and no B.
    private static bool IsNoName(IReadOnlyList<Token> tokens) => tokens.Count == 2 && (tokens[0].Text, tokens[1].Text) is ("c" or "f", "flat") or ("e" or "b", "sharp");

    // “G”, “A flat”, “A −10”: no crow and no peep stands there, unless the last one did.
    private static bool IsOfAnother(SaidPitch pitch, PhraseContext context, IReadOnlyList<Token> tokens)
    {
        var before = new Before(context.Log);
        return before.LastPitched?.TestKind is not TestKind.TuningNote && !tokens.Any(token => token.Text is "crow" or "peep" or "tuning")
            && (!NoCrow.MayBe(Name(pitch.PitchClass), before) || tokens[0].Is("a") && tokens.Count > 1 && NoCrow.IsTuning(before));
    }

    private static ReadSlots Slots(SaidPitch pitch, TestKind test) => new()
    {
        Test = test,
        Pitch = Name(pitch.PitchClass),
        Cents = pitch.Cents.Value == 0 ? null : (decimal)pitch.Cents.Value,
        Octave = pitch.Octave,
        Between = pitch.Between is { } upper ? Name(upper) : null,
        Lean = pitch.Lean switch
        {
            PitchLean.Flat => "flat",
            PitchLean.Sharp => "sharp",
            _ => null,
        },
    };

    private static string Name(PitchClass note) => note.Name.Replace('♭', 'b').Replace('♯', '#');
}
