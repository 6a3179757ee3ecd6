using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>Which way up a photograph is: the one thing that is kept of what a camera writes. Exif 2.32 (CIPA DC-008), 4.6.</summary>
internal static class ExifOrientation
{
    private const int Tag = 0x0112;
    private const int MostFields = 512;

    public static ReadOnlySpan<byte> Beginning => "Exif\0\0"u8;

    /// <summary>1 to 8, or 0 when it isn't said.</summary>
    public static int Read(ReadOnlySpan<byte> body)
    {
        var tiff = body[Beginning.Length..];
        var isBig = tiff.StartsWith("MM\0*"u8);
        if (tiff.Length < 10 || !(isBig || tiff.StartsWith("II*\0"u8)))
        {
            return 0;
        }

        var fields = isBig ? BinaryPrimitives.ReadUInt32BigEndian(tiff[4..]) : BinaryPrimitives.ReadUInt32LittleEndian(tiff[4..]);
        if (fields > tiff.Length - 2)
        {
            return 0;
        }

        var count = Math.Min(Short(tiff, (int)fields, isBig), MostFields);
        for (var at = (int)fields + 2; count > 0 && at + 12 <= tiff.Length; at += 12, count--)
        {
            if (Short(tiff, at, isBig) == Tag)
            {
                return Short(tiff, at + 8, isBig) is >= 1 and <= 8 and var way ? way : 0;
            }
        }

        return 0;
    }

    /// <summary>A segment that says this and nothing else; empty when it is upright anyway.</summary>
    public static byte[] Write(int orientation) => orientation <= 1
        ? []
        : [0xFF, 0xE1, 0, 34, .. Beginning, .. "MM\0*"u8, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)orientation, 0, 0, 0, 0, 0, 0];

    private static int Short(ReadOnlySpan<byte> tiff, int at, bool isBig) =>
        isBig ? BinaryPrimitives.ReadUInt16BigEndian(tiff[at..]) : BinaryPrimitives.ReadUInt16LittleEndian(tiff[at..]);
}
