using System.Buffers.Binary;
using System.Text;

namespace ReedClinic.Media;

/// <summary>Puts files together byte by byte; the sums are worked out bit by bit, another way than in the program.</summary>
public static class Pack
{
    public static byte[] All(params byte[][] parts) => [.. parts.SelectMany(part => part)];

    public static byte[] Text(string text) => Encoding.Latin1.GetBytes(text);

    public static byte[] Big16(int value) => [(byte)(value >> 8), (byte)value];

    public static byte[] Big32(long value)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(bytes, (uint)value);
        return bytes;
    }

    public static byte[] Little16(int value) => [(byte)value, (byte)(value >> 8)];

    public static byte[] Little32(long value)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(bytes, (uint)value);
        return bytes;
    }

    public static byte[] Little64(long value) => [.. Little32(value & 0xFFFFFFFF), .. Little32(value >> 32)];

    /// <summary>A chunk of RIFF.</summary>
    public static byte[] Riff(string name, byte[] body, long? size = null) =>
        [.. Text(name), .. Little32(size ?? body.Length), .. body, .. body.Length % 2 == 1 ? new byte[1] : []];

    /// <summary>A box of an ISO base media file.</summary>
    public static byte[] Box(string name, params byte[][] body) => [.. Big32(8 + body.Sum(part => part.Length)), .. Text(name), .. All(body)];

    /// <summary>An element of EBML with eight bytes of size; none means that nobody knows it.</summary>
    public static byte[] Element(uint id, byte[] body, bool isEndless = false)
    {
        var name = Big32(id).SkipWhile(one => one == 0);
        return isEndless ? [.. name, 0x01, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, .. body] : [.. name, 0x01, 0, 0, 0, .. Big32(body.Length), .. body];
    }

    /// <summary>A chunk of PNG.</summary>
    public static byte[] Png(string name, byte[] body) => [.. Big32(body.Length), .. Text(name), .. body, .. Big32(Crc32([.. Text(name), .. body]))];

    /// <summary>A segment of JPEG.</summary>
    public static byte[] Segment(byte marker, byte[] body) => [0xFF, marker, .. Big16(body.Length + 2), .. body];

    /// <summary>A page of Ogg with whole packets on it.</summary>
    public static byte[] Page(int flags, long position, int number, params byte[][] packets)
    {
        var lacing = packets.SelectMany(packet => Enumerable.Repeat((byte)255, packet.Length / 255).Append((byte)(packet.Length % 255))).ToArray();
        byte[] page = [.. Text("OggS"), 0, (byte)flags, .. Little64(position), 7, 0, 0, 0, .. Little32(number), 0, 0, 0, 0, (byte)lacing.Length, .. lacing, .. All(packets)];
        Little32(Crc(page, 32, 0x04C11DB7)).CopyTo(page, 22);
        return page;
    }

    /// <summary>The plain sum, the highest bit first, from zero.</summary>
    public static uint Crc(byte[] bytes, int width, uint polynomial)
    {
        var sum = 0UL;
        foreach (var bit in bytes.SelectMany(one => Enumerable.Range(0, 8).Select(place => (one >> (7 - place)) & 1)))
        {
            var top = (int)(sum >> (width - 1)) & 1;
            sum = (sum << 1) & ((1UL << width) - 1);
            sum ^= top != bit ? polynomial : 0;
        }

        return (uint)sum;
    }

    /// <summary>The one of PNG: the lowest bit first, turned over at both ends.</summary>
    public static uint Crc32(byte[] bytes)
    {
        var sum = uint.MaxValue;
        foreach (var bit in bytes.SelectMany(one => Enumerable.Range(0, 8).Select(place => (uint)(one >> place) & 1)))
        {
            sum = ((sum & 1) != bit ? 0xEDB88320 : 0) ^ (sum >> 1);
        }

        return ~sum;
    }
}
