using NLayer;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Reads MP3: frames are walked and counted here, NLayer decodes what was walked. Tags before and behind are left out.</summary>
internal static class Mp3File
{
    /// <summary>Fewer frames in a row may be chance: other files hold such bytes too.</summary>
    private const int LeastFrames = 3;

    public static DecodeResult Read(byte[] bytes, DecodeLimits limits)
    {
        var start = BehindTags(bytes);
        if (start >= bytes.Length || !Mp3Frame.TryRead(bytes.AsSpan(start), out var first))
        {
            return new DecodeResult.Refused(start > 0 ? DecodeRefusal.NotSound : DecodeRefusal.Damaged, SoundForm.Mp3);
        }

        if (limits.Against(first.Rate, first.Channels) is { } shape)
        {
            return new DecodeResult.Refused(shape, SoundForm.Mp3);
        }

        var (end, frames, isCutShort) = Walk(bytes, start, first);
        if (frames < LeastFrames)
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.Mp3);
        }

        var samples = (long)frames * first.Samples;
        return limits.Against(first.Rate, first.Channels, samples) is { } reason
            ? new DecodeResult.Refused(reason, SoundForm.Mp3)
            : Decode(bytes, start, end, first, limits, samples, isCutShort);
    }

    private static DecodeResult Decode(byte[] bytes, int start, int end, Mp3Frame first, DecodeLimits limits, long samples, bool isCutShort)
    {
        using var stream = new MemoryStream(bytes, start, end - start, writable: false);
        using var file = new MpegFile(stream);
        if (file.Channels != first.Channels || file.SampleRate != first.Rate)
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.Mp3);
        }

        var mono = new Mono(first.Channels, first.Rate, limits, samples);
        var buffer = new float[1152 * first.Channels];
        for (int read; (read = file.ReadSamples(buffer, 0, buffer.Length)) > 0;)
        {
            if (!mono.Take(buffer.AsSpan(0, read)))
            {
                break;
            }
        }

        return mono.Finish(SoundForm.Mp3, isCutShort);
    }

    private static int BehindTags(byte[] bytes)
    {
        var at = 0;
        while (at + 10 <= bytes.Length && bytes.AsSpan(at).StartsWith("ID3"u8))
        {
            var size = (bytes[at + 6] & 0x7F) << 21 | (bytes[at + 7] & 0x7F) << 14 | (bytes[at + 8] & 0x7F) << 7 | (bytes[at + 9] & 0x7F);
            at += 10 + size;
        }

        return at;
    }

    private static (int End, int Frames, bool IsCutShort) Walk(byte[] bytes, int start, Mp3Frame first)
    {
        int at = start, frames = 0;
        while (at < bytes.Length && Mp3Frame.TryRead(bytes.AsSpan(at), out var frame) && frame.Rate == first.Rate && frame.Channels == first.Channels)
        {
            if (at + frame.Length > bytes.Length)
            {
                return (at, frames, true);
            }

            at += frame.Length;
            frames++;
        }

        return (at, frames, false);
    }
}
