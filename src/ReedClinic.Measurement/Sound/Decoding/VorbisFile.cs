using System.Buffers.Binary;
using NVorbis;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Reads Vorbis in Ogg: pages and setup are looked through here, NVorbis decodes the pages that were walked.</summary>
internal static class VorbisFile
{
    private const int FramesAtOnce = 2048;

    public static DecodeResult Read(byte[] bytes, DecodeLimits limits)
    {
        var pages = new OggPages(bytes);
        var packet = new byte[bytes.Length];
        var length = pages.NextPacket(packet);
        if (length < 30 || BinaryPrimitives.ReadUInt32LittleEndian(packet.AsSpan(7)) != 0 || !HasGoodBlocks(packet[28]))
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.OggVorbis);
        }

        var (channels, rate) = (packet[11], BinaryPrimitives.ReadUInt32LittleEndian(packet.AsSpan(12)));
        if (limits.Against(rate, channels) is { } shape)
        {
            return new DecodeResult.Refused(shape, SoundForm.OggVorbis);
        }

        length = pages.NextPacket(packet);
        length = length < 0 ? -1 : pages.NextPacket(packet);
        if (length < 0 || !VorbisSetup.IsModest(packet.AsSpan(0, length)))
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.OggVorbis);
        }

        var last = 0L;
        while (pages.Turn())
        {
            last = Math.Max(last, pages.Position);
        }

        return limits.Against(rate, channels, last) is { } reason
            ? new DecodeResult.Refused(reason, SoundForm.OggVorbis)
            : Decode(bytes, pages.End, (int)rate, channels, limits, last, pages.IsBroken || !pages.IsEnded);
    }

    /// <summary>Block sizes are powers of two from 64 to 8192, the short one first (Vorbis I, 4.2.2).</summary>
    private static bool HasGoodBlocks(byte sizes) => (sizes & 15) is >= 6 and <= 13 && sizes >> 4 is >= 6 and <= 13 && (sizes & 15) <= sizes >> 4;

    private static DecodeResult Decode(byte[] bytes, int end, int rate, int channels, DecodeLimits limits, long last, bool isCutShort)
    {
        using var stream = new MemoryStream(bytes, 0, end, writable: false);
        using var reader = new VorbisReader(stream, closeOnDispose: false) { ClipSamples = false };
        if (reader.Channels != channels || reader.SampleRate != rate)
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.OggVorbis);
        }

        var mono = new Mono(channels, rate, limits, last);
        var buffer = new float[FramesAtOnce * channels];
        for (int read; (read = reader.ReadSamples(buffer)) > 0;)
        {
            if (!mono.Take(buffer.AsSpan(0, read)))
            {
                break;
            }
        }

        return mono.Finish(SoundForm.OggVorbis, isCutShort);
    }
}
