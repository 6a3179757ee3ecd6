using System.Numerics.Tensors;

namespace ReedClinic.Measurement.Sound.Readings;

/// <summary>
/// The size of one partial over time, through a cosine bell that lasts four periods of the lowest octave: the other octaves, and what lies half way
/// between two partials, fall into the bell’s nulls.
/// </summary>
internal sealed class Envelope
{
    /// <summary>Samples from one size to the next: 1.3 ms.</summary>
    public const int Step = 64;

    private const double Rate = 48_000;
    private readonly float[] _padded;
    private readonly float[] _cos;
    private readonly float[] _sin;
    private readonly float[] _bell;

    /// <summary>Makes room for one clip.</summary>
    /// <param name="clip">The clip.</param>
    /// <param name="lowest">The lowest octave’s pitch.</param>
    public Envelope(ReadOnlySpan<float> clip, double lowest)
    {
        var length = (int)Math.Round(4 * Rate / lowest);
        _padded = new float[clip.Length + length];
        clip.CopyTo(_padded.AsSpan(length / 2));
        (_cos, _sin) = (new float[length], new float[length]);
        _bell = [.. Enumerable.Range(0, length).Select(i => (float)((1 - Math.Cos(2 * Math.PI * (i + 0.5) / length)) * 2 / length))];
        Count = (clip.Length / Step) + 1;
    }

    /// <summary>How many sizes there are.</summary>
    public int Count { get; }

    /// <summary>Reads the sizes at one pitch; the first is centred on the first sample.</summary>
    /// <param name="hertz">The pitch.</param>
    public float[] At(double hertz)
    {
        for (var i = 0; i < _bell.Length; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * hertz * i / Rate);
            (_cos[i], _sin[i]) = ((float)cos * _bell[i], (float)sin * _bell[i]);
        }

        var sizes = new float[Count];
        for (var at = 0; at < sizes.Length; at++)
        {
            var here = _padded.AsSpan(at * Step, _bell.Length);
            var (re, im) = (TensorPrimitives.Dot(here, _cos), TensorPrimitives.Dot(here, _sin));
            sizes[at] = MathF.Sqrt((re * re) + (im * im));
        }

        return sizes;
    }
}
