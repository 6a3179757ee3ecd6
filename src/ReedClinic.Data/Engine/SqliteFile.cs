using Microsoft.Data.Sqlite;

namespace ReedClinic.Data.Engine;

/// <summary>A SQLite file that is named by hand.</summary>
public static class SqliteFile
{
    /// <summary>How it is reached, whatever signs are in its name.</summary>
    /// <param name="file">The file.</param>
    public static string Connection(string file) => new SqliteConnectionStringBuilder { DataSource = file }.ToString();

    /// <summary>Whether nobody else has it open.</summary>
    /// <param name="file">The file.</param>
    /// <param name="ct">Stops it.</param>
    public static Task<bool> IsUnusedAsync(string file, CancellationToken ct) => SqliteCopy.IsMineAloneAsync(file, ct);
}
