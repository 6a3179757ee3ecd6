namespace ReedClinic.Domain.Recordings;

/// <summary>The kinds of file that are kept. There are no others; each is known by its content, never by a name.</summary>
public enum MediaType
{
    /// <summary>Uncompressed sound in RIFF.</summary>
    Wav,

    /// <summary>Opus or Vorbis in Ogg.</summary>
    Ogg,

    /// <summary>Opus or Vorbis in WebM.</summary>
    WebM,

    /// <summary>AAC, ALAC or Opus in an ISO base media file, such as .m4a.</summary>
    Mp4,

    /// <summary>MPEG audio layer III.</summary>
    Mp3,

    /// <summary>FLAC in its own frame.</summary>
    Flac,

    /// <summary>A JPEG photograph.</summary>
    Jpeg,

    /// <summary>A PNG photograph.</summary>
    Png,

    /// <summary>A still WebP photograph.</summary>
    WebP,
}

/// <summary>How the kinds of file are called outside.</summary>
public static class MediaTypes
{
    /// <summary>The name under which it is given out, whatever its sender called it. RFC 6381, RFC 9559, RFC 5334, RFC 9639, RFC 3003, RFC 9649; audio/wav is common practice.</summary>
    /// <param name="type">The kind of file.</param>
    public static string ContentType(this MediaType type) => type switch
    {
        MediaType.Wav => "audio/wav",
        MediaType.Ogg => "audio/ogg",
        MediaType.WebM => "audio/webm",
        MediaType.Mp4 => "audio/mp4",
        MediaType.Mp3 => "audio/mpeg",
        MediaType.Flac => "audio/flac",
        MediaType.Jpeg => "image/jpeg",
        MediaType.Png => "image/png",
        _ => "image/webp",
    };

    /// <summary>The ending of the name that we give it, without the point.</summary>
    /// <param name="type">The kind of file.</param>
    public static string Ending(this MediaType type) => type switch
    {
        MediaType.Mp4 => "m4a",
        MediaType.Jpeg => "jpg",
        var other => other.ToString().ToLowerInvariant(),
    };

    /// <summary>True for a photograph, false for sound.</summary>
    /// <param name="type">The kind of file.</param>
    public static bool IsPhoto(this MediaType type) => type is MediaType.Jpeg or MediaType.Png or MediaType.WebP;
}
