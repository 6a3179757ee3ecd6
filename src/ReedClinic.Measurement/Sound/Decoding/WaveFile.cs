using NAudio.Wave;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Reads RIFF WAVE: chunks are walked here, samples are NAudio’s to convert. No other chunk is looked at.</summary>
internal static class WaveFile
{
    private const int LongestFormat = 64;
    private const int Plain = 16;
    private const int Extensible = 40;
    private const int Identifier = 24;
    private const uint Streaming = 0xFFFFFFFF;

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
        var isOpen = data.Said is Streaming or 0;
        var length = data.Said == 0 ? bytes.Length - data.Start : data.Length;
        var frames = (isOpen ? length : (long)data.Said) / format.BlockAlign;
        return limits.Against(format.SampleRate, format.Channels, frames) is { } reason
            ? new DecodeResult.Refused(reason, SoundForm.Wave)
            : Pcm.Read(new RawSourceWaveStream(bytes, data.Start, length - (length % format.BlockAlign), format), limits, SoundForm.Wave, !isOpen && data.IsCutShort);
    }

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
        return (format.Encoding, format.BitsPerSample) is (WaveFormatEncoding.Pcm, 8 or 16 or 24 or 32) or (WaveFormatEncoding.IeeeFloat, 32) ? format : null;
    }
}
