using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Data.Engine;

/// <summary>Takes what deleted rows leave behind: pages that are free but still hold text, and the log of changes.</summary>
internal static class Sweeping
{
    /// <summary>Sweeps. Nothing may be open in this context; on SQLite nobody else may be writing.</summary>
    public static async Task SweepAsync(this ClinicDb db, CancellationToken ct)
    {
        if (db is PostgresClinicDb)
        {
            await db.Database.ExecuteSqlRawAsync("VACUUM", ct).ConfigureAwait(false);
            return;
        }

        // The file is written anew without its free pages; then the log of changes is moved into it and cut to nothing.
        await db.Database.ExecuteSqlRawAsync("VACUUM", ct).ConfigureAwait(false);
        await db.Database.OpenConnectionAsync(ct).ConfigureAwait(false);
        var command = db.Database.GetDbConnection().CreateCommand();
        await using var _ = command.ConfigureAwait(false);
        command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
        if (Convert.ToInt64(await command.ExecuteScalarAsync(ct).ConfigureAwait(false), System.Globalization.CultureInfo.InvariantCulture) != 0)
        {
            throw new InvalidOperationException("The log of changes could not be cut: somebody was reading.");
        }
    }
}
