using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace ReedClinic.Data;

/// <summary>The embedded engine: one file, nothing to install.</summary>
public sealed class SqliteClinicDb(DbContextOptions<SqliteClinicDb> options) : ClinicDb(options);

/// <summary>Used by <c>dotnet ef</c> alone; opens no database.</summary>
public sealed class SqliteClinicDbAtDesignTime : IDesignTimeDbContextFactory<SqliteClinicDb>
{
    /// <inheritdoc />
    public SqliteClinicDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteClinicDb>().UseSqlite("Data Source=:memory:").Options);
}
