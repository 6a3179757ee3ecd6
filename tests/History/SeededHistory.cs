using System.Data.Common;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Tests.History;

/// <summary>
/// Fills a database with invented students who each have two batches of two reeds and ten findings that were looked for. One is saved
/// as the program does it; the others are copies of those rows with ids, codes and answers of their own, made inside the database.
/// </summary>
internal sealed class SeededHistory(ClinicDb db)
{
    private const string Digits = BatchCode.Alphabet;

    private static readonly DateTimeOffset Begin = new(2025, 3, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly string[] Kinds = ["tip-thin", "tip-corners-thick", "back-thick", "heart-thin", "left-right-uneven"];

    private readonly bool _postgres = db is PostgresClinicDb;

    /// <summary>The id of a copied student.</summary>
    /// <param name="number">From 1 on.</param>
    public static StudentId Student(int number) => new(Guid.Parse(string.Create(CultureInfo.InvariantCulture, $"00000001-0000-7000-8000-{number:X12}")));

    /// <summary>The code of a copied student’s later batch.</summary>
    /// <param name="number">From 1 on.</param>
    public static BatchCode Code(int number) => BatchCode.FromNumber((number * 2) + 1);

    /// <summary>Fills it.</summary>
    /// <param name="students">How many.</param>
    /// <param name="ct">Stops it.</param>
    public async Task FillAsync(int students, CancellationToken ct)
    {
        var student = new Student(new StudentId(Template(1)), "Somebody");
        var batches = Enumerable.Range(0, 2).Select(at => New(student, at)).ToList();
        db.Add(student);
        db.AddRange(batches);
        db.AddRange(batches.SelectMany(batch => batch.Reeds).SelectMany((reed, at) => Rows(reed.Id, at)));
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        await db.Set<Batch>().ExecuteUpdateAsync(row => row.SetProperty(one => one.LetterSentAt, Begin.AddMonths(9)), ct).ConfigureAwait(false);

        await CopyAsync("Students", $"x.\"Id\" = {Quoted(student.Id.Value)}", students, new() { ["Id"] = Id(1, "n"), ["Version"] = Id(9, "n") }, ct).ConfigureAwait(false);
        for (var at = 0; at < 2; at++)
        {
            await CopyBatchAsync(batches[at], at, students, ct).ConfigureAwait(false);
        }

        await RunAsync(_postgres ? "VACUUM ANALYZE" : "ANALYZE", ct).ConfigureAwait(false);
    }

    private static Guid Template(int number) => Guid.Parse(string.Create(CultureInfo.InvariantCulture, $"000000ff-0000-7000-8000-{number:x12}"));

    private static Batch New(Student student, int at)
    {
        var ids = 10 * (at + 1);
        return Batch.Announce(
            new BatchId(Template(ids)),
            BatchCode.FromNumber(BatchCode.HowMany - 1 - at),
            student.Id,
            new OperationId(Template(ids + 1)),
            new AnnouncedBatch(null, null, null, [.. Enumerable.Range(1, 2).Select(reed => new AnnouncedReed($"knot {reed}", "It is tight.", Permission.TakeRisks))], []),
            () => Template(ids++ + 2),
            Begin.AddMonths(at * 3));
    }

    // Five kinds on two reeds of each batch, two or three each: ten for each student.
    private static IEnumerable<SheetRow> Rows(ReedId reed, int at)
    {
        var said = Kinds.Where((_, kind) => (kind + at) % 2 == 0)
            .Select((kind, place) => Found(kind).StampedWith(new EntryStamp(
                new EntryId(Template(100 + (at * 10) + place)), reed, place + 1, new OperationId(Template(200 + (at * 10) + place)), Begin, new AccountId(Template(2)))));
        return SheetRow.Of(reed, BenchLog.Fold([.. said]));
    }

    private static Finding Found(string kind) =>
        ((Outcome<Finding>.Done)Finding.Of(new FindingKindId(kind), FindingCharacter.Fault, new Place(Zone.TipCorners))).Value;

    private async Task CopyBatchAsync(Batch batch, int at, int students, CancellationToken ct)
    {
        var number = $"(n * 2 + {at})";
        await CopyAsync("Batches", $"x.\"Id\" = {Quoted(batch.Id.Value)}", students, new()
        {
            ["Id"] = Id(2, number),
            ["Version"] = Id(9, number),
            ["Code"] = CodeOf(number),
            ["SubmittedBy"] = Id(3, number),
            ["Student"] = Id(1, "n"),
        }, ct).ConfigureAwait(false);
        for (var reed = 0; reed < 2; reed++)
        {
            var id = Id(4, $"(n * 4 + {(at * 2) + reed})");
            var from = Quoted(batch.Reeds[reed].Id.Value);
            await CopyAsync("Reeds", $"x.\"Id\" = {from}", students, new() { ["Id"] = id, ["Batch"] = Id(2, number) }, ct).ConfigureAwait(false);
            var found = $"((n * 7 + length(x.\"FindingKind\") + {at}) % 5 < 2)";
            await CopyAsync("FindingSheet", $"x.\"ReedId\" = {from}", students, new()
            {
                ["ReedId"] = id,
                ["Found"] = found,
                ["Character"] = $"CASE WHEN {found} THEN 'Fault' END",
            }, ct).ConfigureAwait(false);
        }
    }

    private async Task CopyAsync(string table, string which, int students, Dictionary<string, string> other, CancellationToken ct)
    {
        var columns = await ColumnsAsync(table, ct).ConfigureAwait(false);
        var values = columns.Select(column => other.GetValueOrDefault(column, $"x.\"{column}\""));
        await RunAsync($"""
            WITH RECURSIVE s(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM s WHERE n < {students})
            INSERT INTO "{table}" ({string.Join(", ", columns.Select(column => $"\"{column}\""))})
            SELECT {string.Join(", ", values)} FROM "{table}" x, s WHERE {which}
            """, ct).ConfigureAwait(false);
    }

    private async Task<List<string>> ColumnsAsync(string table, CancellationToken ct)
    {
        await db.Database.OpenConnectionAsync(ct).ConfigureAwait(false);
        var command = Command($"SELECT * FROM \"{table}\" LIMIT 0");
        await using var _ = command.ConfigureAwait(false);
        var reader = await command.ExecuteReaderAsync(ct).ConfigureAwait(false);
        await using var __ = reader.ConfigureAwait(false);
        return [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetName)];
    }

