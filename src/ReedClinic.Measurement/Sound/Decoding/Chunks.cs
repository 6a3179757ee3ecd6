namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>A chunk of RIFF or IFF.</summary>
/// <param name="Start">Where its content begins.</param>
/// <param name="Said">How long it says to be.</param>
/// <param name="Length">How long it can be in this file.</param>
internal readonly record struct Chunk(int Start, uint Said, int Length)
{
    public bool IsCutShort => Said > Length;

    public ReadOnlySpan<byte> In(ReadOnlySpan<byte> bytes) => bytes.Slice(Start, Length);
}

/// <summary>Finds chunks by walking from one to the next. What a chunk says of its length is never believed beyond the file’s end.</summary>
internal static class Chunks
{
    private const int FirstChunk = 12;
    private const int Most = 4096;

    public static Chunk? Find(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> name, bool isBigEndian)
    {
        long at = FirstChunk;
        for (var seen = 0; at + 8 <= bytes.Length && seen < Most; seen++)
        {
            var start = (int)at + 8;
            var size = bytes.Slice((int)at + 4, 4);
            var said = isBigEndian
                ? System.Buffers.Binary.BinaryPrimitives.ReadUInt32BigEndian(size)
                : System.Buffers.Binary.BinaryPrimitives.ReadUInt32LittleEndian(size);
            if (bytes.Slice((int)at, 4).SequenceEqual(name))
            {
                return new Chunk(start, said, (int)Math.Min(said, (uint)(bytes.Length - start)));
            }

            at = start + said + (said & 1);
        }

        return null;
    }
}
