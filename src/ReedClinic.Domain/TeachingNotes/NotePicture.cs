using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.TeachingNotes;

/// <summary>
/// A picture that may stand in notes and letters. It never changes: another picture is another row with another key, so that a
/// letter keeps the one that it was sent with.
/// </summary>
public sealed class NotePicture
{
    /// <summary>The largest file, in bytes: what a plain form brings at once.</summary>
    public const int MostBytes = RecordingLimits.PlainForm;

    /// <summary>The most pixels of a PNG, which has to be unpacked to be printed; our own choice. A JPEG is printed as it is.</summary>
    public const int MostPixelsOfPng = 6_000_000;

    /// <summary>How many there may be in the studio; our own choice.</summary>
    public const int Most = 1000;

    // For the database, which sets every property.
    private NotePicture()
    {
    }

    /// <summary>Makes it of what is kept of a file.</summary>
    /// <param name="key">The key that a letter names it by.</param>
    /// <param name="file">The name of its file.</param>
    /// <param name="clean">What is kept.</param>
    /// <param name="sha256">The sum over that, 64 small hexadecimal figures.</param>
    /// <param name="by">Who brought it.</param>
    /// <param name="now">When.</param>
    public NotePicture(string key, string file, MediaReading.Clean clean, string sha256, AccountId by, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(clean);
        (Key, File, Type, Bytes, Sha256, MadeBy, MadeAt) = (key, file, clean.Type, clean.Bytes.Length, sha256, by, now);
    }

    /// <summary>The key that a letter names it by: small letters and figures, nothing that anybody chose.</summary>
    public string Key { get; private set; } = "";

    /// <summary>The name of its file.</summary>
    public string File { get; private set; } = "";

    /// <summary>What kind of file it is, as its content said: PNG or JPEG.</summary>
    public MediaType Type { get; private set; }

    /// <summary>How large the file is.</summary>
    public int Bytes { get; private set; }

    /// <summary>The sum over the file, 64 small hexadecimal figures.</summary>
    public string Sha256 { get; private set; } = "";

    /// <summary>Who brought it; an id that leads nowhere once that account is erased.</summary>
    public AccountId MadeBy { get; private set; }

    /// <summary>When.</summary>
    public DateTimeOffset MadeAt { get; private set; }

    /// <summary>Reads a file: as strictly as a photograph of a reed, and what can also be printed.</summary>
    /// <param name="file">Its bytes.</param>
    /// <returns>What is kept of it; or in a sentence why it isn't taken.</returns>
    public static (MediaReading.Clean? Clean, string? Why) Read(ReadOnlySpan<byte> file) => file.Length > MostBytes
        ? (null, $"This picture is too large: at most {MostBytes / 1_000_000} megabytes. Please make it smaller.")
        : MediaFile.Read(file, RecordingKind.ArrivalPhoto) switch
        {
            MediaReading.Clean { Type: not (MediaType.Png or MediaType.Jpeg) } or MediaReading.Refused { Why: RecordingRefusal.NotKnown } => (null, "This isn’t a picture that can be printed. PNG and JPEG can."),
            MediaReading.Clean { Type: MediaType.Png, Pixels: { } size } when (long)size.Width * size.Height > MostPixelsOfPng =>
                (null, $"This picture has too many pixels: a PNG at most {MostPixelsOfPng / 1_000_000} million. Please make it smaller, or save it as JPEG."),
            MediaReading.Clean { Type: MediaType.Png } clean when !IsPlainPng(clean.Bytes.Span) =>
                (null, "This PNG is of a kind that can’t be printed. Please save it as an ordinary one, with 8 bits for each colour and not interlaced, or as JPEG."),
            MediaReading.Clean clean => (clean, null),
            MediaReading.Refused(var why) => (null, why.Words(RecordingKind.ArrivalPhoto)),
            _ => throw new InvalidOperationException("A file is taken or refused."),
        };

    // Bit depth and interlace method, as they stand in its first chunk: ISO/IEC 15948, 11.2.2.
    private static bool IsPlainPng(ReadOnlySpan<byte> png) => png[24] == 8 && png[28] == 0;
}

/// <summary>A picture that stands in a letter, sent or not: as long as the letter is there, so is the picture.</summary>
/// <param name="Batch">The batch that the letter is about.</param>
/// <param name="Picture">The picture's key.</param>
public sealed record PictureUse(BatchId Batch, string Picture);
