using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Backups;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.KillDriver;

namespace ReedClinic.Web.Tests.Published;

/// <summary>The program as it would be installed, in a process of its own.</summary>
public sealed class ProductionTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("Production")]
    [InlineData("Staging")]
    [InlineData(null)]
    public async Task A_published_app_never_seeds_even_when_asked_to(string? environment)
    {
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        await using var app = await StartAsync(db, environment);

        await using var context = db.CreateDbContext();
        Assert.False(await context.Users.AnyAsync(Ct));
        Assert.False(await context.Set<Student>().AnyAsync(Ct));
        Assert.False(await context.Set<Batch>().AnyAsync(Ct));
        Assert.DoesNotContain(app.Said, line => line.Contains("password", StringComparison.OrdinalIgnoreCase));
        Assert.Single(app.Said, line => line.StartsWith("This studio has no owner yet.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_same_app_does_seed_in_Development_so_the_test_above_can_fail()
    {
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        await using (var app = await StartAsync(db, "Development"))
        {
            await using var context = db.CreateDbContext();
            Assert.Equal(6, await context.Users.CountAsync(Ct));
            Assert.Equal(4, await context.Set<Batch>().CountAsync(Ct));
            Assert.Equal(6, app.Said.Count(line => line.Contains("@lanternquay.example  password: ", StringComparison.Ordinal)));
            Assert.DoesNotContain(app.Said, line => line.Contains("no owner yet", StringComparison.Ordinal));
        }

        await using var again = await StartAsync(db, "Development");
        await using var after = db.CreateDbContext();
        Assert.Equal(6, await after.Users.CountAsync(Ct));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task The_keys_that_sign_cookies_lie_in_the_folder_that_is_named_and_else_beside_the_records(bool named)
    {
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        var folder = Directory.CreateTempSubdirectory("reedclinic-keys-");
        await using (await StartAsync(db, "Production", named ? folder.FullName : ""))
        {
            await using var context = db.CreateDbContext();
            Assert.Equal(named, !await context.DataProtectionKeys.AnyAsync(Ct));
            Assert.Equal(named, folder.EnumerateFiles("key-*.xml").Any());
        }

        folder.Delete(recursive: true);
    }

    [Theory, OnBothEngines]
    public async Task A_published_app_over_records_of_a_newer_one_ends_with_a_sentence_and_leaves_them_as_they_are(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await db.MakeNewerAsync(behind: false, Ct);
        var before = await db.AllAsync(Ct);

        var ended = await Assert.ThrowsAsync<InvalidOperationException>(() => StartAsync(db, "Production"));

        Assert.Contains("(code 1)", ended.Message, StringComparison.Ordinal);
        Assert.Contains("A newer version of this program has changed the schema", ended.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", ended.Message, StringComparison.Ordinal);
        Assert.Equal(before, await db.AllAsync(Ct));
    }

    [Fact]
    public async Task A_published_app_that_can_not_put_the_records_aside_before_their_schema_changes_says_why_and_leaves_them_as_they_are()
    {
        var db = await databases.BareAsync(ClinicEngine.Sqlite);
        File.Copy(Path.Combine(PublishedApp.Top(), "tests", "fixtures", "first-schema", "sqlite.db"), new SqliteConnectionStringBuilder(db.Connection).DataSource);
        var (before, inTheWay) = (await HeldAsync(db), Path.GetTempFileName()); // no folder can be made below a file

        var ended = await Assert.ThrowsAsync<InvalidOperationException>(() => StartAsync(db, "Production", backups: inTheWay));

        Assert.Contains("(code 1)", ended.Message, StringComparison.Ordinal);
        Assert.Contains("nothing was changed", ended.Message, StringComparison.Ordinal);
        Assert.Contains(BackupSettings.BeforeMigrationsKey, ended.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", ended.Message, StringComparison.Ordinal);
        Assert.Equal(before, await HeldAsync(db));
        File.Delete(inTheWay);
    }

    // Every table as it was made, how many rows it has, and every migration.
    private static async Task<List<string>> HeldAsync(TestDatabase db)
    {
        await using var context = db.CreateDbContext();
        var tables = await context.Database.SqlQueryRaw<string>("SELECT sql AS Value FROM sqlite_master WHERE sql IS NOT NULL").ToListAsync(Ct);
        var names = await context.Database.SqlQueryRaw<string>("SELECT name AS Value FROM sqlite_master WHERE type = 'table' ORDER BY name").ToListAsync(Ct);
        List<string> held = [.. tables, .. await context.Database.GetAppliedMigrationsAsync(Ct)];
        foreach (var name in names)
        {
            var sql = $"SELECT COUNT(*) AS Value FROM \"{name}\"";
            held.Add($"{name} {await context.Database.SqlQueryRaw<int>(sql).SingleAsync(Ct)}");
        }

        return held;
    }

    private static async Task<RunningApp> StartAsync(TestDatabase db, string? environment, string keys = "", string backups = "")
    {
        var settings = db.Settings.ToDictionary(pair => pair.Key.Replace(":", "__", StringComparison.Ordinal), pair => pair.Value!);
        settings["Demo__Seed"] = "true";
        settings["Keys__Folder"] = keys;
        if (backups.Length > 0)
        {
            settings["Backups__Folder"] = backups;
        }

        if (environment is not null)
        {
            settings["ASPNETCORE_ENVIRONMENT"] = environment;
        }

        return await RunningApp.StartAsync(await PublishedApp.FolderAsync(), settings, Ct);
    }
}
