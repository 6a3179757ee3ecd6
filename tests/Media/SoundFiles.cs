using static ReedClinic.Media.Pack;

namespace ReedClinic.Media;

/// <summary>Sounds made byte by byte. What they say is silence or a click; how they say it follows the standards.</summary>
public static class SoundFiles
{
    public const string Secret = "Hidden words 48.137 N";

    public static byte[] Wave(int seconds = 1, int rate = 8_000, int channels = 1, int bits = 16, byte[]? extra = null)
    {
        var data = new byte[seconds * rate * channels * bits / 8];
        new Random(7).NextBytes(data);
        return Riffed([.. Riff("fmt ", Format(1, rate, channels, bits)), .. extra ?? [], .. Riff("data", data)]);
    }

    /// <summary>A wave whose header says what it likes.</summary>
    public static byte[] WaveSaying(int tag = 1, int rate = 8_000, int channels = 1, int bits = 16, long? data = null, long? riff = null, int? align = null) =>
        Riffed([.. Riff("fmt ", Format(tag, rate, channels, bits, align)), .. Riff("data", new byte[1_600], data)], riff);

    public static byte[] Riffed(byte[] body, long? size = null, string form = "WAVE") => [.. Text("RIFF"), .. Little32(size ?? (body.Length + 4)), .. Text(form), .. body];

    /// <summary>RF64 (EBU Tech 3306, version 1.1, 2009): the lengths stand in “ds64”, and all bits are set where they stood.</summary>
    public static byte[] LongWave(long? data = null)
    {
        byte[] rest = [.. Riff("fmt ", Format(1, 8_000, 1, 16)), .. Riff("LIST", Text("INFOINAM" + Secret)), .. Riff("data", new byte[16_000], 0xFFFFFFFF)];
        byte[] sizes = [.. BitConverter.GetBytes(4L + 36 + rest.Length), .. BitConverter.GetBytes(data ?? 16_000L), .. BitConverter.GetBytes(8_000L), .. new byte[4]];
        return [.. Text("RF64"), .. Riffed([.. Riff("ds64", sizes), .. rest], 0xFFFFFFFF)[4..]];
    }

    public static byte[] Format(int tag, int rate, int channels, int bits, int? align = null) =>
        [.. Little16(tag), .. Little16(channels), .. Little32(rate), .. Little32((long)rate * channels * bits / 8), .. Little16(align ?? (channels * bits / 8)), .. Little16(bits)];

    /// <summary>Frames of MPEG-1 layer III at 44.1 kHz and 128 kbit/s: 417 bytes each, ISO/IEC 11172-3, 2.4.3.1.</summary>
    public static byte[] Mp3(int frames = 40) => [.. Enumerable.Range(0, frames).SelectMany(_ => (byte[])[0xFF, 0xFB, 0x90, 0xC0, .. new byte[413]])];

    /// <summary>An ID3v2.4 tag with a text in it.</summary>
    public static byte[] Id3(string text) => [.. Text("ID3"), 4, 0, 0, 0, 0, 0, (byte)(text.Length + 11), .. Text("TIT2"), .. Big32(text.Length + 1), 0, 0, 3, .. Text(text)];

    public static byte[] Id3Old(string text) => [.. Text("TAG"), .. Text(text.PadRight(125)[..125])];

    /// <summary>FLAC in frames of 192 samples that are all alike: RFC 9639, 9.2.1 (a constant subframe).</summary>
    public static byte[] Flac(int frames = 50, long? samples = null, params byte[][] blocks)
    {
        byte[] info = [.. Big16(192), .. Big16(192), 0, 0, 0, 0, 0, 0, .. Big32((8_000L << 12) | (15 << 4)), .. Big32(samples ?? (frames * 192L)), .. new byte[16]];
        byte[] heads = [0, 0, 0, 34, .. info, .. All(blocks)];
        var last = blocks.Length == 0 ? 0 : heads.Length - blocks[^1].Length;
        heads[last] |= 0x80;
        return [.. Text("fLaC"), .. heads, .. Enumerable.Range(0, frames).SelectMany(FlacFrame)];
    }

    public static byte[] FlacBlock(int kind, string text) => [(byte)kind, 0, .. Big16(text.Length), .. Text(text)];

    private static byte[] FlacFrame(int number)
    {
        byte[] head = [0xFF, 0xF8, 0x14, 0x08, (byte)number];
        byte[] frame = [.. head, (byte)Crc(head, 8, 0x07), 0, 0x12, 0x34];
        return [.. frame, .. Big16((int)Crc(frame, 16, 0x8005))];
    }

