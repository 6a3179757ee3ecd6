using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace ReedClinic.Data.Engine;

/// <summary>Tells a clash with a unique index from every other failed save, on either engine.</summary>
public static class UniqueClash
{
    private const int SqliteUnique = 2067;
    private const int SqlitePrimaryKey = 1555;

    /// <summary>True when the save failed because a row with the same key or unique value was already there.</summary>
    /// <param name="failure">What SaveChanges threw.</param>
    public static bool IsUniqueClash(this DbUpdateException failure) => Where(failure) is not null;

    /// <summary>True when the clash was on an index whose columns include this one.</summary>
    /// <param name="failure">What SaveChanges threw.</param>
    /// <param name="column">A column name, say <c>OperationId</c>; the index keeps EF's default name.</param>
    public static bool IsUniqueClashOn(this DbUpdateException failure, string column) =>
        Where(failure)?.Contains(column, StringComparison.Ordinal) ?? false;

    private static string? Where(DbUpdateException failure)
    {
        ArgumentNullException.ThrowIfNull(failure);
        return failure.InnerException switch
        {
            SqliteException { SqliteExtendedErrorCode: SqliteUnique or SqlitePrimaryKey } sqlite => sqlite.Message,
            PostgresException { SqlState: PostgresErrorCodes.UniqueViolation } postgres => postgres.ConstraintName ?? string.Empty,
            _ => null,
        };
    }
}
