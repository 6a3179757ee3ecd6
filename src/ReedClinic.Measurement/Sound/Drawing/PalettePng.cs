using System.Buffers.Binary;
using System.IO.Compression;

namespace ReedClinic.Measurement.Sound.Drawing;

/// <summary>Writes a picture of up to 16 colours as PNG with a palette, four bits a point (ISO/IEC 15948:2004, clauses 5, 11.2 and 9).</summary>
internal static class PalettePng
{
    private const int Bits = 4;
    private const int ByPalette = 3;

    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(value => Reflected((uint)value))];

    private static ReadOnlySpan<byte> Beginning => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Writes a picture.</summary>
    /// <param name="points">The number of each point’s colour, row by row from the top.</param>
    /// <param name="width">Points in a row.</param>
    /// <param name="palette">Red, green and blue of each colour; at most 16 colours.</param>
    public static byte[] Write(ReadOnlySpan<byte> points, int width, ReadOnlySpan<byte> palette)
    {
        var height = points.Length / width;
        using var made = new MemoryStream();
        made.Write(Beginning);
        Span<byte> head = stackalloc byte[13];
        head.Clear();
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head[4..], height);
        (head[8], head[9]) = (Bits, ByPalette);
        Chunk(made, "IHDR"u8, head);
        Chunk(made, "PLTE"u8, palette);
        Chunk(made, "IDAT"u8, Packed(points, width, height));
        Chunk(made, "IEND"u8, []);
        return made.ToArray();
    }

    // Each row begins with the number of its filter: none, which is best where few colours lie in large areas.
    private static byte[] Packed(ReadOnlySpan<byte> points, int width, int height)
    {
        var row = 1 + ((width + 1) / 2);
        var rows = new byte[row * height];
        for (var at = 0; at < points.Length; at++)
        {
            rows[((at / width) * row) + 1 + (at % width / 2)] |= (byte)((points[at] & 15) << ((at % width & 1) == 0 ? 4 : 0));
        }

        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            zlib.Write(rows);
        }

        return packed.ToArray();
    }

    private static void Chunk(MemoryStream made, ReadOnlySpan<byte> name, ReadOnlySpan<byte> content)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
        made.Write(number);
        made.Write(name);
        made.Write(content);
        BinaryPrimitives.WriteUInt32BigEndian(number, ~Sum(Sum(uint.MaxValue, name), content));
        made.Write(number);
    }

    private static uint Sum(uint sum, ReadOnlySpan<byte> bytes)
    {
        foreach (var next in bytes)
        {
            sum = Table[(byte)(sum ^ next)] ^ (sum >> 8);
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
}
