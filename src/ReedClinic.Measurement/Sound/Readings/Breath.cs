using System.Numerics.Tensors;

namespace ReedClinic.Measurement.Sound.Readings;

/// <summary>
/// When the breath begins: where the high part of the sound (its second difference, in which a tone is 30 to 50 dB weaker) rises from the clip’s own
/// quiet to half the size that it has just afterwards.
/// </summary>
internal sealed class Breath
{
    private const int Step = 48; // 1 ms
    private const int Around = 2; // steps on either side
    private const double Louder = 4; // 6 dB over the quiet
    private const int Lasts = 15;
    private const int LeastQuiet = 40;
    private const double Nothing = 1e-13;

    private readonly double[] _power;
    private readonly double[] _whole;

    /// <summary>Reads the powers of a clip.</summary>
    /// <param name="clip">The clip.</param>
    public Breath(ReadOnlySpan<float> clip)
    {
        var steps = Math.Max(0, (clip.Length - 2) / Step);
        (_power, _whole) = (new double[steps], new double[steps]);
        Span<float> high = stackalloc float[Step];
        for (var step = 0; step < steps; step++)
        {
            var here = clip.Slice(step * Step, Step + 2);
            TensorPrimitives.Add(here[..Step], here[2..], high);
            TensorPrimitives.MultiplyAdd(here.Slice(1, Step), -2f, high, high);
            _power[step] = TensorPrimitives.SumOfSquares<float>(high) / Step;
            _whole[step] = TensorPrimitives.SumOfSquares(here[..Step]) / Step;
        }
    }

    /// <summary>The beginning of the breath, in seconds.</summary>
    public Reading Onset()
    {
        var step = Rough();
        if (step < LeastQuiet)
        {
            return Reading.Not(_power.Length < LeastQuiet ? Unreadable.TooShort : step < 0 ? Unreadable.NoTone : Unreadable.NoQuietBefore);
        }

        var quiet = Quiet(_power, step);
        var after = Steadiness.Median(_power[Math.Min(_power.Length - 1, step + 12)..Math.Min(_power.Length, step + 50)]);
        var half = quiet + ((after - quiet) / 4);
        for (var at = Math.Max(Around, step - 30); at < Math.Min(_power.Length - Around - 1, step + 60); at++)
        {
            var (here, next) = (Smooth(at), Smooth(at + 1));
            if (here < half && next >= half)
            {
                // Sizes rise more evenly than powers.
                var (a, b, c) = (Math.Sqrt(here), Math.Sqrt(next), Math.Sqrt(half));
                return Reading.Of((at + 0.5 + ((c - a) / (b - a))) * Step / 48_000.0, 0.001);
            }
        }

        return Reading.Not(Unreadable.TooFaint);
    }

    /// <summary>Decibels over the quiet at a time.</summary>
    /// <param name="onset">When the breath began.</param>
    /// <param name="seconds">The time.</param>
    public Reading Over(double onset, double seconds)
    {
        var quiet = Quiet(_whole, (int)(onset * 1000) - 8);
        var at = Math.Clamp((int)(seconds * 1000), 10, Math.Max(10, _whole.Length - 10));
        var here = TensorPrimitives.Sum<double>(_whole.AsSpan(Math.Max(0, at - 10), Math.Min(20, _whole.Length - Math.Max(0, at - 10)))) / 20;
        return here > quiet * 2 ? Reading.Of(10 * Math.Log10(here / quiet), 1) : Reading.Not(Unreadable.TooFaint);
    }

    /// <summary>The first step from which on it is louder than the quiet for a while; −1 for none.</summary>
    private int Rough()
    {
        if (_power.Length < LeastQuiet)
        {
            return -1;
        }

        var sorted = Enumerable.Range(0, _power.Length / 10).Select(at => TensorPrimitives.Sum<double>(_power.AsSpan(at * 10, 10)) / 10).Order().ToArray();
        var quiet = Math.Max(Nothing, Math.Max(sorted[sorted.Length / 20], TensorPrimitives.Sum<double>(_power.AsSpan(0, 30)) / 30));
        for (var at = 0; at + Lasts < _power.Length; at++)
        {
            if (TensorPrimitives.Sum<double>(_power.AsSpan(at, Lasts)) / Lasts > Louder * quiet && _power[at] > 2 * quiet)
            {
                return at;
            }
        }

        return -1;
    }

    private static double Quiet(double[] power, int until) =>
        Math.Max(Nothing, Steadiness.Median(power[..Math.Clamp(until - 5, 1, power.Length)]));

    private double Smooth(int at) => TensorPrimitives.Sum<double>(_power.AsSpan(at - Around, (2 * Around) + 1)) / ((2 * Around) + 1);
}
