namespace ReedClinic.Domain.Recordings;

/// <summary>Every cap on sounds and photographs, in one place. The figures are our own choice.</summary>
public static class RecordingLimits
{
    /// <summary>The most of a file that travels at once, in bytes.</summary>
    public const int Chunk = 1_048_576;

    /// <summary>The largest file that a plain form may bring at once, in bytes: a phone's photograph, a short sound.</summary>
    public const int PlainForm = 6_000_000;

    /// <summary>The longest words typed beside a recording, in characters.</summary>
    public const int Words = 500;

    /// <summary>The most pixels of a photograph: a picture of 50 million, as phones make them, and some room.</summary>
    public const long Pixels = 64_000_000;

    /// <summary>The longest side of a photograph, in pixels.</summary>
    public const int Side = 20_000;

    /// <summary>After how long a memo at the bench stops by itself: what goes on for longer was forgotten, not said.</summary>
    public static TimeSpan MemoAtBench { get; } = TimeSpan.FromMinutes(10);

    /// <summary>After how long a take of a reed stops by itself: a crow, a peep or a long tone is shorter.</summary>
    public static TimeSpan Take { get; } = TimeSpan.FromSeconds(15);

    /// <summary>What everything of one student may take together.</summary>
    public static RecordingRoom OfStudent { get; } = new(600, 2_000_000_000);

    /// <summary>What everything in the studio may take together.</summary>
    public static RecordingRoom OfStudio { get; } = new(60_000, 40_000_000_000);

    /// <summary>The largest file of a kind, in bytes.</summary>
    /// <param name="kind">The kind.</param>
    public static int Bytes(RecordingKind kind) => kind switch
    {
        RecordingKind.VoiceMemo => 25 * Chunk,
        RecordingKind.ArrivalSound or RecordingKind.FinalSound or RecordingKind.TestSound => 25 * Chunk,
        _ => 16 * Chunk,
    };

    /// <summary>The longest sound of a kind.</summary>
    /// <param name="kind">The kind; photographs have no length.</param>
    public static TimeSpan Length(RecordingKind kind) =>
        kind == RecordingKind.VoiceMemo ? TimeSpan.FromMinutes(30) : TimeSpan.FromMinutes(5);

    /// <summary>How many of a kind one reed may have.</summary>
    /// <param name="kind">The kind.</param>
    public static int OnReed(RecordingKind kind) => kind switch
    {
        RecordingKind.VoiceMemo => 60,
        RecordingKind.TestSound => 40,
        _ => 6,
    };
}

/// <summary>Room for files.</summary>
/// <param name="Files">How many.</param>
/// <param name="Bytes">How large they may be together.</param>
public readonly record struct RecordingRoom(int Files, long Bytes)
{
    /// <summary>Whether one more has room.</summary>
    /// <param name="files">How many there are.</param>
    /// <param name="bytes">How large they are together.</param>
    /// <param name="more">How large the new one is.</param>
    public bool Takes(int files, long bytes, long more) => files < Files && bytes + more <= Bytes;
}
