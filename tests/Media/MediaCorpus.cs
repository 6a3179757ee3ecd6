using System.IO.Compression;
using System.Reflection;
using ReedClinic.Domain.Recordings;
using static ReedClinic.Media.Pack;
using static ReedClinic.Media.PictureFiles;
using static ReedClinic.Media.SoundFiles;

namespace ReedClinic.Media;

/// <summary>A file of the corpus.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Kind">What it is sent as.</param>
/// <param name="Bytes">Its content.</param>
public sealed record MediaSample(string Name, RecordingKind Kind, byte[] Bytes)
{
    public override string ToString() => Name;
}

/// <summary>Files that are taken and files that aren't. OWASP ASVS 5.0, 5.2.2, asks for such a set.</summary>
public static class MediaCorpus
{
    private const string Page = "<!DOCTYPE html><html><script>alert(1)</script></html>";

    /// <summary>What must be gone from every good file after it was read.</summary>
    public static IReadOnlyList<string> Secrets { get; } = ["Hidden", "GPS", "48.137", "<script", "PK\u0003\u0004", "XMP"];

    /// <summary>Files that encoders of others made.</summary>
    public static IReadOnlyList<MediaSample> Encoded { get; } = [.. ReadEncoded()];

    /// <summary>Files that are taken; whatever in them tells of somebody, or hides behind their end, has to go.</summary>
    public static IReadOnlyList<MediaSample> Good { get; } = [.. Encoded, .. GoodSounds(), .. GoodPhotos()];

    /// <summary>Files that aren't taken.</summary>
    public static IReadOnlyList<MediaSample> Hostile { get; } = [.. Disguised(), .. HostileSounds(), .. HostileContainers(), .. HostilePhotos()];

