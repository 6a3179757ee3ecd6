using System.Numerics.Tensors;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Changes the rate of samples by a sinc under a Kaiser window: pass band to 91 % of the lower Nyquist frequency, stop band below −100 dB.</summary>
/// <remarks>J. O. Smith, "Digital Audio Resampling", and J. F. Kaiser's window (1974), both from memory. Linear phase, so no time is shifted.</remarks>
public static class Resampler
{
    private const int Wings = 36;
    private const int MostPhases = 1024;
    private const double Beta = 10;

    /// <summary>Gives the same sound at another rate.</summary>
    /// <param name="samples">One channel.</param>
    /// <param name="from">Its samples a second.</param>
    /// <param name="to">Samples a second that are wanted.</param>
    public static ReadOnlyMemory<float> To(ReadOnlyMemory<float> samples, int from, int to)
    {
        if (from == to || samples.IsEmpty)
        {
            return samples;
        }

        var widening = Math.Max(1, (double)from / to);
        var reach = (int)Math.Ceiling(Wings * widening);
        var phases = Math.Min(MostPhases, to / Gcd(from, to));
        var table = Table(phases, reach, widening);
        var padded = new float[samples.Length + (2 * reach) + 2];
        samples.Span.CopyTo(padded.AsSpan(reach));
        var made = new float[(int)((long)samples.Length * to / from)];
        Fill(made, padded, table, phases, reach, from, to);
        return made;
    }

    private static void Fill(float[] made, float[] padded, float[] table, int phases, int reach, int from, int to)
    {
        var taps = 2 * reach;
        var isExact = phases == to / Gcd(from, to);
        for (var n = 0; n < made.Length; n++)
        {
            var place = (long)n * from;
            var whole = (int)(place / to);
            var rest = place % to * (double)phases / to;
            var phase = isExact ? (int)Math.Round(rest) : (int)rest;
            var window = padded.AsSpan(whole + 1, taps);
            var value = TensorPrimitives.Dot(window, table.AsSpan(phase * taps, taps));
            if (!isExact)
            {
                var next = TensorPrimitives.Dot(window, table.AsSpan((phase + 1) * taps, taps));
                value += (float)(rest - phase) * (next - value);
            }

            made[n] = value;
        }
    }

    /// <summary>One row of weights for each fraction of a sample, and one more to lean towards; each row adds up to one.</summary>
    private static float[] Table(int phases, int reach, double widening)
    {
        var taps = 2 * reach;
        var table = new float[(phases + 1) * taps];
        var cut = 0.953 / widening;
        var atTop = Bessel(Beta);
        for (var phase = 0; phase <= phases; phase++)
        {
            var row = table.AsSpan(phase * taps, taps);
            double sum = 0;
            for (var tap = 0; tap < taps; tap++)
            {
                var x = tap + 1 - reach - ((double)phase / phases);
                var edge = x / reach;
                var window = Math.Abs(edge) >= 1 ? 0 : Bessel(Beta * Math.Sqrt(1 - (edge * edge))) / atTop;
                var weight = (Math.Abs(x) < 1e-9 ? cut : Math.Sin(Math.PI * cut * x) / (Math.PI * x)) * window;
                row[tap] = (float)weight;
                sum += weight;
            }

            TensorPrimitives.Multiply(row, (float)(1 / sum), row);
        }

        return table;
    }

    private static double Bessel(double x)
    {
        double sum = 1, term = 1;
        for (var k = 1; term > sum * 1e-12; k++)
        {
            term *= x / (2 * k) * (x / (2 * k));
            sum += term;
        }

        return sum;
    }

    private static int Gcd(int a, int b) => b == 0 ? a : Gcd(b, a % b);
}
