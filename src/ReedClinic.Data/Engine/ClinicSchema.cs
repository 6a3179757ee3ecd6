using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Storage;

namespace ReedClinic.Data.Engine;

/// <summary>Brings the database to the schema of this build, at start.</summary>
public sealed class ClinicSchema(IDbContextFactory<ClinicDb> databases)
{
    /// <summary>Creates what isn't there and applies every migration that is missing. Safe to repeat.</summary>
    /// <param name="ct">Stops it.</param>
    /// <param name="beforeChange">Done first where there are records whose schema is about to change; when it fails, nothing is changed.</param>
    public async Task MigrateAsync(CancellationToken ct, Func<CancellationToken, Task>? beforeChange = null)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using (db.ConfigureAwait(false))
        {
            if (db is SqliteClinicDb)
            {
                CreateFolderOf(db.Database);
                await ForgetLockOfKilledStartAsync(db.Database, ct).ConfigureAwait(false);
            }

            if (db is PostgresClinicDb)
            {
                await MakeRoomForHistoryAsync(db, ct).ConfigureAwait(false);
            }

            if ((await db.Database.GetPendingMigrationsAsync(ct).ConfigureAwait(false)).Any())
            {
                if (beforeChange is not null && (await db.Database.GetAppliedMigrationsAsync(ct).ConfigureAwait(false)).Any())
                {
                    await beforeChange(ct).ConfigureAwait(false);
                }

                await db.Database.MigrateAsync(ct).ConfigureAwait(false);
            }
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

    private static void CreateFolderOf(DatabaseFacade database)
    {
        var file = new SqliteConnectionStringBuilder(database.GetConnectionString()).DataSource;
        if (Path.GetDirectoryName(file) is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
        }
    }

    // EF guards a migration by a row in a table, which outlives a process that was killed half-way: every later start
    // would wait for it for ever. An embedded file has one app, so a row older than a minute belongs to a dead one.
    private static async Task ForgetLockOfKilledStartAsync(DatabaseFacade database, CancellationToken ct)
    {
        var locks = await database
            .SqlQueryRaw<int>("SELECT COUNT(*) AS \"Value\" FROM sqlite_master WHERE name = '__EFMigrationsLock'")
            .SingleAsync(ct).ConfigureAwait(false);
        if (locks > 0)
        {
            await database.ExecuteSqlRawAsync(
                "DELETE FROM \"__EFMigrationsLock\" WHERE julianday(\"Timestamp\") < julianday('now', '-1 minute')", ct)
                .ConfigureAwait(false);
        }
    }
}