    private async Task RunAsync(string sql, CancellationToken ct)
    {
        await db.Database.OpenConnectionAsync(ct).ConfigureAwait(false);
        var command = Command(sql);
        await using var _ = command.ConfigureAwait(false);
        await command.ExecuteNonQueryAsync(ct).ConfigureAwait(false);
    }

    private DbCommand Command(string sql)
    {
        var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        command.CommandTimeout = 600;
        return command;
    }

    private string Id(int kind, string number) => _postgres
        ? $"('{kind:x8}-0000-7000-8000-' || lpad(to_hex({number}), 12, '0'))::uuid"
        : $"printf('{kind:X8}-0000-7000-8000-%012X', {number})";

    private string Quoted(Guid id) => _postgres ? $"'{id}'::uuid" : $"'{id.ToString().ToUpperInvariant()}'";

    // As BatchCode does it: six digits to the base of 29, and one that makes the weighted sum a multiple of 29.
    private static string CodeOf(string number)
    {
        var digits = Enumerable.Range(0, 6).Select(place => $"(({number} / {(int)Math.Pow(29, 5 - place)}) % 29)").ToList();
        var sum = string.Join(" + ", digits.Select((digit, place) => $"{digit} * {7 - place}"));
        return string.Join(" || ", digits.Append($"((29 - ({sum}) % 29) % 29)").Select(digit => $"substr('{Digits}', 1 + {digit}, 1)"));
    }
}
