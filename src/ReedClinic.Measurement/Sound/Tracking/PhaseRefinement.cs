using System.Numerics;

namespace ReedClinic.Measurement.Sound.Tracking;

/// <summary>
/// Refines a stretch of the track by the phase advance of its partials: the small change of pitch that makes the demodulated partials add up to the
/// most power is found by one Newton step (the maximum of the harmonic sum of least squares, which white noise disturbs least).
/// </summary>
internal sealed class PhaseRefinement
{
    private const int Hop = PitchTrack.Hop;
    private const double Rate = 48_000;
    private const double HighestPartial = 10_000;
    private const double ToHertz = Rate / (2 * Math.PI * Hop);

    /// <summary>Frames on either side, at the most.</summary>
    private const int WidestReach = 12;

    private readonly Demodulator _demodulator = new();
    private const int Row = 2 * Demodulator.Partials;

    private readonly float[] _sums;
    private readonly float[] _moments = new float[4 * Row];
    private readonly double[] _better;
    private readonly double[] _taper = new double[(2 * WidestReach) + 1];

    public PhaseRefinement(int frames)
    {
        _sums = new float[(frames + 1) * Row];
        _better = new double[frames];
    }

    /// <summary>Refines once.</summary>
    /// <param name="clip">The clip.</param>
    /// <param name="first">The stretch’s first frame.</param>
    /// <param name="hertz">The stretch’s pitches; better afterwards.</param>
    /// <param name="variance">The variance of each pitch’s error in hertz squared, as far as noise makes it.</param>
    /// <param name="reach">Frames on either side.</param>
    /// <param name="most">Partials that are used at the most.</param>
    public void Refine(ReadOnlySpan<float> clip, int first, Span<double> hertz, Span<double> variance, int reach, int most)
    {
        var partials = Math.Clamp((int)(HighestPartial / hertz[hertz.Length / 2]), 1, most);
        var blocks = Math.Min(hertz.Length - 1, (clip.Length / Hop) - first);
        Demodulate(clip, first, hertz, blocks, partials);
        for (var at = 0; at <= 2 * reach; at++)
        {
            _taper[at] = 0.5 - (0.5 * Math.Cos(Math.PI * (at + 1) / (reach + 1)));
        }

        var better = _better.AsSpan(0, hertz.Length);
        for (var frame = 0; frame < hertz.Length; frame++)
        {
            var (from, to) = (Math.Max(1, frame - reach), Math.Min(blocks, frame + reach + 1));
            (var shift, variance[frame]) = to - from >= 3 ? Newton(frame, from, to, reach, partials) : (0, double.PositiveInfinity);
            better[frame] = hertz[frame] + Math.Clamp(shift, -0.03 * hertz[frame], 0.03 * hertz[frame]);
        }

        better.CopyTo(hertz);
    }

    private void Demodulate(ReadOnlySpan<float> clip, int first, ReadOnlySpan<double> hertz, int blocks, int partials)
    {
        double phase = 0;
        _sums.AsSpan(0, (blocks + 1) * Row).Clear();
        for (var block = 0; block < blocks; block++)
        {
            _demodulator.Add(
                clip.Slice((first + block) * Hop, Hop), phase, hertz[block], hertz[block + 1], partials,
                _sums.AsSpan(block * Row, Row), _sums.AsSpan((block + 1) * Row, Row));
            phase += (hertz[block] + hertz[block + 1]) / 2 * Hop / Rate;
            phase -= Math.Floor(phase);
        }
    }

    /// <summary>The change of pitch in hertz, and its variance.</summary>
    private (double Shift, double Variance) Newton(int frame, int from, int to, int reach, int partials)
    {
        double pull = 0, bend = 0, information = 0, noise = 0;
        var taper = new Taper(frame, from, to, reach, _taper);
        Moments(from, to, taper);
        for (var k = 0; k < partials; k++)
        {
            var m = _moments.AsSpan(2 * k);
            double re0 = m[0], im0 = m[1], re1 = m[Row], im1 = m[Row + 1], re2 = m[2 * Row], im2 = m[(2 * Row) + 1], all = m[3 * Row] + m[(3 * Row) + 1];
            var power = ((re0 * re0) + (im0 * im0)) / taper.Sum;
            var second = ((re1 * re1) + (im1 * im1)) / taper.Spread;
            var remains = Math.Max(0, (all - power - second) / taper.Free);
            if (power < 6 * remains)
            {
                continue;
            }

            // A partial that turns too far across the window tells nothing of where the maximum is.
            var itsBend = (re0 * re2) + (im0 * im2) - (second * taper.Spread);
            if (itsBend < 0.4 * power * taper.Spread)
            {
                continue;
            }

            double weight = (k + 1) * (k + 1), size = power / taper.Sum;
            pull += (k + 1) * ((re0 * im1) - (im0 * re1));
            bend += weight * itsBend;
            information += weight * size * taper.Spread;
            noise += weight * size * taper.SquaredSpread * remains;
        }

        return bend <= 0 ? (0, double.PositiveInfinity) : (pull / bend * ToHertz, noise / (2 * information * information) * ToHertz * ToHertz);
    }

    /// <summary>Weighted sums over the frames, of all partials at once: of the values, of them times their distance and its square, of their squares.</summary>
    private void Moments(int from, int to, in Taper taper)
    {
        Array.Clear(_moments);
        for (var frame = from; frame < to; frame++)
        {
            var weight = (float)_taper[frame - taper.Start];
            var distance = (float)(frame - taper.Middle);
            for (var at = 0; at < Row; at += Vector<float>.Count)
            {
                var value = new Vector<float>(_sums, (frame * Row) + at);
                var weighted = value * weight;
                (new Vector<float>(_moments, at) + weighted).CopyTo(_moments, at);
                (new Vector<float>(_moments, (3 * Row) + at) + (weighted * value)).CopyTo(_moments, (3 * Row) + at);
                weighted *= distance;
                (new Vector<float>(_moments, Row + at) + weighted).CopyTo(_moments, Row + at);
                (new Vector<float>(_moments, (2 * Row) + at) + (weighted * distance)).CopyTo(_moments, (2 * Row) + at);
            }
        }
    }

    /// <summary>Weights of the blocks about a frame, by a cosine bell, and what their sums make of noise.</summary>
    private readonly ref struct Taper
    {
        public Taper(int frame, int from, int to, int reach, ReadOnlySpan<double> weights)
        {
            Start = frame - reach;
            double middle = 0, sum = 0, squares = 0;
            for (var block = from; block < to; block++)
            {
                var weight = weights[block - Start];
                (sum, middle, squares) = (sum + weight, middle + (weight * block), squares + (weight * weight));
            }

            (Sum, Middle) = (sum, middle / sum);
            for (var block = from; block < to; block++)
            {
                var (weight, b) = (weights[block - Start], block - Middle);
                (Spread, SquaredSpread) = (Spread + (weight * b * b), SquaredSpread + (weight * weight * b * b));
            }

            Free = Math.Max(1e-9, Sum - (squares / Sum) - (SquaredSpread / Spread));
        }

        public int Start { get; }

        public double Middle { get; }

        public double Sum { get; }

        public double Spread { get; }

        public double SquaredSpread { get; }

        public double Free { get; }
    }
}
