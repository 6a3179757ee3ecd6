namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>A clip as it is analysed: one channel at 48 kHz, with nothing of what else was in the file.</summary>
/// <param name="Samples">Fractions of full scale.</param>
/// <param name="Form">What it was read from.</param>
/// <param name="OriginalRate">Samples a second in the file.</param>
/// <param name="OriginalChannels">Channels in the file.</param>
/// <param name="IsCutShort">True where the file ends before it says it does: what was there was read.</param>
public sealed record SoundClip(ReadOnlyMemory<float> Samples, SoundForm Form, int OriginalRate, int OriginalChannels, bool IsCutShort)
{
    /// <summary>Samples a second.</summary>
    public const int Rate = 48_000;

    /// <summary>How long it lasts.</summary>
    public double Seconds => (double)Samples.Length / Rate;
}
