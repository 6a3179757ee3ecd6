using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Readings;

/// <summary>What a clip sounds like from moment to moment, thinned to what a drawing can show.</summary>
/// <param name="Step">Seconds from one moment to the next; above 0.</param>
/// <param name="Hertz">The pitch in each, in hertz; null where none is heard.</param>
/// <param name="Decibels">The level in each, in decibels relative to full scale: −120 to 0.</param>
/// <remarks>
/// Kept as bytes: a version, the step as a float, then for each moment tenths of a cent from 440 Hz in two bytes and halves of
/// a decibel in one. So a pitch is kept to a twentieth of a cent, and 600 moments take 1.8 kB.
/// </remarks>
public sealed record SoundSeries(float Step, IReadOnlyList<double?> Hertz, IReadOnlyList<double> Decibels)
{
    /// <summary>The most moments that are kept.</summary>
    public const int Most = 600;

    /// <summary>The least level that is told from silence.</summary>
    public const double Silence = -120;

    private const byte Version = 1;
    private const int Head = 5;
    private const int Each = 3;
    private const double A4 = 440;

    /// <summary>How many moments there are.</summary>
    public int Count => Hertz.Count;

    /// <summary>The bytes that are kept.</summary>
    public byte[] ToBytes()
    {
        var bytes = new byte[Head + (Each * Count)];
        bytes[0] = Version;
        BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(1), Step);
        for (var at = 0; at < Count; at++)
        {
            var here = bytes.AsSpan(Head + (Each * at));
            BinaryPrimitives.WriteInt16LittleEndian(here, Hertz[at] is { } pitch ? (short)Math.Clamp(Math.Round(12_000 * Math.Log2(pitch / A4)), short.MinValue + 1, short.MaxValue) : short.MinValue);
            here[2] = (byte)Math.Clamp(Math.Round(-2 * Decibels[at]), 0, 240);
        }

        return bytes;
    }

    /// <summary>Reads what was kept.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <returns>The series; null when they are of another version or broken.</returns>
    public static SoundSeries? Read(ReadOnlySpan<byte> bytes)
    {
        var step = bytes.Length < Head ? 0 : BinaryPrimitives.ReadSingleLittleEndian(bytes[1..]);
        if (step is not (> 0 and < 60) || bytes[0] != Version || (bytes.Length - Head) % Each != 0)
        {
            return null;
        }

        var count = (bytes.Length - Head) / Each;
        var (hertz, levels) = (new double?[count], new double[count]);
        for (var at = 0; at < count; at++)
        {
            var here = bytes[(Head + (Each * at))..];
            var tenths = BinaryPrimitives.ReadInt16LittleEndian(here);
            hertz[at] = tenths == short.MinValue ? null : A4 * Math.Pow(2, tenths / 12_000.0);
            levels[at] = here[2] / -2.0;
        }

        return new SoundSeries(step, hertz, levels);
    }
}
