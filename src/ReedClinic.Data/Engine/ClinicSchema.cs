using System.Diagnostics;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Storage;

namespace ReedClinic.Data.Engine;

/// <summary>Brings the database to the schema of this build, at start.</summary>
public sealed class ClinicSchema(IDbContextFactory<ClinicDb> databases)
{
    private const string Migrating = ".migrating";
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(25);
    private static readonly TimeSpan ShortWait = TimeSpan.FromMilliseconds(200);

    /// <summary>Creates what isn't there and applies every migration that is missing. Safe to repeat.</summary>
    /// <param name="ct">Stops it.</param>
    /// <param name="beforeChange">Done first where there are records whose schema is about to change; when it fails, nothing is changed.</param>
    /// <exception cref="NewerSchemaException">A newer build's; nothing is changed.</exception>
    public async Task MigrateAsync(CancellationToken ct, Func<CancellationToken, Task>? beforeChange = null)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using (db.ConfigureAwait(false))
        {
            using var alone = db is SqliteClinicDb ? await TakeFileAsync(db.Database, ct).ConfigureAwait(false) : null;

            if (db is PostgresClinicDb)
            {
                await MakeRoomForHistoryAsync(db, ct).ConfigureAwait(false);
            }

            await RefuseNewerAsync(db.Database, ct).ConfigureAwait(false);
            if ((await db.Database.GetPendingMigrationsAsync(ct).ConfigureAwait(false)).Any())
            {
                if (beforeChange is not null && (await db.Database.GetAppliedMigrationsAsync(ct).ConfigureAwait(false)).Any())
                {
                    await beforeChange(ct).ConfigureAwait(false);
                }

                await WholeAsync(db.Database, ct).ConfigureAwait(false);
            }
        }
    }

    /// <summary>Goes on only where this build knows every migration that the records have: what it wrote into others was never tried.</summary>
    /// <param name="ct">Stops it.</param>
    /// <exception cref="NewerSchemaException">There is one that it doesn't know.</exception>
    public async Task RefuseNewerAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        await RefuseNewerAsync(db.Database, ct).ConfigureAwait(false);
    }

    private static async Task RefuseNewerAsync(DatabaseFacade database, CancellationToken ct)
    {
        if (await NewerAsync(database, ct).ConfigureAwait(false) is { } unknown)
        {
            throw new NewerSchemaException(unknown);
        }
    }

    /// <summary>The newest migration of the records that this build doesn't know, if there is one.</summary>
    internal static async Task<string?> NewerAsync(DatabaseFacade database, CancellationToken ct) =>
        (await database.GetAppliedMigrationsAsync(ct).ConfigureAwait(false)).Except(database.GetMigrations()).Max(StringComparer.Ordinal);

    // References can't be left unchecked once a transaction has begun, and a table of SQLite's that is made anew must not take with
    // it what refers to it: so they are left unchecked from before each migration's transaction until after it.
    private static async Task WholeAsync(DatabaseFacade database, CancellationToken ct)
    {
        if (!database.IsSqlite())
        {
            await database.MigrateAsync(ct).ConfigureAwait(false);
            return;
        }

        await database.OpenConnectionAsync(ct).ConfigureAwait(false);
        try
        {
            await database.ExecuteSqlRawAsync("PRAGMA foreign_keys=OFF", ct).ConfigureAwait(false);
            await database.MigrateAsync(ct).ConfigureAwait(false);
            await database.ExecuteSqlRawAsync("PRAGMA foreign_keys=ON", ct).ConfigureAwait(false);
        }
        finally
        {
            await database.CloseConnectionAsync().ConfigureAwait(false);
        }
    }

    /// <summary>True when the database can be reached and has every migration of this build.</summary>
    public async Task<bool> IsReadyAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.Database.CanConnectAsync(ct).ConfigureAwait(false)
            && await db.GetService<IHistoryRepository>().ExistsAsync(ct).ConfigureAwait(false)
            && !(await db.Database.GetPendingMigrationsAsync(ct).ConfigureAwait(false)).Any();
    }

    // PostgreSQL's provider finds out that nothing was migrated yet by a query that fails, and each failed query stands in
    // the log as an error. With the table of migrations there first, a first start is quiet.
    private static async Task MakeRoomForHistoryAsync(ClinicDb db, CancellationToken ct)
    {
        var creator = db.GetService<IRelationalDatabaseCreator>();
        if (!await creator.ExistsAsync(ct).ConfigureAwait(false))
        {
            await creator.CreateAsync(ct).ConfigureAwait(false);
        }

        // Asked before it is made: PostgreSQL wants the right to create even for a table that is there.
        var there = await db.Database
            .SqlQueryRaw<bool>("SELECT to_regclass('\"__EFMigrationsHistory\"') IS NOT NULL AS \"Value\"")
            .SingleAsync(ct).ConfigureAwait(false);
        if (!there)
        {
            await db.GetService<IHistoryRepository>().CreateIfNotExistsAsync(ct).ConfigureAwait(false);
        }
    }

    // EF guards a migration of SQLite by a row in a table, which outlives a process that was killed half-way: every later start
    // would wait for it for ever. A lock on a file ends with its process; so whoever has that one may remove the row.
    private static async Task<FileStream> TakeFileAsync(DatabaseFacade database, CancellationToken ct)
    {
        var file = new SqliteConnectionStringBuilder(database.GetConnectionString()).DataSource;
        if (Path.GetDirectoryName(file) is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
        }

        var alone = await AloneAsync(file + Migrating, ct).ConfigureAwait(false);
        try
        {
            await ForgetLockOfKilledStartAsync(database, ct).ConfigureAwait(false);
            return alone;
        }
        catch
        {
            await alone.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }

    private static async Task<FileStream> AloneAsync(string file, CancellationToken ct)
    {
        for (var began = Stopwatch.GetTimestamp(); ;)
        {
            try
            {
                return new FileStream(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
            }
            catch (IOException) when (Stopwatch.GetElapsedTime(began) < LongestWait)
            {
                await Task.Delay(ShortWait, ct).ConfigureAwait(false);
            }
            catch (IOException trouble)
            {
                throw new InvalidOperationException(
                    $"Another process has been bringing '{file[..^Migrating.Length]}' up to date for {LongestWait.TotalSeconds:0} s. Wait until it is done, or end it, and start again.", trouble);
            }
        }
    }

    private static async Task ForgetLockOfKilledStartAsync(DatabaseFacade database, CancellationToken ct)
    {
        var locks = await database
            .SqlQueryRaw<int>("SELECT COUNT(*) AS \"Value\" FROM sqlite_master WHERE name = '__EFMigrationsLock'")
            .SingleAsync(ct).ConfigureAwait(false);
        if (locks > 0)
        {
            await database.ExecuteSqlRawAsync("DELETE FROM \"__EFMigrationsLock\"", ct).ConfigureAwait(false);
        }
    }
}
