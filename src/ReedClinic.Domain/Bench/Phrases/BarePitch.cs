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

        if (entries is [{ Kind: EntryKind.Test, Slots: { Pitch: { } heard } slots }] && PitchReader.Semitone(heard) == pitch.PitchClass.Value && (double)(slots.Cents ?? 0) == pitch.Cents.Value
            && slots.Octave == pitch.Octave && (slots.Between is null) == (pitch.Between is null) && (slots.Lean is null) == (pitch.Lean is null))
        {
            return null;
        }

        var span = new TextSpan(tokens[0].Start, tokens[^1].End - tokens[0].Start);
        return new ReadEntry(span, EntryKind.Test, Slots(pitch, Test(context, entries)), []) { Said = text.Substring(span.Start, span.Length) };
    }

    private static TestKind Test(PhraseContext context, IReadOnlyList<ReadEntry> entries) => entries is [{ Kind: EntryKind.Test, Slots.Test: { } said }] && TestScale.Of(said).TakesPitch
        ? said
        : new Before(context.Log).LastPitched?.TestKind ?? TestKind.Crow;

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
