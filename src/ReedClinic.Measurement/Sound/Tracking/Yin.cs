using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace ReedClinic.Measurement.Sound.Tracking;

/// <summary>
/// YIN (A. de Cheveigné and H. Kawahara, JASA 111, 2002, 1917–1930), exact: squared differences over all lags are summed in blocks of a hop, each
/// once, and a frame adds up its blocks. At half the rate, since what follows refines it; the dip is taken at a multiple of the period, which is
/// finer by that multiple.
/// </summary>
internal sealed class Yin
{
    private const int Hop = PitchTrack.Hop / 2;
    private const double Rate = 24_000;
    private const int Lags = 192; // a multiple of four vectors, and above 24,000 / 138
    private const int Blocks = 6;
    private const int Shortest = 5;

    /// <summary>Whole lags meet a short period badly: a dip is taken for shallower than it is by about this over the lag squared.</summary>
    private const float Coarseness = 20;

    private readonly float[][] _ring = [.. Enumerable.Range(0, Blocks).Select(_ => new float[Lags])];
    private readonly float[] _sum = new float[Lags];
    private readonly float[] _dips = new float[Lags];

    /// <summary>Reads the pitch of every frame, roughly.</summary>
    /// <param name="half">The clip at half the rate, with a frame’s worth of silence before and behind.</param>
    /// <param name="hertz">The pitch of each frame.</param>
    /// <param name="aperiodicity">How far each frame is from repeating itself.</param>
    public void Read(ReadOnlySpan<float> half, Span<double> hertz, Span<float> aperiodicity)
    {
        for (var block = 0; block < hertz.Length + Blocks - 1; block++)
        {
            SumBlock(half.Slice(block * Hop, Hop + Lags), _ring[block % Blocks]);
            var frame = block - Blocks + 1;
            if (frame >= 0)
            {
                AddUp();
                (hertz[frame], aperiodicity[frame]) = Dip();
            }
        }
    }

    /// <summary>Silence that a clip needs before its first sample, so that frame 0 is centred on it.</summary>
    public static int Before => Blocks / 2 * Hop;

    /// <summary>How long the padded clip must be for so many frames.</summary>
    public static int PaddedLength(int frames) => ((frames + Blocks - 1) * Hop) + Lags;

    private static void SumBlock(ReadOnlySpan<float> samples, float[] sums)
    {
        var width = (nuint)Vector<float>.Count;
        ref var first = ref MemoryMarshal.GetReference(samples);
        ref var to = ref MemoryMarshal.GetArrayDataReference(sums);
        for (nuint lag = 0; lag < Lags; lag += 4 * width)
        {
            Vector<float> a = default, b = default, c = default, d = default;
            for (nuint i = 0; i < Hop; i++)
            {
                var x = new Vector<float>(Unsafe.Add(ref first, i));
                var p = x - Vector.LoadUnsafe(ref first, i + lag);
                var q = x - Vector.LoadUnsafe(ref first, i + lag + width);
                var r = x - Vector.LoadUnsafe(ref first, i + lag + (2 * width));
                var s = x - Vector.LoadUnsafe(ref first, i + lag + (3 * width));
                a = Vector.FusedMultiplyAdd(p, p, a);
                b = Vector.FusedMultiplyAdd(q, q, b);
                c = Vector.FusedMultiplyAdd(r, r, c);
                d = Vector.FusedMultiplyAdd(s, s, d);
            }

            a.StoreUnsafe(ref to, lag);
            b.StoreUnsafe(ref to, lag + width);
            c.StoreUnsafe(ref to, lag + (2 * width));
            d.StoreUnsafe(ref to, lag + (3 * width));
        }
    }

    private void AddUp()
    {
        var sum = MemoryMarshal.Cast<float, Vector<float>>(_sum.AsSpan());
        for (var i = 0; i < sum.Length; i++)
        {
            var total = Vector<float>.Zero;
            foreach (var block in _ring)
            {
                total += MemoryMarshal.Cast<float, Vector<float>>(block.AsSpan())[i];
            }

            sum[i] = total;
        }

        var before = 0f;
        _dips[0] = 1;
        for (var lag = 1; lag < Lags; lag++)
        {
            before += _sum[lag];
            _dips[lag] = before > 0 ? _sum[lag] * lag / before : 1;
        }
    }

    private (double Hertz, float Aperiodicity) Dip()
    {
        var lowest = float.MaxValue;
        for (var lag = Shortest; lag < Lags - 1; lag++)
        {
            lowest = Math.Min(lowest, _dips[lag]);
        }

        var enough = Math.Max(0.1f, lowest + 0.06f);
        for (var lag = Shortest; lag < Lags - 1; lag++)
        {
            if (_dips[lag] <= enough + (Coarseness / (lag * lag)) && _dips[lag] <= _dips[lag + 1] && _dips[lag] <= _dips[lag - 1])
            {
                return (Rate / Finer(lag), _dips[lag]);
            }
        }

        return (0, 1);
    }

    /// <summary>The period, from the dip at twice, four times, eight times it, as long as there is one near where it must be.</summary>
    private double Finer(int lag)
    {
        var period = Bottom(lag);
        for (var times = 2; period * times < Lags - 4; times *= 2)
        {
            var near = (int)Math.Round(period * times);
            var at = near;
            for (var other = near - 1; other <= near + 1; other++)
            {
                at = _sum[other] < _sum[at] ? other : at;
            }

            if (_dips[at] > _dips[lag] + 0.05f || _sum[at] > _sum[at - 1] || _sum[at] > _sum[at + 1])
            {
                break;
            }

            period = Bottom(at) / times;
        }

        return period;
    }

    private double Bottom(int lag)
    {
        double before = _sum[lag - 1], here = _sum[lag], after = _sum[lag + 1];
        var bend = before - (2 * here) + after;
        return lag + (bend > 0 ? Math.Clamp((before - after) / (2 * bend), -0.5, 0.5) : 0);
    }
}
