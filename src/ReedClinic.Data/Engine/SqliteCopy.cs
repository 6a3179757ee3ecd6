using Microsoft.Data.Sqlite;
using ReedClinic.Data.Backups;

namespace ReedClinic.Data.Engine;

/// <summary>A copy of SQLite's file while the program writes, and the way back.</summary>
internal static class SqliteCopy
{
    private static readonly string[] Companions = ["-wal", "-shm", "-journal"];

    /// <summary>Copies the records by SQLite's own back-up interface: one moment, whoever writes meanwhile.</summary>
    public static async Task<DatabaseSnapshot> TakeAsync(string connection, string to, CancellationToken ct)
    {
        // Never made anew: a wrong name would else be backed up as an empty studio.
        var source = new SqliteConnection(new SqliteConnectionStringBuilder(connection) { Mode = SqliteOpenMode.ReadWrite, Pooling = false }.ToString());
        await using (source.ConfigureAwait(false))
        {
            await source.OpenAsync(ct).ConfigureAwait(false);
            var target = Alone(to, SqliteOpenMode.ReadWriteCreate);
            await using var _ = target.ConfigureAwait(false);
            await target.OpenAsync(ct).ConfigureAwait(false);
            source.BackupDatabase(target);
            await DatabaseSnapshot.ReadAsync(target, "PRAGMA journal_mode=DELETE", row => row.GetString(0), ct).ConfigureAwait(false);
            Flush(to);
            return await DatabaseSnapshot.LookAsync(target, postgres: false, ct).ConfigureAwait(false);
        }
    }

    /// <summary>What is in a copy.</summary>
    public static async Task<DatabaseSnapshot> LookAsync(string file, CancellationToken ct)
    {
        var connection = Alone(file, SqliteOpenMode.ReadOnly);
        await using var _ = connection.ConfigureAwait(false);
        await connection.OpenAsync(ct).ConfigureAwait(false);
        return await DatabaseSnapshot.LookAsync(connection, postgres: false, ct).ConfigureAwait(false);
    }

    /// <summary>What SQLite itself finds wrong with a copy; empty when nothing.</summary>
    public static async Task<IReadOnlyList<string>> FaultsAsync(string file, CancellationToken ct)
    {
        try
        {
            var connection = Alone(file, SqliteOpenMode.ReadOnly);
            await using var _ = connection.ConfigureAwait(false);
            await connection.OpenAsync(ct).ConfigureAwait(false);
            return [.. (await DatabaseSnapshot.ReadAsync(connection, "PRAGMA integrity_check(10)", row => row.GetString(0), ct).ConfigureAwait(false)).Where(line => line != "ok")];
        }
        catch (SqliteException trouble)
        {
            return [trouble.Message];
        }
    }

    /// <summary>
    /// Folds what is still beside the file into it, which SQLite does only for whoever is the only one to have it open
    /// (https://www.sqlite.org/pragma.html#pragma_journal_mode).
    /// </summary>
    /// <returns>False when somebody else has it open.</returns>
    public static async Task<bool> IsMineAloneAsync(string file, CancellationToken ct)
    {
        if (!File.Exists(file))
        {
            return true;
        }

        try
        {
            var connection = Alone(file, SqliteOpenMode.ReadWrite);
            await using var _ = connection.ConfigureAwait(false);
            await connection.OpenAsync(ct).ConfigureAwait(false);
            connection.DefaultTimeout = 1; // seconds: Microsoft.Data.Sqlite tries again for so long
            return (await DatabaseSnapshot.ReadAsync(connection, "PRAGMA journal_mode=DELETE", row => row.GetString(0), ct).ConfigureAwait(false))[0] == "delete";
        }
        catch (SqliteException trouble) when (trouble.SqliteErrorCode is 5 or 6)
        {
            return false;
        }
        catch (SqliteException trouble) when (trouble.SqliteErrorCode is 11 or 26)
        {
            return true; // not a database any more, which may be why somebody restores
        }
    }

    /// <summary>Puts a copy where the records lie. The file that was there is kept under another name.</summary>
    public static async Task PutAsync(string copy, string file, string? keepOldAs, CancellationToken ct)
    {
        var arriving = file + ".arriving";
        File.Delete(arriving);
        await BackupSums.CopyAsync(copy, arriving, ct).ConfigureAwait(false);
        if (File.Exists(file) && keepOldAs is not null)
        {
            await BackupSums.CopyAsync(file, keepOldAs, ct).ConfigureAwait(false);
            KeepMode(file, arriving);
        }

        foreach (var companion in Companions)
        {
            File.Delete(file + companion);
        }

        File.Move(arriving, file, overwrite: true);
    }

    private static SqliteConnection Alone(string file, SqliteOpenMode mode) =>
        new(new SqliteConnectionStringBuilder { DataSource = file, Mode = mode, Pooling = false }.ToString());

    private static void KeepMode(string file, string arriving)
    {
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(arriving, File.GetUnixFileMode(file));
        }
    }

    private static void Flush(string file)
    {
        using var handle = File.OpenHandle(file, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        RandomAccess.FlushToDisk(handle);
    }
}
