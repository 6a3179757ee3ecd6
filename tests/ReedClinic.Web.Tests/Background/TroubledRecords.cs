using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using ReedClinic.Data;

namespace ReedClinic.Web.Tests.Background;

/// <summary>
/// Counts each time that the records are asked for anything (a context, a command, a save), and throws at those that a test
/// names. It only hears of what is done within <see cref="Within"/>.
/// </summary>
internal sealed class TroubledRecords : DbCommandInterceptor
{
    private readonly AsyncLocal<bool> _within = new();
    private int _asked;

    /// <summary>How often the records were asked since it was last set to nothing.</summary>
    public int Asked
    {
        get => Volatile.Read(ref _asked);
        set => Volatile.Write(ref _asked, value);
    }

    /// <summary>At which times it throws; the first is number 1.</summary>
    public Func<int, bool> ThrowsAt { get; set; } = _ => false;

    /// <summary>How often it threw.</summary>
    public int Thrown { get; private set; }

    /// <summary>Whatever is begun in this flow from now on is heard of.</summary>
    public void Within() => _within.Value = true;

    /// <summary>The records of a host, with the trouble before them.</summary>
    public IDbContextFactory<ClinicDb> Before(IDbContextFactory<ClinicDb> records) => new Factory(this, records);

    public override ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
    {
        Ask();
        return base.ReaderExecutingAsync(command, eventData, result, cancellationToken);
    }

    public override ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        Ask();
        return base.NonQueryExecutingAsync(command, eventData, result, cancellationToken);
    }

    private void Ask()
    {
        if (_within.Value && ThrowsAt(Interlocked.Increment(ref _asked)))
        {
            Thrown++;
            throw Thrown % 2 == 0
                ? new OperationCanceledException("nobody stopped anything")
                : new InvalidTimeZoneException("nobody expects this one"); // of no kind that any code looks for
        }
    }

    private sealed class Factory(TroubledRecords trouble, IDbContextFactory<ClinicDb> records) : IDbContextFactory<ClinicDb>
    {
        public ClinicDb CreateDbContext()
        {
            trouble.Ask();
            return records.CreateDbContext();
        }
    }
}
