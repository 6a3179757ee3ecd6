namespace ReedClinic.Measurement.Sound.Tracking;

/// <summary>
/// Plain YIN reads a note whose second partial dominates an octave high. Half the pitch is taken where partials of the lower octave that the
/// higher one lacks, the odd ones, rise above the noise between them; otherwise never.
/// </summary>
internal sealed class OctaveCheck
{
    private const int Length = 4096;
    private const double Line = 48_000.0 / Length;
    private const int Odd = 4;
    private const double AboveNoise = 12; // 10.8 dB
    private const double BelowStrongest = 3e-4; // −35 dB

    private readonly Fft _fft = new(Length);
    private readonly float[] _window = [.. Enumerable.Range(0, Length).Select(i => (float)(0.5 - (0.5 * Math.Cos(2 * Math.PI * (i + 0.5) / Length))))];
    private readonly float[] _samples = new float[Length];

    /// <summary>Whether the pitch is really an octave lower.</summary>
    /// <param name="clip">The clip.</param>
    /// <param name="centre">The sample it is about.</param>
    /// <param name="hertz">The pitch that YIN read.</param>
    public bool IsLower(ReadOnlySpan<float> clip, int centre, double hertz)
    {
        var half = hertz / 2;
        if (half < PitchTrack.LowestHertz)
        {
            return false;
        }

        var start = Math.Clamp(centre - (Length / 2), 0, Math.Max(0, clip.Length - Length));
        var there = clip.Slice(start, Math.Min(Length, clip.Length - start));
        Array.Clear(_samples);
        System.Numerics.Tensors.TensorPrimitives.Multiply(there, _window.AsSpan(0, there.Length), _samples);
        _fft.Transform(_samples);
        double strongest = 0;
        for (var partial = 1; partial <= 4; partial++)
        {
            strongest = Math.Max(strongest, Peak(partial * hertz));
        }

        var risen = 0;
        for (var odd = 0; odd < Odd; odd++)
        {
            var at = ((2 * odd) + 1) * half;
            if (at > 12_000)
            {
                break;
            }

            var noise = Math.Max(Between(at - (half / 2)), Between(at + (half / 2)));
            risen += Peak(at) > AboveNoise * noise && Peak(at) > BelowStrongest * strongest ? 1 + (odd == 0 ? 1 : 0) : 0;
        }

        return risen >= 2;
    }

    private double Peak(double hertz)
    {
        var line = (int)Math.Round(hertz / Line);
        double most = 0;
        for (var at = Math.Max(0, line - 2); at <= Math.Min(Length / 2, line + 2); at++)
        {
            most = Math.Max(most, _fft.PowerOf(at));
        }

        return most;
    }

    private double Between(double hertz)
    {
        var line = (int)Math.Round(hertz / Line);
        double sum = 0;
        for (var at = Math.Max(0, line - 2); at <= Math.Min(Length / 2, line + 2); at++)
        {
            sum += _fft.PowerOf(at);
        }

        return (sum / 5) + 1e-12;
    }
}
