using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Engine;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Backups;

/// <summary>Before the schema changes, the records are put aside as they were.</summary>
public sealed class BeforeMigrationTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Records_of_an_earlier_schema_are_backed_up_before_it_changes_and_come_back_as_they_were(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var (db, other) = (await databases.BareAsync(engine), await databases.BareAsync(engine));
        await OldSchemaTests.RestoreAsync(db, Path.Combine(OldSchemaTests.Fixtures(), "first-schema"));
        var before = await OldSchemaTests.CountsAsync(db);

        await MigrateAsync(db, scene.Folder, scene.Told);
        await MigrateAsync(db, scene.Folder, scene.Told); // nothing is due any more

        var (folder, _) = Assert.Single(BackupLayout.In(Path.Combine(scene.Folder, BackupMaker.BeforeMigrations)));
        Assert.Contains(folder, Assert.Single(scene.Told), StringComparison.Ordinal);
        Assert.Empty(await BackupScene.CheckAsync(db, folder));
        var about = await BackupAbout.ReadAsync(folder, Ct);
        Assert.False(about.WithMedia);
        Assert.Equal(before.Where(table => table.Key != "__EFMigrationsLock").ToDictionary(table => table.Key, table => (long)table.Value), about.Rows.ToDictionary());

        Assert.Empty((await scene.RestoreAsync(other, folder)).Different);
        await using var context = other.CreateDbContext();
        Assert.Empty(await context.Database.GetPendingMigrationsAsync(Ct)); // and it is brought up to date
        Assert.Equal(before["Students"], (await OldSchemaTests.CountsAsync(other))["Students"]);
    }

    [Theory, OnBothEngines]
    public async Task Where_it_cannot_be_made_the_schema_stays_and_the_words_say_why(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var db = await databases.BareAsync(engine);
        await OldSchemaTests.RestoreAsync(db, Path.Combine(OldSchemaTests.Fixtures(), "first-schema"));
        var inTheWay = Path.Combine(scene.Folder, "a-file");
        await File.WriteAllTextAsync(inTheWay, "", Ct);

        var trouble = await Assert.ThrowsAsync<BackupTroubleException>(() => MigrateAsync(db, inTheWay, scene.Told));

        Assert.Contains("nothing was changed", trouble.Message, StringComparison.Ordinal);
        Assert.Contains(BackupSettings.BeforeMigrationsKey, trouble.Message, StringComparison.Ordinal);
        await using var context = db.CreateDbContext();
        Assert.NotEmpty(await context.Database.GetPendingMigrationsAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_first_start_makes_none(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var db = await databases.BareAsync(engine);

        await MigrateAsync(db, scene.Folder, scene.Told);

        Assert.Empty(scene.Told);
        Assert.Empty(Directory.GetDirectories(scene.Folder));
    }

    private static Task MigrateAsync(TestDatabase db, string folder, List<string> told)
    {
        var settings = db.Services.GetRequiredService<BackupSettings>() with { Folder = folder };
        var maker = new BackupMaker(db, db.Services.GetRequiredService<MediaFolder>(), settings, TimeProvider.System);
        return db.Services.GetRequiredService<ClinicSchema>().MigrateAsync(Ct, ct => maker.BeforeMigrationAsync(told.Add, ct));
    }
}
