using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;

namespace ReedClinic.Tests.Engines;

/// <summary>What goes wrong at a step, and on which side of it.</summary>
public enum Fault
{
    /// <summary>The step isn't taken, and whoever asked sees a trouble that doesn't pass.</summary>
    Broken,

    /// <summary>The step is taken, but its answer is lost in such a trouble.</summary>
    BrokenAnswer,

    /// <summary>The step isn't taken: the server was away for a moment.</summary>
    Away,

    /// <summary>The step is taken, and the server went away with the answer.</summary>
    AwayWithAnswer,
}

/// <summary>
/// Throws once, at one of the statements and commits that go to the database. Only those count that come of what whoever armed it
/// does from then on: workers go on as they like.
/// </summary>
public sealed class FaultAt : DbCommandInterceptor, IDbTransactionInterceptor
{
    private readonly AsyncLocal<bool> _counts = new();
    private Fault _fault;
    private int _at;
    private int _steps;

    /// <summary>True when it threw since it was armed.</summary>
    public bool WasThere { get; private set; }

    /// <summary>True when there was a step of that number, be it one that gives no answer to lose.</summary>
    public bool WasReached { get; private set; }

    /// <summary>From now on the step of this number goes wrong.</summary>
    public void Arm(int at, Fault fault) => (_at, _fault, _steps, WasThere, WasReached, _counts.Value) = (at, fault, 0, false, false, true);

    /// <summary>From now on nothing goes wrong.</summary>
    public void Disarm() => (_at, _counts.Value) = (0, false);

    /// <summary>True for what this threw, however it was wrapped.</summary>
    public static bool IsMine(Exception? trouble) =>
        trouble is not null && (trouble.Data.Contains(typeof(FaultAt)) || IsMine(trouble.InnerException));

    public override ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
    {
        Begin();
        return ValueTask.FromResult(result);
    }

    public override async ValueTask<DbDataReader> ReaderExecutedAsync(
        DbCommand command, CommandExecutedEventData eventData, DbDataReader result, CancellationToken cancellationToken = default)
    {
        if (Ends())
        {
            await result.DisposeAsync();
            throw Trouble();
        }

        return result;
    }

    public override ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        Begin();
        return ValueTask.FromResult(result);
    }

    public override ValueTask<int> NonQueryExecutedAsync(DbCommand command, CommandExecutedEventData eventData, int result, CancellationToken cancellationToken = default)
    {
        End();
        return ValueTask.FromResult(result);
    }

    public ValueTask<InterceptionResult<DbTransaction>> TransactionStartingAsync(
        DbConnection connection, TransactionStartingEventData eventData, InterceptionResult<DbTransaction> result, CancellationToken cancellationToken = default)
    {
        Begin();
        return ValueTask.FromResult(result);
    }

    public ValueTask<InterceptionResult> TransactionCommittingAsync(
        DbTransaction transaction, TransactionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default)
    {
        Begin();
        return ValueTask.FromResult(result);
    }

    public Task TransactionCommittedAsync(DbTransaction transaction, TransactionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        End();
        return Task.CompletedTask;
    }

    private void Begin()
    {
        if (!_counts.Value || ++_steps != _at)
        {
            return;
        }

        WasReached = true;
        if (_fault is Fault.Broken or Fault.Away)
        {
            throw Trouble();
        }
    }

    private void End()
    {
        if (Ends())
        {
            throw Trouble();
        }
    }

    private bool Ends() => _counts.Value && _steps == _at && !WasThere && _fault is Fault.BrokenAnswer or Fault.AwayWithAnswer;

    private Exception Trouble()
    {
        (WasThere, _at) = (true, 0);
        Exception trouble = _fault is Fault.Away or Fault.AwayWithAnswer
            ? new NpgsqlException("The server is away.", new IOException("The connection was lost."))
            : new InvalidOperationException("The power is gone.");
        trouble.Data[typeof(FaultAt)] = true;
        return trouble;
    }
}
