namespace ReedClinic.Measurement.Sound;

/// <summary>How loud a clip is, and whether the recording was cut off at the top.</summary>
/// <remarks>
/// Samples are taken as fractions of full scale, −1 to +1. Decibels are relative to a full-scale <em>square</em> wave
/// (dB FS by the plain definition: 0 dB for an RMS of 1), so a full-scale sine reads −3.01 dB.
/// </remarks>
/// <param name="Rms">Root of the mean square, 0 to 1 of full scale.</param>
/// <param name="Peak">The largest distance from zero, 0 to 1 of full scale.</param>
/// <param name="ClippedSamples">How many samples stand in a run of three or more at full scale.</param>
public readonly record struct Level(double Rms, double Peak, int ClippedSamples)
{
    /// <summary>A sample at or beyond this fraction of full scale counts as cut off: the last step but one of 16 bits.</summary>
    public const double FullScale = 32766.0 / 32768.0;

    /// <summary>So many samples in a row at full scale make a clip: a clean sine may touch it once or twice.</summary>
    public const int ShortestClippedRun = 3;

    /// <summary>RMS in decibels relative to full scale; 0 at the most, −∞ for silence.</summary>
    public double RmsDecibels => 20 * Math.Log10(Rms);

    /// <summary>Peak in decibels relative to full scale; 0 at the most, −∞ for silence.</summary>
    public double PeakDecibels => 20 * Math.Log10(Peak);

    /// <summary>True when the recording was cut off at full scale, so that its partials can't be trusted.</summary>
    public bool IsClipped => ClippedSamples > 0;

    /// <summary>Reads the level of a clip.</summary>
    /// <param name="samples">Fractions of full scale, one channel; at least one.</param>
    /// <returns>RMS, peak and the number of clipped samples.</returns>
    /// <exception cref="ArgumentException">There is no sample, or one is not a finite number.</exception>
    public static Level Of(ReadOnlySpan<float> samples)
    {
        if (samples.IsEmpty)
        {
            throw new ArgumentException("A level needs at least one sample.", nameof(samples));
        }

        double sumOfSquares = 0, peak = 0;
        int clipped = 0, run = 0;
        foreach (var sample in samples)
        {
            if (!float.IsFinite(sample))
            {
                throw new ArgumentException("Every sample must be a finite number.", nameof(samples));
            }

            double size = Math.Abs(sample);
            sumOfSquares += size * size;
            peak = Math.Max(peak, size);
            run = size >= FullScale ? run + 1 : 0;
            clipped += run == ShortestClippedRun ? ShortestClippedRun : run > ShortestClippedRun ? 1 : 0;
        }

        return new Level(Math.Sqrt(sumOfSquares / samples.Length), peak, clipped);
    }
}
