namespace ReedClinic.Domain.Bench;

/// <summary>Where a reed stands at the bench, at a glance.</summary>
public enum ReedState
{
    /// <summary>Nobody has tried it or found anything on it.</summary>
    NotLookedAt,

    /// <summary>It was tried or looked at, and nothing was done to it.</summary>
    Tested,

    /// <summary>Something was done to it, and nobody has said to stop.</summary>
    BeingWorked,

    /// <summary>It was put aside for now.</summary>
    Parked,

    /// <summary>The work has stopped, and how it leaves the bench hasn’t been said.</summary>
    Stopped,

    /// <summary>It has its verdict.</summary>
    HasVerdict,
}

/// <summary>Reads a reed’s state out of its log.</summary>
public static class ReedStates
{
    /// <summary>
    /// The state of a reed. Work after a verdict or a stop takes the reed up again; a test on another day doesn’t.
    /// </summary>
    /// <param name="log">The reed’s log.</param>
    public static ReedState Of(BenchLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var worked = log.Work.LastOrDefault();
        return log switch
        {
            { IsParked: true } => ReedState.Parked,
            { Verdict: { } verdict } when verdict.Sequence > (worked?.Sequence ?? 0) => ReedState.HasVerdict,
            { IsStopped: true } => ReedState.Stopped,
            _ when worked is not null => ReedState.BeingWorked,
            _ when log.Facts.Any(fact => fact.Now is Test or Finding or LookedFor) => ReedState.Tested,
            _ => ReedState.NotLookedAt,
        };
    }

    /// <summary>A state in plain words.</summary>
    /// <param name="state">The state.</param>
    public static string Name(this ReedState state) => state switch
    {
        ReedState.NotLookedAt => "not looked at yet",
        ReedState.Tested => "tried",
        ReedState.BeingWorked => "being worked",
        ReedState.Parked => "put aside for now",
        ReedState.Stopped => "stopped, no verdict yet",
        ReedState.HasVerdict => "has its verdict",
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };
}
