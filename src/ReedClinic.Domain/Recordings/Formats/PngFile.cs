using System.Buffers;
using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>A PNG: what draws it is kept, what tells of it is dropped. ISO/IEC 15948 (W3C Portable Network Graphics).</summary>
internal sealed class PngFile
{
    private const int MostProfile = 1_048_576;

    private readonly ArrayBufferWriter<byte> _out = new();
    private (int Width, int Height)? _size;
    private bool _sawPixels;
    private bool _afterPixels;
    private bool _isWhole;

    private PngFile() => _out.Write(Beginning);

    public static ReadOnlySpan<byte> Beginning => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    public static MediaReading Read(ReadOnlySpan<byte> file)
    {
        var png = new PngFile();
        for (var at = Beginning.Length; !png._isWhole;)
        {
            if (file.Length - at < 12 || BinaryPrimitives.ReadUInt32BigEndian(file[at..]) is var size && size > file.Length - at - 12)
            {
                return MediaReading.Broken;
            }

            var chunk = file.Slice(at, 12 + (int)size);
            if (BinaryPrimitives.ReadUInt32BigEndian(chunk[^4..]) != Checksums.Png(chunk[4..^4]) || !png.Take(chunk))
            {
                return MediaReading.Broken;
            }

            // A lie about pixels is told at once, before anything is read of them.
            if (png._size is { } pixels && !MediaFile.IsSmallEnough(pixels))
            {
                return new MediaReading.Refused(RecordingRefusal.TooManyPixels);
            }

            at += chunk.Length;
        }

        return new MediaReading.Clean(MediaType.Png, png._out.WrittenMemory) { Pixels = png._size };
    }

    private bool Take(ReadOnlySpan<byte> chunk)
    {
        var name = chunk[4..8];
        var body = chunk[8..^4];
        if (name.SequenceEqual("IHDR"u8))
        {
            return _size is null && ReadHead(body) && Keep(chunk);
        }

        if (_size is null)
        {
            return false;
        }

        if (name.SequenceEqual("IDAT"u8))
        {
            _sawPixels = true;
            return !_afterPixels && Keep(chunk);
        }

        _afterPixels = _sawPixels;
        if (name.SequenceEqual("IEND"u8))
        {
            _isWhole = _sawPixels && body.IsEmpty;
            return _isWhole && Keep(chunk);
        }

        if (name.SequenceEqual("PLTE"u8))
        {
            return body.Length is > 0 and <= 768 && body.Length % 3 == 0 && Keep(chunk);
        }

        // An ancillary chunk has a small first letter; whatever else must be drawn, we don't know.
        return !IsKept(name, body) ? (name[0] & 0x20) != 0 : Keep(chunk);
    }

    private static bool IsKept(ReadOnlySpan<byte> name, ReadOnlySpan<byte> body) =>
        (name.SequenceEqual("gAMA"u8) && body.Length == 4)
        || (name.SequenceEqual("sRGB"u8) && body.Length == 1)
        || (name.SequenceEqual("cHRM"u8) && body.Length == 32)
        || (name.SequenceEqual("pHYs"u8) && body.Length == 9)
        || (name.SequenceEqual("tRNS"u8) && body.Length <= 256)
        || (name.SequenceEqual("iCCP"u8) && body.Length <= MostProfile);

    private bool ReadHead(ReadOnlySpan<byte> body)
    {
        if (body.Length != 13)
        {
            return false;
        }

        var (width, height) = (BinaryPrimitives.ReadUInt32BigEndian(body), BinaryPrimitives.ReadUInt32BigEndian(body[4..]));
        _size = ((int)Math.Min(width, int.MaxValue), (int)Math.Min(height, int.MaxValue));
        var depthFits = body[9] switch
        {
            0 => body[8] is 1 or 2 or 4 or 8 or 16,
            3 => body[8] is 1 or 2 or 4 or 8,
            2 or 4 or 6 => body[8] is 8 or 16,
            _ => false,
        };
        return width > 0 && height > 0 && depthFits && body[10] == 0 && body[11] == 0 && body[12] <= 1;
    }

    private bool Keep(ReadOnlySpan<byte> chunk)
    {
        _out.Write(chunk);
        return true;
    }
}
