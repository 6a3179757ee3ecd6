using System.Data;
using Npgsql;
using ReedClinic.Data.Backups;

namespace ReedClinic.Data.Engine;

/// <summary>A copy of PostgreSQL's records while the program writes, and the way back.</summary>
internal static class PostgresCopy
{
    /// <summary>Has <c>pg_dump</c> write an archive of the very moment that this transaction sees, and looks at that moment itself.</summary>
    public static async Task<DatabaseSnapshot> TakeAsync(string connectionString, string to, PostgresTools tools, CancellationToken ct)
    {
        var connection = new NpgsqlConnection(connectionString);
        await using var _ = connection.ConfigureAwait(false);
        await connection.OpenAsync(ct).ConfigureAwait(false);
        var transaction = await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        var moment = (await DatabaseSnapshot.ReadAsync(connection, "SELECT pg_export_snapshot()", row => row.GetString(0), ct).ConfigureAwait(false))[0];
        await tools.RunAsync(
            "pg_dump", new NpgsqlConnectionStringBuilder(connectionString),
            ["--format=custom", "--no-owner", "--no-privileges", $"--snapshot={moment}", $"--file={to}"], ct).ConfigureAwait(false);
        return await DatabaseSnapshot.LookAsync(connection, postgres: true, ct).ConfigureAwait(false);
    }

    /// <summary>Puts an archive in the place of what the database holds, or changes nothing.</summary>
    public static Task PutAsync(string archive, string connectionString, PostgresTools tools, CancellationToken ct) =>
        tools.PutAsync(archive, new NpgsqlConnectionStringBuilder(connectionString), ct);

    /// <summary>What is in the database now.</summary>
    public static async Task<DatabaseSnapshot> LookAsync(string connectionString, CancellationToken ct)
    {
        var connection = new NpgsqlConnection(connectionString);
        await using var _ = connection.ConfigureAwait(false);
        await connection.OpenAsync(ct).ConfigureAwait(false);
        return await DatabaseSnapshot.LookAsync(connection, postgres: true, ct).ConfigureAwait(false);
    }

    /// <summary>How many others are connected to the database.</summary>
    public static async Task<long> OthersAsync(string connectionString, CancellationToken ct)
    {
        var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false }.ToString());
        await using var _ = connection.ConfigureAwait(false);
        await connection.OpenAsync(ct).ConfigureAwait(false);
        return (await DatabaseSnapshot.ReadAsync(
            connection, "SELECT COUNT(*) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid() AND backend_type = 'client backend'",
            row => row.GetInt64(0), ct).ConfigureAwait(false))[0];
    }

    /// <summary>What PostgreSQL itself finds wrong with an archive; empty when nothing.</summary>
    public static async Task<IReadOnlyList<string>> FaultsAsync(string archive, PostgresTools tools, CancellationToken ct)
    {
        try
        {
            await tools.RunAsync("pg_restore", null, ["--list", archive], ct).ConfigureAwait(false);
            return [];
        }
        catch (BackupTroubleException trouble)
        {
            return [trouble.Message];
        }
    }
}
