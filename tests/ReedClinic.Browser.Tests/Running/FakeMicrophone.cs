using System.Buffers.Binary;
using System.Text;

namespace ReedClinic.Browser.Tests.Running;

/// <summary>
/// What the run's Chromium hears wherever a page asks for a microphone: a quiet room, then something like a crow, then the room again, over and
/// over. Each page that asks hears it from its beginning.
/// </summary>
public static class FakeMicrophone
{
    /// <summary>The crow's pitch: a C4 that is 12 cents sharp, with C5 and C6; A4 = 440 Hz (ISO 16:1975).</summary>
    public const double Hertz = 263.4453;

    /// <summary>Seconds until the crow sounds.</summary>
    public const double Begins = 6;

    /// <summary>Seconds until it is over.</summary>
    public const double Ends = 9.5;

    private const int Rate = 48_000;
    private const double Seconds = 12;

    /// <summary>Writes the crow as a file.</summary>
    /// <param name="path">Where.</param>
    public static void Write(string path) => Write(path, Seconds, time =>
    {
        var there = Math.Clamp(Math.Min(time - Begins, Ends - time) / 0.02, 0, 1);
        double Partial(int octave, double size, double phase) => size * Math.Sin((2 * Math.PI * Hertz * octave * time) + phase);
        return there * (Partial(1, 0.12, 0) + Partial(2, 0.2, 1) + Partial(4, 0.1, 2));
    });

    /// <summary>Writes a sound in a quiet room as a file: 16 bits, one channel.</summary>
    /// <param name="path">Where.</param>
    /// <param name="seconds">How long it is.</param>
    /// <param name="sound">The sound at a time, as a fraction of full scale.</param>
    public static void Write(string path, double seconds, Func<double, double> sound)
    {
        var random = new Random(20261126);
        var samples = new byte[(int)(seconds * Rate) * 2];
        for (var i = 0; i < samples.Length / 2; i++)
        {
            var sum = sound((double)i / Rate);
            sum += (sum == 0 ? 0.0006 : 0.004) * (random.NextDouble() - 0.5);
            BinaryPrimitives.WriteInt16LittleEndian(samples.AsSpan(2 * i), (short)Math.Round(sum * 32767));
        }

        File.WriteAllBytes(path, [.. Head(samples.Length), .. samples]);
    }

    private static byte[] Head(int bytes)
    {
        var head = new byte[44];
        Encoding.ASCII.GetBytes("RIFF").CopyTo(head, 0);
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(4), 36 + bytes);
        Encoding.ASCII.GetBytes("WAVEfmt ").CopyTo(head, 8);
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(16), 16);
        BinaryPrimitives.WriteInt16LittleEndian(head.AsSpan(20), 1);
        BinaryPrimitives.WriteInt16LittleEndian(head.AsSpan(22), 1);
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(24), Rate);
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(28), 2 * Rate);
        BinaryPrimitives.WriteInt16LittleEndian(head.AsSpan(32), 2);
        BinaryPrimitives.WriteInt16LittleEndian(head.AsSpan(34), 16);
        Encoding.ASCII.GetBytes("data").CopyTo(head, 36);
        BinaryPrimitives.WriteInt32LittleEndian(head.AsSpan(40), bytes);
        return head;
    }
}
