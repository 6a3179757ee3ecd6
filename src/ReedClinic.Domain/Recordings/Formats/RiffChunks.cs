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

    public static bool Begins(ReadOnlySpan<byte> file, ReadOnlySpan<byte> form) =>
        file.Length >= Head && file.StartsWith("RIFF"u8) && file[8..Head].SequenceEqual(form);

    /// <summary>All of them, up to the RIFF's own end; null when a size lies.</summary>
    public static IReadOnlyList<RiffChunk>? Read(ReadOnlySpan<byte> file)
    {
        var length = 8L + BinaryPrimitives.ReadUInt32LittleEndian(file[4..]);
        if (length < Head || length > file.Length)
        {
            return null;
        }

        var chunks = new List<RiffChunk>();
        for (var at = Head; at < length;)
        {
            if (length - at < 8 || chunks.Count == Most || BinaryPrimitives.ReadUInt32LittleEndian(file[(at + 4)..]) is var size && size > length - at - 8)
            {
                return null;
            }

            chunks.Add(new RiffChunk(System.Text.Encoding.Latin1.GetString(file.Slice(at, 4)), at + 8, (int)size));
            at += 8 + (int)size + ((int)size & 1);
        }

        return chunks;
    }
}
