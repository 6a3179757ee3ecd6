namespace ReedClinic.Domain.Bench;

/// <summary>What an entry counts for today.</summary>
public enum EntryStanding
{
    /// <summary>It stands.</summary>
    Stands,

    /// <summary>It stands, but the entry that it speaks of isn't there, or was taken back: it has no effect.</summary>
    StandsButNamesNothing,

    /// <summary>A later wording replaced it.</summary>
    Corrected,

    /// <summary>It was taken back.</summary>
    TakenBack,

    /// <summary>It takes an earlier wording back.</summary>
    TakesBack,

    /// <summary>It would take something back, but nothing stood any more.</summary>
    NothingToTakeBack,

    /// <summary>The same operation came twice: the first counts.</summary>
    Repeat,

    /// <summary>Another entry had replaced the same one before: that one counts.</summary>
    CameSecond,

    /// <summary>It would replace an entry that isn't in this log before it.</summary>
    NothingToReplace,

    /// <summary>It would replace an entry of another kind, of which it can be no better wording.</summary>
    ReplacesAnotherKind,

    /// <summary>It would replace an entry that doesn't count itself.</summary>
    FollowsWhatDoesNotCount,
}

/// <summary>One line of the whole history: nothing is left out of it.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Standing">What it counts for today.</param>
/// <param name="Fact">The fact it belongs to, by that fact's first entry; null when it belongs to none.</param>
public sealed record HistoryLine(BenchEntry Entry, EntryStanding Standing, EntryId? Fact)
{
    /// <summary>True when the entry counts for something today.</summary>
    public bool Counts => Standing is EntryStanding.Stands or EntryStanding.StandsButNamesNothing or EntryStanding.TakesBack;
}
