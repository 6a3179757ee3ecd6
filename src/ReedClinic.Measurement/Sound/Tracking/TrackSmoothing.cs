using System.Numerics.Tensors;

namespace ReedClinic.Measurement.Sound.Tracking;

/// <summary>
/// Smooths a stretch by local parabolas, each as wide as the stretch allows there: a window is widened while what it says differs from the narrower
/// one’s by no more than noise explains (after O. Lepski, 1990). A steady tone is averaged over a fifth of a second, a vibrato hardly at all.
/// </summary>
internal sealed class TrackSmoothing
{
    private const double Tolerance = 2.0;

    /// <summary>Half widths in frames, and the variance that is left of a frame’s, as found on tones in white noise.</summary>
    private static readonly (int Half, double Left)[] Windows = [(0, 6), (3, 4), (6, 1.5), (12, 0.35), (24, 0.06)];

    private static readonly double[][] Weights = [.. Windows.Select(window => WeightsOf(window.Half))];

    private readonly double[] _made;
    private readonly double[] _wider;
    private readonly double[] _apart;

    public TrackSmoothing(int frames) => (_made, _wider, _apart) = (new double[frames], new double[frames], new double[frames]);

    /// <summary>Smooths a stretch where it lies.</summary>
    /// <param name="hertz">Its pitches.</param>
    /// <param name="variance">The variances of their errors; of the smoothed ones afterwards.</param>
    public void Smooth(Span<double> hertz, Span<double> variance)
    {
        var count = hertz.Length;
        var made = _made.AsSpan(0, count);
        hertz.CopyTo(made);
        var typical = Typical(variance);
        Span<bool> isDone = count <= 4096 ? stackalloc bool[count] : new bool[count];
        Span<double> left = count <= 4096 ? stackalloc double[count] : new double[count];
        left.Fill(Windows[0].Left);
        for (var w = 1; w < Windows.Length; w++)
        {
            Widen(hertz, made, isDone, left, typical, w);
        }

        for (var frame = 0; frame < count; frame++)
        {
            (hertz[frame], variance[frame]) = (made[frame], typical * left[frame]);
        }
    }

    private void Widen(ReadOnlySpan<double> hertz, Span<double> made, Span<bool> isDone, Span<double> left, double typical, int w)
    {
        var (half, remains) = Windows[w];
        for (var frame = 0; frame < hertz.Length; frame++)
        {
            _wider[frame] = frame >= half && frame + half < hertz.Length
                ? TensorPrimitives.Dot<double>(hertz.Slice(frame - half, (2 * half) + 1), Weights[w])
                : Parabola(hertz, frame, half);
            _apart[frame] = (_wider[frame] - made[frame]) * (_wider[frame] - made[frame]);
        }

        var allowed = Tolerance * Tolerance * typical * Windows[w - 1].Left;
        for (var frame = 0; frame < hertz.Length; frame++)
        {
            isDone[frame] |= Mean(frame, half, hertz.Length) > allowed;
        }

        for (var frame = 0; frame < hertz.Length; frame++)
        {
            if (!isDone[frame])
            {
                (made[frame], left[frame]) = (_wider[frame], remains);
            }
        }
    }

    private double Mean(int frame, int half, int count)
    {
        var (from, to) = (Math.Max(0, frame - half), Math.Min(count - 1, frame + half));
        return TensorPrimitives.Sum<double>(_apart.AsSpan(from, to - from + 1)) / (to - from + 1);
    }

    /// <summary>The weights by which a whole window’s parabola has its value in the middle.</summary>
    private static double[] WeightsOf(int half)
    {
        var weights = new double[(2 * half) + 1];
        var one = new double[weights.Length];
        for (var at = 0; at < weights.Length && half > 1; at++)
        {
            one[at] = 1;
            weights[at] = Parabola(one, half, half);
            one[at] = 0;
        }

        return half > 1 ? weights : [1];
    }

    private static double Typical(ReadOnlySpan<double> variance)
    {
        double sum = 0;
        var count = 0;
        foreach (var one in variance)
        {
            if (double.IsFinite(one))
            {
                sum += one;
                count++;
            }
        }

        return count == 0 ? 0 : sum / count;
    }

    /// <summary>The value of the parabola of least squares through the window, at the frame.</summary>
    private static double Parabola(ReadOnlySpan<double> hertz, int frame, int half)
    {
        var (from, to) = (Math.Max(0, frame - half), Math.Min(hertz.Length - 1, frame + half));
        if (to - from < 3)
        {
            return hertz[frame];
        }

        double s1 = 0, s2 = 0, s3 = 0, s4 = 0, t0 = 0, t1 = 0, t2 = 0, s0 = to - from + 1;
        for (var at = from; at <= to; at++)
        {
            double x = at - frame, y = hertz[at] - hertz[frame];
            (s1, s2, s3, s4) = (s1 + x, s2 + (x * x), s3 + (x * x * x), s4 + (x * x * x * x));
            (t0, t1, t2) = (t0 + y, t1 + (x * y), t2 + (x * x * y));
        }

        var determinant = (s0 * ((s2 * s4) - (s3 * s3))) - (s1 * ((s1 * s4) - (s2 * s3))) + (s2 * ((s1 * s3) - (s2 * s2)));
        var top = (t0 * ((s2 * s4) - (s3 * s3))) - (s1 * ((t1 * s4) - (t2 * s3))) + (s2 * ((t1 * s3) - (t2 * s2)));
        return hertz[frame] + (top / determinant);
    }
}