    public static byte[] Zip()
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var entry = zip.CreateEntry("page.html").Open();
            entry.Write(Text(Page));
        }

        return bytes.ToArray();
    }

    private static MediaSample Sound(string name, byte[] bytes) => new(name, RecordingKind.ArrivalSound, bytes);

    private static MediaSample Photo(string name, byte[] bytes) => new(name, RecordingKind.ArrivalPhoto, bytes);

    private static IEnumerable<MediaSample> ReadEncoded()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("encoded.tsv")!;
        using var reader = new StreamReader(stream);
        foreach (var cells in reader.ReadToEnd().Split('\n').Where(line => line.Contains('\t', StringComparison.Ordinal)).Select(line => line.Split('\t')))
        {
            var bytes = Convert.FromBase64String(cells[1]);
            yield return Path.GetExtension(cells[0]) is ".jpg" or ".png" or ".webp" ? Photo(cells[0], bytes) : Sound(cells[0], bytes);
        }
    }

    private static IEnumerable<MediaSample> GoodSounds() =>
    [
        Sound("wave", Wave()),
        Sound("wave of 24 bits, two channels", Wave(1, 48_000, 2, 24)),
        Sound("wave whose lengths stand in 64 bits", LongWave()),
        Sound("wave with words in it", Wave(extra: [.. Riff("LIST", Text("INFOINAM" + Secret)), .. Riff("id3 ", Id3(Secret)), .. Riff("bext", Text(Secret))])),
        Sound("wave with a page behind it", [.. Wave(), .. Text(Page)]),
        Sound("wave with a zip behind it", [.. Wave(), .. Zip()]),
        Sound("mp3", Mp3()),
        Sound("mp3 with all its tags", [.. Id3(Secret), .. Mp3(), .. Text("APETAGEX" + Secret), .. Id3Old(Secret)]),
        Sound("mp3 with a page behind it", [.. Mp3(), .. Text(Page)]),
        Sound("flac", Flac()),
        Sound("flac with words and a picture", Flac(50, null, FlacBlock(4, Secret), FlacBlock(6, Secret), FlacBlock(1, Page))),
        Sound("flac with an old tag", [.. Flac(), .. Id3Old(Secret)]),
        Sound("opus", Opus()),
        Sound("opus with a page behind it", Opus(behind: Text(Page))),
        Sound("opus with a second stream behind it", Opus(behind: Opus())),
        Sound("opus that was never ended", Opus(lastFlags: 0)),
        Sound("vorbis", Vorbis()),
        Sound("webm", WebM()),
        Sound("webm as a browser records it", WebM(isEndless: true)),
        Sound("webm with a zip behind it", [.. WebM(), .. Zip()]),
        Sound("webm with a file attached", WebM(part: Element(0x1941A469, Element(0x61A7, Zip())))),
        Sound("webm with vorbis", WebM(codec: "A_VORBIS", privately: [2, 30, (byte)VorbisWords.Length, .. VorbisHead(), .. VorbisWords, 5, .. Text("vorbis")])),
        Sound("m4a", Mp4()),
        Sound("m4a with free room that isn’t free", Mp4(behind: Box("free", Text(Page)))),
        Sound("m4a with an unknown box", Mp4(inMovie: Box("Xtra", Text(Page + Secret)))),
    ];

    private static IEnumerable<MediaSample> GoodPhotos() =>
    [
        Photo("jpeg", Jpeg()),
        Photo("jpeg with a place and which way up", Jpeg(before: Exif(6))),
        Photo("jpeg with a remark", Jpeg(before: [.. Segment(0xFE, Text(Page)), .. Segment(0xED, Text("Photoshop 3.0\0" + Secret)), .. Segment(0xE1, Text("http://ns.adobe.com/xap/1.0/\0XMP " + Secret))])),
        Photo("jpeg with a zip behind it", Jpeg(behind: Zip())),
        Photo("jpeg with a film behind it", Jpeg(behind: Mp4(handler: "vide"))),
        Photo("png", PictureFiles.Png()),
        Photo("png with words", PictureFiles.Png(before: [.. Pack.Png("tEXt", Text("Author\0" + Secret)), .. Pack.Png("eXIf", Text("MM\0*" + Secret)), .. Pack.Png("iTXt", Text("XML:com.adobe.xmp" + Page))])),
        Photo("png with a page behind it", PictureFiles.Png(behind: Text(Page))),
        Photo("webp", WebP()),
        Photo("webp with words", WebP([.. WebPHead(0x0C), .. WebPPicture(), .. Riff("EXIF", Text(Secret)), .. Riff("XMP ", Text(Secret))])),
        Photo("webp with a zip behind it", [.. WebP(), .. Zip()]),
    ];

    private static IEnumerable<MediaSample> Disguised() =>
    [
        Sound("nothing", []),
        Sound("a page", Text(Page)),
        Photo("a page, sent as a photograph", Text(Page)),
        Photo("a drawing in SVG", Text("<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>")),
        Photo("a drawing in SVG with a mark before it", [0xEF, 0xBB, 0xBF, .. Text("<?xml version='1.0'?><svg/>")]),
        Sound("a PDF", Text("%PDF-1.7\n%\u00e2\u00e3\n1 0 obj")),
        Sound("a zip", Zip()),
        Photo("a zip, sent as a photograph", Zip()),
        Photo("a GIF", Text("GIF89a\u0001\0\u0001\0\0\0\0;")),
        Photo("a GIF that is a script", Text("GIF89a=alert(1);/*")),
        Sound("a program", Text("MZ\u0090\0\u0003\0\0\0\u0004\0\0\0\u00ff\u00ff")),
        Sound("a script", Text("#!/bin/sh\nrm -rf /\n")),
        Sound("a photograph", Jpeg()),
        Photo("a sound", Wave()),
        Photo("an iPhone’s photograph", [.. Box("ftyp", Text("heic"), Big32(0), Text("mif1heic")), .. Box("mdat", new byte[64])]),
        Sound("a tag before a page", [.. Id3(Secret), .. Text(Page)]),
        Photo("a bitmap", Text("BM\u0046\0\0\0\0\0\0\0\u0036\0\0\0")),
        Photo("a TIFF", Text("II*\0\u0008\0\0\0")),
    ];

    private static IEnumerable<MediaSample> HostileSounds() =>
    [
        Sound("wave of 24 hours in its header", WaveSaying(data: 24L * 3600 * 16_000)),
        Sound("wave of 64 bits that lies there", LongWave(long.MaxValue)),
        Sound("wave that ends too soon", Wave()[..9_000]),
        Sound("wave that says to be endless", WaveSaying(riff: 0xFFFFFFFF, data: 0xFFFFFFFF)),
        Sound("wave with two descriptions", Wave(extra: Riff("fmt ", Format(1, 48_000, 2, 16)))),
        Sound("wave with the sound first", Riffed([.. Riff("data", new byte[160]), .. Riff("fmt ", Format(1, 8_000, 1, 16))])),
        Sound("wave of 65,535 channels", WaveSaying(channels: 65_535, align: 2)),
        Sound("wave at one sample a second", WaveSaying(rate: 1)),
        Sound("wave of an unknown code", WaveSaying(tag: 0x55)),
        Sound("wave whose samples don’t fit", WaveSaying(align: 7)),
        Sound("wave with nothing to hear", Riffed([.. Riff("fmt ", Format(1, 8_000, 1, 16)), .. Riff("data", [])])),
        Sound("six minutes of wave", Wave(361)),
        Sound("wave with half a chunk", Riffed([.. Riff("fmt ", Format(1, 8_000, 1, 16)), .. Riff("data", new byte[160]), 1, 2, 3])),
        Sound("mp3 of one frame and a page", [.. Mp3(1), .. Text(Page)]),
        Sound("mp3 that is mostly a zip", [.. Mp3(4), .. new byte[4_000], .. Zip()]),
        Sound("a tag that is longer than the file", [.. Text("ID3"), 4, 0, 0, 0x7F, 0x7F, 0x7F, 0x7F, .. Mp3()]),
        Sound("flac with a page behind it", [.. Flac(), .. Text(Page)]),
        Sound("flac that ends too soon", Flac()[..^5]),
        Sound("flac with a byte turned", Turned(Flac(), 70)),
        Sound("flac that says to be longer", Flac(50, 1_000_000)),
        Sound("flac whose picture is longer than the file", Flac(2, null, [6, 0xFF, 0xFF, 0xFF])),
        Sound("flac without a frame", Flac(0)),
    ];

    private static IEnumerable<MediaSample> HostileContainers() =>
    [
        Sound("opus with a byte turned", Turned(Opus(), Opus().Length - 1)),
        Sound("opus that ends too soon", Opus(lastFlags: 0)[..^2]),
        Sound("opus with a page missing", [.. Opus()[..47], .. Opus()[^31..]]),
        Sound("opus of nine channels", [.. Page2(), .. Opus()[47..]]),
        Sound("ogg with pictures", [.. Pack.Page(2, 0, 0, [0x80, .. Text("theora"), .. new byte[35]]), .. Opus()[47..]]),
        Sound("an unended opus with a page behind it", Opus(lastFlags: 0, behind: Text(Page))),
        Sound("matroska", WebM(docType: "matroska")),
        Sound("webm with pictures", WebM(trackType: 1, codec: "V_VP8")),
        Sound("webm of an unknown code", WebM(codec: "A_AC3")),
        Sound("webm that ends too soon", WebM()[..^300]),
        Sound("webm recorded by a browser with a page behind it", [.. WebM(isEndless: true), .. Text(Page)]),
        Sound("webm with something unknown", WebM(part: Element(0x4FFF, Text(Page)))),
        Sound("webm without sound", [.. Element(0x1A45DFA3, Element(0x4282, Text("webm"))), .. Element(0x18538067, [])]),
        Sound("m4a with pictures", Mp4(handler: "vide")),
        Sound("m4a that plays another file", Mp4(link: Box("dref", Big32(0), Big32(1), Box("url ", Big32(0), Text("https://elsewhere.example/\0"))))),
        Sound("m4a whose sound lies elsewhere", Mp4(place: 5)),
        Sound("m4a that ends too soon", Mp4()[..^40]),
        Sound("m4a with a page behind it", Mp4(behind: Text(Page))),
        Sound("m4a with a zip behind it", Mp4(behind: Zip())),
        Sound("m4a of an unknown code", Mp4(entry: "evil")),
        Sound("m4a with a box of no size", Mp4(inMovie: [0, 0, 0, 0, .. Text("udta")])),
        Sound("m4a of an unknown brand", Mp4(brand: "evil")),
    ];

    private static IEnumerable<MediaSample> HostilePhotos() =>
    [
        Photo("png of 30,000 by 30,000", PictureFiles.Png(30_000, 30_000)),
        Photo("png of two thousand million by one", PictureFiles.Png(2_000_000_000, 1)),
        Photo("png without width", PictureFiles.Png(0, 4)),
        Photo("png with a byte turned", Turned(PictureFiles.Png(), 30)),
        Photo("png that ends too soon", PictureFiles.Png()[..^8]),
        Photo("png of three bits", PictureFiles.Png(depth: 3)),
        Photo("png with a piece nobody knows", PictureFiles.Png(before: Pack.Png("EVIL", Text(Page)))),
        Photo("png without pixels", PictureFiles.Png(pixels: [])),
        Photo("png with a chunk longer than itself", PictureFiles.Png(before: [0x7F, 0xFF, 0xFF, 0xFF, .. Text("tEXt"), 1, 2, 3, 4])),
        Photo("jpeg of 60,000 by 60,000", Jpeg(60_000, 60_000)),
        Photo("jpeg without height", Jpeg(8, 0)),
        Photo("jpeg that ends too soon", Jpeg()[..^2]),
        Photo("jpeg that is only a head", Jpeg()[..24]),
        Photo("jpeg with a segment longer than itself", Jpeg(before: [0xFF, 0xE1, 0xFF, 0xFF, 1, 2])),
        Photo("jpeg without a picture", [0xFF, 0xD8, .. Segment(0xFE, Text(Page)), 0xFF, 0xD9]),
        Photo("jpeg with a table that lies", Jpeg(before: Segment(0xC4, [0, .. Enumerable.Repeat((byte)255, 16)]))),
        Photo("jpeg of a thousand scans", Jpeg(scan: [.. Enumerable.Range(0, 1_000).SelectMany(_ => (byte[])[1, .. Segment(0xDA, [1, 1, 0, 0, 63, 0])])])),
        Photo("jpeg in arithmetic code", Jpeg(frame: 0xC9)),
        Photo("webp that moves", WebP([.. WebPHead(0x02), .. Riff("ANIM", new byte[6]), .. Riff("ANMF", new byte[40])])),
        Photo("webp that says to be longer", WebP(size: 9_999_999)),
        Photo("webp whose canvas isn’t its picture", WebP([.. WebPHead(0, 4_000, 4_000), .. WebPPicture()])),
        Photo("webp of 16,384 by 16,384", WebP(WebPPicture(16_384, 16_384))),
        Photo("webp without a picture", WebP(Riff("EXIF", Text(Secret)))),
    ];

    private static byte[] Page2() => Pack.Page(2, 0, 0, [.. Text("OpusHead"), 1, 9, .. new byte[8], 0]);

    private static byte[] Turned(byte[] bytes, int at)
    {
        bytes[at] ^= 1;
        return bytes;
    }
}
