using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Audit;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Audit;

/// <summary>Whoever touches the audit is found out: OWASP ASVS 5.0, 16.4.2.</summary>
public sealed class AuditChainTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    // PostgreSQL: no value of this type at all, or another writing of the same one.
    private static readonly string[] NoSuchValue = ["22P02", "22007", "22008"];

    [Theory, OnBothEngines]
    public async Task Every_single_change_of_every_column_is_found_at_its_place(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await FillAsync(db, 3);
        await DropGuardsAsync(db);
        var chain = Chain(db);
        var (tried, missed) = (0, new List<string>());
        foreach (var (column, values) in await ChangesAsync(db, engine))
        {
            foreach (var (whole, changed) in values)
            {
                tried++;
                if (await SetAsync(db, column, changed, whole) is not { } refused)
                {
                    var check = await chain.VerifyAsync(Ct);
                    if (check.Broken != 2)
                    {
                        missed.Add($"{column} = {changed}: {check}");
                    }

                    await SetAsync(db, column, whole, null, changed);
                }
                else
                {
                    Assert.Contains(refused, NoSuchValue);
                }
            }
        }

        Assert.Empty(missed);
        Assert.True(tried > 200, $"Only {tried} changes were tried.");
        Assert.Null((await chain.VerifyAsync(Ct)).Broken);
    }

    [Theory, OnBothEngines]
    public async Task A_removed_a_slipped_in_and_a_swapped_link_are_found(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await FillAsync(db, 6);
        await DropGuardsAsync(db);

        await RunAsync(db, """UPDATE "AuditChain" SET "Sequence" = 99 WHERE "Sequence" = 4""");
        Assert.Equal(4, (await Chain(db).VerifyAsync(Ct)).Broken);
        await RunAsync(db, """UPDATE "AuditChain" SET "Sequence" = 4 WHERE "Sequence" = 99""");
        Assert.Null((await Chain(db).VerifyAsync(Ct)).Broken);

        await RunAsync(db, """UPDATE "AuditChain" SET "Sequence" = CASE "Sequence" WHEN 2 THEN -3 ELSE -2 END WHERE "Sequence" IN (2, 3)""");
        await RunAsync(db, """UPDATE "AuditChain" SET "Sequence" = -"Sequence" WHERE "Sequence" < 0""");
        Assert.Equal(2, (await Chain(db).VerifyAsync(Ct)).Broken);
        await RunAsync(db, """UPDATE "AuditChain" SET "Sequence" = CASE "Sequence" WHEN 2 THEN -3 ELSE -2 END WHERE "Sequence" IN (2, 3)""");
        await RunAsync(db, """UPDATE "AuditChain" SET "Sequence" = -"Sequence" WHERE "Sequence" < 0""");
        Assert.Null((await Chain(db).VerifyAsync(Ct)).Broken);

        await RunAsync(db, """DELETE FROM "AuditChain" WHERE "Sequence" = 5""");
        Assert.Equal(5, (await Chain(db).VerifyAsync(Ct)).Broken);
    }

    [Theory, OnBothEngines]
    public async Task The_database_itself_refuses_to_change_or_remove_a_link(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await FillAsync(db, 2);

        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => RunAsync(db, """UPDATE "AuditChain" SET "Event" = 'SignedOut'"""));
        await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => RunAsync(db, """DELETE FROM "AuditChain" """));
        if (engine == ClinicEngine.Postgres)
        {
            await Assert.ThrowsAnyAsync<System.Data.Common.DbException>(() => RunAsync(db, """TRUNCATE "AuditChain" """));
        }

        Assert.Equal(2, (await Chain(db).VerifyAsync(Ct)).Sound);
    }

    [Theory, OnBothEngines]
    public async Task Many_who_seal_at_once_leave_no_gap(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await Task.WhenAll(Enumerable.Range(0, 6).Select(async _ =>
        {
            for (var i = 0; i < 5; i++)
            {
                await NoteAsync(db, 2);
                await Chain(db).SealAsync(Ct);
            }
        }));
        await Chain(db).SealAsync(Ct);

        var check = await Chain(db).VerifyAsync(Ct);
        Assert.Null(check.Broken);
        Assert.Equal(60, check.Sound);
        await using var context = db.CreateDbContext();
        Assert.Equal(0, await context.Set<AuditNote>().CountAsync(Ct));
    }

    internal static AuditChain Chain(TestDatabase db) => db.Services.GetRequiredService<AuditChain>();

    internal static async Task FillAsync(TestDatabase db, int links)
    {
        await NoteAsync(db, links);
        await Chain(db).SealAsync(Ct);
    }

    private static async Task NoteAsync(TestDatabase db, int notes)
    {
        await using var context = db.CreateDbContext();
        for (var i = 0; i < notes; i++)
        {
            var now = TimeProvider.System.GetUtcNow();
            context.Add(new AuditNote
            {
                Id = NewId(),
                At = DateTimeOffset.FromUnixTimeMilliseconds(now.ToUnixTimeMilliseconds()),
                Event = AuditEvent.LetterSent,
                Who = NewId(),
                Whom = NewId(),
                What = NewId(),
            });
        }

        await context.SaveChangesAsync(Ct);
    }

    internal static Task DropGuardsAsync(TestDatabase db) => db.Engine == ClinicEngine.Sqlite
        ? RunAsync(db, """DROP TRIGGER "AuditChain_stays"; DROP TRIGGER "AuditChain_keeps";""")
        : RunAsync(db, """ALTER TABLE "AuditChain" DISABLE TRIGGER ALL""");

    internal static async Task RunAsync(TestDatabase db, string sql)
    {
        await using var context = db.CreateDbContext();
        await context.Database.ExecuteSqlRawAsync(sql, Ct);
    }

    // Each character of each column of the middle link put one further, and the whole of it emptied.
    private static async Task<IReadOnlyList<(string Column, List<(string Whole, string? Changed)> Values)>> ChangesAsync(TestDatabase db, ClinicEngine engine)
    {
        var all = new List<(string, List<(string, string?)>)>();
        foreach (var column in new[] { "Sequence", "At", "Event", "Who", "Whom", "What", "Before", "Hash" })
        {
            await using var context = db.CreateDbContext();
            var read = engine == ClinicEngine.Sqlite ? $"CAST(\"{column}\" AS TEXT)" : $"\"{column}\"::text";
#pragma warning disable EF1002 // the names are this test's own
            var whole = (await context.Database.SqlQueryRaw<string>($"SELECT {read} AS \"Value\" FROM \"AuditChain\" WHERE \"Sequence\" = 2").ToListAsync(Ct)).Single();
#pragma warning restore EF1002
            var changes = new List<(string, string?)>();
            if (column == "Sequence")
            {
                changes.AddRange([(whole, "5"), (whole, "99")]); // a place that another link has is no change that can be made
            }

            for (var i = 0; i < whole.Length && column != "Sequence"; i++)
            {
                changes.Add((whole, whole[..i] + Next(whole[i]) + whole[(i + 1)..]));
                if (char.IsLetter(whole[i]))
                {
                    changes.Add((whole, whole[..i] + (char)(whole[i] ^ 0x20) + whole[(i + 1)..]));
                }
            }

            if (column is "Who" or "Whom" or "What")
            {
                changes.Add((whole, null));
            }

            all.Add((column, changes));
        }

        return all;
    }

    private static char Next(char letter) => letter switch
    {
        '9' => '0',
        'z' => 'a',
        'Z' => 'A',
        _ => (char)(letter + 1),
    };

    // Null when it was written; else why the engine wouldn't.
    private static async Task<string?> SetAsync(TestDatabase db, string column, string? value, string? whole, string? marked = null)
    {
        await using var context = db.CreateDbContext();
        var type = (db.Engine, column) switch
        {
            (ClinicEngine.Sqlite, "Sequence") => "INTEGER",
            (ClinicEngine.Sqlite, _) => "TEXT",
            (_, "Sequence") => "bigint",
            (_, "At") => "timestamptz",
            (_, "Who" or "Whom" or "What") => "uuid",
            _ => "text",
        };
        var where = column == "Sequence" && marked is not null ? marked : "2";
        try
        {
#pragma warning disable EF1002, CA2100 // the names and the place are this test's own
            await context.Database.ExecuteSqlRawAsync(
                $"UPDATE \"AuditChain\" SET \"{column}\" = CAST({{0}} AS {type}) WHERE \"Sequence\" = {long.Parse(where, CultureInfo.InvariantCulture)}", [value!], Ct);
#pragma warning restore EF1002, CA2100
            if (db.Engine == ClinicEngine.Postgres && whole is not null && column != "Sequence" && await StandsAsync(context, column) == whole)
            {
                return "22P02"; // another writing of the same value: nothing was changed
            }

            return null;
        }
        catch (Npgsql.PostgresException wrong)
        {
            return wrong.SqlState;
        }
    }

    // PostgreSQL keeps the value, not its writing: capital letters in a uuid, say, change nothing.
    private static async Task<string?> StandsAsync(ClinicDb context, string column)
    {
#pragma warning disable EF1002 // the names are this test's own
        return (await context.Database.SqlQueryRaw<string?>($"SELECT \"{column}\"::text AS \"Value\" FROM \"AuditChain\" WHERE \"Sequence\" = 2").ToListAsync(Ct)).Single();
#pragma warning restore EF1002
    }
}
