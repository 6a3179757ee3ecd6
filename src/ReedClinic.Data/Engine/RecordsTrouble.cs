using ReedClinic.Data.Recordings;

namespace ReedClinic.Data.Engine;

/// <summary>What of the records' own troubles somebody at a page can be told in a sentence.</summary>
public enum RecordsState
{
    /// <summary>It is none of these.</summary>
    Other,

    /// <summary>The records can't be reached just now.</summary>
    Away,

    /// <summary>There is no room for anything new; what is there can be read.</summary>
    Full,
}

/// <summary>Tells these troubles from others.</summary>
public static class RecordsTrouble
{
    /// <summary>Which it is.</summary>
    /// <param name="trouble">What went wrong.</param>
    public static RecordsState Of(Exception? trouble) =>
        MediaFolder.IsFull(trouble) ? RecordsState.Full
        : PostgresPatience.IsAway(trouble) ? RecordsState.Away
        : RecordsState.Other;
}
