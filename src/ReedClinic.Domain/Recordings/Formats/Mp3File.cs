using System.Buffers.Binary;

namespace ReedClinic.Domain.Recordings.Formats;

/// <summary>
/// MPEG audio layer III: one frame after the other, all alike, from the first to the last; tags before and anything behind are
/// dropped. ISO/IEC 11172-3, 2.4.2.3, and ISO/IEC 13818-3; ID3v2.4.0, section 3.1, and the APE and ID3v1 tags by common practice.
/// </summary>
internal static class Mp3File
{
    private const int FewestFrames = 4;
    private const int MostPadding = 4_096;
    private const int TagHead = 10;

    private static readonly int[] Rates = [44_100, 48_000, 32_000];
    private static readonly int[] FirstBits = [32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];
    private static readonly int[] SecondBits = [8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160];

    public static bool Begins(ReadOnlySpan<byte> file) => file.StartsWith("ID3"u8) || FrameAt(file, 0) is not null;

    public static MediaReading Read(ReadOnlySpan<byte> file)
    {
        if (Start(file) is not { } start || FrameAt(file, start) is not { } first)
        {
            // Another kind of file may carry the same tag; it isn't looked for.
            return new MediaReading.Refused(RecordingRefusal.NotKnown);
        }

        var at = start;
        var frames = 0;
        while (FrameAt(file, at) is { } frame && frame.Rate == first.Rate && frame.Samples == first.Samples && frame.Length <= file.Length - at)
        {
            at += frame.Length;
            frames++;
        }

        // A recording that was stopped hard may end within a frame: that much and the tags may follow, not the half of the file.
        return frames >= FewestFrames && at - start >= (file.Length - start) / 2
            ? new MediaReading.Clean(MediaType.Mp3, file[start..at].ToArray()) { Milliseconds = (int)(frames * (long)first.Samples * 1000 / first.Rate) }
            : MediaReading.Broken;
    }

    private static int? Start(ReadOnlySpan<byte> file)
    {
        var at = 0;
        while (file[at..].StartsWith("ID3"u8))
        {
            if (file.Length - at < TagHead || file[(at + 6)..(at + TagHead)].IndexOfAnyExceptInRange((byte)0, (byte)0x7F) >= 0)
            {
                return null;
            }

            var size = (file[at + 6] << 21) | (file[at + 7] << 14) | (file[at + 8] << 7) | file[at + 9];
            var foot = (file[at + 5] & 0x10) != 0 ? TagHead : 0;
            if (size + foot > file.Length - at - TagHead)
            {
                return null;
            }

            at += TagHead + size + foot;
        }

        var padding = file[at..].IndexOfAnyExcept((byte)0);
        return at > 0 && padding is > 0 and <= MostPadding ? at + padding : at;
    }

    private static Frame? FrameAt(ReadOnlySpan<byte> file, int at)
    {
        if (file.Length - at < 4)
        {
            return null;
        }

        var head = BinaryPrimitives.ReadUInt32BigEndian(file[at..]);
        var version = (head >> 19) & 3;
        var bits = (int)((head >> 12) & 15);
        var rate = (int)((head >> 10) & 3);
        if (head >> 21 != 0x7FF || version == 1 || ((head >> 17) & 3) != 1 || bits is 0 or 15 || rate == 3 || (head & 3) == 2)
        {
            return null;
        }

        var isFirst = version == 3;
        var hertz = Rates[rate] / (isFirst ? 1 : version == 2 ? 2 : 4);
        var samples = isFirst ? 1152 : 576;
        var length = (samples / 8 * (isFirst ? FirstBits : SecondBits)[bits - 1] * 1000 / hertz) + (int)((head >> 9) & 1);
        return new Frame(hertz, samples, length);
    }

    private readonly record struct Frame(int Rate, int Samples, int Length);
}
