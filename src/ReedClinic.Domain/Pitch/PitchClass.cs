using System.Globalization;

namespace ReedClinic.Domain.Pitch;

/// <summary>A note without its octave: 0 is C, 1 is C♯, up to 11 which is B.</summary>
public readonly record struct PitchClass
{
    private static readonly string[] Names = ["C", "C♯", "D", "E♭", "E", "F", "F♯", "G", "A♭", "A", "B♭", "B"];

    /// <summary>Makes a pitch class.</summary>
    /// <param name="value">Semitones above C, from 0 to 11.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not from 0 to 11.</exception>
    public PitchClass(int value)
    {
        if (value is < 0 or > 11)
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "A pitch class runs from 0 (C) to 11 (B).");
        }

        Value = value;
    }

    /// <summary>C, the usual target of a crow (common practice).</summary>
    public static PitchClass C => default;

    /// <summary>Semitones above C, from 0 to 11.</summary>
    public int Value { get; }

    /// <summary>The usual name, such as “B♭”; one of the two spellings of a black key.</summary>
    public string Name => Names[Value];

    /// <summary>The name with “a” or “an” before it, and the octave when there is one: “an F♯5”.</summary>
    /// <param name="octave">The octave in scientific counting (A4 is the tuning A), if known.</param>
    public string WithArticle(int? octave = null) =>
        string.Create(CultureInfo.InvariantCulture, $"{(Name[0] is 'A' or 'E' or 'F' ? "an" : "a")} {Name}{octave}");

    /// <summary>The pitch class of a MIDI note number.</summary>
    /// <param name="midi">The note number.</param>
    public static PitchClass OfMidi(int midi) => new(((midi % 12) + 12) % 12);
}
