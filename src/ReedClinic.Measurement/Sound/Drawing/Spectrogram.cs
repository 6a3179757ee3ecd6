using ReedClinic.Measurement.Sound.Decoding;
using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Measurement.Sound.Drawing;

/// <summary>
/// A clip as a picture of its partials: time to the right, pitch upwards by octaves from <see cref="LowestHertz"/> to
/// <see cref="HighestHertz"/>, and the darker, the stronger, down to 60 dB under the strongest point.
/// </summary>
/// <remarks>
/// A Hann window of 85 ms (4,096 samples at 48 kHz), one for each column. Sixteen shades from paper to ink, so that it is read
/// without colour. A picture takes 56 kB before it is packed, whatever the clip.
/// </remarks>
public static class Spectrogram
{
    /// <summary>Points from left to right.</summary>
    public const int Width = 560;

    /// <summary>Points from top to bottom: 30 to an octave.</summary>
    public const int Height = 180;

    /// <summary>The pitch at the lower edge.</summary>
    public const double LowestHertz = 130.8127826502993;

    /// <summary>The pitch at the upper edge, six octaves higher.</summary>
    public const double HighestHertz = LowestHertz * 64;

    private const int Window = 4096;
    private const int Shades = 16;
    private const double Depth = 60;

    // From paper by slate to ink, in even steps to the eye.
    private static readonly byte[] Palette = [.. Enumerable.Range(0, Shades).SelectMany(Shade)];

    /// <summary>Draws a clip.</summary>
    /// <param name="clip">One channel at 48 kHz.</param>
    /// <returns>A PNG.</returns>
    public static byte[] Png(ReadOnlySpan<float> clip)
    {
        var fft = new Fft(Window);
        var (bell, samples) = (Bell(), new float[Window]);
        var powers = new float[Width * Height];
        for (var column = 0; column < Width; column++)
        {
            var middle = (int)((column + 0.5) * clip.Length / Width);
            for (var i = 0; i < Window; i++)
            {
                var at = middle - (Window / 2) + i;
                samples[i] = at < 0 || at >= clip.Length ? 0 : clip[at] * bell[i];
            }

            fft.Transform(samples);
            Column(fft, powers, column);
        }

        return PalettePng.Write(Shaded(powers), Width, Palette);
    }

    /// <summary>The strongest line that falls into each point; where lines are wider apart than points, the nearest one.</summary>
    private static void Column(Fft fft, float[] powers, int column)
    {
        for (var row = 0; row < Height; row++)
        {
            var (low, high) = (LineAt(row - 0.5), LineAt(row + 0.5));
            var power = fft.PowerOf((int)Math.Round((low + high) / 2));
            for (var line = (int)Math.Ceiling(low); line <= high; line++)
            {
                power = Math.Max(power, fft.PowerOf(line));
            }

            powers[((Height - 1 - row) * Width) + column] = power;
        }
    }

    private static double LineAt(double row) => LowestHertz * Math.Pow(2, 6 * (row + 0.5) / Height) * Window / SoundClip.Rate;

    private static byte[] Shaded(float[] powers)
    {
        var strongest = Math.Max(1e-12, powers.Max());
        var points = new byte[powers.Length];
        for (var at = 0; at < powers.Length; at++)
        {
            var under = 10 * Math.Log10(Math.Max(1e-20, powers[at]) / strongest);
            points[at] = (byte)Math.Clamp((int)((under + Depth) / Depth * Shades), 0, Shades - 1);
        }

        return points;
    }

    private static float[] Bell()
    {
        var bell = new float[Window];
        for (var i = 0; i < Window; i++)
        {
            bell[i] = (float)((1 - Math.Cos(2 * Math.PI * (i + 0.5) / Window)) / 2);
        }

        return bell;
    }

    private static IEnumerable<byte> Shade(int shade)
    {
        (int Red, int Green, int Blue) paper = (0xFB, 0xF8, 0xF2), slate = (0x4A, 0x60, 0x78), ink = (0x1E, 0x2A, 0x2F);
        var place = shade / (Shades - 1.0);
        var (from, to, part) = place < 0.6 ? (paper, slate, place / 0.6) : (slate, ink, (place - 0.6) / 0.4);
        return [Mixed(from.Red, to.Red, part), Mixed(from.Green, to.Green, part), Mixed(from.Blue, to.Blue, part)];
    }

    private static byte Mixed(int from, int to, double part) => (byte)Math.Round(from + ((to - from) * part));
}
