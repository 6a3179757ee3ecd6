using System.Data.Common;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Tests.Engine;

/// <summary>
/// Copies of earlier schemas with data in them (tests/fixtures, made by make-schema-fixture.sh) become today's schema and
/// lose nothing. Until the first release the copy called first-schema follows the model: run the script again.
/// </summary>
public sealed class OldSchemaTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static TheoryData<string, ClinicEngine> Copies
    {
        get
        {
            var copies = new TheoryData<string, ClinicEngine>();
            foreach (var folder in Directory.GetDirectories(Fixtures()))
            {
                copies.Add(Path.GetFileName(folder), ClinicEngine.Sqlite);
                copies.Add(Path.GetFileName(folder), ClinicEngine.Postgres);
            }

            return copies;
        }
    }

    [Theory]
    [MemberData(nameof(Copies))]
    public async Task An_earlier_database_becomes_a_database_of_today_and_keeps_its_rows(string copy, ClinicEngine engine)
    {
        var old = await databases.BareAsync(engine);
        await RestoreAsync(old, Path.Combine(Fixtures(), copy));
        var before = await CountsAsync(old);

        await old.MigrateAsync(Ct);

        Assert.Equal(await SchemaAsync(await databases.FreshAsync(engine)), await SchemaAsync(old));
        var after = await CountsAsync(old);
        Assert.All(before.Where(table => !table.Key.StartsWith("__EF", StringComparison.Ordinal)), table => Assert.Equal(table.Value, after[table.Key]));
        await using var context = old.CreateDbContext();
        Assert.Equal(6, (await context.Users.ToListAsync(Ct)).Count);
        Assert.Equal(4, (await context.Set<Student>().ToListAsync(Ct)).Count);
        var batches = await context.Set<Batch>().Include(batch => batch.Reeds).Include(batch => batch.Questions).ToListAsync(Ct);
        Assert.Equal(4, batches.Count);
        Assert.Equal(12, batches.Sum(batch => batch.Reeds.Count));
        var entries = await context.Set<BenchEntry>().ToListAsync(Ct);
        Assert.True(entries.Count > 100);
        var letters = await context.Set<Letter>().Where(letter => letter.SentNumber != null).ToListAsync(Ct);
        Assert.NotEmpty(letters);
        Assert.Equal(
            letters.Select(letter => (letter.Batch, 1, letter.SentNumber!.Value, (string?)null, letter.SentAt!.Value, letter.SentBy!.Value, letter.SentWith!.Value)).OrderBy(row => row.Batch.Value),
            (await context.Set<LetterSending>().ToListAsync(Ct)).Select(sent => (sent.Batch, sent.Ordinal, sent.VersionNumber, sent.WhatChanged, sent.SentAt, sent.SentBy, sent.Operation)).OrderBy(row => row.Batch.Value));
        Assert.All(letters, letter => Assert.Equal(1, letter.SentOrdinal));
        Assert.Equal(9, entries.GroupBy(entry => entry.ReedId).Count(reed => BenchLog.Fold(reed).LastSequence == reed.Count()));
    }

    // A database as it was before, with a mail that is done: the way of it is in no row, and none is made up.
    [Theory, OnBothEngines]
    public async Task Of_a_mail_that_was_done_before_its_way_was_kept_the_way_stays_unknown(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using (var context = db.CreateDbContext())
        {
            var now = new DateTimeOffset(2026, 11, 2, 9, 0, 0, TimeSpan.Zero);
            context.Add(new Job { Id = Guid.CreateVersion7(now), Kind = JobKind.Mail, MadeAt = now, DueAt = now, DoneAt = now, Way = MailWay.Posted });
            await context.SaveChangesAsync(Ct);
            await context.GetService<IMigrator>().MigrateAsync("ArrivalNoteInLetter", Ct);
            await Assert.ThrowsAnyAsync<DbException>(() => context.Set<Job>().AsNoTracking().ToListAsync(Ct));
        }

        await db.MigrateAsync(Ct);

        await using var after = db.CreateDbContext();
        Assert.Contains(await after.Set<Job>().AsNoTracking().ToListAsync(Ct), job => job is { Kind: JobKind.Mail, DoneAt: not null, Way: null });
    }

    internal static async Task RestoreAsync(TestDatabase database, string folder)
    {
        if (database.Engine == ClinicEngine.Sqlite)
        {
            File.Copy(Path.Combine(folder, "sqlite.db"), new SqliteConnectionStringBuilder(database.Connection).DataSource);
            return;
        }

        // The dump sets its own search path, so its connection isn't given back.
        await using var connection = new NpgsqlConnection(database.Connection + ";Pooling=False");
        await connection.OpenAsync(Ct);
        await using var command = connection.CreateCommand();
#pragma warning disable CA2100 // a file of this repository
        command.CommandText = await File.ReadAllTextAsync(Path.Combine(folder, "postgres.sql"), Ct);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(Ct);
    }

    private static async Task<IReadOnlyList<string>> SchemaAsync(TestDatabase database) => database.Engine == ClinicEngine.Sqlite
        ? await RowsAsync(database, """
            SELECT t.name || '.' || c.name || ' ' || c.type || ' ' || c."notnull" || ' ' || c.pk FROM sqlite_master t, pragma_table_info(t.name) c
            WHERE t.type = 'table' AND t.name NOT LIKE '\_\_EF%' ESCAPE '\' AND t.name NOT LIKE 'sqlite%'
            UNION ALL SELECT sql FROM sqlite_master WHERE type = 'index' AND sql IS NOT NULL ORDER BY 1
            """)
        : await RowsAsync(database, """
            SELECT table_name || '.' || column_name || ' ' || data_type || ' ' || coalesce(character_maximum_length, 0) || ' ' || is_nullable AS line
            FROM information_schema.columns WHERE table_schema = 'public' AND table_name NOT LIKE '\_\_EF%'
            UNION ALL SELECT indexdef FROM pg_indexes WHERE schemaname = 'public' ORDER BY line
            """);

    internal static async Task<IReadOnlyDictionary<string, int>> CountsAsync(TestDatabase database)
    {
        var tables = await RowsAsync(database, database.Engine == ClinicEngine.Sqlite
            ? "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite%'"
            : "SELECT tablename FROM pg_tables WHERE schemaname = 'public'");
        var counts = new Dictionary<string, int>();
        foreach (var table in tables)
        {
            counts[table] = int.Parse((await RowsAsync(database, $"SELECT CAST(COUNT(*) AS TEXT) FROM \"{table}\""))[0], CultureInfo.InvariantCulture);
        }

        return counts;
    }

    private static async Task<IReadOnlyList<string>> RowsAsync(TestDatabase database, string sql)
    {
        await using DbConnection connection = database.Engine == ClinicEngine.Sqlite
            ? new SqliteConnection(database.Connection)
            : new NpgsqlConnection(database.Connection);
        await connection.OpenAsync(Ct);
        await using var command = connection.CreateCommand();
#pragma warning disable CA2100 // written in this class
        command.CommandText = sql;
#pragma warning restore CA2100
        await using var reader = await command.ExecuteReaderAsync(Ct);
        var rows = new List<string>();
        while (await reader.ReadAsync(Ct))
        {
            rows.Add(reader.GetString(0));
        }

        return rows;
    }

    internal static string Fixtures()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ReedClinic.sln")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder?.FullName ?? throw new InvalidOperationException("ReedClinic.sln stands in no folder above the tests."), "tests", "fixtures");
    }
}
