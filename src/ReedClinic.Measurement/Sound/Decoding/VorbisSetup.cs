using System.Numerics;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>
/// Looks through the codebooks of a Vorbis stream before a decoder makes tables of them: a few bytes can ask for gigabytes
/// (Vorbis I specification, 3.2.1). Encoders’ books, all together, stay far below what is allowed here.
/// </summary>
internal static class VorbisSetup
{
    private const int MostEntries = 1 << 18;
    private const int MostNumbers = 1 << 21;

    public static bool IsModest(ReadOnlySpan<byte> setup)
    {
        if (!setup.StartsWith("\u0005vorbis"u8))
        {
            return false;
        }

        var bits = new BitReader(setup[7..]);
        long entries = 0, numbers = 0;
        for (var books = bits.Read(8) + 1; books > 0; books--)
        {
            if (bits.Read(24) != 0x564342)
            {
                return false;
            }

            var dimensions = bits.Read(16);
            var count = bits.Read(24);
            entries += count;
            numbers += (long)count * dimensions;
            if (entries > MostEntries || numbers > MostNumbers || dimensions == 0 || !StepOverLengths(ref bits, count) || !StepOverValues(ref bits, count, dimensions))
            {
                return false;
            }
        }

        return !bits.IsBeyond;
    }

    private static bool StepOverLengths(ref BitReader bits, uint count)
    {
        if (bits.Read(1) == 1)
        {
            bits.Skip(5);
            for (uint entry = 0; entry < count;)
            {
                var many = bits.Read(BitOperations.Log2(count - entry) + 1);
                if (bits.IsBeyond)
                {
                    return false;
                }

                entry += many;
            }

            return true;
        }

        var isSparse = bits.Read(1) == 1;
        for (uint entry = 0; entry < count && !bits.IsBeyond; entry++)
        {
            bits.Skip(!isSparse || bits.Read(1) == 1 ? 5 : 0);
        }

        return !bits.IsBeyond;
    }

    private static bool StepOverValues(ref BitReader bits, uint count, uint dimensions)
    {
        var kind = bits.Read(4);
        if (kind is 1 or 2)
        {
            bits.Skip(64);
            var size = bits.Read(4) + 1;
            bits.Skip(1);
            bits.Skip(size * (kind == 1 ? Root(count, dimensions) : (long)count * dimensions));
        }

        return kind <= 2 && !bits.IsBeyond;
    }

    /// <summary>The largest whole number whose power is no more than the count.</summary>
    private static long Root(uint count, uint dimensions)
    {
        var root = (long)Math.Floor(Math.Pow(count, 1.0 / dimensions) + 1);
        while (root > 0 && Math.Pow(root, dimensions) > count)
        {
            root--;
        }

        return root;
    }
}
