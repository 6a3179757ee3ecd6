using System.Buffers.Binary;
using static ReedClinic.Media.Pack;
using static ReedClinic.Media.SoundFiles;

namespace ReedClinic.Measurement.Tests.Sound.Decoding;

/// <summary>Files that lie, break off, or would have a decoder take all memory. Each has a name.</summary>
internal static class Spoilt
{
    public static byte[] Float(params float[] samples)
    {
        var data = new byte[samples.Length * 4];
        for (var i = 0; i < samples.Length; i++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(data.AsSpan(i * 4), samples[i]);
        }

        return Riffed([.. Riff("fmt ", Format(3, 48_000, 1, 32)), .. Riff("data", data)]);
    }

    public static byte[] Aiff(int channels = 1, long frames = 100, int bits = 16, byte[]? rate = null, long? sound = null, byte[]? before = null)
    {
        byte[] comm = [.. Big16(channels), .. Big32(frames), .. Big16(bits), .. rate ?? [0x40, 0x0E, 0xAC, 0x44, 0, 0, 0, 0, 0, 0]];
        byte[] body = [.. before ?? [], .. Text("COMM"), .. Big32(comm.Length), .. comm, .. Text("SSND"), .. Big32(sound ?? 208), .. new byte[208]];
        return [.. Text("FORM"), .. Big32(body.Length + 4), .. Text("AIFF"), .. body];
    }

    /// <summary>A setup that asks for 256 books of 16 million entries each by a handful of bits (ordered lengths).</summary>
    public static byte[] VorbisOfManyBooks()
    {
        byte[] book = [0x42, 0x43, 0x56, 1, 0, 0xFF, 0xFF, 0xFF, 0x01, .. new byte[8]];
        byte[] setup = [5, .. Text("vorbis"), 0xFF, .. Enumerable.Range(0, 256).SelectMany(_ => book)];
        return [.. Page(2, 0, 0, VorbisHead()), .. Page(0, 0, 1, VorbisWords, setup), .. Page(4, 44_100, 2, [1, 2, 3])];
    }

    /// <summary>Pages without a packet, each saying that another follows; the last points back to the first number.</summary>
    public static byte[] OpusOfEmptyPages()
    {
        var pages = new List<byte>([.. Page(2, 0, 0, OpusHead), .. Page(0, 0, 1, [.. Text("OpusTags"), .. new byte[8]])]);
        for (var number = 2; number < 20_000; number++)
        {
            pages.AddRange(Page(1, -1, number));
        }

        pages.AddRange(Page(1, -1, 0));
        return [.. pages];
    }

    public static IEnumerable<(string Name, byte[] Bytes)> All() =>
    [
        ("a float that is no number", Float(0.1f, float.NaN, 0.2f)),
        ("a float without end", Float(float.PositiveInfinity)),
        ("a float beyond all measure", Float(1e30f)),
        ("no channels", WaveSaying(channels: 0, align: 0)),
        ("no rate", WaveSaying(rate: 0)),
        ("samples of no bits", WaveSaying(bits: 0, align: 0)),
        ("a format of a thousand megabytes", Riffed([.. Riff("fmt ", Format(1, 8_000, 1, 16), 1_000_000_000), .. Riff("data", new byte[160])])),
        ("an extensible format cut short", Riffed([.. Riff("fmt ", [.. Format(0xFFFE, 48_000, 1, 16), .. Little16(22)]), .. Riff("data", new byte[160])])),
        ("a day in a header", WaveSaying(rate: 48_000, data: 24L * 3600 * 96_000)),
        ("a thousand chunks of nothing", Riffed([.. Enumerable.Range(0, 5_000).SelectMany(_ => Riff("LIST", [])), .. Riff("fmt ", Format(1, 8_000, 1, 16))])),
        ("an AIFF of no channels", Aiff(channels: 0)),
        ("an AIFF of minus one channels", Aiff(channels: -1)),
        ("an AIFF of no rate", Aiff(rate: new byte[10])),
        ("an AIFF of a rate without end", Aiff(rate: [0x7F, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF])),
        ("an AIFF of a day", Aiff(frames: 0xFFFFFFFF)),
        ("an AIFF of 17 bits", Aiff(bits: 17)),
        ("an AIFF whose first chunk is longer than it", Aiff(before: [.. Text("ANNO"), 0xFF, 0xFF, 0xFF, 0xFF])),
        ("a Vorbis of 256 huge books", VorbisOfManyBooks()),
        ("a Vorbis of noise", Vorbis()),
        ("an Opus of twenty thousand empty pages", OpusOfEmptyPages()),
        ("an Opus that says a day", [.. Page(2, 0, 0, OpusHead), .. Page(0, 0, 1, [.. Text("OpusTags"), .. new byte[8]]), .. Page(4, 24L * 3600 * 48_000, 2, [1, 2, 3])]),
        ("an Opus at a place before the beginning", [.. Page(2, 0, 0, OpusHead), .. Page(0, 0, 1, [.. Text("OpusTags"), .. new byte[8]]), .. Page(4, -77, 2, [1, 2, 3])]),
        ("a WebM of an element without end", [.. Element(0x1A45DFA3, Element(0x4282, Text("webm"))), .. Element(0xEC, new byte[9], isEndless: true)]),
        ("a WebM of nests", [.. Element(0x1A45DFA3, Element(0x4282, Text("webm"))), .. Enumerable.Range(0, 20_000).SelectMany(_ => Element(0x18538067, [], isEndless: true))]),
        ("a WebM of nine channels", WebM(privately: [.. OpusHead[..9], 9, .. OpusHead[10..]])),
        ("an MP3 of nothing but heads", [.. Enumerable.Range(0, 30_000).SelectMany(_ => (byte[])[0xFF, 0xFB, 0x90, 0xC0])]),
    ];
}
