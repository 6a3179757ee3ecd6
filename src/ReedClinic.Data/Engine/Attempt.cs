using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace ReedClinic.Data.Engine;

/// <summary>
/// One try of a write that is made again when the database was away. Nobody but <see cref="Patiently"/> makes one, and nobody
/// begins a transaction without one: so no transaction can be written that gives up where another would have waited.
/// </summary>
internal sealed class Attempt
{
    private bool _isOver;

    private Attempt()
    {
    }

    /// <summary>Tries until it is done, refused or can't be waited for any longer.</summary>
    public static Task<T> MakeAsync<T>(IExecutionStrategy patience, Func<Attempt, CancellationToken, Task<T>> work, CancellationToken ct) => patience.ExecuteAsync(
        async stop =>
        {
            var attempt = new Attempt();
            try
            {
                return await work(attempt, stop).ConfigureAwait(false);
            }
            finally
            {
                attempt._isOver = true;
            }
        },
        ct);

    /// <summary>Begins this try's transaction, or its next one.</summary>
    public Task<IDbContextTransaction> BeginAsync(ClinicDb db, CancellationToken ct) => _isOver
        ? throw new InvalidOperationException("This try is over: nothing would wait for what is begun in it.")
        : db.Database.BeginTransactionAsync(ct);
}
