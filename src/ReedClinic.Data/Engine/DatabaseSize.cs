using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Data.Engine;

/// <summary>How much room the records take.</summary>
internal static class DatabaseSize
{
    /// <summary>In bytes.</summary>
    public static async Task<long> SizeAsync(this ClinicDb db, CancellationToken ct) => db is PostgresClinicDb
        ? await db.Database.SqlQuery<long>($"SELECT pg_database_size(current_database()) AS \"Value\"").SingleAsync(ct).ConfigureAwait(false)
        : await db.Database.SqlQuery<long>($"SELECT page_count * page_size AS \"Value\" FROM pragma_page_count(), pragma_page_size()").SingleAsync(ct).ConfigureAwait(false);

    /// <summary>The folder of the file they lie in; null where they are on a server of their own.</summary>
    public static string? Folder(this ClinicDb db) => db is PostgresClinicDb
        ? null
        : Path.GetDirectoryName(Path.GetFullPath(new SqliteConnectionStringBuilder(db.Database.GetConnectionString()).DataSource));
}
