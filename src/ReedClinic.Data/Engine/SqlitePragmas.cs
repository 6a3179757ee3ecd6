using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace ReedClinic.Data.Engine;

/// <summary>
/// Sets what SQLite forgets with each connection: readers don't block the writer (WAL), a commit is on the disk before
/// it is acknowledged (full), a busy file is waited for, deleted text is overwritten, and references are checked.
/// </summary>
public sealed class SqlitePragmas : DbConnectionInterceptor
{
    private const string Pragmas =
        "PRAGMA busy_timeout=10000; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA secure_delete=ON; PRAGMA foreign_keys=ON;";

    /// <inheritdoc />
    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        ArgumentNullException.ThrowIfNull(connection);
        using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        command.ExecuteNonQuery();
    }

    /// <inheritdoc />
    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(connection);
        var command = connection.CreateCommand();
        await using (command.ConfigureAwait(false))
        {
            command.CommandText = Pragmas;
            await command.ExecuteNonQueryAsync(cancellationToken).ConfigureAwait(false);
        }
    }
}
