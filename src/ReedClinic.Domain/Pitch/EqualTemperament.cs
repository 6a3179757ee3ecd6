namespace ReedClinic.Domain.Pitch;

/// <summary>
/// Twelve equal semitones to the octave. Notes are counted as MIDI note numbers: A4 is 69, middle C (C4) is 60,
/// and a fraction of a number is that fraction of a semitone.
/// </summary>
public static class EqualTemperament
{
    /// <summary>The MIDI note number of A4.</summary>
    public const int MidiOfA4 = 69;

    /// <summary>The frequency of a note.</summary>
    /// <param name="midi">The MIDI note number; fractions are allowed.</param>
    /// <param name="tuning">What is tuned to.</param>
    public static Hertz FrequencyOf(double midi, Tuning tuning) =>
        new(tuning.A4.Value * Math.Pow(2, (midi - MidiOfA4) / 12));

    /// <summary>The MIDI note number of a frequency, with the fraction of a semitone.</summary>
    /// <param name="frequency">The frequency.</param>
    /// <param name="tuning">What is tuned to.</param>
    public static double MidiOf(Hertz frequency, Tuning tuning) =>
        MidiOfA4 + 12 * Math.Log2(frequency.Value / tuning.A4.Value);

    /// <summary>How far it is from one frequency to another; plus when the second is sharper.</summary>
    /// <param name="from">The frequency that is measured from.</param>
    /// <param name="to">The frequency that is measured.</param>
    public static Cents Between(Hertz from, Hertz to) => new(1200 * Math.Log2(to.Value / from.Value));
}
