using System.Numerics;

namespace ReedClinic.Measurement.Sound.Tracking;

/// <summary>Every other sample, after a half-band low pass (23 weights under a Blackman window, every other of them nought); no time is shifted.</summary>
internal static class HalfRate
{
    private static readonly float[] Weights = Design(6);

    public static void Fill(ReadOnlySpan<float> samples, Span<float> half)
    {
        var reach = Weights.Length;
        var odd = new float[half.Length + (2 * reach)];
        for (var n = 0; n < half.Length; n++)
        {
            half[n] = samples[2 * n];
            odd[n + reach] = samples[(2 * n) + 1];
        }

        var at = 0;
        for (; at + Vector<float>.Count <= half.Length; at += Vector<float>.Count)
        {
            var sum = new Vector<float>(half[at..]) * 0.5f;
            for (var tap = 0; tap < reach; tap++)
            {
                sum += (new Vector<float>(odd, at + reach + tap) + new Vector<float>(odd, at + reach - 1 - tap)) * Weights[tap];
            }

            sum.CopyTo(half[at..]);
        }

        for (; at < half.Length; at++)
        {
            var sum = half[at] * 0.5f;
            for (var tap = 0; tap < reach; tap++)
            {
                sum += (odd[at + reach + tap] + odd[at + reach - 1 - tap]) * Weights[tap];
            }

            half[at] = sum;
        }
    }

    /// <summary>The weights of the samples at odd distances on one side; they add up to a quarter.</summary>
    private static float[] Design(int taps)
    {
        var weights = new double[taps];
        for (var tap = 0; tap < taps; tap++)
        {
            double x = (2 * tap) + 1, edge = Math.PI * x / (2 * taps);
            weights[tap] = Math.Sin(Math.PI * x / 2) / (Math.PI * x) * (0.42 + (0.5 * Math.Cos(edge)) + (0.08 * Math.Cos(2 * edge)));
        }

        var sum = weights.Sum();
        return [.. weights.Select(weight => (float)(weight / sum / 4))];
    }
}
