using System.Diagnostics;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace ReedClinic.Data.Engine;

/// <summary>
/// Tries again when PostgreSQL is away for a moment, as while it is started anew: some seconds at most, because somebody waits
/// for the answer. A full disk and a lack of memory don't pass by waiting. Within a transaction that somebody began nothing is
/// tried again: what went before is lost with the connection, and whoever began it answers for it. Where a save had
/// gone through before the connection broke, saying it again meets what stands there: a write that carries an operation finds
/// itself, and one that carries a version is told that it was changed meanwhile, as it was.
/// </summary>
/// <param name="dependencies">EF's own.</param>
public sealed class PostgresPatience(ExecutionStrategyDependencies dependencies) : ExecutionStrategy(dependencies, MostTries, LongestPause)
{
    /// <summary>After so long nothing is tried again.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(8);

    private const int MostTries = 40;
    private static readonly TimeSpan LongestPause = TimeSpan.FromSeconds(1);

    private long _began;
    private int _tries;
    private bool _withinTransaction;

    /// <summary>Whether this is a server that is away for a moment, and not one that says no.</summary>
    /// <param name="trouble">What went wrong.</param>
    public static bool IsAway(Exception? trouble) => trouble switch
    {
        null => false,
        PostgresException { SqlState: PostgresErrorCodes.DiskFull or PostgresErrorCodes.OutOfMemory } => false,
        NpgsqlException { IsTransient: true } => true,
        _ => IsAway(trouble.InnerException),
    };

    // EF's own strategies refuse to work within a transaction that somebody began.
    /// <inheritdoc />
    protected override void OnFirstExecution()
    {
        // One strategy serves all that its context does, one after the other.
        ExceptionsEncountered.Clear();
        (_began, _tries) = (Stopwatch.GetTimestamp(), 0);
        _withinTransaction = Dependencies.CurrentContext.Context.Database.CurrentTransaction is not null;
    }

    /// <inheritdoc />
    protected override bool ShouldRetryOn(Exception exception) =>
        !_withinTransaction && IsAway(exception);

    /// <inheritdoc />
    protected override TimeSpan? GetNextDelay(Exception lastException)
    {
        var pause = TimeSpan.FromMilliseconds(Math.Min(100 * Math.Pow(2, _tries++), LongestPause.TotalMilliseconds));
        return Stopwatch.GetElapsedTime(_began) + pause < Longest ? pause : null;
    }
}
