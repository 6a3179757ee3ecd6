using System.Numerics;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>One element of EBML: where it stands, and where its content. RFC 8794, sections 4 to 6.</summary>
internal readonly record struct EbmlElement(uint Id, int Start, int Body, int End, bool HasSize)
{
    /// <summary>The element that begins here; null when none does, or when it would be longer than what is around it.</summary>
    public static EbmlElement? Read(ReadOnlySpan<byte> bytes, int at, int end)
    {
        var idLength = at < end ? LengthOf(bytes[at]) : 0;
        if (idLength is 0 or > 4 || at + idLength >= end || LengthOf(bytes[at + idLength]) is var sizeLength && (sizeLength == 0 || at + idLength + sizeLength > end))
        {
            return null;
        }

        var id = 0U;
        foreach (var next in bytes.Slice(at, idLength))
        {
            id = (id << 8) | next;
        }

        var size = (ulong)(bytes[at + idLength] & (0xFF >> sizeLength));
        foreach (var next in bytes.Slice(at + idLength + 1, sizeLength - 1))
        {
            size = (size << 8) | next;
        }

        // All ones: nobody knew when it was begun. It goes on to the end of what is around it.
        var body = at + idLength + sizeLength;
        var isUnknown = size == (1UL << (7 * sizeLength)) - 1;
        if (isUnknown)
        {
            return EbmlId.MayBeEndless(id) ? new EbmlElement(id, at, body, end, false) : null;
        }

        return size <= (ulong)(end - body) ? new EbmlElement(id, at, body, body + (int)size, true) : null;
    }

    /// <summary>How many bytes a number takes, by its first one; 0 when it can't be one.</summary>
    public static int LengthOf(byte first) => first == 0 ? 0 : BitOperations.LeadingZeroCount((uint)first) - 23;

    /// <summary>Makes nothing of it that takes the same room.</summary>
    public void Blank(Span<byte> bytes)
    {
        var room = bytes[Start..End];
        room.Clear();
        room[0] = (byte)EbmlId.Void;
        if (room.Length <= 128)
        {
            room[1] = (byte)(0x80 | (room.Length - 2));
            return;
        }

        // Eight bytes hold any size.
        System.Buffers.Binary.BinaryPrimitives.WriteUInt64BigEndian(room[1..], (1UL << 56) | (uint)(room.Length - 9));
    }
}

/// <summary>The elements that are known. RFC 9559, section 5.1.</summary>
internal static class EbmlId
{
    public const uint DocType = 0x4282;
    public const uint Void = 0xEC;
    public const uint Checksum = 0xBF;
    public const uint Segment = 0x18538067;
    public const uint SeekHead = 0x114D9B74;
    public const uint Info = 0x1549A966;
    public const uint TimestampScale = 0x2AD7B1;
    public const uint Duration = 0x4489;
    public const uint MuxingApp = 0x4D80;
    public const uint WritingApp = 0x5741;
    public const uint Tracks = 0x1654AE6B;
    public const uint TrackEntry = 0xAE;
    public const uint TrackType = 0x83;
    public const uint CodecId = 0x86;
    public const uint CodecPrivate = 0x63A2;
    public const uint ContentEncodings = 0x6D80;
    public const uint Cluster = 0x1F43B675;
    public const uint Timestamp = 0xE7;
    public const uint Position = 0xA7;
    public const uint PreviousSize = 0xAB;
    public const uint SimpleBlock = 0xA3;
    public const uint BlockGroup = 0xA0;
    public const uint Block = 0xA1;
    public const uint BlockDuration = 0x9B;
    public const uint ReferenceBlock = 0xFB;
    public const uint DiscardPadding = 0x75A2;
    public const uint Cues = 0x1C53BB6B;
    public const uint Tags = 0x1254C367;
    public const uint Attachments = 0x1941A469;
    public const uint Chapters = 0x1043A770;

    /// <summary>Those that stand directly in a segment.</summary>
    public static bool IsPartOfSegment(uint id) => id is SeekHead or Info or Tracks or Cluster or Cues or Tags or Attachments or Chapters;

    /// <summary>Those that may be written before their size is known.</summary>
    public static bool MayBeEndless(uint id) => id is Segment or Cluster;

    /// <summary>Of a track: its number and unique number, the flags, delays and durations, and how the sound is made.</summary>
    public static bool IsKeptOfTrack(uint id) => id is 0xD7 or 0x73C5 or 0xB9 or 0x88 or 0x55AA or 0x9C or 0x56AA or 0x56BB or 0x23E383 or 0xE1;
}
