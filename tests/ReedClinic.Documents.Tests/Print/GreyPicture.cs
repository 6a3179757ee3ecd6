using System.Buffers.Binary;
using System.IO.Compression;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>A picture in sixteen greys, which is enough here and keeps files small: read from the plain one that pdftoppm writes (PGM, “P5”), kept as a PNG of 8 bits a pixel (ISO/IEC 15948).</summary>
internal sealed class GreyPicture
{
    private static readonly byte[] Signature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    private readonly byte[] pixels;

    private GreyPicture(int width, int height, byte[] pixels) => (Width, Height, this.pixels) = (width, height, pixels);

    public int Width { get; }

    public int Height { get; }

    /// <summary>Reads a PGM: “P5”, width, height and the whitest grey, each on a line or behind a space, and the pixels.</summary>
    public static GreyPicture Plain(byte[] pgm)
    {
        List<int> numbers = [];
        var at = 2;
        for (; numbers.Count < 3; at++)
        {
            var number = 0;
            for (; pgm[at] is >= (byte)'0' and <= (byte)'9'; at++)
            {
                number = (number * 10) + pgm[at] - '0';
                if (!(pgm[at + 1] is >= (byte)'0' and <= (byte)'9'))
                {
                    numbers.Add(number);
                }
            }
        }

        Assert.Equal(("P5", 255), (System.Text.Encoding.ASCII.GetString(pgm, 0, 2), numbers[2]));
        return new(numbers[0], numbers[1], [.. pgm[^(numbers[0] * numbers[1])..].Select(pixel => (byte)((pixel + 8) / 17 * 17))]);
    }

    public static GreyPicture Read(ReadOnlySpan<byte> png)
    {
        Assert.Equal(Signature, png[..8].ToArray());
        var (width, height) = (0, 0);
        using var packed = new MemoryStream();
        for (var at = 8; at < png.Length;)
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(png[at..]);
            var kind = png.Slice(at + 4, 4);
            var data = png.Slice(at + 8, length);
            if (kind.SequenceEqual("IHDR"u8))
            {
                (width, height) = (BinaryPrimitives.ReadInt32BigEndian(data), BinaryPrimitives.ReadInt32BigEndian(data[4..]));
                Assert.Equal([8, 0, 0, 0, 0], data[8..].ToArray());
            }
            else if (kind.SequenceEqual("IDAT"u8))
            {
                packed.Write(data);
            }

            at += length + 12;
        }

        packed.Position = 0;
        using var zlib = new ZLibStream(packed, CompressionMode.Decompress);
        var rows = new byte[(width + 1) * height];
        zlib.ReadExactly(rows);
        return new(width, height, Unfiltered(rows, width, height));
    }

    /// <summary>Whether anything darker than the paler half of the greys lies in a box, its right and lower ends not of it.</summary>
    public bool HasInk(int left, int top, int right, int bottom)
    {
        for (var y = Math.Max(0, top); y < Math.Min(Height, bottom); y++)
        {
            for (var x = Math.Max(0, left); x < Math.Min(Width, right); x++)
            {
                if (pixels[(y * Width) + x] < 200)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>The lowest row above another that has ink; 0 where none has.</summary>
    public int LastInk(int above) => Enumerable.Range(0, Math.Min(above, Height)).LastOrDefault(row => HasInk(0, row, Width, row + 1));

    /// <summary>The picture as a PNG.</summary>
    public byte[] Png()
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            for (var y = 0; y < Height; y++)
            {
                zlib.WriteByte(0);
                zlib.Write(pixels.AsSpan(y * Width, Width));
            }
        }

        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, Width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), Height);
        header[8] = 8;
        return [.. Signature, .. Chunk("IHDR"u8, header), .. Chunk("IDAT"u8, packed.ToArray()), .. Chunk("IEND"u8, [])];
    }

    private static byte[] Chunk(ReadOnlySpan<byte> kind, byte[] data)
    {
        byte[] body = [.. kind, .. data];
        var (length, check) = (new byte[4], new byte[4]);
        BinaryPrimitives.WriteInt32BigEndian(length, data.Length);
        BinaryPrimitives.WriteUInt32BigEndian(check, Check(body));
        return [.. length, .. body, .. check];
    }

    // CRC-32 as in ISO/IEC 15948, annex D.
    private static uint Check(byte[] data) => ~data.Aggregate(uint.MaxValue, (check, one) =>
    {
        check ^= one;
        for (var bit = 0; bit < 8; bit++)
        {
            check = (check & 1) == 1 ? (check >> 1) ^ 0xEDB88320 : check >> 1;
        }

        return check;
    });

    /// <summary>The mean grey of each square of so many pixels, from the upper left, row by row.</summary>
    public double[] Means(int side)
    {
        var (across, down) = ((Width + side - 1) / side, (Height + side - 1) / side);
        var (sums, counts) = (new double[across * down], new int[across * down]);
        for (var at = 0; at < pixels.Length; at++)
        {
            var block = (at / Width / side * across) + (at % Width / side);
            sums[block] += pixels[at];
            counts[block]++;
        }

        return [.. sums.Select((sum, block) => sum / counts[block])];
    }

    private static byte[] Unfiltered(byte[] rows, int width, int height)
    {
        var plain = new byte[width * height];
        byte At(int x, int y) => x < 0 || y < 0 ? (byte)0 : plain[(y * width) + x];
        for (var y = 0; y < height; y++)
        {
            var filter = rows[y * (width + 1)];
            for (var x = 0; x < width; x++)
            {
                var (left, up, corner) = (At(x - 1, y), At(x, y - 1), At(x - 1, y - 1));
                plain[(y * width) + x] = (byte)(rows[(y * (width + 1)) + 1 + x] + (filter switch
                {
                    0 => 0,
                    1 => left,
                    2 => up,
                    3 => (left + up) / 2,
                    4 => Paeth(left, up, corner),
                    _ => throw new InvalidDataException($"There is no filter {filter}."),
                }));
            }
        }

        return plain;
    }

    private static int Paeth(int left, int up, int corner)
    {
        var guess = left + up - corner;
        var (a, b, c) = (Math.Abs(guess - left), Math.Abs(guess - up), Math.Abs(guess - corner));
        return a <= b && a <= c ? left : b <= c ? up : corner;
    }
}
