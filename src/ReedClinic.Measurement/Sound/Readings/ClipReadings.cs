using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Measurement.Sound.Readings;

/// <summary>What a clip sounds like, as a guess.</summary>
public enum ClipKind
{
    /// <summary>The reed alone, octaves sounding together.</summary>
    Crow,

    /// <summary>The reed alone, one high note.</summary>
    Peep,

    /// <summary>A note that is held.</summary>
    LongTone,

    /// <summary>Notes that are begun and left.</summary>
    Attack,
}

/// <summary>A guess, to be corrected by whoever knows.</summary>
/// <param name="Kind">What it seems to be.</param>
/// <param name="Share">How much of the weight it has among all kinds, 0 to 1. No recorded crows were at hand to check it against.</param>
public readonly record struct KindGuess(ClipKind Kind, double Share);

/// <summary>A partial near C4, C5 or C6.</summary>
/// <param name="Octave">4, 5 or 6.</param>
/// <param name="IsPresent">Whether it sounds.</param>
/// <param name="Hertz">Where it was looked for.</param>
/// <param name="Level">Decibels relative to the strongest of the three, or why it has none.</param>
/// <param name="Entry">Seconds from the clip’s beginning to half of its size, or why it has none.</param>
public sealed record OctavePartial(int Octave, bool IsPresent, double Hertz, Reading Level, Reading Entry)
{
    /// <summary>Its power when it sounds, in full scale squared.</summary>
    internal double Power { get; init; }
}

/// <summary>All that is read from a clip.</summary>
/// <param name="Track">The pitch from moment to moment.</param>
/// <param name="Pitch">The median pitch, in hertz.</param>
/// <param name="FromC">Cents from the pitch to the nearest C, A4 being 440 Hz; plus is sharp.</param>
/// <param name="Unsteadiness">Standard deviation of the pitch about its own line, in cents.</param>
/// <param name="Drift">Slope of that line, in cents a second.</param>
/// <param name="Partials">Those near C4, C5 and C6.</param>
/// <param name="BreathOnset">Seconds to the beginning of the breath.</param>
/// <param name="TimeToSpeak">Seconds from there to the first tone.</param>
/// <param name="SpeaksAt">Level of the sound when the tone begins, in decibels over the clip’s own quiet.</param>
/// <param name="HarmonicToNoise">Power of the partials over the rest, in decibels.</param>
/// <param name="Roughness">How much the sizes of neighbouring periods differ, in per cent.</param>
/// <param name="Kind">What the clip seems to be; nothing where no tone is heard.</param>
public sealed record ClipReadings(
    PitchTrack Track,
    Reading Pitch,
    Reading FromC,
    Reading Unsteadiness,
    Reading Drift,
    IReadOnlyList<OctavePartial> Partials,
    Reading BreathOnset,
    Reading TimeToSpeak,
    Reading SpeaksAt,
    Reading HarmonicToNoise,
    Reading Roughness,
    KindGuess? Kind);
