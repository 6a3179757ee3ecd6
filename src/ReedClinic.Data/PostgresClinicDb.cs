using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace ReedClinic.Data;

/// <summary>The engine for a studio with a server: PostgreSQL 15 or later.</summary>
public sealed class PostgresClinicDb(DbContextOptions<PostgresClinicDb> options) : ClinicDb(options);

/// <summary>Used by <c>dotnet ef</c> alone; opens no connection.</summary>
public sealed class PostgresClinicDbAtDesignTime : IDesignTimeDbContextFactory<PostgresClinicDb>
{
    /// <inheritdoc />
    public PostgresClinicDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresClinicDb>().UseNpgsql("Host=nowhere").Options);
}
