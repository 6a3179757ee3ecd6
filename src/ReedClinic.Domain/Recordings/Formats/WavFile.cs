using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>
/// Uncompressed sound: of the file only “fmt ” and “data” are kept. Multimedia Programming Interface and Data Specifications 1.0
/// (1991); the extensible form as in RFC 2361 and ksmedia.h, from memory.
/// </summary>
internal static class WavFile
{
    private const int Whole = 1;
    private const int Floating = 3;
    private const int Extensible = 0xFFFE;
    private const int OutHead = 44;

    // The rest of a subformat's identifier behind its first two bytes.
    private static ReadOnlySpan<byte> SubformatTail => [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xAA, 0, 0x38, 0x9B, 0x71];

    public static MediaReading Read(ReadOnlySpan<byte> file)
    {
        // One of each, the description first.
        if (RiffChunks.Read(file)?.Where(chunk => chunk.Name is "fmt " or "data").ToList() is not [{ Name: "fmt " } first, { Name: "data" } second])
        {
            return MediaReading.Broken;
        }

        var format = first.Of(file);
        var data = second.Of(file);
        return !data.IsEmpty && IsSound(format) && data.Length % Align(format) == 0
            ? new MediaReading.Clean(MediaType.Wav, Write(format, data))
            {
                Milliseconds = (int)(data.Length * 1000L / BinaryPrimitives.ReadUInt32LittleEndian(format[8..])),
            }
            : MediaReading.Broken;
    }

    private static int Align(ReadOnlySpan<byte> format) => BinaryPrimitives.ReadUInt16LittleEndian(format[12..]);

    private static int TagOf(ReadOnlySpan<byte> format)
    {
        int tag = BinaryPrimitives.ReadUInt16LittleEndian(format);
        return tag == Extensible && format.Length >= 40 && format[26..40].SequenceEqual(SubformatTail)
            ? BinaryPrimitives.ReadUInt16LittleEndian(format[24..])
            : tag;
    }

    private static bool IsSound(ReadOnlySpan<byte> format)
    {
        if (format.Length < 16)
        {
            return false;
        }

        int channels = BinaryPrimitives.ReadUInt16LittleEndian(format[2..]);
        var rate = BinaryPrimitives.ReadUInt32LittleEndian(format[4..]);
        int bits = BinaryPrimitives.ReadUInt16LittleEndian(format[14..]);
        var isKnown = TagOf(format) switch
        {
            Whole => bits is 8 or 16 or 24 or 32,
            Floating => bits is 32 or 64,
            _ => false,
        };
        return isKnown && channels is 1 or 2 && rate is >= 8_000 and <= 192_000
            && Align(format) == channels * bits / 8
            && BinaryPrimitives.ReadUInt32LittleEndian(format[8..]) == rate * Align(format);
    }

    private static byte[] Write(ReadOnlySpan<byte> format, ReadOnlySpan<byte> data)
    {
        var odd = data.Length & 1;
        var bytes = new byte[OutHead + data.Length + odd];
        var head = bytes.AsSpan();
        "RIFF"u8.CopyTo(head);
        BinaryPrimitives.WriteInt32LittleEndian(head[4..], bytes.Length - 8);
        "WAVEfmt "u8.CopyTo(head[8..]);
        BinaryPrimitives.WriteInt32LittleEndian(head[16..], 16);
        format[..16].CopyTo(head[20..]);
        BinaryPrimitives.WriteUInt16LittleEndian(head[20..], (ushort)TagOf(format));
        "data"u8.CopyTo(head[36..]);
        BinaryPrimitives.WriteInt32LittleEndian(head[40..], data.Length);
        data.CopyTo(head[OutHead..]);
        return bytes;
    }
}
