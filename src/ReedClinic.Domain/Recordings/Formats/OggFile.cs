using System.Buffers;
using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>
/// One stream of Opus or Vorbis in Ogg. Every page's sum is proved; the packet of comments is replaced by an empty one, and the
/// pages are numbered and summed anew. RFC 3533; RFC 7845; Vorbis I specification, sections 4.2 and 5.2.
/// </summary>
internal sealed class OggFile
{
    private const int Head = 27;
    private const int SumAt = 22;
    private const int MostHeaderBytes = 1_048_576;

    private readonly ArrayBufferWriter<byte> _out = new();
    private readonly ArrayBufferWriter<byte> _packet = new();
    private readonly List<byte[]> _headers = [];
    private readonly byte[] _serial = new byte[4];
    private uint _number;
    private uint _written;
    private long _last;
    private bool _ended;

    private bool IsOpus => _headers[0].AsSpan().StartsWith("OpusHead"u8);

    private int HeadersNeeded => _headers.Count > 0 && !IsOpus ? 3 : 2;

    private bool HeadersAreIn => _headers.Count == HeadersNeeded;

    public static MediaReading Read(ReadOnlySpan<byte> file)
    {
        var ogg = new OggFile();
        while (!file.IsEmpty && !ogg._ended)
        {
            var length = PageLength(file);
            if (length == 0 || !ogg.Take(file[..length]))
            {
                return MediaReading.Broken;
            }

            file = file[length..];
        }

        return ogg.HeadersAreIn && ogg.Milliseconds is { } played
            ? new MediaReading.Clean(MediaType.Ogg, ogg._out.WrittenMemory) { Milliseconds = played }
            : MediaReading.Broken;
    }

    private int? Milliseconds
    {
        get
        {
            var head = _headers[0].AsSpan();
            var played = IsOpus ? _last - BinaryPrimitives.ReadUInt16LittleEndian(head[10..]) : _last;
            var rate = IsOpus ? 48_000 : BinaryPrimitives.ReadUInt32LittleEndian(head[12..]);
            return played > 0 ? (int)Math.Min(played / rate * 1000 + (played % rate * 1000 / rate), int.MaxValue) : null;
        }
    }

    private static int PageLength(ReadOnlySpan<byte> file)
    {
        if (file.Length < Head || !file.StartsWith("OggS"u8) || file[4] != 0 || file.Length < Head + file[26])
        {
            return 0;
        }

        var length = Head + file[26];
        foreach (var lacing in file.Slice(Head, file[26]))
        {
            length += lacing;
        }

        return length <= file.Length ? length : 0;
    }

    private bool Take(ReadOnlySpan<byte> page)
    {
        var sum = Checksums.Ogg(Checksums.Ogg(Checksums.Ogg(0, page[..SumAt]), [0, 0, 0, 0]), page[(SumAt + 4)..]);
        var isFirst = _number == 0;
        var number = BinaryPrimitives.ReadUInt32LittleEndian(page[18..]);
        if (sum != BinaryPrimitives.ReadUInt32LittleEndian(page[SumAt..]) || (page[5] & 2) != 0 != isFirst || (!isFirst && number != _number))
        {
            return false;
        }

        if (isFirst)
        {
            page[14..18].CopyTo(_serial);
            _number = number;
        }

        _number++;
        _ended = (page[5] & 4) != 0;
        return page[14..18].SequenceEqual(_serial) && (_headers.Count == 0 || !HeadersAreIn ? TakeHeaders(page) : TakeSound(page));
    }

    // The packets before the sound; the last of them ends its page.
    private bool TakeHeaders(ReadOnlySpan<byte> page)
    {
        var at = Head + page[26];
        for (var segment = 0; segment < page[26]; segment++)
        {
            if (_headers.Count > 0 && HeadersAreIn)
            {
                return false;
            }

            int length = page[Head + segment];
            _packet.Write(page.Slice(at, length));
            at += length;
            if (_packet.WrittenCount > MostHeaderBytes)
            {
                return false;
            }

            if (length < 255)
            {
                _headers.Add(_packet.WrittenSpan.ToArray());
                _packet.ResetWrittenCount();
                if (!IsHeader(_headers[^1], _headers.Count))
                {
                    return false;
                }
            }
        }

        // The first one stands alone on its page.
        return (_number > 1 || _headers.Count == 1) && (!HeadersAreIn || WriteHeaders());
    }

    private bool IsHeader(ReadOnlySpan<byte> packet, int which) => which switch
    {
        1 when packet.StartsWith("OpusHead"u8) => packet.Length >= 19 && packet[8] < 16 && packet[9] is 1 or 2 && packet[18] == 0,
        1 => packet.StartsWith("\x01vorbis"u8) && packet.Length == 30 && packet[7..11].IndexOfAnyExcept((byte)0) < 0 && packet[11] is 1 or 2
            && BinaryPrimitives.ReadUInt32LittleEndian(packet[12..]) is >= 8_000 and <= 192_000 && (packet[29] & 1) == 1,
        2 => packet.StartsWith(IsOpus ? "OpusTags"u8 : "\x03vorbis"u8),
        _ => packet.StartsWith("\x05vorbis"u8),
    };

    private bool WriteHeaders()
    {
        _headers[1] = IsOpus
            ? [.. "OpusTags"u8, 0, 0, 0, 0, 0, 0, 0, 0]
            : [.. "\x03vorbis"u8, 0, 0, 0, 0, 0, 0, 0, 0, 1];
        WritePackets(2, [_headers[0]]);
        WritePackets(0, _headers.Skip(1));
        return true;
    }

    // As many pages as the packets need, each filled before the next is begun.
    private void WritePackets(byte flags, IEnumerable<byte[]> packets)
    {
        var lacing = new List<byte>();
        var content = new ArrayBufferWriter<byte>();
        foreach (var packet in packets)
        {
            lacing.AddRange(Enumerable.Repeat((byte)255, packet.Length / 255));
            lacing.Add((byte)(packet.Length % 255));
            content.Write(packet);
        }

        for (int segment = 0, at = 0; segment < lacing.Count;)
        {
            var these = lacing.Skip(segment).Take(255).ToArray();
            var length = these.Sum(one => one);
            var goesOn = segment > 0 && lacing[segment - 1] == 255 ? 1 : 0;
            segment += these.Length;

            // A page on which no packet ends has no position: all ones.
            var position = these.All(one => one == 255) ? (byte)0xFF : (byte)0;
            WritePage(
                [.. "OggS\0"u8, (byte)(flags | goesOn), .. Enumerable.Repeat(position, 8), .. _serial, 0, 0, 0, 0, 0, 0, 0, 0, (byte)these.Length, .. these, .. content.WrittenSpan.Slice(at, length)]);
            at += length;
        }
    }

    private bool TakeSound(ReadOnlySpan<byte> page)
    {
        var position = BinaryPrimitives.ReadInt64LittleEndian(page[6..]);
        if (position != -1)
        {
            if (position < _last)
            {
                return false;
            }

            _last = position;
        }

        WritePage(page.ToArray());
        return true;
    }

    private void WritePage(byte[] page)
    {
        BinaryPrimitives.WriteUInt32LittleEndian(page.AsSpan(18), _written++);
        BinaryPrimitives.WriteUInt32LittleEndian(page.AsSpan(SumAt), 0);
        BinaryPrimitives.WriteUInt32LittleEndian(page.AsSpan(SumAt), Checksums.Ogg(0, page));
        _out.Write(page);
    }
}
