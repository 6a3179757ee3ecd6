using System.Numerics;
using System.Numerics.Tensors;
using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Measurement.Sound.Readings;

/// <summary>
/// Power of the partials over the rest: six to twelve periods at a time, as many as last a whole number of samples best, are projected onto every partial below 20 kHz, each following the pitch track, and what
/// noise adds to as many projections is taken off. Beside it, how much the sizes of single periods differ.
/// </summary>
internal sealed class Harmonicity
{
    private const double Rate = 48_000;
    private const int FewestPeriods = 6;
    private const int MostPeriods = 12;

    /// <summary>What a period’s share of its neighbours leaves of the differences, on average over where periods are cut: 2/3 instead of 3/2.</summary>
    private const double CutAnywhere = 2 / 3.0;

    private const double Highest = 20_000;
    private const int Every = 8; // frames from one window to the next
    private const int LeastWindows = 3;
    private const int Longest = 4096;

    private readonly float[] _oneRe = new float[Longest], _oneIm = new float[Longest], _re = new float[Longest], _im = new float[Longest];

    /// <summary>Both readings.</summary>
    /// <param name="clip">The clip.</param>
    /// <param name="frames">Its pitch.</param>
    public (Reading Ratio, Reading Roughness) Of(ReadOnlySpan<float> clip, IReadOnlyList<PitchFrame> frames)
    {
        List<double> ratios = [], rough = [];
        for (var frame = Every; frame < frames.Count - Every; frame += Every)
        {
            var periods = frames[frame].IsVoiced ? Best(frames[frame].Hertz) : 0;
            var length = periods == 0 ? 0 : (int)Math.Round(periods * Rate / frames[frame].Hertz);
            var start = (frame * PitchTrack.Hop) - (length / 2);
            var reach = (length / 2 / PitchTrack.Hop) + 3;
            if (length == 0 || start < 0 || start + length > clip.Length || !IsOneTone(frames, frame, reach))
            {
                continue;
            }

            var ratio = Project(clip.Slice(start, length), frames[frame].Hertz, (frames[frame + 1].Hertz - frames[frame - 1].Hertz) / (2 * PitchTrack.Hop));
            ratios.Add(10 * Math.Log10(ratio));
            rough.Add(Differences(clip.Slice(start, length), periods, ratio));
        }

        return ratios.Count < LeastWindows
            ? (Reading.Not(Unreadable.TooShort), Reading.Not(Unreadable.TooShort))
            : (Middle(ratios), Reading.Of(100 * Math.Sqrt(Math.Max(0, rough.Average())), 100 * Math.Sqrt(Math.Abs(rough.Average()) / (2 * rough.Count))));
    }

    /// <summary>How many periods come nearest to whole samples: partials disturb each other by what is left over.</summary>
    private static int Best(double hertz)
    {
        var (best, least) = (FewestPeriods, double.MaxValue);
        for (var periods = FewestPeriods; periods <= MostPeriods; periods++)
        {
            var length = periods * Rate / hertz;
            var over = Math.Abs(length - Math.Round(length)) / length;
            (best, least) = over < least && length < Longest ? (periods, over) : (best, least);
        }

        return best;
    }

    private static Reading Middle(List<double> values)
    {
        var mean = values.Average();
        var spread = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / values.Count);
        return Reading.Of(Steadiness.Median([.. values]), Math.Max(0.3, 1.25 * spread / Math.Sqrt(values.Count)));
    }

    private static bool IsOneTone(IReadOnlyList<PitchFrame> frames, int frame, int reach)
    {
        for (var near = Math.Max(0, frame - reach); near <= Math.Min(frames.Count - 1, frame + reach); near++)
        {
            if (!frames[near].IsVoiced || Math.Abs((frames[near].Hertz / frames[frame].Hertz) - 1) > 0.04)
            {
                return false;
            }
        }

        return frame - reach >= 0 && frame + reach < frames.Count;
    }

    /// <summary>Power of the partials over power of the rest.</summary>
    private double Project(ReadOnlySpan<float> samples, double hertz, double slope)
    {
        var length = samples.Length / Vector<float>.Count * Vector<float>.Count;
        for (var i = 0; i < samples.Length; i++)
        {
            var x = i - (samples.Length / 2.0);
            var turns = ((hertz * x) + (slope * x * x / 2)) / Rate;
            var (sin, cos) = Math.SinCos(-2 * Math.PI * (turns - Math.Floor(turns)));
            (_oneRe[i], _oneIm[i], _re[i], _im[i]) = ((float)cos, (float)sin, (float)cos, (float)sin);
        }

        var mean = TensorPrimitives.Sum(samples) / samples.Length;
        var all = TensorPrimitives.SumOfSquares(samples) - (mean * (double)mean * samples.Length);
        double partials = 0;
        var count = Math.Max(1, (int)(Highest / hertz));
        for (var k = 0; k < count; k++)
        {
            var (re, im) = (TensorPrimitives.Dot(samples, _re.AsSpan(0, samples.Length)), TensorPrimitives.Dot(samples, _im.AsSpan(0, samples.Length)));
            partials += 2 * ((re * (double)re) + (im * (double)im)) / samples.Length;
            Turn(length, samples.Length);
        }

        var noise = Math.Max(1e-9 * all, all - partials) / (samples.Length - 1 - (2 * count));
        return Math.Max(1e-3, (partials - (2 * count * noise)) / (noise * samples.Length));
    }

    private void Turn(int even, int length)
    {
        for (var i = 0; i < even; i += Vector<float>.Count)
        {
            Vector<float> re = new(_re, i), im = new(_im, i), oneRe = new(_oneRe, i), oneIm = new(_oneIm, i);
            ((re * oneRe) - (im * oneIm)).CopyTo(_re, i);
            ((re * oneIm) + (im * oneRe)).CopyTo(_im, i);
        }

        for (var i = even; i < length; i++)
        {
            (_re[i], _im[i]) = ((_re[i] * _oneRe[i]) - (_im[i] * _oneIm[i]), (_re[i] * _oneIm[i]) + (_im[i] * _oneRe[i]));
        }
    }

    /// <summary>The variance of the periods’ sizes about the middle of their neighbours, relative, without what the noise makes of it.</summary>
    private static double Differences(ReadOnlySpan<float> samples, int periods, double ratio)
    {
        Span<double> sizes = stackalloc double[MostPeriods];
        sizes = sizes[..periods];
        var period = samples.Length / (double)periods;
        for (var p = 0; p < periods; p++)
        {
            var (from, to) = ((int)Math.Round(p * period), Math.Min(samples.Length, (int)Math.Round((p + 1) * period)));
            sizes[p] = TensorPrimitives.Norm(samples[from..to]) / Math.Sqrt(to - from);
        }

        double sum = 0, mean = TensorPrimitives.Sum<double>(sizes) / periods;
        for (var p = 1; p < periods - 1; p++)
        {
            var apart = (sizes[p] - ((sizes[p - 1] + sizes[p + 1]) / 2)) / mean;
            sum += apart * apart;
        }

        return ((sum / (periods - 2)) - (1.5 / (ratio * period))) / CutAnywhere;
    }
}
