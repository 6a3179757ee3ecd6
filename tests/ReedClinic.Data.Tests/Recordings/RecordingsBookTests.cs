using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using static ReedClinic.Data.Tests.Intake.IntakeScene;
using static ReedClinic.Data.Tests.Recordings.RecordingScene;

namespace ReedClinic.Data.Tests.Recordings;

public sealed class RecordingsBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_student_hears_how_it_came_and_after_the_letter_how_it_goes_home_but_a_memo_only_from_the_letter(ClinicEngine engine)
    {
        var (db, scene, student, reed) = await OpenAsync(engine);
        var came = await scene.SendAsync(student, reed.Id, RecordingKind.ArrivalSound, SoundFiles.Mp3());
        var home = await scene.SendAsync(Teacher, reed.Id, RecordingKind.FinalPhoto, PictureFiles.Jpeg());
        var aloud = await scene.SendAsync(Teacher, reed.Id, RecordingKind.VoiceMemo, SoundFiles.Opus());
        var silent = await scene.SendAsync(Teacher, reed.Id, RecordingKind.VoiceMemo, SoundFiles.Opus());
        var guardian = new Actor(new AccountId(NewId()), null, false, false) { Wards = [student.Student!.Value] };
        Assert.True(Done(await scene.Recordings.PutInLetterAsync(Teacher, aloud.Id, true, Operation(), Ct)).InLetter);

        foreach (var reader in new[] { student, guardian })
        {
            Assert.Equal([came.Id], await SeenAsync(scene, reader, reed));
        }

        await SetAsync(db, reed, Stage.LetterSent);
        foreach (var reader in new[] { student, guardian })
        {
            Assert.Equal([came.Id, home.Id, aloud.Id], await SeenAsync(scene, reader, reed));
            Assert.NotNull(await scene.Recordings.OpenAsync(reader, aloud.Id, Ct));
            Assert.Null(await scene.Recordings.OpenAsync(reader, silent.Id, Ct));
        }

        Assert.Equal([came.Id, home.Id, aloud.Id, silent.Id], await SeenAsync(scene, Teacher, reed));
        Assert.Equal(RecordingRefusal.LetterSent.Problem(RecordingKind.VoiceMemo), Refused(await scene.Recordings.PutInLetterAsync(Teacher, silent.Id, true, Operation(), Ct)));
    }

    [Theory, OnBothEngines]
    public async Task Nothing_is_given_or_taken_while_a_younger_student_has_no_guardian_who_agrees(ClinicEngine engine)
    {
        var (db, scene, student, reed) = await OpenAsync(engine);
        var memo = await scene.SendAsync(Teacher, reed.Id, RecordingKind.VoiceMemo, SoundFiles.Opus());
        await using (var context = db.CreateDbContext())
        {
            await context.Set<Student>().Where(row => row.Id == student.Student!.Value)
                .ExecuteUpdateAsync(set => set.SetProperty(row => row.Age, AgeAnswer.Younger).SetProperty(row => row.Consent, Consent.NotAsked), Ct);
        }

        foreach (var (who, kind) in new[] { (student, RecordingKind.ArrivalSound), (Teacher, RecordingKind.FinalSound) })
        {
            Assert.IsType<Outcome<UploadView>.Refused>(await scene.Uploads.StartAsync(who, new RecordingWish(reed.Id, kind, 100), Operation(), Ct));
        }

        Assert.IsType<Outcome<RecordingView>.Refused>(await scene.Recordings.PutInLetterAsync(Teacher, memo.Id, true, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_memo_knows_the_place_in_the_log_at_which_it_was_made(ClinicEngine engine)
    {
        var (db, scene, _, reed) = await OpenAsync(engine);
        var bench = new BenchBook(db, TimeProvider.System);
        Done(await bench.RecordAsync(Teacher, reed.Id, Done(Note.Of("thin at the corner")), Operation(), Ct));
        var before = await scene.SendAsync(Teacher, reed.Id, RecordingKind.VoiceMemo, SoundFiles.Opus());
        var passId = new PassId(NewId());

        Done(await bench.RecordAsync(Teacher, reed.Id, Done(Note.Of("dusted it")), Operation(), Ct));
        var going = Done(await scene.Uploads.StartAsync(
            Teacher, new RecordingWish(reed.Id, RecordingKind.VoiceMemo, SoundFiles.Opus().Length) { AtSequence = 1, PassId = passId }, Operation(), Ct));
        await scene.Uploads.AppendAsync(Teacher, going.Id, 0, new MemoryStream(SoundFiles.Opus()), RecordingLimits.Chunk, Ct);
        var said = Done(await scene.Uploads.FinishAsync(Teacher, going.Id, null, Operation(), Ct));

        Assert.Equal((1, null), (before.AtSequence, before.PassId));
        Assert.Equal((1, passId), (said.AtSequence, said.PassId));
    }

    [Theory, OnBothEngines]
    public async Task Whoever_has_the_reed_open_is_told_of_a_memo_that_came_went_or_goes_with_the_letter(ClinicEngine engine)
    {
        var (db, scene, _, reed) = await OpenAsync(engine);
        var (news, told) = (new BenchNews(), 0);
        using var listening = news.Listen(reed.Id, () => told++);
        var recordings = new RecordingsBook(db, scene.Folder, TimeProvider.System, news);
        var uploads = new UploadBook(db, scene.Folder, TimeProvider.System, news);
        var id = await scene.PutAsync(Teacher, reed.Id, RecordingKind.VoiceMemo, SoundFiles.Opus());
        Assert.Equal(0, told);

        Done(await uploads.FinishAsync(Teacher, id, null, Operation(), Ct));
        Assert.Equal(1, told);
        Done(await recordings.PutInLetterAsync(Teacher, id, true, Operation(), Ct));
        Assert.Equal(2, told);
        Done(await recordings.RemoveAsync(Teacher, id, Operation(), Ct));
        Assert.Equal(3, told);
    }

    [Theory, OnBothEngines]
    public async Task A_student_takes_back_what_they_gave_until_the_parcel_is_opened_and_its_file_goes_with_it(ClinicEngine engine)
    {
        var (db, scene, student, reed) = await OpenAsync(engine);
        var first = await scene.SendAsync(student, reed.Id, RecordingKind.ArrivalSound, SoundFiles.Mp3());
        var second = await scene.SendAsync(student, reed.Id, RecordingKind.ArrivalPhoto, PictureFiles.Png());
        var studios = await scene.SendAsync(Teacher, reed.Id, RecordingKind.ArrivalPhoto, PictureFiles.Png());
        var operation = Operation();

        Assert.True(first.MayRemove);
        Done(await scene.Recordings.RemoveAsync(student, first.Id, operation, Ct));
        Assert.Equal(first.Id, Done(await scene.Recordings.RemoveAsync(student, first.Id, operation, Ct)));
        Assert.IsType<Outcome<RecordingId>.NotFound>(await scene.Recordings.RemoveAsync(student, first.Id, Operation(), Ct));
        Assert.IsType<Outcome<RecordingId>.NotFound>(await scene.Recordings.RemoveAsync(student, studios.Id, Operation(), Ct));
        Assert.Equal(2, scene.Lying.Count);

        await SetAsync(db, reed, Stage.Here);
        Assert.Equal(RecordingRefusal.ParcelOpened.Problem(RecordingKind.ArrivalPhoto), Refused(await scene.Recordings.RemoveAsync(student, second.Id, Operation(), Ct)));
        Assert.All((await scene.Recordings.OfReedAsync(student, reed.Id, Ct))!.Shown, shown => Assert.False(shown.MayRemove));
        Assert.Empty((await scene.Recordings.OfReedAsync(student, reed.Id, Ct))!.MayAdd);
        Done(await scene.Recordings.RemoveAsync(Teacher, second.Id, Operation(), Ct));
        Done(await scene.Recordings.RemoveAsync(Teacher, studios.Id, Operation(), Ct));
        Assert.Empty(scene.Lying);
    }

    [Theory, OnBothEngines]
    public async Task Who_may_not_remove_one_because_nobody_agrees_is_told_so(ClinicEngine engine)
    {
        var (db, scene, student, reed) = await OpenAsync(engine);
        var sound = await scene.SendAsync(student, reed.Id, RecordingKind.ArrivalSound, SoundFiles.Mp3());
        await using (var context = db.CreateDbContext())
        {
            await context.Set<Student>().Where(person => person.Id == student.Student).ExecuteUpdateAsync(
                row => row.SetProperty(person => person.Age, AgeAnswer.Younger).SetProperty(person => person.Consent, Consent.Asked), Ct);
        }

        var refused = Refused(await scene.Recordings.RemoveAsync(student, sound.Id, Operation(), Ct));

        Assert.StartsWith("No guardian agrees", refused.Message, StringComparison.Ordinal);
    }

    [Theory, OnBothEngines]
    public async Task Words_are_put_to_a_recording_by_who_may_remove_it(ClinicEngine engine)
    {
        var (_, scene, student, reed) = await OpenAsync(engine);
        var sound = await scene.SendAsync(student, reed.Id, RecordingKind.ArrivalSound, SoundFiles.Mp3());
        var other = await new IntakeScene(await databases.OpenAsync(engine)).StudentAsync("Tove Lind");

        Assert.Equal("Low C cracks.", Done(await scene.Recordings.DescribeAsync(student, sound.Id, " Low C cracks. ", Operation(), Ct)).Words);
        Assert.NotEmpty(Refused(await scene.Recordings.DescribeAsync(student, sound.Id, new string('a', 501), Operation(), Ct)).Message);
        Assert.IsType<Outcome<RecordingView>.NotFound>(await scene.Recordings.DescribeAsync(other, sound.Id, "mine", Operation(), Ct));
        Assert.IsType<Outcome<RecordingView>.NotFound>(await scene.Recordings.PutInLetterAsync(Teacher, sound.Id, true, Operation(), Ct));
        Assert.Equal("Low C cracks.", Assert.Single((await scene.Recordings.OfReedAsync(Teacher, reed.Id, Ct))!.Shown).Words);
    }

    private async Task<(TestDatabase Db, RecordingScene Scene, Actor Student, Reed Reed)> OpenAsync(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var intake = new IntakeScene(db);
        var student = await intake.StudentAsync();
        return (db, new RecordingScene(db), student, (await intake.BatchAsync(student)).Batch.Reeds[0]);
    }

    private static async Task<IEnumerable<RecordingId>> SeenAsync(RecordingScene scene, Actor actor, Reed reed) =>
        (await scene.Recordings.OfReedAsync(actor, reed.Id, Ct))!.Shown.Select(shown => shown.Id);

    private static async Task SetAsync(TestDatabase db, Reed reed, Stage stage)
    {
        await using var context = db.CreateDbContext();
        DateTimeOffset? sent = stage == Stage.LetterSent ? TimeProvider.System.GetUtcNow() : null;
        await context.Set<Batch>().Where(batch => batch.Id == reed.Batch)
            .ExecuteUpdateAsync(batch => batch.SetProperty(row => row.Stage, stage).SetProperty(row => row.LetterSentAt, sent), Ct);
    }
}
