namespace ReedClinic.Domain.Bench;

/// <summary>Finds the pass of what isn't an entry itself but was made at a place in the log: a memo, a photograph.</summary>
public static class PassPlaces
{
    /// <summary>The pass that was open at a place, as it counts today: passes move when work is taken back.</summary>
    /// <param name="log">The reed's log.</param>
    /// <param name="sequence">The last entry before it; 0 where there was none.</param>
    public static int PassAt(this BenchLog log, int sequence)
    {
        ArgumentNullException.ThrowIfNull(log);
        return log.Facts.Where(fact => fact.Now is { PassId: null } && fact.Sequence <= sequence).Select(fact => fact.Pass).DefaultIfEmpty(0).Max();
    }
}
