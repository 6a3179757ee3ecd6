namespace ReedClinic.Measurement.Tests.Sound.Synthetic;

/// <summary>A partial of a crow that is known exactly.</summary>
/// <param name="Octave">4 for the one near C4, and so on.</param>
/// <param name="Hertz">Its pitch.</param>
/// <param name="Amplitude">Its size when it is there.</param>
/// <param name="Entry">When it has half its size.</param>
internal sealed record KnownPartial(int Octave, double Hertz, double Amplitude, double Entry);

/// <summary>
/// Something like a crow, of which everything is known: silence of a room, breath, and partials near C4, C5 and C6 that enter one after the other.
/// It rests on no recording.
/// </summary>
internal sealed record SyntheticCrow(float[] Samples, double BreathOnset, IReadOnlyList<KnownPartial> Partials, double Cents)
{
    private const double C4 = 261.6255653; // ISO 16: A4 = 440 Hz, nine equal semitones below

    /// <summary>Makes one.</summary>
    /// <param name="seed">Everything follows from it.</param>
    /// <param name="ratio">Power of all partials over the breath’s, in decibels.</param>
    /// <param name="octaves">Which partials there are.</param>
    /// <param name="weak">A partial that is 16 dB below the others; 0 for none.</param>
    public static SyntheticCrow Make(int seed, double ratio, int[] octaves, int weak = 0)
    {
        var random = new Random(seed);
        var cents = (random.NextDouble() * 120) - 60;
        var breathOnset = 0.3 + (random.NextDouble() * 0.2);
        var entry = breathOnset + 0.03 + (random.NextDouble() * 0.1);
        var partials = new List<KnownPartial>();
        foreach (var octave in octaves.OrderBy(_ => random.Next()))
        {
            var amplitude = octave == weak ? 0.16 : 0.6 + (0.4 * random.NextDouble());
            partials.Add(new KnownPartial(octave, C4 * Math.Pow(2, octave - 4 + (cents / 1200)), amplitude, entry));
            entry += random.NextDouble() * 0.25;
        }

        var strongest = partials.Max(one => one.Amplitude);
        partials = [.. partials.Select(one => one.Octave == weak ? one with { Amplitude = strongest * Math.Pow(10, -16 / 20.0) } : one).OrderBy(one => one.Octave)];
        return new SyntheticCrow(Fill(random, partials, breathOnset, ratio), breathOnset, partials, cents);
    }

    private static float[] Fill(Random random, List<KnownPartial> partials, double breathOnset, double ratio)
    {
        const double seconds = 2.0, size = 0.2, room = 3e-4;
        var samples = new float[(int)(seconds * SyntheticTone.Rate)];
        var breath = size * Math.Sqrt(partials.Sum(one => one.Amplitude * one.Amplitude / 2)) * Math.Pow(10, -ratio / 20);
        var phases = partials.Select(_ => random.NextDouble()).ToArray();
        var ramps = partials.Select(_ => 0.012 + (0.02 * random.NextDouble())).ToArray();
        var drift = random.NextDouble() * 6;
        double turns = 0;
        for (var i = 0; i < samples.Length; i++)
        {
            var time = (double)i / SyntheticTone.Rate;
            var sum = (room + (breath * Rise(time, breathOnset, 0.01))) * SyntheticTone.Normal(random);
            for (var p = 0; p < partials.Count; p++)
            {
                var turnsOfThis = turns * partials[p].Hertz / partials[0].Hertz;
                sum += size * partials[p].Amplitude * Rise(time, partials[p].Entry, ramps[p]) * Math.Sin(2 * Math.PI * (turnsOfThis + phases[p]));
            }

            samples[i] = (float)(sum * (1 - Rise(time, seconds - 0.15, 0.05)));
            turns += partials[0].Hertz * Math.Pow(2, drift * Math.Sin(2 * Math.PI * 1.3 * time) / 1200) / SyntheticTone.Rate;
        }

        return samples;
    }

    /// <summary>From nothing to all by half a cosine, half at the given time.</summary>
    private static double Rise(double time, double middle, double length)
    {
        var x = ((time - middle) / length) + 0.5;
        return x <= 0 ? 0 : x >= 1 ? 1 : 0.5 - (0.5 * Math.Cos(Math.PI * x));
    }
}
