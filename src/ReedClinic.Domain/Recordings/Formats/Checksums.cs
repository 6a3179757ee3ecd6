namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>The sums by which files say that they are whole.</summary>
internal static class Checksums
{
    private static readonly uint[] PngTable = [.. Enumerable.Range(0, 256).Select(value => Reflected((uint)value))];
    private static readonly uint[] OggTable = [.. Enumerable.Range(0, 256).Select(value => Forward((uint)value, 32, 0x04C11DB7))];
    private static readonly ushort[] Flac16Table = [.. Enumerable.Range(0, 256).Select(value => (ushort)Forward((uint)value, 16, 0x8005))];
    private static readonly byte[] Flac8Table = [.. Enumerable.Range(0, 256).Select(value => (byte)Forward((uint)value, 8, 0x07))];

    /// <summary>PNG's, over a chunk's name and content. ISO/IEC 15948, 5.5.</summary>
    public static uint Png(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var next in bytes)
        {
            sum = PngTable[(byte)(sum ^ next)] ^ (sum >> 8);
        }

        return ~sum;
    }

    /// <summary>Ogg's, over a page in which the sum itself is zero. RFC 3533, section 6.</summary>
    public static uint Ogg(uint sum, ReadOnlySpan<byte> bytes)
    {
        foreach (var next in bytes)
        {
            sum = (sum << 8) ^ OggTable[(byte)(sum >> 24) ^ next];
        }

        return sum;
    }

    /// <summary>FLAC's over a frame, one byte further: zero at its end. RFC 9639, 9.3.</summary>
    public static ushort Flac16(ushort sum, byte next) => (ushort)((sum << 8) ^ Flac16Table[(byte)(sum >> 8) ^ next]);

    /// <summary>FLAC's over a frame's header: zero when the header's own is taken along. RFC 9639, 9.1.8.</summary>
    public static byte Flac8(ReadOnlySpan<byte> bytes)
    {
        byte sum = 0;
        foreach (var next in bytes)
        {
            sum = Flac8Table[sum ^ next];
        }

        return sum;
    }

    private static uint Reflected(uint value)
    {
        for (var bit = 0; bit < 8; bit++)
        {
            value = (value & 1) != 0 ? 0xEDB88320 ^ (value >> 1) : value >> 1;
        }

        return value;
    }

    private static uint Forward(uint value, int width, uint polynomial)
    {
        var sum = (ulong)value << (width - 8);
        for (var bit = 0; bit < 8; bit++)
        {
            sum <<= 1;
            if ((sum >> width) != 0)
            {
                sum ^= (1UL << width) | polynomial;
            }
        }

        return (uint)sum;
    }
}
