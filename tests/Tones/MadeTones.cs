using System.Text.Json;

namespace ReedClinic.Tones;

/// <summary>One partial of a made tone.</summary>
/// <param name="Hertz">Its pitch.</param>
/// <param name="Size">Its size, as a fraction of full scale.</param>
/// <param name="Entry">Seconds until it has half of that.</param>
public sealed record MadePartial(double Hertz, double Size, double Entry);

/// <summary>A tone of which everything is known.</summary>
/// <param name="Name">What it is like.</param>
/// <param name="Seed">Its noise and phases follow from it.</param>
/// <param name="Noise">Standard deviation of the white noise that begins with it, as a fraction of full scale.</param>
/// <param name="Partials">What sounds.</param>
/// <param name="Hertz">Its pitch.</param>
/// <param name="Octaves">Which octaves near C4, C5 and C6 sound; null where that isn’t asked.</param>
public sealed record MadeTone(string Name, uint Seed, double Noise, IReadOnlyList<MadePartial> Partials, double Hertz, IReadOnlyList<int>? Octaves)
{
    private const double Room = 1e-4;
    private const double Rise = 0.02;

    /// <summary>The samples, one channel.</summary>
    public float[] Samples()
    {
        var all = MadeTones.All;
        var state = Seed;
        var phases = Partials.Select(_ => Next(ref state)).ToArray();
        var begins = Partials.Min(one => one.Entry);
        var samples = new float[(int)(all.Seconds * all.Rate)];
        for (var i = 0; i < samples.Length; i++)
        {
            var time = (double)i / all.Rate;
            var normal = Math.Sqrt(-2 * Math.Log(1 - Next(ref state))) * Math.Cos(2 * Math.PI * Next(ref state));
            var sum = (Room + (Noise * Risen(time, begins))) * normal;
            for (var k = 0; k < phases.Length; k++)
            {
                sum += Partials[k].Size * Risen(time, Partials[k].Entry) * Math.Sin(2 * Math.PI * ((Partials[k].Hertz * time) + phases[k]));
            }

            samples[i] = (float)sum;
        }

        return samples;
    }

    /// <summary>From nothing to all by half a cosine, half at the given time.</summary>
    private static double Risen(double time, double middle) => 0.5 - (0.5 * Math.Cos(Math.PI * Math.Clamp(((time - middle) / Rise) + 0.5, 0, 1)));

    /// <summary>From 0 to 1: a counter, mixed by multiplying and shifting (Mulberry32, in the public domain).</summary>
    private static double Next(ref uint state)
    {
        state += 0x6D2B79F5;
        var mixed = (state ^ (state >> 15)) * (1 | state);
        mixed = (mixed + ((mixed ^ (mixed >> 7)) * (61 | mixed))) ^ mixed;
        return (mixed ^ (mixed >> 14)) / 4294967296.0;
    }
}

/// <summary>All made tones: they stand in tones.json, and both readers of pitch are tried on them, the server’s and the browser’s.</summary>
/// <param name="Rate">Samples a second.</param>
/// <param name="Seconds">How long each lasts.</param>
/// <param name="Settled">Seconds after which each is steady and complete.</param>
/// <param name="Tones">The tones.</param>
public sealed record MadeTones(int Rate, double Seconds, double Settled, IReadOnlyList<MadeTone> Tones)
{
    private static readonly JsonSerializerOptions Plain = new(JsonSerializerDefaults.Web);

    /// <summary>As they stand in the file.</summary>
    public static MadeTones All { get; } = Read();

    /// <summary>How far one pitch is from another, in cents; plus when it is sharper.</summary>
    public static double Cents(double hertz, double from) => 1200 * Math.Log2(hertz / from);

    private static MadeTones Read()
    {
        using var stream = typeof(MadeTones).Assembly.GetManifestResourceStream("tones.json")!;
        return JsonSerializer.Deserialize<MadeTones>(stream, Plain)!;
    }
}
