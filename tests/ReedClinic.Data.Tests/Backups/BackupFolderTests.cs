using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Recordings;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Backups;

/// <summary>Where back-ups lie, what they are called, and when they go.</summary>
public sealed class BackupFolderTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory]
    [InlineData("reedclinic-20261126T181500Z", true)]
    [InlineData("reedclinic-20261126T181500Z-2", true)]
    [InlineData("reedclinic-20261126T181500Z.unfinished", false)]
    [InlineData("reedclinic-20261399T181500Z", false)]
    [InlineData("reedclinic-", false)]
    [InlineData("photographs", false)]
    public void A_name_tells_when_it_was_made(string name, bool isOne) =>
        Assert.Equal(isOne ? new DateTimeOffset(2026, 11, 26, 18, 15, 0, TimeSpan.Zero) : null, BackupLayout.MadeAt(Path.Combine("somewhere", name)));

    [Fact]
    public async Task One_that_is_older_than_it_may_become_goes_but_never_the_last_and_nothing_that_is_not_ours()
    {
        await using var scene = new BackupScene();
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        var time = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 6, 0, 0, TimeSpan.Zero));
        var settings = db.Services.GetRequiredService<BackupSettings>() with { Folder = scene.Folder, KeepDays = 35 };
        var maker = new BackupMaker(db, db.Services.GetRequiredService<MediaFolder>(), settings, time);
        var (first, _) = await maker.MakeAsync(null, withMedia: true, _ => { }, Ct);
        Directory.CreateDirectory(Path.Combine(scene.Folder, "reedclinic-20200101T000000Z")); // a name like ours, and nothing of ours in it
        time.Advance(TimeSpan.FromDays(40));
        Assert.Empty(await maker.RemoveOldAsync(null, Ct));
        var (second, _) = await maker.MakeAsync(null, withMedia: true, _ => { }, Ct);
        var (third, _) = await maker.MakeAsync(null, withMedia: true, _ => { }, Ct);

        Assert.Equal([first], await maker.RemoveOldAsync(null, Ct));

        Assert.True(Directory.Exists(second) && Directory.Exists(third));
        Assert.Equal(3, Directory.GetDirectories(scene.Folder).Length);
    }

    [Fact]
    public async Task It_is_never_put_into_the_folder_of_sounds_and_leaves_nothing_where_it_fails()
    {
        await using var scene = new BackupScene();
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        await BackupScene.FillAsync(db, demo: false);
        var maker = db.Services.GetRequiredService<BackupMaker>();

        var within = await Assert.ThrowsAsync<BackupTroubleException>(() => maker.MakeAsync(Path.Combine(db.MediaFolder, "aa"), withMedia: true, _ => { }, Ct));
        using var stopped = new CancellationTokenSource();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => maker.MakeAsync(scene.Folder, withMedia: true, _ => stopped.Cancel(), stopped.Token));

        Assert.Contains("folder of sounds", within.Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(scene.Folder));
    }

    [Fact]
    public async Task One_that_was_never_finished_and_one_that_is_not_there_are_told_apart_from_a_spoilt_one()
    {
        await using var scene = new BackupScene();
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        var unfinished = Directory.CreateDirectory(Path.Combine(scene.Folder, "reedclinic-20261126T181500Z.unfinished")).FullName;

        Assert.Contains("never finished", Assert.Single(await BackupScene.CheckAsync(db, unfinished)), StringComparison.Ordinal);
        Assert.Contains("There is no folder", Assert.Single(await BackupScene.CheckAsync(db, unfinished + "x")), StringComparison.Ordinal);
    }
}
