using System.Data.Common;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Data.Tests.Faults;

/// <summary>
/// All that stands in a database, as lines that are the same for two people who did the same: what is drawn by lot (ids, secrets,
/// codes, a letter's choice among wordings, which goes by its batch's id) and what is of the clock has a sign in its place.
/// </summary>
internal static partial class Stored
{
    private static readonly string[] DrawnByLot = ["Code", "SecretHash", "PasswordHash", "SecurityStamp", "ConcurrencyStamp", "NormalizedUserName", "UserName"];

    public static async Task<IReadOnlyList<string>> ReadAsync(TestDatabase database, CancellationToken ct)
    {
        await using var context = database.CreateDbContext();
        var tables = context.Model.GetEntityTypes().Where(type => type.ClrType != typeof(DataProtectionKey))
            .Select(type => type.GetTableName()).OfType<string>().Distinct().Order(StringComparer.Ordinal).ToList();
        var connection = context.Database.GetDbConnection();
        await context.Database.OpenConnectionAsync(ct);
        await using var command = connection.CreateCommand();
#pragma warning disable CA2100 // names of the model
        command.CommandText = string.Join("; ", tables.Select(table => $"SELECT * FROM \"{table}\""));
#pragma warning restore CA2100
        await using var reader = await command.ExecuteReaderAsync(ct);
        List<string> lines = [];
        foreach (var table in tables)
        {
            while (await reader.ReadAsync(ct))
            {
                lines.Add(Line(table, reader));
            }

            await reader.NextResultAsync(ct);
        }

        lines.Sort(StringComparer.Ordinal);
        return lines;
    }

    private static string Line(string table, DbDataReader row) =>
        $"{table}: {string.Join(" | ", Enumerable.Range(0, row.FieldCount).Where(at => !row.IsDBNull(at)).Select(at => $"{row.GetName(at)}={Value(row.GetName(at), table, row.GetValue(at))}"))}";

    private static string Value(string column, string table, object value) => value switch
    {
        _ when DrawnByLot.Contains(column) || (column == "Payload" && table is "Jobs" or "LetterVersions") => value is "" ? "" : "~",
        Guid => "#",
        byte[] => "bytes",
        DateTime or DateTimeOffset => "@",
        _ => Codes().Replace(Times().Replace(Ids().Replace(Convert.ToString(value, CultureInfo.InvariantCulture)!, "#"), "@"), "~"),
    };

    [GeneratedRegex("[0-9A-Fa-f]{8}-(?:[0-9A-Fa-f]{4}-){3}[0-9A-Fa-f]{12}|[0-9a-f]{32,64}")]
    private static partial Regex Ids();

    [GeneratedRegex(@"\d{4}-\d\d-\d\d(?:[ T]\d\d(?::\d\d:\d\d(?:\.\d+)?)?)?(?:Z|[+-]\d\d:\d\d)?")]
    private static partial Regex Times();

    [GeneratedRegex("(?<=/letters/|/batches/)[A-Z0-9-]+")]
    private static partial Regex Codes();
}
