using static ReedClinic.Media.Pack;

namespace ReedClinic.Media;

/// <summary>
/// Something like a crow as a wave of 16 bits at 48 kHz: a quiet room, breath, and octaves that come one after the other. It is made
/// up; no recording of a crow was at hand.
/// </summary>
public static class MadeCrow
{
    /// <summary>Makes one; the same each time.</summary>
    /// <param name="cents">How far it lies from C at A4 = 440 Hz.</param>
    /// <param name="late">How much later than the high octave the low one comes, in seconds.</param>
    /// <param name="seconds">How long it is.</param>
    public static byte[] Wave(double cents = -14, double late = 0.2, double seconds = 2)
    {
        const int rate = 48_000;
        const double breath = 0.4;
        var random = new Random(19);
        (double Octave, double Size, double Entry)[] partials = [(2, 0.7, breath + 0.08), (1, 1, breath + 0.08 + (late / 2)), (0, 0.5, breath + 0.08 + late)];
        var data = new byte[2 * (int)(seconds * rate)];
        for (var at = 0; at < data.Length / 2; at++)
        {
            var time = at / (double)rate;
            var noise = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            var sum = noise * (3e-4 + (0.012 * Rise(time, breath)));
            foreach (var (octave, size, entry) in partials)
            {
                var hertz = 261.6255653 * Math.Pow(2, octave + (cents / 1200));
                sum += 0.2 * size * Rise(time, entry) * Math.Sin(2 * Math.PI * ((hertz * time) + (0.3 * octave) + (0.0004 * hertz * Math.Sin(2 * Math.PI * 3 * time) / (2 * Math.PI * 3))));
            }

            BitConverter.TryWriteBytes(data.AsSpan(2 * at), (short)Math.Clamp(Math.Round(32_767 * sum), -32_768, 32_767));
        }

        return SoundFiles.Riffed([.. Riff("fmt ", SoundFiles.Format(1, rate, 1, 16)), .. Riff("data", data)]);
    }

    private static double Rise(double time, double at) => 1 / (1 + Math.Exp(-(time - at) / 0.006));
}
