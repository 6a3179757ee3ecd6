using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>FLAC: the description of the sound and its frames are kept, each with its sums proved. RFC 9639.</summary>
internal static class FlacFile
{
    private const int InfoLength = 34;
    private const int LongestHead = 16;
    private const int OldTag = 128;

    public static MediaReading Read(ReadOnlySpan<byte> file)
    {
        // A tag of another kind at the end is the one thing that may follow.
        if (file.Length > OldTag && file[^OldTag..].StartsWith("TAG"u8))
        {
            file = file[..^OldTag];
        }

        var at = 4;
        ReadOnlySpan<byte> info = default;
        for (var isLast = false; !isLast;)
        {
            if (file.Length - at < 4)
            {
                return MediaReading.Broken;
            }

            isLast = (file[at] & 0x80) != 0;
            var kind = file[at] & 0x7F;
            var size = (file[at + 1] << 16) | (file[at + 2] << 8) | file[at + 3];
            if (size > file.Length - at - 4 || kind == 0x7F || kind == 0 != info.IsEmpty || (kind == 0 && size != InfoLength))
            {
                return MediaReading.Broken;
            }

            info = kind == 0 ? file.Slice(at + 4, InfoLength) : info;
            at += 4 + size;
        }

        return Info.Read(info) is { } said && Samples(file[at..], said) is > 0 and var samples && (said.Samples == 0 || said.Samples == samples)
            ? new MediaReading.Clean(MediaType.Flac, (byte[])[.. "fLaC"u8, 0x80, 0, 0, InfoLength, .. info, .. file[at..]])
            {
                Milliseconds = (int)Math.Min(samples * 1000 / said.Rate, int.MaxValue),
            }
            : MediaReading.Broken;
    }

    // How many samples stand in the frames; zero unless they follow each other from the first byte to the last.
    private static long Samples(ReadOnlySpan<byte> frames, Info info)
    {
        var samples = 0L;
        while (!frames.IsEmpty)
        {
            var (head, block) = HeadOf(frames, info);
            var end = head == 0 ? 0 : EndOfFrame(frames, head, block, info);
            if (end == 0)
            {
                return 0;
            }

            frames = frames[end..];
            samples += block;
        }

        return samples;
    }

    private static int EndOfFrame(ReadOnlySpan<byte> frames, int head, int block, Info info)
    {
        // No frame is larger than its samples as they are, and a little.
        var longest = Math.Min(frames.Length, LongestHead + (((block * (info.Bits + 1)) + 80) * info.Channels / 8) + 16);
        ushort sum = 0;
        for (var at = 0; at < longest; at++)
        {
            sum = Checksums.Flac16(sum, frames[at]);
            if (sum == 0 && at > head && (at + 1 == frames.Length || HeadOf(frames[(at + 1)..], info).Length > 0))
            {
                return at + 1;
            }
        }

        return 0;
    }

    // The length of a frame's header and the samples in the frame; 0 when no frame begins here.
    private static (int Length, int Block) HeadOf(ReadOnlySpan<byte> frame, Info info)
    {
        if (frame.Length < 6 || frame[0] != 0xFF || (frame[1] & 0xFE) != 0xF8 || (frame[3] & 1) != 0 || (frame[3] >> 4) > 10)
        {
            return default;
        }

        var (blockCode, rateCode) = (frame[2] >> 4, frame[2] & 15);
        var number = frame[4] < 0x80 ? 1 : System.Numerics.BitOperations.LeadingZeroCount((uint)(byte)~frame[4]) - 24;
        var length = 4 + number + blockCode switch { 6 => 1, 7 => 2, _ => 0 } + rateCode switch { 12 => 1, 13 or 14 => 2, _ => 0 } + 1;
        if (blockCode == 0 || rateCode == 15 || length > frame.Length || Checksums.Flac8(frame[..length]) != 0)
        {
            return default;
        }

        var block = blockCode switch
        {
            1 => 192,
            <= 5 => 576 << (blockCode - 2),
            6 => frame[4 + number] + 1,
            7 => BinaryPrimitives.ReadUInt16BigEndian(frame[(4 + number)..]) + 1,
            _ => 256 << (blockCode - 8),
        };
        return block <= info.Longest ? (length, block) : default;
    }

    private readonly record struct Info(int Longest, int Rate, int Channels, int Bits, long Samples)
    {
        public static Info? Read(ReadOnlySpan<byte> bytes)
        {
            if (bytes.Length != InfoLength)
            {
                return null;
            }

            var (shortest, longest) = (BinaryPrimitives.ReadUInt16BigEndian(bytes), BinaryPrimitives.ReadUInt16BigEndian(bytes[2..]));
            var rest = BinaryPrimitives.ReadUInt64BigEndian(bytes[10..]);
            var info = new Info(longest, (int)(rest >> 44), (int)((rest >> 41) & 7) + 1, (int)((rest >> 36) & 31) + 1, (long)(rest & 0xF_FFFF_FFFF));
            return shortest >= 16 && longest >= shortest && info is { Rate: >= 8_000 and <= 192_000, Channels: <= 2, Bits: >= 8 and <= 32 } ? info : null;
        }
    }
}
