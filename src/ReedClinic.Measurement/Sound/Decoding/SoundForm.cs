namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>The form a sound file is in, told by how it begins.</summary>
public enum SoundForm
{
    /// <summary>RIFF WAVE.</summary>
    Wave,

    /// <summary>AIFF and AIFF-C.</summary>
    Aiff,

    /// <summary>MPEG layer III.</summary>
    Mp3,

    /// <summary>Vorbis in Ogg.</summary>
    OggVorbis,

    /// <summary>Opus in Ogg.</summary>
    OggOpus,

    /// <summary>Opus in WebM, as browsers record it.</summary>
    WebmOpus,

    /// <summary>AAC or Apple Lossless, as telephones keep memos: not read here, and left to a child where the studio named one.</summary>
    Mp4,

    /// <summary>FLAC: likewise.</summary>
    Flac,

    /// <summary>Another code in Ogg or WebM, or another of RIFF’s cousins: not read here.</summary>
    Other,
}
