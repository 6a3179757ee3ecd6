using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Recordings.Readings;

/// <summary>One of the three octaves in which a crow sounds.</summary>
/// <param name="Octave">4, 5 or 6, in scientific counting; the low, the middle and the high one.</param>
/// <param name="Sounds">Whether it is heard.</param>
/// <param name="Level">Decibels under the strongest of the three, 0 at the most; or why there is no number.</param>
/// <param name="Entry">Seconds from the clip’s beginning to half of its size; or why there is no number.</param>
public sealed record OctaveFigure(int Octave, bool Sounds, Figure Level, Figure Entry)
{
    /// <summary>
    /// What sounds sooner than so many seconds after a clip’s beginning had begun before it: the bell under which an octave is measured is as long.
    /// </summary>
    public const double Earliest = 0.022;

    /// <summary>When it came, in seconds from the clip’s beginning; null where it isn’t heard, or sounded from the beginning, or can’t be told.</summary>
    public double? Came => Sounds && Entry.Value is { } entry and >= Earliest ? entry : null;
}

/// <summary>Every number that was read from a clip. What each means, and how well it is read, stands in docs/measurement/sound.md.</summary>
/// <param name="Seconds">How long the clip is.</param>
/// <param name="IsCutShort">Whether the file breaks off: what was there was read.</param>
/// <param name="Pitch">The median pitch, in hertz.</param>
/// <param name="Unsteadiness">Standard deviation of the pitch about its own straight line, in cents.</param>
/// <param name="Drift">The slope of that line, in cents a second; plus is rising.</param>
/// <param name="Octaves">The three octaves, the low one first; none where no tone is heard.</param>
/// <param name="BreathOnset">Seconds from the clip’s beginning to the beginning of the breath.</param>
/// <param name="TimeToSpeak">Seconds from there to the first octave.</param>
/// <param name="SpeaksAt">Decibels over the clip’s own quiet at that moment.</param>
/// <param name="HarmonicToNoise">Power of the partials over the rest, in decibels.</param>
/// <param name="Roughness">How much the sizes of neighbouring periods differ, in per cent.</param>
public sealed record ReadingFigures(
    double Seconds,
    bool IsCutShort,
    Figure Pitch,
    Figure Unsteadiness,
    Figure Drift,
    IReadOnlyList<OctaveFigure> Octaves,
    Figure BreathOnset,
    Figure TimeToSpeak,
    Figure SpeaksAt,
    Figure HarmonicToNoise,
    Figure Roughness)
{
    /// <summary>The octaves in the order in which they came; null where of one that sounds that can’t be told, and where none does.</summary>
    public IReadOnlyList<OctaveFigure>? Order => Octaves.Any(one => one.Sounds) && Octaves.All(one => !one.Sounds || one.Came is not null)
        ? [.. Octaves.Where(one => one.Sounds).OrderBy(one => one.Came).ThenByDescending(one => one.Octave)]
        : null;

    /// <summary>Whether several octaves came so soon after each other that they count as all at once; none is the first one then.</summary>
    public bool CameTogether => Order is { Count: > 1 } order && order[^1].Came - order[0].Came <= MeasuredTest.JoinsAfterSeconds;

    /// <summary>The moment from which its seconds are counted, from the clip’s beginning: the breath, else the first octave, else the beginning itself.</summary>
    public double Zero => BreathOnset.Value ?? Order?[0].Came ?? 0;

    /// <summary>How far the pitch lies from a target, octaves folded away, in cents from −600 to +600; plus is sharper.</summary>
    /// <param name="target">What it is compared with.</param>
    public Figure From(CrowTarget target)
    {
        if (Pitch is not { Value: { } hertz, PlusMinus: { } sure })
        {
            return Pitch;
        }

        var cents = (EqualTemperament.MidiOf(new Hertz(hertz), target.Tuning) - target.PitchClass.Value) * 100;
        return Figure.Of(new Cents(cents).FoldedToOneOctave.Value, InCents(hertz, sure));
    }

    /// <summary>The pitch as a musician would say it: the nearest note, its octave, and whole cents from it.</summary>
    /// <param name="tuning">What is tuned to.</param>
    /// <returns>The pitch; null where none was read.</returns>
    public SaidPitch? Said(Tuning tuning)
    {
        if (Pitch.Value is not { } hertz)
        {
            return null;
        }

        var midi = EqualTemperament.MidiOf(new Hertz(hertz), tuning);
        var nearest = (int)Math.Round(midi);
        var (note, octave, cents) = (PitchClass.OfMidi(nearest), (int)Math.Floor(nearest / 12.0) - 1, (int)Math.Round((midi - nearest) * 100));
        var text = FormattableString.Invariant($"{note.Name}{octave}{(cents == 0 ? "" : FormattableString.Invariant($" {cents:+0;-0}"))}");
        return new SaidPitch(text, note, new Cents(cents), octave, null, tuning.A4);
    }

    /// <summary>The uncertainty of a pitch in cents.</summary>
    internal static double InCents(double hertz, double plusMinusHertz) => 1200 / Math.Log(2) * plusMinusHertz / hertz;
}
