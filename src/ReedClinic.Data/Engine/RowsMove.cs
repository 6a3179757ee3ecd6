using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Npgsql;
using ReedClinic.Data.Backups;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Engine;

/// <summary>Moves every row of a SQLite file into an empty PostgreSQL database, in one transaction, and compares both afterwards.</summary>
internal sealed class RowsMove(IDbContextFactory<ClinicDb> databases)
{
    private const string References = """
        SELECT format('ALTER TABLE %s DROP CONSTRAINT %I', conrelid::regclass, conname),
               format('ALTER TABLE %s ADD CONSTRAINT %I %s', conrelid::regclass, conname, pg_get_constraintdef(oid))
        FROM pg_constraint WHERE contype = 'f' AND connamespace = 'public'::regnamespace ORDER BY 1
        """;

    private const string Counters = """
        SELECT format('SELECT setval(%L, (SELECT COALESCE(MAX(%I), 0) + 1 FROM public.%I), false)', pg_get_serial_sequence(format('public.%I', table_name), column_name), column_name, table_name)
        FROM information_schema.columns WHERE table_schema = 'public' AND pg_get_serial_sequence(format('public.%I', table_name), column_name) IS NOT NULL
        """;

    /// <summary>Moves.</summary>
    /// <param name="file">A SQLite file that nobody writes to; it is brought to this build's schema in a copy, and not changed itself.</param>
    /// <param name="tell">Hears how far it is.</param>
    /// <param name="ct">Stops it; the database is empty then.</param>
    /// <exception cref="BackupTroubleException">There is a studio in the database already, or a row came out otherwise.</exception>
    public async Task MoveAsync(string file, Action<string> tell, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.Set<Studio>().AnyAsync(ct).ConfigureAwait(false) || await db.Users.AnyAsync(ct).ConfigureAwait(false))
        {
            throw new BackupTroubleException("There is a studio in this PostgreSQL database already. Name an empty database.");
        }

        var copy = Path.Combine(Directory.CreateTempSubdirectory("reedclinic-move-").FullName, BackupLayout.Sqlite);
        try
        {
            await BackupSums.CopyAsync(file, copy, ct).ConfigureAwait(false);
            await UpToDateAsync(copy, ct).ConfigureAwait(false);
            var source = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = copy, Pooling = false }.ToString());
            await using var __ = source.ConfigureAwait(false);
            await source.OpenAsync(ct).ConfigureAwait(false);
            await MoveAsync(db, source, tell, ct).ConfigureAwait(false);
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(copy)!, recursive: true);
        }
    }

    private static async Task MoveAsync(ClinicDb db, SqliteConnection source, Action<string> tell, CancellationToken ct)
    {
        var tables = db.Model.GetRelationalModel().Tables.OrderBy(table => table.Name, StringComparer.Ordinal).ToList();
        await db.Database.OpenConnectionAsync(ct).ConfigureAwait(false);
        var target = (NpgsqlConnection)db.Database.GetDbConnection();
        var transaction = await target.BeginTransactionAsync(ct).ConfigureAwait(false);
        await using var _ = transaction.ConfigureAwait(false);
        var references = await DatabaseSnapshot.ReadAsync(target, References, row => (Drop: row.GetString(0), Add: row.GetString(1)), ct).ConfigureAwait(false);
        await SayAsync(target, references.Select(reference => reference.Drop), ct).ConfigureAwait(false);
        await SayAsync(target, tables.Select(table => $"ALTER TABLE \"{table.Name}\" DISABLE TRIGGER USER"), ct).ConfigureAwait(false);
        await SayAsync(target, tables.Select(table => $"DELETE FROM \"{table.Name}\""), ct).ConfigureAwait(false);
        foreach (var table in tables)
        {
            await MoveAsync(table, source, target, ct).ConfigureAwait(false);
        }

        await SayAsync(target, references.Select(reference => reference.Add), ct).ConfigureAwait(false);
        await SayAsync(target, tables.Select(table => $"ALTER TABLE \"{table.Name}\" ENABLE TRIGGER USER"), ct).ConfigureAwait(false);
        await SayAsync(target, await DatabaseSnapshot.ReadAsync(target, Counters, row => row.GetString(0), ct).ConfigureAwait(false), ct).ConfigureAwait(false);
        tell("Comparing every row …");
        foreach (var table in tables)
        {
            var (was, @is) = (await RowSums.OfAsync(table, source, ct).ConfigureAwait(false), await RowSums.OfAsync(table, target, ct).ConfigureAwait(false));
            if (was != @is)
            {
                throw new BackupTroubleException($"{table.Name} came out otherwise: {was.Rows} rows were read, {@is.Rows} stand there, and their sums are {(was.Sum == @is.Sum ? "equal" : "not equal")}. Nothing was kept.");
            }
        }

        await transaction.CommitAsync(ct).ConfigureAwait(false);
    }

    private static async Task MoveAsync(ITable table, SqliteConnection source, NpgsqlConnection target, CancellationToken ct)
    {
        var columns = table.Columns.ToList();
        var names = string.Join(", ", columns.Select(column => $"\"{column.Name}\""));
        var writer = await target.BeginBinaryImportAsync($"COPY \"{table.Name}\" ({names}) FROM STDIN (FORMAT BINARY)", ct).ConfigureAwait(false);
        await using var _ = writer.ConfigureAwait(false);
        await RowSums.EachAsync(table, columns, source, async row =>
        {
            await writer.StartRowAsync(ct).ConfigureAwait(false);
            foreach (var value in row)
            {
                await (value is null ? writer.WriteNullAsync(ct) : writer.WriteAsync(value, ct)).ConfigureAwait(false);
            }
        }, ct).ConfigureAwait(false);
        await writer.CompleteAsync(ct).ConfigureAwait(false);
    }

    private static async Task SayAsync(NpgsqlConnection connection, IEnumerable<string> sayings, CancellationToken ct)
    {
        foreach (var saying in sayings)
        {
            var command = connection.CreateCommand();
            await using var _ = command.ConfigureAwait(false);
#pragma warning disable CA2100 // written here, with names that the database gave
            command.CommandText = saying;
#pragma warning restore CA2100
            await command.ExecuteNonQueryAsync(ct).ConfigureAwait(false);
        }
    }

    private static async Task UpToDateAsync(string file, CancellationToken ct)
    {
        var options = new DbContextOptionsBuilder<SqliteClinicDb>().UseSqlite(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
        var db = new SqliteClinicDb(options.Options);
        await using var _ = db.ConfigureAwait(false);
        await db.Database.MigrateAsync(ct).ConfigureAwait(false);
    }
}
