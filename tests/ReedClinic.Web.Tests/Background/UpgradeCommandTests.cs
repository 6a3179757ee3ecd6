using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Backups;
using ReedClinic.KillDriver;
using ReedClinic.Web.Background;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Tests.Background;

/// <summary>The schema is brought up to date by a command of its own, which opens no studio.</summary>
public sealed class UpgradeCommandTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Records_of_the_first_schema_are_put_aside_and_brought_to_this_builds()
    {
        var folder = Directory.CreateTempSubdirectory("reedclinic-upgrade-");
        var db = await OldAsync();

        var (code, words) = await RunAsync(db, $"--Backups:Folder={folder.FullName}");

        Assert.Equal((0, words), (code, words));
        Assert.Contains("As they were, they lie in", words, StringComparison.Ordinal);
        Assert.Single(BackupLayout.In(Path.Combine(folder.FullName, BackupMaker.BeforeMigrations)));
        Assert.True(await db.Services.GetRequiredService<ClinicSchema>().IsReadyAsync(Ct));

        var again = await RunAsync(db, $"--Backups:Folder={folder.FullName}");
        Assert.Equal("The records have the schema of this version.", again.Words.Trim());
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task Where_they_can_not_be_put_aside_nothing_is_changed_and_the_command_fails()
    {
        var db = await OldAsync();
        var file = Path.GetTempFileName(); // no folder can be made below it

        var (code, words) = await RunAsync(db, $"--Backups:Folder={file}");

        Assert.Equal(1, code);
        Assert.Contains("nothing was changed", words, StringComparison.Ordinal);
        Assert.False(await db.Services.GetRequiredService<ClinicSchema>().IsReadyAsync(Ct));
        File.Delete(file);
    }

    [Theory, OnBothEngines]
    public async Task An_empty_database_gets_its_tables_and_no_back_up(ClinicEngine engine)
    {
        var db = await databases.BareAsync(engine);

        var (code, words) = await RunAsync(db, "--Backups:PostgresTools=/nowhere");

        Assert.Equal((0, "The records have the schema of this version."), (code, words.Trim()));
        Assert.True(await db.Services.GetRequiredService<ClinicSchema>().IsReadyAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task Records_of_a_newer_schema_are_refused_by_whatever_would_write_there(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await db.MakeNewerAsync(behind: false, Ct);
        var before = await db.AllAsync(Ct);
        var nobody = Path.GetTempFileName();

        foreach (var command in new string[][] { [UpgradeCommand.Name], [ErasedPeopleCommand.Again, nobody], [LostSecondStepCommand.Name, "nobody@harbour.example"] })
        {
            await using var said = new StringWriter();
            var code = await Commands.RunAsync([.. command, .. db.Settings.Select(setting => $"--{setting.Key}={setting.Value}")], new Announcement(said));

            Assert.Equal(1, code);
            Assert.StartsWith("A newer version of this program has changed the schema", said.ToString(), StringComparison.Ordinal);
            Assert.Single(said.ToString().Trim().Split('\n'));
        }

        Assert.Equal(before, await db.AllAsync(Ct));
        File.Delete(nobody);
    }

    private async Task<TestDatabase> OldAsync()
    {
        var db = await databases.BareAsync(ClinicEngine.Sqlite);
        File.Copy(
            Path.Combine(PublishedApp.Top(), "tests", "fixtures", "first-schema", "sqlite.db"), new SqliteConnectionStringBuilder(db.Connection).DataSource);
        return db;
    }

    private static async Task<(int Code, string Words)> RunAsync(TestDatabase db, params string[] args)
    {
        await using var words = new StringWriter();
        var code = await Commands.RunAsync(
            [UpgradeCommand.Name, .. args, .. db.Settings.Select(setting => $"--{setting.Key}={setting.Value}")], new Announcement(words));
        return (code ?? -1, words.ToString());
    }
}
