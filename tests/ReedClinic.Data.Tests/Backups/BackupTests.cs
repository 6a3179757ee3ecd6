using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Recordings;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Backups;

/// <summary>What was backed up comes back whole; what isn't whole doesn't come back.</summary>
public sealed class BackupTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Everything_comes_back_in_another_place_and_a_cookie_of_before_is_still_good(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var (db, other) = (await databases.FreshAsync(engine), await databases.FreshAsync(engine));
        await BackupScene.FillAsync(db);
        var cookie = BackupScene.Seal(db, "who I am");
        var before = await BackupScene.SumsAsync(db);

        var (folder, about) = await scene.MakeAsync(db);
        Assert.Empty(await BackupScene.CheckAsync(db, folder));
        var done = await scene.RestoreAsync(other, folder);

        Assert.Equal(before, await BackupScene.SumsAsync(other));
        Assert.Empty(done.Different);
        Assert.Empty(about.Missing);
        Assert.Equal("who I am", BackupScene.Unseal(other, cookie));
        var (here, there) = (new RecordingScene(db), new RecordingScene(other));
        Assert.Equal(2, here.Lying.Count);
        Assert.Equal(here.Lying, there.Lying);
        await using var context = other.CreateDbContext();
        foreach (var file in await context.Set<Recording>().Select(row => new { row.File, row.Sha256 }).ToListAsync(Ct))
        {
            Assert.Equal(file.Sha256, RecordingScene.Sum(await File.ReadAllBytesAsync(there.Folder.PathOf(file.File), Ct)));
        }
    }

    [Theory, OnBothEngines]
    public async Task Whoever_was_erased_since_stays_erased_and_their_files_with_them(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var db = await databases.FreshAsync(engine);
        var (student, _) = await BackupScene.FillAsync(db, demo: false);
        var other = await new Intake.IntakeScene(db).StudentAsync("Tove Lind");
        var (folder, _) = await scene.MakeAsync(db);
        await db.Services.GetRequiredService<ErasedPeople>().EraseAgainAsync([student.Student!.Value.Value], Ct);

        var done = await scene.RestoreAsync(db, folder);

        await using var context = db.CreateDbContext();
        Assert.Equal([other.Student!.Value], await context.Set<Student>().Select(row => row.Id).ToListAsync(Ct));
        Assert.Equal((1, 1), (done.ErasedBefore, done.ErasedAgain));
        await db.Services.GetRequiredService<MediaCaretaker>().RemoveAskedAsync(Ct);
        Assert.DoesNotContain(new RecordingScene(db).Lying, file => file[0] != '.');
    }

    [Theory, OnBothEngines]
    public async Task What_is_written_meanwhile_is_in_it_whole_or_not_at_all(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var (db, other) = (await databases.FreshAsync(engine), await databases.FreshAsync(engine));
        await BackupScene.FillAsync(db, demo: false);
        using var stop = new CancellationTokenSource();
        var written = 0;
        var enough = new TaskCompletionSource();
        var writing = Task.Run(async () =>
        {
            // Two rows in one transaction: a person, and that they were erased.
            for (; !stop.IsCancellationRequested; written++)
            {
                await using var context = db.CreateDbContext();
                var id = Operation().Value;
                context.Add(new Student(new StudentId(id), "Pair"));
                context.Add(new FileToRemove { File = id.ToString("N"), AskedAt = TimeProvider.System.GetUtcNow() });
                await context.SaveChangesAsync(Ct);
                if (written == 5)
                {
                    enough.SetResult();
                }
            }
        }, Ct);
        await enough.Task;
        var (folder, about) = await scene.MakeAsync(db);
        await stop.CancelAsync();
        await writing;

        Assert.True(about.Rows["FilesToRemove"] >= 5);
        Assert.Equal(about.Rows["FilesToRemove"] + 1, about.Rows["Students"]);
        Assert.Empty((await scene.RestoreAsync(other, folder)).Different);
    }

    [Theory, OnBothEngines]
    public async Task A_restore_is_refused_while_somebody_uses_the_database_and_nothing_is_changed(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var db = await databases.FreshAsync(engine);
        await BackupScene.FillAsync(db, demo: false);
        var (folder, _) = await scene.MakeAsync(db);
        var later = await new Intake.IntakeScene(db).StudentAsync("Later");
        await using var busy = db.CreateDbContext();
        await busy.Database.OpenConnectionAsync(Ct);
        await busy.Set<Student>().CountAsync(Ct);

        var trouble = await Assert.ThrowsAsync<BackupTroubleException>(() => scene.RestoreAsync(db, folder));

        Assert.Contains("Somebody uses the database", trouble.Message, StringComparison.Ordinal);
        Assert.True(await busy.Set<Student>().AnyAsync(row => row.Id == later.Student!.Value, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_file_that_the_studio_itself_lacks_is_told_of_and_one_that_no_record_names_stays_out(ClinicEngine engine)
    {
        await using var scene = new BackupScene();
        var db = await databases.FreshAsync(engine);
        await BackupScene.FillAsync(db, demo: false);
        var media = db.Services.GetRequiredService<MediaFolder>();
        await using var context = db.CreateDbContext();
        var files = await context.Set<Recording>().Select(row => row.File).ToListAsync(Ct);
        File.Delete(media.PathOf(files[0]));
        Directory.CreateDirectory(Path.GetDirectoryName(media.PathOf(new string('c', 32)))!);
        await File.WriteAllBytesAsync(media.PathOf(new string('c', 32)), [1], Ct);

        var (folder, about) = await scene.MakeAsync(db);

        Assert.Equal([files[0]], about.Missing);
        Assert.Equal([files[1]], Directory.EnumerateFiles(Path.Combine(folder, BackupLayout.Media), "*", SearchOption.AllDirectories).Select(Path.GetFileName));
        Assert.Empty(await BackupScene.CheckAsync(db, folder));
    }

    [Fact]
    public async Task A_hundred_ways_to_spoil_one_are_each_found_and_what_is_there_stays()
    {
        await using var scene = new BackupScene();
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        await BackupScene.FillAsync(db, demo: false);
        var (sound, _) = await scene.MakeAsync(db);
        var before = await BackupScene.SumsAsync(db);
        var random = new Random(20261126);
        for (var n = 0; n < 100; n++)
        {
            var how = await SpoilAsync(sound, random, n);
            var problems = await BackupScene.CheckAsync(db, sound);
            Assert.True(problems.Count > 0, how);
            if (n % 20 == 0)
            {
                var trouble = await Assert.ThrowsAsync<BackupTroubleException>(() => scene.RestoreAsync(db, sound));
                Assert.Contains(problems[0], trouble.Message, StringComparison.Ordinal);
            }

            await MendAsync(sound);
            Assert.Empty(await BackupScene.CheckAsync(db, sound));
        }

        Assert.Equal(before, await BackupScene.SumsAsync(db));
        Assert.Equal(2, new RecordingScene(db).Lying.Count);
    }

    [Fact]
    public async Task A_spoilt_archive_of_PostgreSQL_that_has_its_right_sum_changes_nothing()
    {
        await using var scene = new BackupScene();
        var db = await databases.FreshAsync(ClinicEngine.Postgres);
        await BackupScene.FillAsync(db, demo: false);
        var (folder, _) = await scene.MakeAsync(db);
        var before = await BackupScene.SumsAsync(db);
        var archive = Path.Combine(folder, BackupLayout.Postgres);
        var bytes = await File.ReadAllBytesAsync(archive, Ct);
        await File.WriteAllBytesAsync(archive, bytes[..(bytes.Length * 3 / 4)], Ct);
        var sums = Path.Combine(folder, BackupLayout.Sums);
        var lines = await File.ReadAllLinesAsync(sums, Ct);
        var sum = RecordingScene.Sum(await File.ReadAllBytesAsync(archive, Ct));
        await File.WriteAllTextAsync(sums, string.Join('\n', lines.Select(line => line.EndsWith(BackupLayout.Postgres, StringComparison.Ordinal) ? $"{sum}  {BackupLayout.Postgres}" : line)) + "\n", Ct);

        await Assert.ThrowsAsync<BackupTroubleException>(() => scene.RestoreAsync(db, folder));

        Assert.Equal(before, await BackupScene.SumsAsync(db));
        Assert.Equal(2, new RecordingScene(db).Lying.Count);
    }

    // One file is changed in one byte, cut, taken away or brought, by turns.
    private static async Task<string> SpoilAsync(string folder, Random random, int n)
    {
        var files = Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToList();
        var file = files[random.Next(files.Count)];
        var bytes = await File.ReadAllBytesAsync(file, Ct);
        await File.WriteAllBytesAsync(Kept(folder), bytes, Ct);
        await File.WriteAllTextAsync(Kept(folder) + ".name", file, Ct);
        switch (n % 4)
        {
            case 0 when bytes.Length > 0:
                bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
                await File.WriteAllBytesAsync(file, bytes, Ct);
                return $"{n}: a bit of {file}";
            case 1 when bytes.Length > 0:
                await File.WriteAllBytesAsync(file, bytes[..random.Next(bytes.Length)], Ct);
                return $"{n}: {file} cut";
            case 2:
                await File.WriteAllTextAsync(Path.Combine(folder, "stranger"), "x", Ct);
                return $"{n}: a file that nobody wrote";
            default:
                File.Delete(file);
                return $"{n}: {file} gone";
        }
    }

    private static async Task MendAsync(string folder)
    {
        File.Delete(Path.Combine(folder, "stranger"));
        await File.WriteAllBytesAsync(await File.ReadAllTextAsync(Kept(folder) + ".name", Ct), await File.ReadAllBytesAsync(Kept(folder), Ct), Ct);
    }

    private static string Kept(string folder) => folder + ".kept";
}
