using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Backups;

/// <summary>What a restore must not forget, whatever happens in the middle of it.</summary>
public sealed class RestoreTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_restore_that_broke_off_forgets_nobody_who_was_erased_and_the_studio_stays_shut_until_it_is_done(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var db = await databases.FreshAsync(engine);
        var (student, _) = await BackupScene.FillAsync(db, demo: false);
        var (folder, _) = await scene.MakeAsync(db);
        await db.Services.GetRequiredService<ErasedPeople>().EraseAgainAsync([student.Student!.Value.Value], Ct);

        await Assert.ThrowsAsync<TimeoutException>(() => Restore(db).RestoreAsync(folder, null, although: false, BreakOffLate, Ct));
        await using (var context = db.CreateDbContext())
        {
            Assert.True(await context.Set<Student>().AnyAsync(Ct)); // the records are in place, and nobody was erased again yet
        }

        Assert.Throws<InvalidOperationException>(db.Services.GetRequiredService<MediaFolder>().Prepare);
        var done = await scene.RestoreAsync(db, folder);

        Assert.Equal((1, 1), (done.ErasedBefore, done.ErasedAgain));
        await using var after = db.CreateDbContext();
        Assert.False(await after.Set<Student>().AnyAsync(Ct));
        db.Services.GetRequiredService<MediaFolder>().Prepare();
    }

    [Theory, OnBothEngines]
    public async Task Lists_of_erased_people_come_from_the_hand_and_from_newer_back_ups_too(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var (db, first, second) = (await databases.FreshAsync(engine), await databases.FreshAsync(engine), await databases.FreshAsync(engine));
        var (student, _) = await BackupScene.FillAsync(db, demo: false);
        var (folder, _) = await scene.MakeAsync(db);
        var list = Path.Combine(scene.Folder, "list.txt");
        await File.WriteAllTextAsync(list, $"{student.Student!.Value.Value}\n", Ct);

        Assert.Equal(1, (await scene.RestoreAsync(first, folder, list)).ErasedAgain);

        await db.Services.GetRequiredService<ErasedPeople>().EraseAgainAsync([student.Student!.Value.Value], Ct);
        await scene.MakeAsync(db);
        Assert.Equal(1, (await scene.RestoreAsync(second, folder)).ErasedAgain);
        await File.WriteAllTextAsync(list, "Ines\n", Ct);
        Assert.Contains("no list of erased people", (await Assert.ThrowsAsync<BackupTroubleException>(() => scene.RestoreAsync(second, folder, list))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_that_is_older_than_it_may_become_comes_back_only_when_that_is_said()
    {
        await using var scene = new BackupScene();
        var (db, other) = (await databases.FreshAsync(ClinicEngine.Sqlite), await databases.FreshAsync(ClinicEngine.Sqlite));
        await BackupScene.FillAsync(db, demo: false);
        var (folder, _) = await scene.MakeAsync(db);
        var later = new FakeTimeProvider(TimeProvider.System.GetUtcNow().AddDays(36));

        var trouble = await Assert.ThrowsAsync<BackupTroubleException>(() => Restore(other, later).RestoreAsync(folder, null, although: false, _ => { }, Ct));
        Assert.Contains(BackupRestore.Although, trouble.Message, StringComparison.Ordinal);
        Assert.Empty((await Restore(other, later).RestoreAsync(folder, null, although: true, _ => { }, Ct)).Different);
    }

    [Fact]
    public async Task Whatever_is_copied_is_for_the_programs_own_account_alone()
    {
        await using var scene = new BackupScene();
        var (db, other) = (await databases.FreshAsync(ClinicEngine.Sqlite), await databases.FreshAsync(ClinicEngine.Sqlite));
        await BackupScene.FillAsync(db, demo: false);
        var (folder, _) = await scene.MakeAsync(db);
        await scene.RestoreAsync(other, folder);

        if (OperatingSystem.IsWindows())
        {
            return; // it has no such modes
        }

        const UnixFileMode Others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherRead | UnixFileMode.OtherWrite;
        Assert.Equal(UnixFileMode.None, File.GetUnixFileMode(folder) & Others);
        foreach (var file in Directory.EnumerateFiles(other.MediaFolder, "*", SearchOption.AllDirectories))
        {
            Assert.Equal(UnixFileMode.None, File.GetUnixFileMode(file) & Others);
        }
    }

    [Fact]
    public async Task An_empty_database_and_one_that_is_not_there_are_no_studio()
    {
        await using var scene = new BackupScene();
        var bare = await databases.BareAsync(ClinicEngine.Sqlite);
        Assert.Contains("no database", (await Assert.ThrowsAsync<BackupTroubleException>(() => scene.MakeAsync(bare))).Message, StringComparison.Ordinal);
        await using (var context = bare.CreateDbContext())
        {
            await context.Database.OpenConnectionAsync(Ct);
        }

        Assert.Contains("no studio", (await Assert.ThrowsAsync<BackupTroubleException>(() => scene.MakeAsync(bare))).Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(scene.Folder));
    }

    private static void BreakOffLate(string told)
    {
        if (told.StartsWith("Bringing the schema", StringComparison.Ordinal))
        {
            throw new TimeoutException("The power is gone.");
        }
    }

    private static BackupRestore Restore(TestDatabase db, TimeProvider? time = null) => new(
        db, db.Services.GetRequiredService<MediaFolder>(), db.Services.GetRequiredService<BackupSettings>(), db.Services.GetRequiredService<Data.Engine.ClinicSchema>(),
        db.Services.GetRequiredService<ErasedPeople>(), time ?? TimeProvider.System);
}
