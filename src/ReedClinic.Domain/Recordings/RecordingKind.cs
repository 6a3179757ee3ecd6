namespace ReedClinic.Domain.Recordings;

/// <summary>One sound or photograph of one reed.</summary>
/// <param name="Value">A version 7 identifier; it never orders anything, and it isn't the name of the file.</param>
public readonly record struct RecordingId(Guid Value);

/// <summary>What a sound or photograph is of a reed.</summary>
public enum RecordingKind
{
    /// <summary>What the teacher says at the bench; the studio's own, unless it is put into the letter.</summary>
    VoiceMemo,

    /// <summary>How the reed plays as it comes.</summary>
    ArrivalSound,

    /// <summary>How the reed plays as it goes home.</summary>
    FinalSound,

    /// <summary>How the reed looks as it comes.</summary>
    ArrivalPhoto,

    /// <summary>How the reed looks as it goes home.</summary>
    FinalPhoto,

    /// <summary>How the reed plays between two steps of the work: a test that is measured; the studio's own.</summary>
    TestSound,
}

/// <summary>What kinds of recording have in common.</summary>
public static class RecordingKinds
{
    /// <summary>True for what is looked at, false for what is heard.</summary>
    /// <param name="kind">The kind.</param>
    public static bool IsPhoto(this RecordingKind kind) => kind is RecordingKind.ArrivalPhoto or RecordingKind.FinalPhoto;

    /// <summary>True for what the reed plays, and not what somebody says: that is measured.</summary>
    /// <param name="kind">The kind.</param>
    public static bool IsPlayed(this RecordingKind kind) => kind is RecordingKind.ArrivalSound or RecordingKind.FinalSound or RecordingKind.TestSound;

    /// <summary>True for what shows the reed as it came: the student may give that too.</summary>
    /// <param name="kind">The kind.</param>
    public static bool IsOfArrival(this RecordingKind kind) => kind is RecordingKind.ArrivalSound or RecordingKind.ArrivalPhoto;
}
