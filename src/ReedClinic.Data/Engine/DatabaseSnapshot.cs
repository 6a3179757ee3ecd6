using System.Data.Common;

namespace ReedClinic.Data.Engine;

/// <summary>The records as they were at one moment, copied to a file, and what was in them.</summary>
/// <param name="Schema">The last migration; empty when there was none.</param>
/// <param name="Rows">How many rows each table had.</param>
/// <param name="Files">The files of sounds and photographs that the records name, each with the sum that was kept of it.</param>
/// <param name="Erased">Who had been erased.</param>
internal sealed record DatabaseSnapshot(string Schema, IReadOnlyDictionary<string, long> Rows, IReadOnlyDictionary<string, string> Files, IReadOnlyList<Guid> Erased)
{
    private const string History = "__EFMigrationsHistory";
    private static readonly string[] TablesOfFiles = ["Recordings", "NotePictures"];

    /// <summary>Looks at what a connection sees, within the transaction it is in.</summary>
    public static async Task<DatabaseSnapshot> LookAsync(DbConnection connection, bool postgres, CancellationToken ct)
    {
        var tables = await ReadAsync(
            connection,
            postgres
                ? "SELECT tablename FROM pg_tables WHERE schemaname = 'public' ORDER BY 1"
                : "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name <> '__EFMigrationsLock' ORDER BY 1",
            row => row.GetString(0), ct).ConfigureAwait(false);
        var rows = new SortedDictionary<string, long>(StringComparer.Ordinal);
        foreach (var table in tables)
        {
            rows[table] = (await ReadAsync(connection, $"SELECT COUNT(*) FROM \"{table}\"", row => row.GetInt64(0), ct).ConfigureAwait(false))[0];
        }

        var last = rows.ContainsKey(History)
            ? await ReadAsync(connection, $"SELECT MAX(\"MigrationId\") FROM \"{History}\"", row => row.IsDBNull(0) ? "" : row.GetString(0), ct).ConfigureAwait(false)
            : [];
        var files = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var table in TablesOfFiles.Where(rows.ContainsKey))
        {
            foreach (var (file, sum) in await ReadAsync(connection, $"SELECT \"File\", \"Sha256\" FROM \"{table}\"", row => (row.GetString(0), row.GetString(1)), ct).ConfigureAwait(false))
            {
                files[file] = sum;
            }
        }

        var erased = rows.ContainsKey("ErasedPeople")
            ? await ReadAsync(connection, "SELECT \"Person\" FROM \"ErasedPeople\" ORDER BY \"ErasedAt\", \"Person\"", row => row.GetGuid(0), ct).ConfigureAwait(false)
            : [];
        return new(last.Count > 0 ? last[0] : "", rows, files, erased);
    }

    /// <summary>Reads every row of an answer.</summary>
    public static async Task<IReadOnlyList<T>> ReadAsync<T>(DbConnection connection, string sql, Func<DbDataReader, T> read, CancellationToken ct)
    {
        var command = connection.CreateCommand();
        await using var _ = command.ConfigureAwait(false);
#pragma warning disable CA2100 // written in this folder, with names that the database gave
        command.CommandText = sql;
#pragma warning restore CA2100
        var reader = await command.ExecuteReaderAsync(ct).ConfigureAwait(false);
        await using var __ = reader.ConfigureAwait(false);
        var rows = new List<T>();
        while (await reader.ReadAsync(ct).ConfigureAwait(false))
        {
            rows.Add(read(reader));
        }

        return rows;
    }
}
