using System.IO.Compression;
using static ReedClinic.Media.Pack;

namespace ReedClinic.Media;

/// <summary>Photographs made byte by byte.</summary>
public static class PictureFiles
{
    public static byte[] Jpeg(int width = 8, int height = 8, byte[]? before = null, byte[]? behind = null, byte frame = 0xC0, byte[]? scan = null) =>
    [
        0xFF, 0xD8,
        .. Segment(0xE0, [.. Text("JFIF\0"), 1, 2, 0, 0, 1, 0, 1, 0, 0]),
        .. before ?? [],
        .. Segment(0xDB, [0, .. Enumerable.Repeat((byte)1, 64)]),
        .. Segment(frame, [8, .. Big16(height), .. Big16(width), 1, 1, 0x11, 0]),
        .. Segment(0xC4, [0, 1, .. new byte[15], 0]),
        .. Segment(0xC4, [0x10, 1, .. new byte[15], 0]),
        .. Segment(0xDA, [1, 1, 0, 0, 63, 0]),
        .. scan ?? [0x3F, 0xFF, 0x00, 0x12],
        0xFF, 0xD9,
        .. behind ?? [],
    ];

    /// <summary>A camera's word: a place by its GPS fields, a maker, and which way up. Exif 2.32, 4.6.</summary>
    public static byte[] Exif(int orientation)
    {
        byte[] place = [.. Text("MM\0*"), .. Big32(8), .. Big16(3), .. Field(0x010F, 2, 6, [0, 0, 0, 50]), .. Field(0x0112, 3, 1, [0, (byte)orientation, 0, 0]), .. Field(0x8825, 4, 1, [0, 0, 0, 56]), .. Big32(0), .. Text("Hidden"), .. Big16(1), .. Field(1, 2, 2, Text("N\0\0\0")), .. Big32(0)];
        return Segment(0xE1, [.. Text("Exif\0\0"), .. place]);
    }

    private static byte[] Field(int tag, int type, int count, byte[] value) => [.. Big16(tag), .. Big16(type), .. Big32(count), .. value];

    public static byte[] Png(int width = 4, int height = 4, byte[]? before = null, byte[]? behind = null, byte[]? pixels = null, int depth = 8, int colour = 0) =>
    [
        0x89, .. Text("PNG\r\n\x1A\n"),
        .. Pack.Png("IHDR", [.. Big32(width), .. Big32(height), (byte)depth, (byte)colour, 0, 0, 0]),
        .. before ?? [],
        .. pixels ?? Pack.Png("IDAT", Deflated(new byte[20])),
        .. Pack.Png("IEND", []),
        .. behind ?? [],
    ];

    public static byte[] Deflated(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            zlib.Write(bytes);
        }

        return packed.ToArray();
    }

    /// <summary>Lossless, with a signature and its size: RFC 9649, 3.4.</summary>
    public static byte[] WebPPicture(int width = 16, int height = 16) => Riff("VP8L", [0x2F, .. Little32(width - 1 + ((height - 1L) << 14)), 1, 2, 3]);

    public static byte[] WebP(byte[]? chunks = null, long? size = null) => SoundFiles.Riffed(chunks ?? WebPPicture(), size, "WEBP");

    public static byte[] WebPHead(int flags, int width = 16, int height = 16) => Riff("VP8X", [(byte)flags, 0, 0, 0, .. Little32(width - 1)[..3], .. Little32(height - 1)[..3]]);
}
