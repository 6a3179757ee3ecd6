using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Recordings;

/// <summary>Files and rows stay in step, whatever breaks in between.</summary>
public sealed class MediaCaretakerTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly byte[] Sound = SoundFiles.Wave();

    [Theory, OnBothEngines]
    public async Task A_break_between_the_file_and_its_row_is_mended_by_finishing_again(ClinicEngine engine)
    {
        var (db, student, reed) = await OpenAsync(engine);
        var scene = new RecordingScene(db);
        var id = await scene.PutAsync(student, reed, RecordingKind.ArrivalSound, Sound);

        // The row can’t be saved: the file is there, as after a power cut, and so is what arrived.
        await Assert.ThrowsAsync<InvalidOperationException>(() => Broken(db).Uploads.FinishAsync(student, id, null, Operation(), Ct));
        Assert.Equal(2, scene.Lying.Count);
        Assert.Empty((await scene.Recordings.OfReedAsync(student, reed, Ct))!.Shown);

        Done(await scene.Uploads.FinishAsync(student, id, RecordingScene.Sum(Sound), Operation(), Ct));
        Assert.Single(scene.Lying);
        Assert.Equal(new MediaRound(0, 0, []), await scene.Caretaker.SweepAsync(Ct), Same);
    }

    [Theory, OnBothEngines]
    public async Task What_was_begun_and_left_is_gone_within_a_day_and_leaves_no_file(ClinicEngine engine)
    {
        var (db, student, reed) = await OpenAsync(engine);
        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var scene = new RecordingScene(db, time);
        var id = await scene.PutAsync(student, reed, RecordingKind.ArrivalSound, Sound);
        await Assert.ThrowsAsync<InvalidOperationException>(() => Broken(db).Uploads.FinishAsync(student, id, null, Operation(), Ct));
        var kept = await scene.SendAsync(student, reed, RecordingKind.ArrivalPhoto, PictureFiles.Png());

        time.Advance(TimeSpan.FromHours(22));
        Assert.Equal(new MediaRound(0, 0, []), await scene.Caretaker.SweepAsync(Ct), Same);
        Assert.Equal(3, scene.Lying.Count);

        time.Advance(TimeSpan.FromHours(1));
        Assert.Equal(new MediaRound(1, 0, []), await scene.Caretaker.SweepAsync(Ct), Same);
        Assert.Single(scene.Lying);
        Assert.Null(await scene.Uploads.FindAsync(student, id, Ct));
        Assert.NotNull(await scene.Recordings.OpenAsync(student, kept.Id, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_file_that_nobody_knows_of_goes_once_it_is_an_hour_old_and_one_that_lacks_is_told(ClinicEngine engine)
    {
        var (db, student, reed) = await OpenAsync(engine);
        var scene = new RecordingScene(db);
        var kept = await scene.SendAsync(student, reed, RecordingKind.ArrivalSound, Sound);
        var file = (await scene.Recordings.OpenAsync(student, kept.Id, Ct))!.Path;
        var (old, young) = (new string('a', 32), new string('b', 32));
        foreach (var name in new[] { old, young, old + ".new" })
        {
            Directory.CreateDirectory(Path.GetDirectoryName(scene.Folder.PathOf(name[..32]))!);
            await File.WriteAllBytesAsync(Path.Combine(Path.GetDirectoryName(scene.Folder.PathOf(name[..32]))!, name), [1], Ct);
        }

        foreach (var one in new[] { scene.Folder.PathOf(old), scene.Folder.PathOf(old) + ".new", file })
        {
            File.SetLastWriteTimeUtc(one, TimeProvider.System.GetUtcNow().UtcDateTime.AddHours(-2));
        }

        await File.WriteAllTextAsync(Path.Combine(scene.Folder.Path, "readme.txt"), "not ours", Ct);
        Assert.Equal(new MediaRound(0, 1, []), await scene.Caretaker.SweepAsync(Ct), Same);
        Assert.Equal(3, scene.Lying.Count);
        Assert.True(File.Exists(file));

        File.Delete(file);
        Assert.Equal(new MediaRound(0, 0, [kept.Id]), await scene.Caretaker.SweepAsync(Ct), Same);
        Assert.Null(await scene.Recordings.OpenAsync(student, kept.Id, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Erasing_a_person_leaves_no_file_of_theirs_and_all_of_others(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var people = new GuardianScene(db);
        var scene = new RecordingScene(db);
        var student = (await people.StudentAsync(age: AgeAnswer.OldEnough)) with { IsFresh = true };
        var other = await people.StudentAsync("Tove Lind", AgeAnswer.OldEnough);
        var mine = (await people.Intake.BatchAsync(student)).Batch.Reeds;
        var theirs = (await people.Intake.BatchAsync(other)).Batch.Reeds;
        foreach (var reed in mine.Append(theirs[0]))
        {
            await scene.SendAsync(Teacher, reed.Id, RecordingKind.VoiceMemo, SoundFiles.Opus(), words: "Zpzpz");
            await scene.SendAsync(Teacher, reed.Id, RecordingKind.FinalPhoto, PictureFiles.Jpeg());
            await scene.PutAsync(Teacher, reed.Id, RecordingKind.FinalSound, Sound);
        }

        var before = scene.Lying;
        Assert.Equal(12, before.Count);
        Done(await people.Book<PrivacyBook>().EraseAsync(student, null, "erase", Operation(), Ct));

        Assert.Equal(3, scene.Lying.Count);
        Assert.Equal(2, (await scene.Recordings.OfReedAsync(Teacher, theirs[0].Id, Ct))!.Shown.Count);
        await using var context = db.CreateDbContext();
        Assert.Equal((2, 1, 0), (await context.Set<Recording>().CountAsync(Ct), await context.Set<Upload>().CountAsync(Ct), await context.Set<FileToRemove>().CountAsync(Ct)));
    }

    [Theory, OnBothEngines]
    public async Task A_copy_brings_the_files_that_are_the_students_and_no_memo_of_the_studio(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var people = new GuardianScene(db);
        var scene = new RecordingScene(db);
        var student = (await people.StudentAsync(age: AgeAnswer.OldEnough)) with { IsFresh = true };
        var batch = (await people.Intake.BatchAsync(student)).Batch;
        await scene.SendAsync(student, batch.Reeds[1].Id, RecordingKind.ArrivalSound, Sound, words: "as it comes");
        await scene.SendAsync(Teacher, batch.Reeds[1].Id, RecordingKind.VoiceMemo, SoundFiles.Opus(), words: "for us alone");

        var copy = Done(await people.Book<PrivacyBook>().ExportAsync(student, null, Operation(), Ct));

        var file = Assert.Single(copy.Files);
        Assert.Equal((batch.Code, 2), (file.Code, file.Number));
        Assert.Equal(Sound, await File.ReadAllBytesAsync(file.Path, Ct));
        Assert.Equal("as it comes", Assert.Single(copy.About[nameof(Recording)]!.AsArray())!["Words"]!.GetValue<string>());
        Assert.DoesNotContain("for us alone", copy.About.ToJsonString(), StringComparison.Ordinal);
    }

    private static bool Same(MediaRound one, MediaRound other) =>
        (one.Left, one.Orphans) == (other.Left, other.Orphans) && one.Missing.SequenceEqual(other.Missing);

    private static RecordingScene Broken(TestDatabase db) => new(db, databases: new BreakingHand(db));

    private async Task<(TestDatabase Db, Actor Student, ReedId Reed)> OpenAsync(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var intake = new IntakeScene(db);
        var student = await intake.StudentAsync();
        return (db, student, (await intake.BatchAsync(student)).Batch.Reeds[0].Id);
    }
}
