using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Recordings;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Intake;

/// <summary>An unannounced reed that was added by mistake goes, with what was begun to be sent of it.</summary>
public sealed class ExtraReedUploadsTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task What_is_on_its_way_keeps_its_reed_for_an_hour_and_the_reason_is_true(ClinicEngine engine)
    {
        var (db, batch, extra) = await OpenAsync(engine);
        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var (sending, arrival) = (new RecordingScene(db, time), new ArrivalBook(db, time, db.Outbox));
        await sending.PutAsync(Teacher, extra, RecordingKind.ArrivalPhoto, PictureFiles.Jpeg());

        time.Advance(TimeSpan.FromMinutes(59));
        var refused = RecordingScene.Refused(await arrival.RemoveExtraAsync(Teacher, batch.Id, extra, Operation(), Ct));
        time.Advance(TimeSpan.FromMinutes(1));
        Done(await arrival.RemoveExtraAsync(Teacher, batch.Id, extra, Operation(), Ct));

        Assert.Equal(ArrivalBook.Removing, refused.Field);
        Assert.Contains("within the last hour", refused.Message, StringComparison.Ordinal);
        Assert.Contains("can be removed an hour after", refused.Message, StringComparison.Ordinal);
    }

    [Theory, OnBothEngines]
    public async Task What_was_refused_or_left_goes_with_its_reed_and_no_file_stays(ClinicEngine engine)
    {
        var (db, batch, extra) = await OpenAsync(engine);
        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var (sending, arrival) = (new RecordingScene(db, time), new ArrivalBook(db, time, db.Outbox));
        var left = await sending.PutAsync(Teacher, extra, RecordingKind.ArrivalPhoto, PictureFiles.Jpeg());
        time.Advance(ArrivalBook.Sending);
        var refused = await sending.PutAsync(Teacher, extra, RecordingKind.ArrivalPhoto, new byte[3_000]);
        RecordingScene.Refused(await sending.Uploads.FinishAsync(Teacher, refused, null, Operation(), Ct));

        Done(await arrival.RemoveExtraAsync(Teacher, batch.Id, extra, Operation(), Ct));
        var piece = await sending.Uploads.AppendAsync(Teacher, left, 0, new MemoryStream(new byte[10]), RecordingLimits.Chunk, Ct);
        await sending.Caretaker.RemoveAskedAsync(Ct);

        Assert.Equal(ChunkEnd.NotFound, piece.End);
        Assert.Empty(sending.Lying);
        await using var context = db.CreateDbContext();
        Assert.False(await context.Set<Upload>().AnyAsync(upload => upload.Reed == extra, Ct));
    }

    [Theory, OnBothEngines]
    public async Task What_is_on_its_way_of_another_reed_stays_and_is_kept_when_it_is_all_here(ClinicEngine engine)
    {
        var (db, batch, extra) = await OpenAsync(engine);
        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var (sending, arrival) = (new RecordingScene(db, time), new ArrivalBook(db, time, db.Outbox));
        await sending.PutAsync(Teacher, extra, RecordingKind.ArrivalPhoto, PictureFiles.Jpeg());
        var others = await sending.PutAsync(Teacher, batch.Reeds[0].Id, RecordingKind.ArrivalPhoto, PictureFiles.Jpeg());
        time.Advance(ArrivalBook.Sending);

        Done(await arrival.RemoveExtraAsync(Teacher, batch.Id, extra, Operation(), Ct));
        await sending.Caretaker.RemoveAskedAsync(Ct);

        Assert.Single(sending.Lying);
        Done(await sending.Uploads.FinishAsync(Teacher, others, null, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task What_is_finished_while_its_reed_goes_isnt_kept_and_is_answered(ClinicEngine engine)
    {
        var (db, batch, extra) = await OpenAsync(engine);
        var time = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var begun = await new RecordingScene(db, time).PutAsync(Teacher, extra, RecordingKind.ArrivalPhoto, PictureFiles.Jpeg());
        time.Advance(ArrivalBook.Sending);
        var arrival = new ArrivalBook(db, time, db.Outbox);
        var meanwhile = new Meanwhile(db, async () => Done(await arrival.RemoveExtraAsync(Teacher, batch.Id, extra, Operation(), Ct)));

        var late = await new RecordingScene(db, time, meanwhile).Uploads.FinishAsync(Teacher, begun, null, Operation(), Ct);

        Assert.IsNotType<Outcome<RecordingView>.Done>(late);
        await using var context = db.CreateDbContext();
        Assert.False(await context.Set<Recording>().AnyAsync(recording => recording.Reed == extra, Ct));
    }

    private async Task<(TestDatabase Db, Batch Batch, ReedId Extra)> OpenAsync(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new IntakeScene(db);
        var batch = (await scene.BatchAsync(await scene.StudentAsync(), reeds: 1)).Batch;
        return (db, batch, Done(await scene.Arrival.AddExtraAsync(Teacher, batch.Id, "blue thread", Operation(), Ct)).Batch.Reeds[^1].Id);
    }

    // The first context reads what arrived, the second one keeps it: something happens in between.
    private sealed class Meanwhile(TestDatabase db, Func<Task> happens) : IDbContextFactory<ClinicDb>
    {
        private int _contexts;

        public ClinicDb CreateDbContext() => db.CreateDbContext();

        public async Task<ClinicDb> CreateDbContextAsync(CancellationToken cancellationToken = default)
        {
            if (Interlocked.Increment(ref _contexts) == 2)
            {
                await happens();
            }

            return db.CreateDbContext();
        }
    }
}
