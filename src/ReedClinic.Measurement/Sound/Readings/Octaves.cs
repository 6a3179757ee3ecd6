using System.Numerics.Tensors;
using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Measurement.Sound.Readings;

/// <summary>Whether the octaves near C4, C5 and C6 sound, how strongly, and when each has half its size.</summary>
internal static class Octaves
{
    private const double MiddleC = 261.6255653005986;
    private const double AboveNoise = 3.2; // 10 dB
    private const double BelowStrongest = 0.032; // −30 dB
    private const int Holds = 16; // steps: 21 ms
    private const double SecondsAStep = Envelope.Step / 48_000.0;

    public static IReadOnlyList<OctavePartial> Of(ReadOnlySpan<float> clip, IReadOnlyList<PitchFrame> frames, double pitch, bool isClipped)
    {
        var cents = 1200 * Math.Log2(pitch / MiddleC);
        var lowest = MiddleC * Math.Pow(2, (cents - (1200 * Math.Round(cents / 1200))) / 1200);
        var envelope = new Envelope(clip, lowest);
        var sounding = Sounding(frames, envelope.Count);
        var found = new (double Size, double Noise, float[] Sizes)[3];
        for (var octave = 0; octave < 3; octave++)
        {
            var hertz = lowest * (1 << octave);
            var sizes = envelope.At(hertz);
            var noise = Middle(envelope.At(hertz - (lowest / 2)), sounding) + Middle(envelope.At(hertz + (lowest / 2)), sounding);
            found[octave] = (Upper(sizes, sounding), noise / 2, sizes);
        }

        var strongest = found.Max(one => one.Size);
        return [.. found.Select((one, octave) => Partial(octave, lowest * (1 << octave), one.Size, one.Noise, one.Sizes, strongest, isClipped))];
    }

    private static OctavePartial Partial(int octave, double hertz, double size, double noise, float[] sizes, double strongest, bool isClipped)
    {
        if (size < AboveNoise * noise || size < BelowStrongest * strongest)
        {
            var none = Reading.Not(Unreadable.TooFaint);
            return new OctavePartial(octave + 4, false, hertz, none, none);
        }

        var level = isClipped ? Reading.Not(Unreadable.Clipped) : Reading.Of(20 * Math.Log10(size / strongest), 20 / Math.Log(10) * noise / size);
        return new OctavePartial(octave + 4, true, hertz, level, Entry(sizes, size, noise)) { Power = size * size / 2 };
    }

    /// <summary>The first time that half the size is reached and kept.</summary>
    private static Reading Entry(float[] sizes, double size, double noise)
    {
        var half = size / 2;
        var hadBegun = sizes.Length > 2 * Holds && sizes[Holds] >= half && TensorPrimitives.Min<float>(sizes.AsSpan(Holds, Holds)) >= 0.8 * half;
        for (var at = Holds; !hadBegun && at + Holds < sizes.Length; at++)
        {
            if (sizes[at] < half || sizes[at - 1] >= half || TensorPrimitives.Min<float>(sizes.AsSpan(at, Holds)) < 0.8 * half)
            {
                continue;
            }

            double before = sizes[at - 1], rise = Math.Max(1e-12, sizes[at] - before);
            var slope = Math.Max(rise, (sizes[Math.Min(sizes.Length - 1, at + 3)] - (double)sizes[Math.Max(0, at - 4)]) / 7);
            return Reading.Of((at - 1 + ((half - before) / rise)) * SecondsAStep, Math.Max(0.001, noise / slope * SecondsAStep));
        }

        return Reading.Not(Unreadable.NoQuietBefore);
    }

    /// <summary>The steps at which a tone is heard.</summary>
    private static List<int> Sounding(IReadOnlyList<PitchFrame> frames, int steps)
    {
        const int each = PitchTrack.Hop / Envelope.Step;
        return [.. Enumerable.Range(0, steps).Where(step => frames[Math.Min(frames.Count - 1, step / each)].IsVoiced)];
    }

    private static double Middle(float[] sizes, List<int> steps) => Steadiness.Median([.. steps.Select(step => (double)sizes[step])]);

    /// <summary>The middle of the upper half: the size of what isn’t there all the time.</summary>
    private static double Upper(float[] sizes, List<int> steps)
    {
        double[] sorted = [.. steps.Select(step => (double)sizes[step]).Order()];
        return sorted[sorted.Length * 3 / 4];
    }
}
