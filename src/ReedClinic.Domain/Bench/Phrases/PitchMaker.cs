using System.Globalization;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Makes a said pitch; “down 15 cents” is reckoned from the test it follows.</summary>
internal static class PitchMaker
{
    // A crow may be said so far from a note; beyond that the number is another one’s.
    private const int FarthestCents = 300;

    internal static SaidPitch? Make(ReadEntry read, TestKind test, PhraseContext context)
    {
        var slots = read.Slots;
        var a4 = context.Tuning.A4;
        if (slots.Pitch is { } note)
        {
            var between = slots.Between is { } upper ? new PitchClass(PitchReader.Semitone(upper)) : (PitchClass?)null;
            var named = new PitchClass(PitchReader.Semitone(note));
            return Fits(slots.Cents) ? new SaidPitch(Text(slots), named, new Cents((double)(slots.Cents ?? 0)), slots.Octave, between, a4, between is null && slots.Cents is null ? LeanOf(slots) : null)
                : between is null && slots.Cents is >= -FarthestCents and <= FarthestCents ? Moved(Said(read), new SaidPitch(note, named, new Cents(0), slots.Octave, null, a4), (double)slots.Cents, a4) : null;
        }

        if (slots.Cents is { } off)
        {
            return FromTarget(read, test, off, a4);
        }

        var last = new Before(context.Log).Log.TestsSaid.LastOrDefault(fact => fact.Now.TestKind == test && fact.Now.Pitch is not null)?.Now.Pitch;
        if (last is null || last.Between is not null)
        {
            return null;
        }

        return slots.Change is { } change ? Moved(Said(read), last, (double)change, a4) : null;
    }

    // “20 cents flat” is from the note that the test is held against; a peep has none, so its words are kept.
    private static SaidPitch? FromTarget(ReadEntry read, TestKind test, decimal off, Hertz a4)
    {
        var note = test switch
        {
            TestKind.Crow => "C",
            TestKind.TuningNote => "A",
            _ => null,
        };
        if (note is null)
        {
            return null;
        }

        var target = new PitchClass(PitchReader.Semitone(note));
        return Fits(off)
            ? new SaidPitch(Text(read.Slots with { Pitch = note }), target, new Cents((double)off), read.Slots.Octave, null, a4)
            : Moved(Said(read), new SaidPitch(note, target, new Cents(0), null, null, a4), (double)off, a4);
    }

    private static PitchLean? LeanOf(ReadSlots slots) => slots.Lean switch
    {
        "flat" => PitchLean.Flat,
        "sharp" => PitchLean.Sharp,
        _ => null,
    };

    private static bool Fits(decimal? cents) => cents is null or (>= -99 and <= 99);

    private static SaidPitch Moved(string text, SaidPitch from, double change, Hertz a4)
    {
        var total = from.PitchClass.Value * 100 + from.Cents.Value + change;
        var semitone = (int)Math.Round(total / 100, MidpointRounding.ToZero);
        var octave = from.Octave is { } said ? said + (int)Math.Floor(semitone / 12.0) : (int?)null;
        return new SaidPitch(text, PitchClass.OfMidi(semitone), new Cents(Math.Round(total - semitone * 100, 3)), octave, null, a4);
    }

    private static string Text(ReadSlots slots) => slots.Between is { } upper ? $"between {slots.Pitch} and {upper}"
        : slots.Pitch + (slots.Octave is { } octave ? octave.ToString(CultureInfo.InvariantCulture) : "")
            + (slots.Cents is { } cents ? string.Create(CultureInfo.InvariantCulture, $" {cents:+0.##;-0.##;+0}") : slots.Lean is { } lean ? ", " + lean : "");

    private static string Said(ReadEntry read) => read.Said.Trim() is { Length: <= SaidPitch.LongestText } said ? said : read.Said.Trim()[..SaidPitch.LongestText];
}
