namespace ReedClinic.Domain.Recordings;

/// <summary>What came of reading a file.</summary>
public abstract record MediaReading
{
    private MediaReading()
    {
    }

    internal static MediaReading Broken { get; } = new Refused(RecordingRefusal.Broken);

    /// <summary>It is taken, as it stands here.</summary>
    /// <param name="Type">What it is.</param>
    /// <param name="Bytes">The file without anything that tells of its maker, and without anything behind its end.</param>
    public sealed record Clean(MediaType Type, ReadOnlyMemory<byte> Bytes) : MediaReading
    {
        /// <summary>How long it plays; null for a photograph, or where only playing would tell.</summary>
        public int? Milliseconds { get; init; }

        /// <summary>How many pixels it is wide and high; null for sound.</summary>
        public (int Width, int Height)? Pixels { get; init; }
    }

    /// <summary>It isn't taken.</summary>
    /// <param name="Why">Why not.</param>
    public sealed record Refused(RecordingRefusal Why) : MediaReading;
}
