using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Recordings;

/// <summary>One reading for each sound that is played: asked for in the save that keeps it, seen by whoever hears it, gone with it.</summary>
public sealed class SoundReadingTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly byte[] Sound = SoundFiles.Wave();

    [Theory, OnBothEngines]
    public async Task A_kept_sound_is_asked_to_be_read_in_the_same_save_and_a_memo_or_photograph_is_not(ClinicEngine engine)
    {
        var (db, student, batch) = await OpenAsync(engine);
        var scene = new RecordingScene(db);
        var kept = await scene.SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound);
        await scene.SendAsync(Teacher, batch.Reeds[0].Id, RecordingKind.VoiceMemo, SoundFiles.Mp3(4));
        await scene.SendAsync(Teacher, batch.Reeds[0].Id, RecordingKind.FinalPhoto, PictureFiles.Png());

        await using var context = db.CreateDbContext();
        var job = Assert.Single(await context.Set<Job>().Where(row => row.Kind == JobKind.Sound).ToListAsync(Ct));
        Assert.Equal((kept.Id.Value.ToString("N"), student.Student!.Value.Value), (job.Payload, job.About));
        Assert.Equal((kept.Id, ReadingState.Waiting), Assert.Single(await context.Set<SoundReading>().Select(row => new ValueTuple<RecordingId, ReadingState>(row.Recording, row.State)).ToListAsync(Ct)));
    }

    [Theory, OnBothEngines]
    public async Task What_can_t_be_kept_is_not_asked_for(ClinicEngine engine)
    {
        var (db, student, batch) = await OpenAsync(engine);
        var id = await new RecordingScene(db).PutAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound);
        var broken = new RecordingScene(db, databases: new BreakingHand(db));

        await Assert.ThrowsAsync<InvalidOperationException>(() => broken.Uploads.FinishAsync(student, id, null, Operation(), Ct));

        await using var context = db.CreateDbContext();
        Assert.Equal((0, 0), (await context.Set<SoundReading>().CountAsync(Ct), await context.Set<Job>().CountAsync(row => row.Kind == JobKind.Sound, Ct)));
    }

    [Theory, OnBothEngines]
    public async Task A_worker_that_dies_half_way_leaves_its_sound_to_the_next_and_what_comes_late_changes_nothing(ClinicEngine engine)
    {
        var (db, student, batch) = await OpenAsync(engine);
        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var kept = await new RecordingScene(db, time).SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound);
        var (board, register) = (new JobBoard(db, time), Register(db, time));
        var first = (await board.ClaimAsync(JobKind.Sound, Ct))!;
        Assert.False((await register.OpenAsync(first, Ct))!.HasEnded);
        Assert.Equal(ReadingState.BeingRead, (await Book(db).StateAsync(student, kept.Id, Ct))!.State);
        Assert.Null(await board.ClaimAsync(JobKind.Sound, Ct));

        time.Advance(JobBoard.LeaseLength + TimeSpan.FromSeconds(1));
        var second = (await board.ClaimAsync(JobKind.Sound, Ct))!;
        Assert.Equal(first.Id, second.Id);
        Assert.False((await register.OpenAsync(second, Ct))!.HasEnded);
        Assert.True(await register.KeepAsync(kept.Id, MadeReadings.Crow(), Ct));
        Assert.True(await register.GiveUpAsync(kept.Id, SoundTrouble.Damaged, Ct));
        Assert.True(await board.DoneAsync(second, Ct));
        Assert.False(await board.DoneAsync(first, Ct));

        Assert.Null(await board.ClaimAsync(JobKind.Sound, Ct));
        var view = (await Book(db).FindAsync(student, kept.Id, Ct))!;
        Assert.Equal((ReadingState.Read, null, SoundKind.Crow, 500.0), (view.State, view.Trouble, view.Read!.Kind, view.Read.Figures.Pitch.Value));
        Assert.Equal((0.81, 200), (view.Guess!.Value.Share, view.Read.Series!.Count));
        Assert.Equal([1, 2, 3], await Book(db).PictureAsync(student, kept.Id, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Nobody_sees_what_a_sound_says_but_whoever_hears_it(ClinicEngine engine)
    {
        var (db, student, batch) = await OpenAsync(engine);
        var scene = new RecordingScene(db);
        var other = await new IntakeScene(db).StudentAsync("Tove Lind");
        var came = await ReadAsync(db, await scene.SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound));
        var goes = await ReadAsync(db, await scene.SendAsync(Teacher, batch.Reeds[0].Id, RecordingKind.FinalSound, Sound));
        var tested = await ReadAsync(db, await scene.SendAsync(Teacher, batch.Reeds[0].Id, RecordingKind.TestSound, Sound));

        foreach (var id in new[] { came, goes, tested })
        {
            Assert.Null(await Book(db).FindAsync(other, id, Ct));
            Assert.Null(await Book(db).PictureAsync(other, id, Ct));
            Assert.Null(await Book(db).StateAsync(other, id, Ct));
            Assert.IsType<Outcome<SoundReadingView>.NotFound>(await Book(db).CorrectAsync(other, id, SoundKind.Peep, Guid.Empty, Operation(), Ct));
            Assert.Equal(2, (await Book(db).FindAsync(Teacher, id, Ct))!.Others.Count);
        }

        // The letter isn't sent: how it goes home is the studio's still, and what was tested stays so.
        Assert.Empty((await Book(db).FindAsync(student, came, Ct))!.Others);
        Assert.Null(await Book(db).FindAsync(student, goes, Ct));
        Assert.Null(await Book(db).FindAsync(student, tested, Ct));
        await using var context = db.CreateDbContext();
        await context.Set<Batch>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.LetterSentAt, TimeProvider.System.GetUtcNow()), Ct);
        Assert.Equal(goes, Assert.Single((await Book(db).FindAsync(student, came, Ct))!.Others).Recording.Id);
        Assert.Null(await Book(db).FindAsync(student, tested, Ct));
    }

    [Theory, OnBothEngines]
    public async Task What_is_played_is_corrected_once_by_whoever_may_and_against_the_version_they_saw(ClinicEngine engine)
    {
        var (db, student, batch) = await OpenAsync(engine);
        var scene = new RecordingScene(db);
        var id = await ReadAsync(db, await scene.SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound));
        var studios = await ReadAsync(db, await scene.SendAsync(Teacher, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound));
        var seen = (await Book(db).FindAsync(student, id, Ct))!;
        var operation = Operation();

        var said = Done(await Book(db).CorrectAsync(student, id, SoundKind.Peep, seen.Version, operation, Ct));
        Assert.Equal((SoundKind.Peep, true, true), (said.Read!.Kind, said.IsKindSaid, said.MayCorrect));
        Assert.Equal(said.Version, Done(await Book(db).CorrectAsync(student, id, SoundKind.Peep, seen.Version, operation, Ct)).Version);
        Assert.IsType<Outcome<SoundReadingView>.Conflict>(await Book(db).CorrectAsync(Teacher, id, SoundKind.LongTone, seen.Version, Operation(), Ct));
        Assert.IsType<Outcome<SoundReadingView>.NotFound>(await Book(db).CorrectAsync(student, studios, SoundKind.Peep, Guid.Empty, Operation(), Ct));
        Assert.Equal(SoundKind.Peep, (await Book(db).FindAsync(Teacher, id, Ct))!.Read!.Kind);
    }

    [Theory, OnBothEngines]
    public async Task A_reading_goes_with_its_sound_and_with_its_person(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var people = new GuardianScene(db);
        var scene = new RecordingScene(db);
        var student = (await people.StudentAsync(age: AgeAnswer.OldEnough)) with { IsFresh = true };
        var batch = (await people.Intake.BatchAsync(student)).Batch;
        var removed = await ReadAsync(db, await scene.SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound));
        var left = await ReadAsync(db, await scene.SendAsync(Teacher, batch.Reeds[0].Id, RecordingKind.FinalSound, Sound));

        Done(await scene.Recordings.RemoveAsync(student, removed, Operation(), Ct));
        Assert.Null(await Book(db).FindAsync(Teacher, removed, Ct));
        Assert.False(await Register(db).KeepAsync(removed, MadeReadings.Crow(), Ct));
        Assert.NotNull(await Book(db).FindAsync(Teacher, left, Ct));
        Done(await people.Book<PrivacyBook>().EraseAsync(student, null, "erase", Operation(), Ct));

        await using var context = db.CreateDbContext();
        Assert.Equal((0, 0), (await context.Set<SoundReading>().CountAsync(Ct), await context.Set<Job>().CountAsync(row => row.Kind == JobKind.Sound, Ct)));
    }

    [Theory, OnBothEngines]
    public async Task What_was_kept_before_sounds_were_read_is_asked_for_once(ClinicEngine engine)
    {
        var (db, student, batch) = await OpenAsync(engine);
        var scene = new RecordingScene(db);
        await scene.SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound);
        await ReadAsync(db, await scene.SendAsync(student, batch.Reeds[1].Id, RecordingKind.ArrivalSound, Sound));
        await using var context = db.CreateDbContext();
        await context.Set<Job>().Where(row => row.Kind == JobKind.Sound).ExecuteDeleteAsync(Ct);
        await context.Set<SoundReading>().Where(row => row.State == ReadingState.Waiting).ExecuteDeleteAsync(Ct);

        Assert.Equal(1, await Register(db).AskForLeftAsync(Ct));
        Assert.Equal(0, await Register(db).AskForLeftAsync(Ct));

        Assert.NotNull(await new JobBoard(db, TimeProvider.System).ClaimAsync(JobKind.Sound, Ct));
        Assert.Equal(2, await context.Set<SoundReading>().CountAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task One_sound_that_cannot_be_asked_for_stops_none_of_the_others(ClinicEngine engine)
    {
        var (db, student, batch) = await OpenAsync(engine);
        var scene = new RecordingScene(db);
        var now = DateTimeOffset.FromUnixTimeSeconds(2_000_000_000);
        var first = await scene.SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound);
        await scene.SendAsync(student, batch.Reeds[1].Id, RecordingKind.ArrivalSound, Sound);
        await using var context = db.CreateDbContext();

        // Asked for and done in this very hour: the same question clashes.
        await context.Set<Job>().Where(row => row.Kind == JobKind.Sound).ExecuteDeleteAsync(Ct);
        context.Add(new Job { Id = Guid.CreateVersion7(now), Kind = JobKind.Sound, Payload = first.Id.Value.ToString("N"), Once = $"sound:{first.Id.Value:N}:{now.UtcDateTime:yyyy-MM-ddTHH}", MadeAt = now, DueAt = now, DoneAt = now });
        await context.SaveChangesAsync(Ct);

        Assert.Equal(1, await Register(db, new Microsoft.Extensions.Time.Testing.FakeTimeProvider(now)).AskForLeftAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task Nothing_is_read_while_consent_is_taken_back(ClinicEngine engine)
    {
        var (db, student, batch) = await OpenAsync(engine);
        var kept = await new RecordingScene(db).SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound);
        var job = (await new JobBoard(db, TimeProvider.System).ClaimAsync(JobKind.Sound, Ct))!;
        await using var context = db.CreateDbContext();
        await context.Set<Student>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Consent, Consent.Withdrawn), Ct);

        Assert.Null(await Register(db).OpenAsync(job, Ct));
        Assert.False(await Register(db).KeepAsync(kept.Id, MadeReadings.Crow(), Ct));
        Assert.Equal(0, await Register(db).AskForLeftAsync(Ct));
        Assert.True(await new JobBoard(db, TimeProvider.System).DoneAsync(job, Ct));

        await context.Set<Student>().ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Consent, Consent.Given), Ct);
        Assert.Equal(1, await Register(db).AskForLeftAsync(Ct));
    }

    private static SoundReadingBook Book(TestDatabase db) => new(db, TimeProvider.System);

    private static SoundRegister Register(TestDatabase db, TimeProvider? time = null) =>
        new(db, db.Services.GetRequiredService<MediaFolder>(), time ?? TimeProvider.System);

    private static async Task<RecordingId> ReadAsync(TestDatabase db, RecordingView kept)
    {
        Assert.True(await Register(db).KeepAsync(kept.Id, MadeReadings.Crow(), Ct));
        return kept.Id;
    }

    private async Task<(TestDatabase Db, Actor Student, Batch Batch)> OpenAsync(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var intake = new IntakeScene(db);
        var student = await intake.StudentAsync();
        return (db, student, (await intake.BatchAsync(student, 2)).Batch);
    }
}
