namespace ReedClinic.Measurement.Tests.Sound.Synthetic;

/// <summary>Tones whose pitch is known at every sample, in white noise of a known strength.</summary>
internal static class SyntheticTone
{
    public const int Rate = 48_000;

    /// <summary>Like an oboe’s: the second and third partials are as strong as the first, then they fall.</summary>
    public static readonly double[] Reedy = [0.7, 1, 0.8, 0.5, 0.35, 0.2, 0.15, 0.1, 0.06, 0.04];

    /// <summary>A sine.</summary>
    public static readonly double[] Pure = [1];

    /// <summary>The second partial is ten times as strong as the first.</summary>
    public static readonly double[] OctaveHeavy = [0.1, 1, 0.06, 0.3, 0.02, 0.1];

    /// <summary>Makes a tone.</summary>
    /// <param name="hertz">Its pitch.</param>
    /// <param name="partials">The partials’ sizes.</param>
    /// <param name="seconds">How long it lasts.</param>
    /// <param name="ratio">Power of the tone over power of the noise, in decibels.</param>
    /// <param name="cents">How far it is from its pitch at a time.</param>
    /// <param name="seed">Of the noise and the phases.</param>
    public static float[] Make(double hertz, double[] partials, double seconds, double ratio, int seed, Func<double, double>? cents = null)
    {
        var random = new Random(seed);
        var samples = new float[(int)(seconds * Rate)];
        var phases = partials.Select(_ => random.NextDouble()).ToArray();
        var known = partials.Index().Where(one => (one.Index + 1) * hertz < 0.45 * Rate).ToList();
        var size = 0.25 / Math.Sqrt(known.Sum(one => one.Item * one.Item / 2));
        var noise = 0.25 * Math.Pow(10, -ratio / 20);
        double turns = 0;
        for (var i = 0; i < samples.Length; i++)
        {
            var sum = noise * Normal(random);
            foreach (var (k, amplitude) in known)
            {
                sum += size * amplitude * Math.Sin(2 * Math.PI * (((k + 1) * turns) + phases[k]));
            }

            samples[i] = (float)sum;

            // The pitch in the middle between this sample and the next.
            turns += hertz * Math.Pow(2, (cents?.Invoke((i + 0.5) / Rate) ?? 0) / 1200) / Rate;
            turns -= Math.Floor(turns);
        }

        return samples;
    }

    public static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
