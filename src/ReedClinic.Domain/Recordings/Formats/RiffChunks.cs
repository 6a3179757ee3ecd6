using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>One chunk of a RIFF file: its name, and where its content stands.</summary>
internal readonly record struct RiffChunk(string Name, int Start, int Length)
{
    public ReadOnlySpan<byte> Of(ReadOnlySpan<byte> file) => file.Slice(Start, Length);
}

/// <summary>The chunks of a RIFF file one after the other, none larger than what is there.</summary>
internal static class RiffChunks
{
    private const int Head = 12;
    private const int Most = 10_000;

    // RF64, for sound beyond 4 GB and for recorders that write it anyway: EBU Tech 3306, version 1.1 (2009).
    private const uint InSizes = 0xFFFFFFFF;
    private const int Sizes = Head + 8;

    public static bool IsLong(ReadOnlySpan<byte> file) =>
        file.Length >= Sizes + 24 && file.StartsWith("RF64"u8) && file[8..Sizes].StartsWith("WAVEds64"u8);

    public static bool Begins(ReadOnlySpan<byte> file, ReadOnlySpan<byte> form) =>
        file.Length >= Head && file.StartsWith("RIFF"u8) && file[8..Head].SequenceEqual(form);

    /// <summary>All of them, up to the RIFF's own end; null when a size lies.</summary>
    public static IReadOnlyList<RiffChunk>? Read(ReadOnlySpan<byte> file)
    {
        var isLong = IsLong(file);
        var length = 8L + Size(file, 4, isLong, Sizes);
        if (length < Head || length > file.Length)
        {
            return null;
        }

        var chunks = new List<RiffChunk>();
        for (var at = Head; at < length;)
        {
            if (length - at < 8 || chunks.Count == Most || Size(file, at + 4, isLong && file[at..].StartsWith("data"u8), Sizes + 8) is var size && size > length - at - 8)
            {
                return null;
            }

            chunks.Add(new RiffChunk(System.Text.Encoding.Latin1.GetString(file.Slice(at, 4)), at + 8, (int)size));
            at += 8 + (int)size + ((int)size & 1);
        }

        return chunks;
    }

    // A size that no file has comes back as one that is too large for any.
    private static long Size(ReadOnlySpan<byte> file, int at, bool mayBeLong, int elsewhere)
    {
        var size = BinaryPrimitives.ReadUInt32LittleEndian(file[at..]);
        return mayBeLong && size == InSizes
            ? (long)Math.Min(BinaryPrimitives.ReadUInt64LittleEndian(file[elsewhere..]), int.MaxValue)
            : size;
    }
}
