using System.Buffers;
using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>A still WebP: the picture, its transparency and its colour profile are kept. RFC 9649.</summary>
internal sealed class WebPFile
{
    private const int ProfileFlag = 0x20;
    private const int AlphaFlag = 0x10;
    private const int MovingFlag = 0x02;
    private const int MostProfile = 1_048_576;

    private readonly ArrayBufferWriter<byte> _out = new();
    private (int Width, int Height)? _canvas;
    private (int Width, int Height)? _picture;
    private int _flagsAt = -1;
    private int _flags;
    private bool _moves;

    private WebPFile() => _out.Write("RIFF\0\0\0\0WEBP"u8);

    public static MediaReading Read(ReadOnlySpan<byte> file)
    {
        var webp = new WebPFile();
        foreach (var chunk in RiffChunks.Read(file) ?? [])
        {
            if (!webp.Take(chunk.Name, chunk.Of(file)))
            {
                return webp._moves ? new MediaReading.Refused(RecordingRefusal.Moving) : MediaReading.Broken;
            }
        }

        return webp._picture is { } size && (webp._canvas ?? size) == size
            ? new MediaReading.Clean(MediaType.WebP, webp.Write()) { Pixels = size }
            : MediaReading.Broken;
    }

    private byte[] Write()
    {
        var bytes = _out.WrittenSpan.ToArray();
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(4), bytes.Length - 8);
        if (_flagsAt >= 0)
        {
            bytes[_flagsAt] = (byte)_flags;
        }

        return bytes;
    }

    private bool Take(string name, ReadOnlySpan<byte> body)
    {
        if (name == "VP8X")
        {
            return TakeHead(body);
        }

        if (name is "ANIM" or "ANMF")
        {
            _moves = true;
            return false;
        }

        if (name is "VP8 " or "VP8L")
        {
            if (_picture is not null || (name == "VP8 " ? Lossy(body) : Lossless(body)) is not { Width: > 0, Height: > 0 } size)
            {
                return false;
            }

            _picture = size;
            return Keep(name, body);
        }

        // Both belong before the picture, and only where the first chunk told of them.
        var isEarly = _flagsAt >= 0 && _picture is null;
        return isEarly && name == "ALPH" ? KeepWith(AlphaFlag, name, body)
            : !isEarly || name != "ICCP" || body.Length > MostProfile || KeepWith(ProfileFlag, name, body);
    }

    private bool TakeHead(ReadOnlySpan<byte> body)
    {
        if (_flagsAt >= 0 || _picture is not null || body.Length != 10)
        {
            return false;
        }

        _moves = (body[0] & MovingFlag) != 0;
        _canvas = (1 + (body[4] | (body[5] << 8) | (body[6] << 16)), 1 + (body[7] | (body[8] << 8) | (body[9] << 16)));
        _flagsAt = _out.WrittenCount + 8;
        _flags = body[0] & AlphaFlag;
        return !_moves && Keep("VP8X", [0, 0, 0, 0, .. body[4..]]);
    }

    // RFC 6386, 9.1: a key frame, its start code, fourteen bits each way.
    private static (int Width, int Height)? Lossy(ReadOnlySpan<byte> body) =>
        body.Length > 10 && (body[0] & 1) == 0 && body[3..6].SequenceEqual((ReadOnlySpan<byte>)[0x9D, 0x01, 0x2A])
            ? (BinaryPrimitives.ReadUInt16LittleEndian(body[6..]) & 0x3FFF, BinaryPrimitives.ReadUInt16LittleEndian(body[8..]) & 0x3FFF)
            : null;

    // RFC 9649, 3.4: a signature, fourteen bits each way less one, the version zero.
    private static (int Width, int Height)? Lossless(ReadOnlySpan<byte> body)
    {
        if (body.Length <= 5 || body[0] != 0x2F)
        {
            return null;
        }

        var bits = BinaryPrimitives.ReadUInt32LittleEndian(body[1..]);
        return bits >> 29 == 0 ? ((int)(bits & 0x3FFF) + 1, (int)((bits >> 14) & 0x3FFF) + 1) : null;
    }

    private bool KeepWith(int flag, string name, ReadOnlySpan<byte> body)
    {
        _flags |= flag;
        return Keep(name, body);
    }

    private bool Keep(string name, ReadOnlySpan<byte> body)
    {
        Span<byte> size = stackalloc byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(size, body.Length);
        _out.Write(System.Text.Encoding.Latin1.GetBytes(name));
        _out.Write(size);
        _out.Write(body);
        if ((body.Length & 1) != 0)
        {
            _out.Write([(byte)0]);
        }

        return true;
    }
}
