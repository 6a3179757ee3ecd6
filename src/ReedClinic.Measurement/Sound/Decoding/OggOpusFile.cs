namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Reads Opus in Ogg (RFC 7845). The packet with words about the sound is stepped over.</summary>
internal static class OggOpusFile
{
    private const int LongestPacket = 61_440;
    private const int LongestWords = 125_829_120; // RFC 7845, 5.2

    public static DecodeResult Read(byte[] bytes, DecodeLimits limits)
    {
        var pages = new OggPages(bytes);
        var packet = new byte[Math.Min(LongestPacket, bytes.Length)];
        var length = pages.NextPacket(packet);
        if (length < 0 || LastPosition(bytes) is not { } last)
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.OggOpus);
        }

        if (limits.Against(SoundClip.Rate, 1, last) is { } reason)
        {
            return new DecodeResult.Refused(reason, SoundForm.OggOpus);
        }

        var (begun, refusal) = OpusSound.Begin(packet.AsSpan(0, length), limits, last);
        using var sound = begun;
        if (sound is null)
        {
            return new DecodeResult.Refused(refusal!.Value, SoundForm.OggOpus);
        }

        var words = new byte[Math.Min(LongestWords, bytes.Length)];
        length = pages.NextPacket(words);
        if (length < 8 || !words.AsSpan().StartsWith("OpusTags"u8))
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.OggOpus);
        }

        while ((length = pages.NextPacket(packet)) >= 0 && sound.Take(packet.AsSpan(0, length)))
        {
        }

        return sound.Mono.Finish(SoundForm.OggOpus, pages.IsBroken || !pages.IsEnded, sound.Skip, pages is { IsEnded: true, IsBroken: false, Position: > 0 } ? pages.Position : null);
    }

    /// <summary>The position of the last page that tells one; nothing when a page tells what can’t be.</summary>
    private static long? LastPosition(byte[] bytes)
    {
        var pages = new OggPages(bytes);
        long last = 0;
        while (pages.Turn())
        {
            if (pages.Position < -1)
            {
                return null;
            }

            last = Math.Max(last, pages.Position);
        }

        return last;
    }
}
