using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Recordings;

/// <summary>A sound or photograph as it is shown.</summary>
/// <param name="Id">Which.</param>
/// <param name="Reed">Of which reed.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Type">What kind of file it is.</param>
/// <param name="Bytes">How large it is.</param>
/// <param name="Milliseconds">How long it plays, if it plays and that is known.</param>
/// <param name="Words">What is heard or seen in it.</param>
/// <param name="PassId">The pass it belongs to, if it is known.</param>
/// <param name="AtSequence">The place in the reed's log at which it was made.</param>
/// <param name="InLetter">Whether a memo was put into the letter.</param>
/// <param name="FromStudio">Whether it was made by those who work here.</param>
/// <param name="RecordedAt">When.</param>
public sealed record RecordingView(
    RecordingId Id,
    ReedId Reed,
    RecordingKind Kind,
    MediaType Type,
    int Bytes,
    int? Milliseconds,
    string? Words,
    PassId? PassId,
    int AtSequence,
    bool InLetter,
    bool FromStudio,
    DateTimeOffset RecordedAt)
{
    /// <summary>Whether whoever asked may remove it.</summary>
    public bool MayRemove { get; init; }

    /// <summary>Who made it, as whoever asked sees it.</summary>
    public RecordingHand By { get; init; }

    /// <summary>The name that it is given out under: ours, never its sender's.</summary>
    public string FileName => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Kind.ToString().ToLowerInvariant()}-{RecordedAt.UtcDateTime:yyyyMMdd-HHmmss}.{Type.Ending()}");
}

/// <summary>Who made a recording.</summary>
public enum RecordingHand
{
    /// <summary>Somebody who works here.</summary>
    Studio,

    /// <summary>Whoever asks.</summary>
    You,

    /// <summary>The student.</summary>
    Student,

    /// <summary>Somebody who answers, or answered, for the student.</summary>
    Guardian,
}

/// <summary>The sounds and photographs of one reed, and what whoever asked may add.</summary>
/// <param name="Shown">What is there, the oldest first.</param>
/// <param name="MayAdd">The kinds that may be added.</param>
public sealed record ReedRecordingsView(IReadOnlyList<RecordingView> Shown, IReadOnlyList<RecordingKind> MayAdd)
{
    /// <summary>True for the student whose reed it is.</summary>
    public bool IsOwn { get; init; }
}

/// <summary>A file that may be given out.</summary>
/// <param name="View">What it is.</param>
/// <param name="Path">Where it lies.</param>
/// <param name="Sha256">The sum over it.</param>
public sealed record RecordingFile(RecordingView View, string Path, string Sha256);

/// <summary>A file on its way here.</summary>
/// <param name="Id">The id that the recording has or will have.</param>
/// <param name="Received">How much of it is here and safe; the next piece begins there.</param>
/// <param name="Bytes">How large it is.</param>
public sealed record UploadView(RecordingId Id, int Received, int Bytes);

/// <summary>What became of a piece.</summary>
public enum ChunkEnd
{
    /// <summary>It is here and safe, now or since an earlier try.</summary>
    Taken,

    /// <summary>It doesn't follow what is here: the next piece has to begin where the answer says.</summary>
    Elsewhere,

    /// <summary>It is longer than what was announced, or than a piece may be; nothing of it was kept.</summary>
    TooLarge,

    /// <summary>The disk is full; nothing of it was kept.</summary>
    DiskFull,

    /// <summary>There is nothing on its way that this actor sends.</summary>
    NotFound,
}

/// <summary>The answer to a piece.</summary>
/// <param name="End">What became of it.</param>
/// <param name="Received">How much of the file is here and safe.</param>
public readonly record struct ChunkAnswer(ChunkEnd End, int Received);
