namespace ReedClinic.Measurement.Sound.Tracking;

/// <summary>The pitch of a clip from moment to moment, every <see cref="Hop"/> samples.</summary>
/// <param name="Frames">One after the other, without gaps.</param>
public sealed record PitchTrack(IReadOnlyList<PitchFrame> Frames)
{
    /// <summary>Samples from one frame to the next: 5.3 ms.</summary>
    public const int Hop = 256;

    /// <summary>The lowest pitch that is looked for: below a cor anglais’ lowest note.</summary>
    public const double LowestHertz = 138;

    /// <summary>The highest pitch that is looked for: above an oboe’s highest note.</summary>
    public const double HighestHertz = 2300;
}
