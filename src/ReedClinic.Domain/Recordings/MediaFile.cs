using System.Buffers.Binary;
using ReedClinic.Domain.Recordings.Formats;

namespace ReedClinic.Domain.Recordings;

/// <summary>
/// Reads what a file is from its content alone, and keeps of it what is heard or seen: no place, no date, no device, no words,
/// and nothing that is hidden behind its end. OWASP ASVS 5.0: 5.2.1, 5.2.2, 5.2.6, 14.2.8.
/// </summary>
/// <remarks>
/// Sound and pictures aren't decoded: every frame, block and table around them is checked, what is not known is dropped or
/// refused. See the record about what is kept of a file.
/// </remarks>
public static class MediaFile
{
    /// <summary>Reads a whole file.</summary>
    /// <param name="file">Its bytes.</param>
    /// <param name="kind">What it is meant to be.</param>
    /// <returns>What is kept of it, or why it isn't taken.</returns>
    public static MediaReading Read(ReadOnlySpan<byte> file, RecordingKind kind)
    {
        if (file.IsEmpty)
        {
            return new MediaReading.Refused(RecordingRefusal.Empty);
        }

        if (file.Length > RecordingLimits.Bytes(kind))
        {
            return new MediaReading.Refused(RecordingRefusal.TooLarge);
        }

        if (TypeOf(file) is not { } type)
        {
            return new MediaReading.Refused(Mp4File.IsHeic(file) ? RecordingRefusal.Heic : RecordingRefusal.NotKnown);
        }

        if (type.IsPhoto() != kind.IsPhoto())
        {
            return new MediaReading.Refused(kind.IsPhoto() ? RecordingRefusal.NotAPhoto : RecordingRefusal.NotASound);
        }

        return Read(file, type) switch
        {
            MediaReading.Clean { Milliseconds: { } length } when length > RecordingLimits.Length(kind).TotalMilliseconds =>
                new MediaReading.Refused(RecordingRefusal.TooLong),
            MediaReading.Clean { Milliseconds: 0 } => MediaReading.Broken,
            MediaReading.Clean { Pixels: { } size } when !IsSmallEnough(size) => new MediaReading.Refused(RecordingRefusal.TooManyPixels),
            var read => read,
        };
    }

    /// <summary>What a file begins as; null when it is nothing that is kept.</summary>
    /// <param name="file">Its first bytes, at least 64 where there are so many.</param>
    public static MediaType? TypeOf(ReadOnlySpan<byte> file) => file switch
    {
        _ when RiffChunks.Begins(file, "WAVE"u8) || RiffChunks.IsLong(file) => MediaType.Wav,
        _ when RiffChunks.Begins(file, "WEBP"u8) => MediaType.WebP,
        _ when file.StartsWith("OggS"u8) => MediaType.Ogg,
        _ when file.StartsWith("fLaC"u8) => MediaType.Flac,
        _ when file.StartsWith(WebMFile.Beginning) => MediaType.WebM,
        _ when file.StartsWith(PngFile.Beginning) => MediaType.Png,
        _ when file.StartsWith(JpegFile.Beginning) => MediaType.Jpeg,
        _ when Mp4File.Begins(file) => MediaType.Mp4,
        _ when Mp3File.Begins(file) => MediaType.Mp3,
        _ => null,
    };

    /// <summary>Which way up a photograph is that was read here, as Exif counts it: 1 for upright.</summary>
    /// <param name="file">What is kept of it.</param>
    public static int WayUp(ReadOnlySpan<byte> file)
    {
        var at = 2;
        while (file.StartsWith(JpegFile.Beginning) && at + 4 <= file.Length && file[at] == 0xFF && file[at + 1] is >= 0xE0 and <= 0xEF)
        {
            var length = BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]);
            var body = file.Slice(at + 4, Math.Min(Math.Max(0, length - 2), file.Length - at - 4));
            if (body.StartsWith(ExifOrientation.Beginning))
            {
                return Math.Max(1, ExifOrientation.Read(body));
            }

            at += 2 + length;
        }

        return 1;
    }

    internal static bool IsSmallEnough((int Width, int Height) size) =>
        size is { Width: <= RecordingLimits.Side, Height: <= RecordingLimits.Side } && (long)size.Width * size.Height <= RecordingLimits.Pixels;

    private static MediaReading Read(ReadOnlySpan<byte> file, MediaType type) => type switch
    {
        MediaType.Wav => WavFile.Read(file),
        MediaType.Ogg => OggFile.Read(file),
        MediaType.WebM => WebMFile.Read(file),
        MediaType.Mp4 => Mp4File.Read(file),
        MediaType.Mp3 => Mp3File.Read(file),
        MediaType.Flac => FlacFile.Read(file),
        MediaType.Jpeg => JpegFile.Read(file),
        MediaType.Png => PngFile.Read(file),
        _ => WebPFile.Read(file),
    };
}
