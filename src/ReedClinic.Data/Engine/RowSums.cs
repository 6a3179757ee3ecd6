using System.Data.Common;
using System.Globalization;
using System.Numerics;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore.Metadata;

namespace ReedClinic.Data.Engine;

/// <summary>Compares what stands in a table of one engine with what stands in the same table of the other.</summary>
public static class RowSums
{
    /// <summary>How many rows a table has, and one number over all that stands in them, whatever their order.</summary>
    /// <param name="table">The table, of the model.</param>
    /// <param name="connection">An open connection to either engine.</param>
    /// <param name="ct">Stops it.</param>
    public static async Task<(long Rows, BigInteger Sum)> OfAsync(ITable table, DbConnection connection, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(connection);
        var (rows, sum) = (0L, BigInteger.Zero);
        await EachAsync(table, [.. table.Columns], connection, row =>
        {
            var text = new StringBuilder();
            foreach (var value in row)
            {
                text.Append(value switch
                {
                    null => "-",
                    byte[] bytes => Convert.ToHexString(bytes),
                    DateTime at => at.Ticks.ToString(CultureInfo.InvariantCulture),
                    double number => number.ToString("R", CultureInfo.InvariantCulture),
                    IFormattable other => "=" + other.ToString(null, CultureInfo.InvariantCulture),
                    var other => "=" + other,
                }).Append('\u001f');
            }

            rows++;
            sum += new BigInteger(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())), isUnsigned: true);
            return Task.CompletedTask;
        }, ct).ConfigureAwait(false);
        return (rows, sum);
    }

    // Both providers give a value as the type that the model's column has once its conversion was done.
    internal static async Task EachAsync(ITable table, List<IColumn> columns, DbConnection connection, Func<object?[], Task> each, CancellationToken ct)
    {
        var command = connection.CreateCommand();
        await using var _ = command.ConfigureAwait(false);
#pragma warning disable CA2100 // names of the model
        command.CommandText = $"SELECT {string.Join(", ", columns.Select(column => $"\"{column.Name}\""))} FROM \"{table.Name}\"";
#pragma warning restore CA2100
        var reader = await command.ExecuteReaderAsync(ct).ConfigureAwait(false);
        await using var __ = reader.ConfigureAwait(false);
        while (await reader.ReadAsync(ct).ConfigureAwait(false))
        {
            await each([.. columns.Select((column, at) => reader.IsDBNull(at) ? null : Read(reader, at, column.ProviderClrType))]).ConfigureAwait(false);
        }
    }

    private static object Read(DbDataReader reader, int at, Type type) => Type.GetTypeCode(Nullable.GetUnderlyingType(type) ?? type) switch
    {
        TypeCode.String => reader.GetString(at),
        TypeCode.Boolean => reader.GetBoolean(at),
        TypeCode.Int16 => reader.GetInt16(at),
        TypeCode.Int32 => reader.GetInt32(at),
        TypeCode.Int64 => reader.GetInt64(at),
        TypeCode.Double => reader.GetDouble(at),
        TypeCode.DateTime => DateTime.SpecifyKind(reader.GetDateTime(at), DateTimeKind.Utc),
        _ when type == typeof(Guid) || type == typeof(Guid?) => reader.GetGuid(at),
        _ when type == typeof(DateOnly) || type == typeof(DateOnly?) => reader.GetFieldValue<DateOnly>(at),
        _ when type == typeof(byte[]) => reader.GetFieldValue<byte[]>(at),
        _ => throw new NotSupportedException($"A column of type {type.Name} was added, and nobody said how it moves."),
    };
}
