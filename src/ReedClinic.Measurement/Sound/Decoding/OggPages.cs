using System.Buffers.Binary;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Walks the pages of one Ogg stream (RFC 3533) and puts packets together. Every page takes at least 27 bytes, so that it ends.</summary>
internal ref struct OggPages(ReadOnlySpan<byte> bytes)
{
    private const int Head = 27;
    private static readonly uint[] Sums = MakeSums();

    private readonly ReadOnlySpan<byte> _bytes = bytes;
    private ReadOnlySpan<byte> _lacing;
    private int _body;
    private int _segment;
    private uint _serial;
    private uint _next;
    private bool _isBegun;

    /// <summary>Where the last whole page ends.</summary>
    public int End { get; private set; }

    /// <summary>The position that the last page told, in samples; −1 where it told none.</summary>
    public long Position { get; private set; } = -1;

    /// <summary>True when a page says it is the last.</summary>
    public bool IsEnded { get; private set; }

    /// <summary>True when the stream breaks off: a page is damaged, lost, or cut short.</summary>
    public bool IsBroken { get; private set; }

    /// <summary>Goes to the next page of the stream.</summary>
    public bool Turn()
    {
        var at = _bytes[End..];
        if (IsEnded || at.IsEmpty)
        {
            return false;
        }

        IsBroken = at.Length < Head || !at.StartsWith("OggS"u8) || at[4] != 0 || at.Length < Head + at[26];
        if (IsBroken)
        {
            return false;
        }

        var lacing = at.Slice(Head, at[26]);
        var length = Head + lacing.Length;
        foreach (var one in lacing)
        {
            length += one;
        }

        var serial = BinaryPrimitives.ReadUInt32LittleEndian(at[14..]);
        var number = BinaryPrimitives.ReadUInt32LittleEndian(at[18..]);
        IsBroken = length > at.Length || BinaryPrimitives.ReadUInt32LittleEndian(at[22..]) != Sum(at[..length]) || (_isBegun && (serial != _serial || number != _next));
        if (IsBroken)
        {
            return false;
        }

        _lacing = lacing;
        (_isBegun, _serial, _next, _segment, _body) = (true, serial, number + 1, 0, End + Head + lacing.Length);
        (End, IsEnded, Position) = (End + length, (at[5] & 4) != 0, BinaryPrimitives.ReadInt64LittleEndian(at[6..]));
        return true;
    }

    /// <summary>The next whole packet.</summary>
    /// <param name="buffer">Where to put it; what doesn’t fit ends the stream as damaged.</param>
    /// <returns>Its length; −1 when there is none.</returns>
    public int NextPacket(Span<byte> buffer)
    {
        var length = 0;
        while (true)
        {
            while (_segment < _lacing.Length)
            {
                int size = _lacing[_segment++];
                if (length + size > buffer.Length)
                {
                    IsBroken = true;
                    return -1;
                }

                _bytes.Slice(_body, size).CopyTo(buffer[length..]);
                _body += size;
                length += size;
                if (size < 255)
                {
                    return length;
                }
            }

            if (!Turn())
            {
                return -1;
            }
        }
    }

    private static uint Sum(ReadOnlySpan<byte> page)
    {
        uint sum = 0;
        for (var i = 0; i < page.Length; i++)
        {
            var one = i is >= 22 and < 26 ? (byte)0 : page[i];
            sum = (sum << 8) ^ Sums[(sum >> 24) ^ one];
        }

        return sum;
    }

    private static uint[] MakeSums()
    {
        var sums = new uint[256];
        for (uint i = 0; i < 256; i++)
        {
            var sum = i << 24;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum << 1) ^ ((sum & 0x80000000) != 0 ? 0x04C11DB7u : 0);
            }

            sums[i] = sum;
        }

        return sums;
    }
}
