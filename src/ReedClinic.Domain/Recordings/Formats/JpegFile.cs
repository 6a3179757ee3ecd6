using System.Buffers;
using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>
/// A JPEG: its tables, frame and scans are kept, and which way up it is; whatever a camera or a program wrote beside them is
/// dropped, and whatever stands behind its end. ITU-T T.81, annex B; JFIF 1.02 (ITU-T T.871).
/// </summary>
internal sealed class JpegFile
{
    private const byte Start = 0xD8;
    private const byte End = 0xD9;
    private const byte Scan = 0xDA;
    private const byte QuantTables = 0xDB;
    private const byte RestartInterval = 0xDD;
    private const byte HuffmanTables = 0xC4;
    private const byte FirstApplication = 0xE0;
    private const byte LastApplication = 0xEF;
    private const byte Comment = 0xFE;

    // A progressive picture has ten or so; each one is drawn over the whole of it.
    private const int MostScans = 64;

    private readonly ArrayBufferWriter<byte> _tables = new();
    private byte[] _jfif = [];
    private int _orientation;
    private (int Width, int Height)? _size;
    private int _components;
    private int _scans;

    public static ReadOnlySpan<byte> Beginning => [0xFF, Start, 0xFF];

    public static MediaReading Read(ReadOnlySpan<byte> file)
    {
        var jpeg = new JpegFile();
        for (var at = 2; at + 4 <= file.Length || (at + 2 <= file.Length && file[at + 1] == End);)
        {
            if (file[at] != 0xFF)
            {
                return MediaReading.Broken;
            }

            var marker = file[at + 1];
            if (marker == End)
            {
                return jpeg.Finish();
            }

            // A marker may have more than one byte of ones before it.
            if (marker == 0xFF)
            {
                at++;
                continue;
            }

            int length = BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]);
            if (length < 2 || length > file.Length - at - 2 || !jpeg.Take(marker, file.Slice(at, 2 + length)))
            {
                return jpeg.Refusal();
            }

            at += 2 + length;
            if (marker == Scan)
            {
                at += jpeg.TakeScan(file[at..]);
            }
        }

        return MediaReading.Broken;
    }

    private MediaReading Refusal() => _size is { } size && !MediaFile.IsSmallEnough(size)
        ? new MediaReading.Refused(RecordingRefusal.TooManyPixels)
        : MediaReading.Broken;

    private MediaReading Finish()
    {
        if (_scans == 0 || _size is not { } size)
        {
            return MediaReading.Broken;
        }

        byte[] whole = [0xFF, Start, .. _jfif, .. ExifOrientation.Write(_orientation), .. _tables.WrittenSpan, 0xFF, End];
        return new MediaReading.Clean(MediaType.Jpeg, whole) { Pixels = size };
    }

    private bool Take(byte marker, ReadOnlySpan<byte> segment)
    {
        var body = segment[4..];
        return marker switch
        {
            QuantTables => AreQuantTables(body) && Keep(segment),
            HuffmanTables => AreHuffmanTables(body) && Keep(segment),
            RestartInterval => body.Length == 2 && Keep(segment),
            0xC0 or 0xC1 or 0xC2 => TakeFrame(body) && Keep(segment),
            Scan => IsScan(body) && Keep(segment),
            Comment => true,
            >= FirstApplication and <= LastApplication => TakeApplication(marker, segment),
            _ => false,
        };
    }

    private bool TakeApplication(byte marker, ReadOnlySpan<byte> segment)
    {
        var body = segment[4..];
        if (marker == FirstApplication && body.Length >= 14 && body.StartsWith("JFIF\0"u8))
        {
            // Without the small picture that it may bring.
            _jfif = [0xFF, FirstApplication, 0, 16, .. body[..12], 0, 0];
        }
        else if (marker == 0xE1 && body.StartsWith(ExifOrientation.Beginning) && _orientation == 0)
        {
            _orientation = ExifOrientation.Read(body);
        }
        else if ((marker == 0xE2 && body.Length > 14 && body.StartsWith("ICC_PROFILE\0"u8)) || (marker == 0xEE && body.Length == 12 && body.StartsWith("Adobe"u8)))
        {
            return Keep(segment);
        }

        return true;
    }

    private bool TakeFrame(ReadOnlySpan<byte> body)
    {
        if (_size is not null || body.Length < 6 || body[0] != 8)
        {
            return false;
        }

        _components = body[5];
        var size = (Width: (int)BinaryPrimitives.ReadUInt16BigEndian(body[3..]), Height: (int)BinaryPrimitives.ReadUInt16BigEndian(body[1..]));
        _size = size;
        return size is { Width: > 0, Height: > 0 } && _components is 1 or 3 or 4 && body.Length == 6 + (3 * _components) && MediaFile.IsSmallEnough(size);
    }

    private bool IsScan(ReadOnlySpan<byte> body) =>
        _size is not null && body.Length >= 6 && body[0] >= 1 && body[0] <= _components && body.Length == 4 + (2 * body[0]) && ++_scans <= MostScans;

    // Up to the next marker that is neither a stuffed byte nor a restart.
    private int TakeScan(ReadOnlySpan<byte> rest)
    {
        var at = 0;
        while (rest[at..].IndexOf((byte)0xFF) is >= 0 and var next && at + next + 1 < rest.Length && rest[at + next + 1] is 0 or (>= 0xD0 and <= 0xD7))
        {
            at += next + 2;
        }

        var end = rest[at..].IndexOf((byte)0xFF) is >= 0 and var found ? at + found : rest.Length;
        _tables.Write(rest[..end]);
        return end;
    }

    private static bool AreQuantTables(ReadOnlySpan<byte> body)
    {
        while (!body.IsEmpty)
        {
            var length = 1 + (64 * (1 + (body[0] >> 4)));
            if ((body[0] & 0xEC) != 0 || body.Length < length)
            {
                return false;
            }

            body = body[length..];
        }

        return true;
    }

    private static bool AreHuffmanTables(ReadOnlySpan<byte> body)
    {
        while (!body.IsEmpty)
        {
            var symbols = 0;
            for (var length = 1; length <= 16 && length < body.Length; length++)
            {
                symbols += body[length];
            }

            if ((body[0] & 0xEC) != 0 || symbols > 256 || body.Length < 17 + symbols)
            {
                return false;
            }

            body = body[(17 + symbols)..];
        }

        return true;
    }

    private bool Keep(ReadOnlySpan<byte> segment)
    {
        _tables.Write(segment);
        return true;
    }
}
