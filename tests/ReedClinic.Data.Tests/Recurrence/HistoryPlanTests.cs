using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.Tests.Bench;
using ReedClinic.Tests.History;

namespace ReedClinic.Data.Tests.Recurrence;

/// <summary>Among two thousand other students, what is read of one student is found by indexes: not one table is read through.</summary>
public sealed class HistoryPlanTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const int Students = 2000;

    // Those that are filled: a table without a row is read through whatever its indexes.
    private static readonly string[] Tables = ["Students", "Batches", "Reeds", "FindingSheet"];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task One_students_reeds_over_time_and_their_evidence_are_found_by_indexes(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using (var context = db.CreateDbContext())
        {
            context.Database.SetCommandTimeout(TimeSpan.FromMinutes(5));
            await new SeededHistory(context).FillAsync(Students, Ct);
        }

        await new StudioRatesCaretaker(db, TimeProvider.System).RollUpAsync(Ct);
        var plans = new Plans(db);

        var told = await new OverTimeBook(plans).OfAsync(Studio.Ada, SeededHistory.Student(Students / 2), Ct);
        var evidence = await new CommonThreadBook(plans, TimeProvider.System).FindAsync(Studio.Ada, SeededHistory.Code(Students / 2), Ct);

        Assert.Equal(2, told!.Batches.Count);
        Assert.Equal(10, told.Batches.Sum(batch => batch.Sheet.Reeds.Sum(reed => batch.Sheet.Kinds.Count(kind => batch.Sheet.Cell(kind, reed).Answer != Domain.Recurrence.SheetAnswer.NotLooked))));
        Assert.True(evidence!.Sheets.Studio.Rates["tip-thin"].Students >= Students);
        Assert.True(plans.Read.Count >= 8, $"Only {plans.Read.Count} statements were explained.");
        Assert.All(plans.Read, plan => Assert.DoesNotContain(plan.Lines, line => ReadsThrough(line, plan.Lines)));
    }

    // PostgreSQL names the table. SQLite names what stands for it in the statement, so any scan counts but that of a list of ids and
    // that of rows which were themselves found before (a co-routine).
    private static bool ReadsThrough(string line, List<string> plan) =>
        Tables.Any(table => line.Contains($"Seq Scan on \"{table}\"", StringComparison.Ordinal))
        || (line.StartsWith("SCAN ", StringComparison.Ordinal) && !line.Contains("VIRTUAL TABLE", StringComparison.Ordinal) && !plan.Contains($"CO-ROUTINE {line[5..]}"));

    /// <summary>Makes contexts whose statements are explained before they are run.</summary>
    private sealed class Plans(TestDatabase database) : DbCommandInterceptor, IDbContextFactory<ClinicDb>
    {
        public List<(string Sql, List<string> Lines)> Read { get; } = [];

        public ClinicDb CreateDbContext() => database.Engine == ClinicEngine.Postgres
            ? new PostgresClinicDb(new DbContextOptionsBuilder<PostgresClinicDb>().UseNpgsql(database.Connection).AddInterceptors(this).Options)
            : new SqliteClinicDb(new DbContextOptionsBuilder<SqliteClinicDb>().UseSqlite(database.Connection).AddInterceptors(this).Options);

        public override async ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
            DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
        {
            var sql = command.CommandText;

            // The rates and the studio's own entries are read whole: they are as many as the studio has kinds, whatever students there are.
            if (!sql.Contains("\"StudioRates\"", StringComparison.Ordinal) && !sql.Contains("\"StudioEntries\"", StringComparison.Ordinal))
            {
                command.CommandText = (database.Engine == ClinicEngine.Postgres ? "EXPLAIN " : "EXPLAIN QUERY PLAN ") + sql;
                await using (var reader = await command.ExecuteReaderAsync(cancellationToken))
                {
                    List<string> lines = [];
                    while (await reader.ReadAsync(cancellationToken))
                    {
                        lines.Add(reader.GetString(reader.FieldCount - 1));
                    }

                    Read.Add((sql, lines));
                }

                command.CommandText = sql;
            }

            return result;
        }
    }
}