    public static byte[] Opus(string comment = Secret, byte[]? behind = null, int lastFlags = 4) =>
    [
        .. Page(2, 0, 0, OpusHead),
        .. Page(0, 0, 1, [.. Text("OpusTags"), .. Little32(4), .. Text("Mill"), .. Little32(1), .. Little32(comment.Length), .. Text(comment)]),
        .. Page(0, 24_000, 2, [1, 2, 3], [4, 5, 6]),
        .. Page(lastFlags, 48_312, 3, [7, 8, 9]),
        .. behind ?? [],
    ];

    public static byte[] OpusHead => [.. Text("OpusHead"), 1, 1, .. Little16(312), .. Little32(48_000), 0, 0, 0];

    public static byte[] VorbisHead(int channels = 1) => [1, .. Text("vorbis"), 0, 0, 0, 0, (byte)channels, .. Little32(44_100), .. new byte[12], 0xB8, 1];

    public static byte[] VorbisWords => [3, .. Text("vorbis"), .. Little32(4), .. Text("Mill"), .. Little32(1), .. Little32(Secret.Length), .. Text(Secret), 1];

    /// <summary>Its third packet is longer than a page takes.</summary>
    public static byte[] Vorbis()
    {
        byte[] setup = [5, .. Text("vorbis"), .. Enumerable.Repeat((byte)0x55, 700)];
        return [.. Page(2, 0, 0, VorbisHead()), .. Page(0, 0, 1, VorbisWords, setup), .. Page(4, 44_100, 2, [1, 2, 3])];
    }

    public static byte[] WebM(bool isEndless = false, int trackType = 2, string codec = "A_OPUS", string docType = "webm", byte[]? part = null, byte[]? privately = null)
    {
        byte[] track =
        [
            .. Element(0xD7, [1]), .. Element(0x83, [(byte)trackType]), .. Element(0x86, Text(codec)), .. Element(0x536E, Text(Secret)), .. Element(0x63A2, privately ?? OpusHead),
        ];
        byte[] segment =
        [
            .. Element(0x1549A966, [.. Element(0x2AD7B1, Big32(1_000_000)), .. Element(0x7BA9, Text(Secret)), .. Element(0x4D80, Text(Secret)), .. Element(0x5741, Text(Secret)), .. Element(0x4461, new byte[8])]),
            .. Element(0x1654AE6B, Element(0xAE, track)),
            .. Cluster(0, isEndless),
            .. Cluster(1_500, isEndless),
            .. part ?? Element(0x1254C367, Element(0x7373, Text(new string('x', 150) + Secret))),
        ];
        return [.. Element(0x1A45DFA3, Element(0x4282, Text(docType))), .. Element(0x18538067, segment, isEndless)];
    }

    private static byte[] Cluster(int time, bool isEndless) =>
        Element(0x1F43B675, [.. Element(0xE7, Big16(time)), .. Element(0xA3, [0x81, 0, 20, 0x80, 1, 2, 3]), .. Element(0xA0, [.. Element(0xA1, [0x81, 0, 40, 0, 1, 2, 3]), .. Element(0x75A1, Text(Secret))])], isEndless);

    public static byte[] Mp4(string brand = "M4A ", string handler = "soun", byte[]? inMovie = null, byte[]? behind = null, string entry = "mp4a", byte[]? link = null, int place = 28)
    {
        byte[] sound = Enumerable.Repeat((byte)0x21, 64).ToArray();
        byte[] dates = [.. Big32(0), .. Big32(3_800_000_000), .. Big32(3_800_000_001)];
        byte[] table =
        [
            .. Box("stsd", Big32(0), Big32(1), Box(entry, new byte[28])), .. Box("stts", Big32(0), Big32(1), Big32(4), Big32(1024)),
            .. Box("stsc", Big32(0), Big32(1), Big32(1), Big32(4), Big32(1)), .. Box("stsz", Big32(0), Big32(16), Big32(4)), .. Box("stco", Big32(0), Big32(1), Big32(place)),
        ];
        byte[] media =
        [
            .. Box("mdhd", dates, Big32(8_000), Big32(16_000), Big32(0)),
            .. Box("hdlr", Big32(0), Big32(0), Text(handler), new byte[12], Text(Secret + "\0")),
            .. Box("minf", Box("smhd", new byte[8]), Box("dinf", link ?? Box("dref", Big32(0), Big32(1), Box("url ", Big32(1)))), Box("stbl", table)),
        ];
        byte[] movie = [.. Box("mvhd", dates, new byte[88]), .. Box("trak", Box("tkhd", dates, new byte[72]), Box("mdia", media)), .. inMovie ?? Box("udta", Box("meta", Text(Secret)))];
        return [.. Box("ftyp", Text(brand), Big32(0), Text(brand)), .. Box("mdat", sound), .. Box("moov", movie), .. behind ?? Box("uuid", Text(Secret))];
    }
}
