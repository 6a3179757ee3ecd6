using System.Numerics;
using System.Runtime.Intrinsics;

namespace ReedClinic.Measurement.Sound.Tracking;

/// <summary>
/// The power spectrum of real samples: a radix-4 transform that sorts itself (Stockham), on as many floats at once as the processor takes.
/// One object serves one thread; it allocates when it is made and never after.
/// </summary>
public sealed class Fft
{
    private readonly int _half;
    private readonly List<float[]> _twiddles = [];
    private readonly float[] _unpackCos;
    private readonly float[] _unpackSin;
    private float[] _re, _im, _otherRe, _otherIm;

    /// <summary>Makes tables for one length.</summary>
    /// <param name="length">Real samples in a transform: a power of two, 16 or more.</param>
    public Fft(int length)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(length, 16);
        ArgumentOutOfRangeException.ThrowIfNotEqual(BitOperations.IsPow2(length), true, nameof(length));
        Length = length;
        _half = length / 2;
        (_re, _im, _otherRe, _otherIm) = (new float[_half], new float[_half], new float[_half], new float[_half]);
        (_unpackCos, _unpackSin) = (new float[_half + 1], new float[_half + 1]);
        for (var k = 0; k <= _half; k++)
        {
            (_unpackSin[k], _unpackCos[k]) = MathF.SinCos((float)(-2 * Math.PI * k / length));
        }

        for (var n = _half; n >= 4; n /= 4)
        {
            _twiddles.Add(Twiddles(n));
        }
    }

    /// <summary>Real samples in a transform.</summary>
    public int Length { get; }

    /// <summary>Transforms; the lines can be asked for afterwards.</summary>
    /// <param name="samples">As many samples as the transform is long.</param>
    public void Transform(ReadOnlySpan<float> samples)
    {
        for (var i = 0; i < _half; i++)
        {
            _re[i] = samples[2 * i];
            _im[i] = samples[(2 * i) + 1];
        }

        Stages();
    }

    /// <summary>The squared size of a line.</summary>
    /// <param name="line">From 0 to half the length.</param>
    public float PowerOf(int line)
    {
        int a = line & (_half - 1), b = (_half - line) & (_half - 1);
        var (evenRe, evenIm) = ((_re[a] + _re[b]) / 2, (_im[a] - _im[b]) / 2);
        var (oddRe, oddIm) = ((_im[a] + _im[b]) / 2, (_re[b] - _re[a]) / 2);
        var re = evenRe + (oddRe * _unpackCos[line]) - (oddIm * _unpackSin[line]);
        var im = evenIm + (oddRe * _unpackSin[line]) + (oddIm * _unpackCos[line]);
        return (re * re) + (im * im);
    }

    private static float[] Twiddles(int n)
    {
        var table = new float[n / 4 * 6];
        for (var p = 0; p < n / 4; p++)
        {
            for (var j = 1; j <= 3; j++)
            {
                var (sin, cos) = Math.SinCos(-2 * Math.PI * p * j / n);
                (table[(p * 6) + (2 * j) - 2], table[(p * 6) + (2 * j) - 1]) = ((float)cos, (float)sin);
            }
        }

        return table;
    }

    private void Stages()
    {
        int n = _half, stride = 1;
        foreach (var twiddles in _twiddles)
        {
            if (stride == 1)
            {
                First(n / 4, twiddles);
            }
            else
            {
                Later(n / 4, stride, twiddles);
            }

            (_re, _otherRe, _im, _otherIm) = (_otherRe, _re, _otherIm, _im);
            (n, stride) = (n / 4, stride * 4);
        }

        if (n == 2)
        {
            Halve(stride);
        }
    }

    /// <summary>The stage whose results lie one beside the other.</summary>
    private void First(int m, float[] w)
    {
        for (var lane = 0; lane < m; lane++)
        {
            float ar = _re[lane], br = _re[lane + m], cr = _re[lane + (2 * m)], dr = _re[lane + (3 * m)];
            float ai = _im[lane], bi = _im[lane + m], ci = _im[lane + (2 * m)], di = _im[lane + (3 * m)];
            float sr = ar + cr, si = ai + ci, tr = ar - cr, ti = ai - ci, ur = br + dr, ui = bi + di, vr = bi - di, vi = dr - br;
            var (at, k) = (4 * lane, 6 * lane);
            (_otherRe[at], _otherIm[at]) = (sr + ur, si + ui);
            (_otherRe[at + 1], _otherIm[at + 1]) = (((tr + vr) * w[k]) - ((ti + vi) * w[k + 1]), ((tr + vr) * w[k + 1]) + ((ti + vi) * w[k]));
            (_otherRe[at + 2], _otherIm[at + 2]) = (((sr - ur) * w[k + 2]) - ((si - ui) * w[k + 3]), ((sr - ur) * w[k + 3]) + ((si - ui) * w[k + 2]));
            (_otherRe[at + 3], _otherIm[at + 3]) = (((tr - vr) * w[k + 4]) - ((ti - vi) * w[k + 5]), ((tr - vr) * w[k + 5]) + ((ti - vi) * w[k + 4]));
        }
    }

    /// <summary>A later stage: as many neighbours at once as the stride has.</summary>
    private void Later(int m, int stride, float[] twiddles)
    {
        for (var p = 0; p < m; p++)
        {
            var w = twiddles.AsSpan(p * 6, 6);
            int a = stride * p, b = stride * (p + m), c = stride * (p + (2 * m)), d = stride * (p + (3 * m)), to = 4 * stride * p;
            for (var q = 0; q < stride; q += Vector128<float>.Count)
            {
                Vector128<float> ar = At(_re, a + q), br = At(_re, b + q), cr = At(_re, c + q), dr = At(_re, d + q);
                Vector128<float> ai = At(_im, a + q), bi = At(_im, b + q), ci = At(_im, c + q), di = At(_im, d + q);
                Vector128<float> sr = ar + cr, si = ai + ci, tr = ar - cr, ti = ai - ci, ur = br + dr, ui = bi + di, vr = bi - di, vi = dr - br;
                (sr + ur).StoreUnsafe(ref _otherRe[to + q]);
                (si + ui).StoreUnsafe(ref _otherIm[to + q]);
                Turned(tr + vr, ti + vi, w[0], w[1], to + stride + q);
                Turned(sr - ur, si - ui, w[2], w[3], to + (2 * stride) + q);
                Turned(tr - vr, ti - vi, w[4], w[5], to + (3 * stride) + q);
            }
        }
    }

    private void Halve(int stride)
    {
        for (var q = 0; q < stride; q++)
        {
            (_otherRe[q], _otherRe[q + stride]) = (_re[q] + _re[q + stride], _re[q] - _re[q + stride]);
            (_otherIm[q], _otherIm[q + stride]) = (_im[q] + _im[q + stride], _im[q] - _im[q + stride]);
        }

        (_re, _otherRe, _im, _otherIm) = (_otherRe, _re, _otherIm, _im);
    }

    private static Vector128<float> At(float[] all, int at) => Vector128.LoadUnsafe(ref all[at]);

    private void Turned(Vector128<float> re, Vector128<float> im, float cos, float sin, int at)
    {
        ((re * cos) - (im * sin)).StoreUnsafe(ref _otherRe[at]);
        ((re * sin) + (im * cos)).StoreUnsafe(ref _otherIm[at]);
    }
}
