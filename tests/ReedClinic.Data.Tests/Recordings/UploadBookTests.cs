using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Intake.IntakeScene;
using static ReedClinic.Data.Tests.Recordings.RecordingScene;

namespace ReedClinic.Data.Tests.Recordings;

/// <summary>Sending in pieces: OWASP ASVS 5.0, 5.2.1, 5.2.2, 5.2.4.</summary>
public sealed class UploadBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly byte[] Sound = SoundFiles.Wave(2);

    [Theory, OnBothEngines]
    public async Task What_was_sent_in_pieces_lies_whole_in_a_file_whose_name_nobody_chose(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);

        var kept = await scene.SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound, piece: 7_001, words: "It answers late.");
        var file = (await scene.Recordings.OpenAsync(student, kept.Id, Ct))!;

        Assert.Equal((MediaType.Wav, Sound.Length, 2_000, "It answers late.", false), (kept.Type, kept.Bytes, kept.Milliseconds, kept.Words, kept.FromStudio));
        Assert.Equal(Sound, await File.ReadAllBytesAsync(file.Path, Ct));
        Assert.Equal(Sum(Sound), file.Sha256);
        Assert.Matches("^[0-9a-f]{2}/[0-9a-f]{32}$", Assert.Single(scene.Lying));
        Assert.DoesNotContain(kept.Id.Value.ToString("N"), file.Path, StringComparison.Ordinal);
        Assert.StartsWith("arrivalsound-", kept.FileName, StringComparison.Ordinal);
    }

    [Theory, OnBothEngines]
    public async Task A_piece_that_comes_twice_changes_nothing_and_one_from_elsewhere_is_told_where_to_begin(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);
        var id = await BeginAsync(scene, student, batch);

        Assert.Equal(new ChunkAnswer(ChunkEnd.Taken, 1_000), await SendPieceAsync(scene, student, id, 0, 1_000));
        Assert.Equal(new ChunkAnswer(ChunkEnd.Taken, 1_000), await SendPieceAsync(scene, student, id, 0, 1_000));
        Assert.Equal(new ChunkAnswer(ChunkEnd.Elsewhere, 1_000), await SendPieceAsync(scene, student, id, 5_000, 1_000));
        Assert.Equal(new ChunkAnswer(ChunkEnd.Elsewhere, 1_000), await SendPieceAsync(scene, student, id, -5, 1_000));
        Assert.Equal(new UploadView(id, 1_000, Sound.Length), await scene.Uploads.FindAsync(student, id, Ct));
        Assert.Equal(new ChunkAnswer(ChunkEnd.Taken, Sound.Length), await SendPieceAsync(scene, student, id, 1_000, Sound.Length - 1_000));
        Done(await scene.Uploads.FinishAsync(student, id, Sum(Sound), Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_piece_that_goes_over_is_cut_off_while_it_comes_and_nothing_of_it_stays(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);
        var id = await BeginAsync(scene, student, batch);
        var endless = new EndlessStream();

        Assert.Equal(new ChunkAnswer(ChunkEnd.TooLarge, 0), await scene.Uploads.AppendAsync(student, id, 0, endless, RecordingLimits.Chunk, Ct));
        Assert.True(endless.Given < Sound.Length + 200_000, $"{endless.Given} bytes were read.");
        Assert.Equal(0, new FileInfo(Path.Combine(scene.Folder.Path, Assert.Single(scene.Lying))).Length);
        Assert.Equal(new ChunkAnswer(ChunkEnd.TooLarge, 0), await scene.Uploads.AppendAsync(student, id, 0, new MemoryStream(Sound), 1_000, Ct));
        Assert.Equal(new ChunkAnswer(ChunkEnd.Taken, Sound.Length), await SendPieceAsync(scene, student, id, 0, Sound.Length));
    }

    [Theory, OnBothEngines]
    public async Task A_piece_that_breaks_off_counts_for_nothing_and_can_come_again(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);
        var id = await BeginAsync(scene, student, batch);

        await Assert.ThrowsAsync<IOException>(() => scene.Uploads.AppendAsync(student, id, 0, new BreakingStream(Sound, 9_000), RecordingLimits.Chunk, Ct));
        Assert.Equal(0, (await scene.Uploads.FindAsync(student, id, Ct))!.Received);
        await SendPieceAsync(scene, student, id, 0, Sound.Length);
        Done(await scene.Uploads.FinishAsync(student, id, Sum(Sound), Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Beginning_and_finishing_twice_give_the_first_answer(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);
        var wish = new RecordingWish(batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound.Length);
        var (begin, finish) = (Operation(), Operation());

        var first = Done(await scene.Uploads.StartAsync(student, wish, begin, Ct));
        await SendPieceAsync(scene, student, first.Id, 0, 5_000);
        Assert.Equal(first with { Received = 5_000 }, Done(await scene.Uploads.StartAsync(student, wish, begin, Ct)));
        await SendPieceAsync(scene, student, first.Id, 5_000, Sound.Length - 5_000);
        var kept = Done(await scene.Uploads.FinishAsync(student, first.Id, Sum(Sound), finish, Ct));

        Assert.Equal(kept, Done(await scene.Uploads.FinishAsync(student, first.Id, Sum(Sound), finish, Ct)));
        Assert.Equal(kept, Done(await scene.Uploads.FinishAsync(student, first.Id, "", Operation(), Ct)));
        Assert.Equal(Sound.Length, Done(await scene.Uploads.StartAsync(student, wish, begin, Ct)).Received);
        Assert.Single(scene.Lying);
    }

    [Theory, OnBothEngines]
    public async Task Fifty_finishes_at_once_keep_one(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);
        var id = await scene.PutAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound);

        var ends = await Task.WhenAll(Enumerable.Range(0, 50).Select(_ => scene.Uploads.FinishAsync(student, id, Sum(Sound), Operation(), Ct)));

        Assert.Single(ends.Select(Done).Distinct());
        Assert.Single((await scene.Recordings.OfReedAsync(student, batch.Reeds[0].Id, Ct))!.Shown);
        Assert.Single(scene.Lying);
    }

    [Theory, OnBothEngines]
    public async Task What_arrived_otherwise_than_it_was_sent_is_asked_for_again(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);
        var id = await scene.PutAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound);

        Assert.Equal(RecordingRefusal.Changed.Problem(RecordingKind.ArrivalSound), Refused(await scene.Uploads.FinishAsync(student, id, Sum([1]), Operation(), Ct)));
        Assert.Equal(0, (await scene.Uploads.FindAsync(student, id, Ct))!.Received);
        Assert.Equal(RecordingRefusal.NotWhole.Problem(RecordingKind.ArrivalSound), Refused(await scene.Uploads.FinishAsync(student, id, Sum(Sound), Operation(), Ct)));
        await SendPieceAsync(scene, student, id, 0, Sound.Length);
        Done(await scene.Uploads.FinishAsync(student, id, Sum(Sound), Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task No_hostile_file_is_kept_each_time_with_the_same_words(ClinicEngine engine)
    {
        var (scene, _, batch) = await OpenAsync(engine);
        foreach (var sample in MediaCorpus.Hostile.Where((sample, number) => number % 6 == 1 && sample.Bytes.Length < 200_000))
        {
            var id = await scene.PutAsync(Teacher, batch.Reeds[0].Id, sample.Kind, sample.Bytes);
            var why = Refused(await scene.Uploads.FinishAsync(Teacher, id, Sum(sample.Bytes), Operation(), Ct));

            Assert.Equal(why, Refused(await scene.Uploads.FinishAsync(Teacher, id, Sum(sample.Bytes), Operation(), Ct)));
        }

        Assert.Empty(scene.Lying);
        Assert.Empty((await scene.Recordings.OfReedAsync(Teacher, batch.Reeds[0].Id, Ct))!.Shown);
    }

    [Theory, OnBothEngines]
    public async Task No_word_that_a_device_or_a_hand_put_into_a_file_reaches_the_disk(ClinicEngine engine)
    {
        var (scene, _, batch) = await OpenAsync(engine);
        foreach (var sample in MediaCorpus.Good.Where(sample => MediaCorpus.Secrets.Any(secret => Has(sample.Bytes, secret))).DistinctBy(sample => MediaFile.TypeOf(sample.Bytes)))
        {
            var kept = await scene.SendAsync(Teacher, batch.Reeds[0].Id, sample.Kind, sample.Bytes);
            var file = (await scene.Recordings.OpenAsync(Teacher, kept.Id, Ct))!;
            var lies = await File.ReadAllBytesAsync(file.Path, Ct);

            Assert.Equal((Sum(lies), lies.Length), (file.Sha256, kept.Bytes));
            Assert.All(MediaCorpus.Secrets, secret => Assert.False(Has(lies, secret), $"{sample.Name} still says “{secret}”."));
        }

        Assert.Equal(Enum.GetValues<MediaType>().Length, scene.Lying.Count);
    }

    [Theory, OnBothEngines]
    public async Task A_reed_takes_only_so_many_and_what_was_refused_takes_no_room(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);
        var reed = batch.Reeds[0].Id;
        for (var file = 0; file < RecordingLimits.OnReed(RecordingKind.ArrivalSound); file++)
        {
            var refused = await scene.PutAsync(student, reed, RecordingKind.ArrivalSound, Pack.Text("<html>"));
            Refused(await scene.Uploads.FinishAsync(student, refused, null, Operation(), Ct));
            await scene.SendAsync(student, reed, RecordingKind.ArrivalSound, SoundFiles.Mp3());
        }

        var full = await scene.Uploads.StartAsync(student, new RecordingWish(reed, RecordingKind.ArrivalSound, 100), Operation(), Ct);

        Assert.Equal(RecordingRefusal.ReedFull.Problem(RecordingKind.ArrivalSound), Refused(full));
        Done(await scene.Uploads.StartAsync(student, new RecordingWish(reed, RecordingKind.ArrivalPhoto, 100), Operation(), Ct));
        Done(await scene.Uploads.StartAsync(student, new RecordingWish(batch.Reeds[1].Id, RecordingKind.ArrivalSound, 100), Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_student_has_only_so_much_room_also_for_what_is_on_its_way(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);
        var intake = new IntakeScene(scene.Database);
        var theirs = (await intake.BatchAsync(await intake.StudentAsync("Tove Lind"))).Batch;
        var memo = RecordingLimits.Bytes(RecordingKind.VoiceMemo);
        var most = (int)(RecordingLimits.OfStudent.Bytes / memo);
        await using (var db = scene.Database.CreateDbContext())
        {
            var wish = new RecordingWish(batch.Reeds[1].Id, RecordingKind.VoiceMemo, memo);
            db.AddRange(Enumerable.Range(1, most - 1).Select(number => Done(Upload.Begin(
                new UploadStamp(new RecordingId(NewId()), MediaName(number), Teacher.Account, true, 0, TimeProvider.System.GetUtcNow()), wish))));
            await db.SaveChangesAsync(Ct);
        }

        Done(await scene.Uploads.StartAsync(Teacher, new RecordingWish(batch.Reeds[0].Id, RecordingKind.VoiceMemo, memo), Operation(), Ct));
        Assert.Equal(RecordingRefusal.NoRoom.Problem(RecordingKind.VoiceMemo), Refused(await scene.Uploads.StartAsync(Teacher, new RecordingWish(batch.Reeds[0].Id, RecordingKind.VoiceMemo, memo), Operation(), Ct)));
        Done(await scene.Uploads.StartAsync(Teacher, new RecordingWish(theirs.Reeds[0].Id, RecordingKind.VoiceMemo, memo), Operation(), Ct));
        Assert.Equal(RecordingRefusal.NoRoom.Problem(RecordingKind.ArrivalSound), Refused(await scene.Uploads.StartAsync(student, new RecordingWish(batch.Reeds[0].Id, RecordingKind.ArrivalSound, memo), Operation(), Ct)));
    }

    [Theory, OnBothEngines]
    public async Task Many_who_begin_at_once_take_no_more_room_than_the_studio_has(ClinicEngine engine)
    {
        var (scene, _, batch) = await OpenAsync(engine);
        var intake = new IntakeScene(scene.Database);
        const int Many = 16;
        var photo = RecordingLimits.Bytes(RecordingKind.FinalPhoto);
        var wish = new RecordingWish(batch.Reeds[1].Id, RecordingKind.FinalPhoto, photo);
        await using (var db = scene.Database.CreateDbContext())
        {
            db.AddRange(Enumerable.Range(2, (int)(RecordingLimits.OfStudio.Bytes / photo) - 1).Select(number => Done(Upload.Begin(
                new UploadStamp(new RecordingId(NewId()), MediaName(number), Teacher.Account, true, 0, TimeProvider.System.GetUtcNow()), wish))));
            await db.SaveChangesAsync(Ct);
        }

        var reeds = new List<ReedId>();
        for (var number = 0; number < Many; number++)
        {
            reeds.Add((await intake.BatchAsync(await intake.StudentAsync($"Tove {number}"))).Batch.Reeds[0].Id);
        }

        // Every connection is open before the race begins.
        await Task.WhenAll(reeds.Select(reed => scene.Recordings.OfReedAsync(Teacher, reed, Ct)));
        var begun = await Task.WhenAll(reeds.Select(reed => scene.Uploads.StartAsync(Teacher, wish with { Reed = reed }, Operation(), Ct)));

        Assert.Single(begun.OfType<Outcome<UploadView>.Done>());
        Assert.Equal(Many - 1, begun.OfType<Outcome<UploadView>.Refused>().Count());
    }

    [Theory, OnBothEngines]
    public async Task Whoever_may_no_more_sends_no_more(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);
        var id = await BeginAsync(scene, student, batch);
        var teacher = await scene.Uploads.StartAsync(Teacher, new RecordingWish(batch.Reeds[0].Id, RecordingKind.VoiceMemo, 100), Operation(), Ct);

        await using (var db = scene.Database.CreateDbContext())
        {
            await db.Set<Batch>().Where(row => row.Id == batch.Id).ExecuteUpdateAsync(row => row.SetProperty(one => one.Stage, Stage.Here), Ct);
        }

        Assert.Equal(new ChunkAnswer(ChunkEnd.NotFound, 0), await SendPieceAsync(scene, student, id, 0, 100));
        Assert.Equal(RecordingRefusal.ParcelOpened.Problem(RecordingKind.ArrivalSound), Refused(await scene.Uploads.StartAsync(student, new RecordingWish(batch.Reeds[0].Id, RecordingKind.ArrivalSound, 9), Operation(), Ct)));
        Assert.Equal(new ChunkAnswer(ChunkEnd.NotFound, 0), await SendPieceAsync(scene, Teacher with { IsTeacher = false }, Done(teacher).Id, 0, 100));
        Assert.Equal(new ChunkAnswer(ChunkEnd.Taken, 100), await SendPieceAsync(scene, Teacher, Done(teacher).Id, 0, 100));
    }

    [Theory, OnBothEngines]
    public async Task Where_the_folder_is_full_it_is_said_plainly_and_what_is_kept_stays(ClinicEngine engine)
    {
        var (scene, student, batch) = await OpenAsync(engine);
        var kept = await scene.SendAsync(student, batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound);
        var id = await BeginAsync(scene, student, batch);

        // A device that takes nothing: Linux’s /dev/full, stood in for by what a full disk throws.
        Assert.Equal(new ChunkAnswer(ChunkEnd.DiskFull, 0), await scene.Uploads.AppendAsync(student, id, 0, new BreakingStream(Sound, 100, 28), RecordingLimits.Chunk, Ct));
        Assert.Equal(Sound, await File.ReadAllBytesAsync((await scene.Recordings.OpenAsync(student, kept.Id, Ct))!.Path, Ct));
        Assert.Equal(new ChunkAnswer(ChunkEnd.Taken, Sound.Length), await SendPieceAsync(scene, student, id, 0, Sound.Length));
    }

    private async Task<(RecordingScene Scene, Actor Student, Batch Batch)> OpenAsync(ClinicEngine engine, int reeds = 3)
    {
        var db = await databases.FreshAsync(engine);
        var intake = new IntakeScene(db);
        var student = await intake.StudentAsync();
        return (new RecordingScene(db), student, (await intake.BatchAsync(student, reeds)).Batch);
    }

    private static bool Has(byte[] bytes, string words) => bytes.AsSpan().IndexOf(Pack.Text(words)) >= 0;

    private static string MediaName(int number) => number.ToString("x32", System.Globalization.CultureInfo.InvariantCulture);

    private static async Task<RecordingId> BeginAsync(RecordingScene scene, Actor actor, Batch batch) =>
        Done(await scene.Uploads.StartAsync(actor, new RecordingWish(batch.Reeds[0].Id, RecordingKind.ArrivalSound, Sound.Length), Operation(), Ct)).Id;

    private static Task<ChunkAnswer> SendPieceAsync(RecordingScene scene, Actor actor, RecordingId id, int at, int length) =>
        scene.Uploads.AppendAsync(actor, id, at, new MemoryStream(Sound, Math.Max(0, at), length), RecordingLimits.Chunk, Ct);
}
