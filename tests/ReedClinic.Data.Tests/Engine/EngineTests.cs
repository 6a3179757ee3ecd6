using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Data.Tests.Engine;

public sealed class EngineTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task An_account_comes_back_as_it_was_saved(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var account = Account("mara@harbour.example", Noon.AddTicks(123_456));
        await SaveAsync(db, account);

        await using var context = db.CreateDbContext();
        var read = await context.Users.SingleAsync(user => user.Id == account.Id, Ct);
        Assert.Equal("mara@harbour.example", read.Email);
        Assert.Equal(Noon.AddTicks(123_450), read.CreatedAt); // whole microseconds on both engines
        Assert.Equal(TimeSpan.Zero, read.CreatedAt.Offset);
    }

    [Theory, OnBothEngines]
    public async Task Instants_written_in_different_zones_order_as_they_happened(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var first = Account("first@harbour.example", Noon.ToOffset(TimeSpan.FromHours(13)));
        var second = Account("second@harbour.example", Noon.AddSeconds(0.05).ToOffset(TimeSpan.FromHours(-11)));
        var third = Account("third@harbour.example", Noon.AddSeconds(0.5));
        await SaveAsync(db, third, first, second);

        await using var context = db.CreateDbContext();
        var order = await context.Users.OrderBy(user => user.CreatedAt).Select(user => user.Id).ToListAsync(Ct);
        Assert.Equal([first.Id, second.Id, third.Id], order);
        var sinceSecond = Noon.AddSeconds(0.05).ToOffset(TimeSpan.FromHours(5));
        Assert.Equal(2, await context.Users.CountAsync(user => user.CreatedAt >= sinceSecond, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Of_two_forms_opened_on_one_version_only_the_first_can_save(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var student = new Student(new StudentId(NewId()), "Ines");
        await SaveAsync(db, student);
        var opened = student.Version;
        Assert.NotEqual(Guid.Empty, opened);

        await using var first = db.CreateDbContext();
        var mine = await first.Set<Student>().SingleAsync(row => row.Id == student.Id, Ct);
        mine.Describe(null, new Tuning(new Hertz(442)), null, "Portugal");
        first.ExpectVersion(mine, opened);
        await first.SaveChangesAsync(Ct);
        Assert.NotEqual(opened, mine.Version);

        await using var second = db.CreateDbContext();
        var theirs = await second.Set<Student>().SingleAsync(row => row.Id == student.Id, Ct);
        Assert.Equal(442, theirs.TunesTo?.A4.Value);
        theirs.Rename("Inês");
        second.ExpectVersion(theirs, opened);
        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => second.SaveChangesAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_clash_with_a_unique_index_is_told_from_other_failures(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var account = new AccountId(NewId());
        await SaveAsync(db, new Student(new StudentId(NewId()), "Bram", account));
        var clash = await Assert.ThrowsAsync<DbUpdateException>(
            () => SaveAsync(db, new Student(new StudentId(NewId()), "Bram", account)));
        Assert.True(clash.IsUniqueClash());
        Assert.True(clash.IsUniqueClashOn(nameof(Student.Account)));
        Assert.False(clash.IsUniqueClashOn(nameof(Student.FoldedEmail)));

        var tooShort = new DbUpdateException("something else");
        Assert.False(tooShort.IsUniqueClash());
    }

    [Fact]
    public async Task Every_SQLite_connection_keeps_what_it_acknowledged_and_wipes_what_it_deletes()
    {
        var db = await databases.OpenAsync(ClinicEngine.Sqlite);
        await using var context = db.CreateDbContext();
        Assert.Equal("1", await PragmaAsync(context, "secure_delete"));
        Assert.Equal("wal", await PragmaAsync(context, "journal_mode"));
        Assert.Equal("2", await PragmaAsync(context, "synchronous"));
        Assert.Equal("1", await PragmaAsync(context, "foreign_keys"));
        Assert.Equal("10000", await PragmaAsync(context, "busy_timeout"));
    }

    [Theory]
    [InlineData("'2026-03-02 12:00:00+00:00'")]
    [InlineData("datetime('now')")] // it was killed a moment ago, and is started again at once
    public async Task A_start_that_was_killed_while_migrating_does_not_block_the_next_one(string when)
    {
        var folder = Directory.CreateTempSubdirectory("reedclinic-killed-");
        await using var db = new TestDatabase(
            ClinicEngine.Sqlite, $"Data Source={Path.Combine(folder.FullName, "deep", "clinic.db")};Pooling=False");
        Directory.CreateDirectory(Path.Combine(folder.FullName, "deep"));
        await using (var context = db.CreateDbContext())
        {
#pragma warning disable EF1002 // one of the two above
            await context.Database.ExecuteSqlRawAsync(
                $"""
                CREATE TABLE "__EFMigrationsLock" ("Id" INTEGER NOT NULL PRIMARY KEY, "Timestamp" TEXT NOT NULL);
                INSERT INTO "__EFMigrationsLock" VALUES (1, {when});
                """,
                Ct);
#pragma warning restore EF1002
        }

        await db.MigrateAsync(Ct).WaitAsync(TimeSpan.FromSeconds(60), Ct);
        await using var migrated = db.CreateDbContext();
        Assert.Equal(3, await migrated.Roles.CountAsync(Ct));
        folder.Delete(recursive: true);
    }

    private static async Task<string?> PragmaAsync(ClinicDb context, string name)
    {
        await context.Database.OpenConnectionAsync(Ct);
        await using var command = context.Database.GetDbConnection().CreateCommand();
#pragma warning disable CA2100 // the names are constants of this class
        command.CommandText = "PRAGMA " + name;
#pragma warning restore CA2100
        return Convert.ToString(await command.ExecuteScalarAsync(Ct), System.Globalization.CultureInfo.InvariantCulture);
    }

    private static async Task SaveAsync(TestDatabase db, params object[] rows)
    {
        await using var context = db.CreateDbContext();
        context.AddRange(rows);
        await context.SaveChangesAsync(Ct);
    }

    private static Guid NewId() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());

    private static ClinicAccount Account(string email, DateTimeOffset created) => new()
    {
        Id = NewId(),
        UserName = email,
        NormalizedUserName = email.ToUpperInvariant(),
        Email = email,
        DisplayName = "Mara",
        CreatedAt = created,
        MadeBy = new OperationId(NewId()),
    };
}
