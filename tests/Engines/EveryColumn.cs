using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data;

namespace ReedClinic.Tests.Engines;

/// <summary>Looks for words in every column of every table, as the database itself lists them.</summary>
public static class EveryColumn
{
    /// <summary>The columns that hold these words, as table and column.</summary>
    /// <param name="db">Which database.</param>
    /// <param name="words">What is looked for; it has no sign of a pattern.</param>
    /// <param name="ct">Stops it.</param>
    public static async Task<IReadOnlyList<string>> HoldingAsync(ClinicDb db, string words, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(db);
        var connection = db.Database.GetDbConnection();
        await db.Database.OpenConnectionAsync(ct);
        try
        {
            var columns = await ReadAsync(connection, db is PostgresClinicDb
                ? "SELECT table_name, column_name FROM information_schema.columns WHERE table_schema = 'public'"
                : "SELECT t.name, c.name FROM sqlite_master t, pragma_table_info(t.name) c WHERE t.type = 'table'", null, ct);
            var holding = new List<string>();
            foreach (var (table, column) in columns)
            {
                if ((await ReadAsync(connection, $"SELECT '', '' FROM \"{table}\" WHERE CAST(\"{column}\" AS TEXT) LIKE @words", $"%{words}%", ct)).Count > 0)
                {
                    holding.Add($"{table}.{column}");
                }
            }

            return holding;
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
        }
    }

    private static async Task<IReadOnlyList<(string Table, string Column)>> ReadAsync(DbConnection connection, string sql, string? words, CancellationToken ct)
    {
        await using var command = connection.CreateCommand();
#pragma warning disable CA2100 // written in this class, with names that the database gave
        command.CommandText = sql;
#pragma warning restore CA2100
        if (words is not null)
        {
            var parameter = command.CreateParameter();
            (parameter.ParameterName, parameter.Value) = ("@words", words);
            command.Parameters.Add(parameter);
        }

        await using var reader = await command.ExecuteReaderAsync(ct);
        var rows = new List<(string, string)>();
        while (await reader.ReadAsync(ct))
        {
            rows.Add((reader.GetString(0), reader.GetString(1)));
        }

        return rows;
    }
}
