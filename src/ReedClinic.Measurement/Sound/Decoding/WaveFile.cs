using System.Buffers.Binary;
using NAudio.Wave;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>
/// Reads RIFF WAVE, and RF64, whose lengths stand in a chunk of their own (EBU Tech 3306, version 1.1, 2009): chunks are walked here,
/// samples are NAudio’s to convert. No other chunk is looked at.
/// </summary>
internal static class WaveFile
{
    private const int LongestFormat = 64;
    private const int Plain = 16;
    private const int Double = 64;
    private const int Extensible = 40;
    private const int Identifier = 24;
    private const uint Streaming = 0xFFFFFFFF;
    private const int SizeOfData = 8;
    private const int LeastSizes = 24;

    private static ReadOnlySpan<byte> RestOfIdentifier => [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xAA, 0, 0x38, 0x9B, 0x71];

    public static DecodeResult Read(byte[] bytes, DecodeLimits limits)
    {
        if (Chunks.Find(bytes, "fmt "u8, isBigEndian: false) is not { IsCutShort: false, Length: >= 16 and <= LongestFormat } told)
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.Wave);
        }

        var format = Standard(bytes, told);
        if (format is null)
        {
            return new DecodeResult.Refused(DecodeRefusal.FormNotRead, SoundForm.Wave);
        }

        if (limits.Against(format.SampleRate, format.Channels) is { } shape)
        {
            return new DecodeResult.Refused(shape, SoundForm.Wave);
        }

        if (format.BlockAlign != format.Channels * format.BitsPerSample / 8 || Chunks.Find(bytes, "data"u8, isBigEndian: false) is not { } data)
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.Wave);
        }

        // A recorder that can’t go back to its header leaves the length open: all bits set, or nothing.
        var said = data.Said == Streaming && Sizes(bytes) is { } sizes ? sizes : data.Said;
        var isOpen = said is Streaming or 0;
        var length = said == 0 ? bytes.Length - data.Start : data.Length;
        var frames = (long)Math.Min((ulong)long.MaxValue, (isOpen ? (ulong)length : said) / (ulong)format.BlockAlign);
        return limits.Against(format.SampleRate, format.Channels, frames) is { } reason
            ? new DecodeResult.Refused(reason, SoundForm.Wave)
            : Samples(bytes, data.Start, length - (length % format.BlockAlign), format, limits, !isOpen && said > (ulong)data.Length);
    }

    // NAudio doesn’t know floating point of 64 bits: it becomes 32 first, which is finer than any microphone.
    private static DecodeResult Samples(byte[] bytes, int start, int length, WaveFormat format, DecodeLimits limits, bool isCutShort)
    {
        if (format.BitsPerSample != Double)
        {
            return Pcm.Read(new RawSourceWaveStream(bytes, start, length, format), limits, SoundForm.Wave, isCutShort);
        }

        var singles = new byte[length / 2];
        for (var at = 0; at < length; at += sizeof(double))
        {
            BinaryPrimitives.WriteSingleLittleEndian(singles.AsSpan(at / 2), (float)BinaryPrimitives.ReadDoubleLittleEndian(bytes.AsSpan(start + at)));
        }

        return Pcm.Read(new RawSourceWaveStream(singles, 0, singles.Length, WaveFormat.CreateIeeeFloatWaveFormat(format.SampleRate, format.Channels)), limits, SoundForm.Wave, isCutShort);
    }

    /// <summary>How long RF64 says its sound to be, in bytes; nothing for RIFF.</summary>
    private static ulong? Sizes(byte[] bytes) =>
        bytes.AsSpan().StartsWith("RF64"u8) && Chunks.Find(bytes, "ds64"u8, isBigEndian: false) is { Length: >= LeastSizes } told
            ? BinaryPrimitives.ReadUInt64LittleEndian(told.In(bytes)[SizeOfData..])
            : null;

    /// <summary>The description in its plain form. The extensible one keeps the code in the first bytes of an identifier.</summary>
    private static WaveFormat? Standard(byte[] bytes, Chunk told)
    {
        var plain = told.In(bytes)[..Plain].ToArray();
        if (plain[0] == 0xFE && plain[1] == 0xFF)
        {
            if (told.Length < Extensible || !told.In(bytes).Slice(Identifier + 2, 14).SequenceEqual(RestOfIdentifier))
            {
                return null;
            }

            told.In(bytes).Slice(Identifier, 2).CopyTo(plain);
        }

        using var stream = new MemoryStream(plain, writable: false);
        using var reader = new BinaryReader(stream);
        var format = WaveFormat.FromFormatChunk(reader, Plain);
        return (format.Encoding, format.BitsPerSample) is (WaveFormatEncoding.Pcm, 8 or 16 or 24 or 32) or (WaveFormatEncoding.IeeeFloat, 32 or Double) ? format : null;
    }
}
