using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Recordings;

/// <summary>What was measured from a recording at the bench, as a test of the reed’s log: it comes and goes with what is said of the recording.</summary>
public sealed class MeasuredTestsTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly byte[] Sound = SoundFiles.Wave();

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task A_test_recorded_at_the_bench_stands_in_the_log_once_beside_what_was_said(ClinicEngine engine)
    {
        var (db, _, batch) = await OpenAsync(engine);
        var (reed, bench) = (batch.Reeds[0].Id, new BenchBook(db, TimeProvider.System));
        var own = Done(await bench.RecordAsync(Teacher, reed, Done(Test.Of(TestKind.Crow, 1)), Operation(), Ct));
        var id = await ReadAsync(db, await new RecordingScene(db).SendAsync(Teacher, reed, RecordingKind.TestSound, Sound));
        var tests = new MeasuredTests(db, TimeProvider.System);

        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => tests.RecordAsync(id, Ct)));

        var log = (await bench.FindAsync(Teacher, reed, Ct))!.Log;
        var measured = Assert.Single(log.Live<Test>(), test => test.Now.MeasuredFrom is not null).Now;
        Assert.Equal((id, TestKind.Crow, 0, "B4 +13"), (measured.MeasuredFrom!.Value, measured.TestKind, measured.Step, measured.Pitch!.Text));
        Assert.Equal("measured, within 1 cent; octaves: high, middle, low", measured.Words);
        Assert.Equal(own.Root, Assert.Single(log.Counting).Root);
        Assert.Null(log.Moves.Single().Now);

        // Ines tunes to 442 Hz, so that 500 Hz are 13 cents above her B. The teacher takes back what they said, and not what came by itself since.
        Assert.Equal(own.Root, log.LastOf(Teacher.Account)!.Root);
        Done(await bench.UndoAsync(Teacher, reed, null, Operation(), Ct));
        await tests.RecordAsync(id, Ct);
        Assert.NotNull(Assert.Single((await bench.FindAsync(Teacher, reed, Ct))!.Log.Live<Test>()).Now.MeasuredFrom);
        Assert.IsType<Outcome<BenchFact>.NotFound>(await bench.UndoAsync(Teacher, reed, null, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_test_that_is_neither_crow_nor_peep_is_taken_back_and_comes_again_when_it_was_one_after_all(ClinicEngine engine)
    {
        var (db, _, batch) = await OpenAsync(engine);
        var (reed, bench, tests) = (batch.Reeds[0].Id, new BenchBook(db, TimeProvider.System), new MeasuredTests(db, TimeProvider.System));
        var id = await ReadAsync(db, await new RecordingScene(db).SendAsync(Teacher, reed, RecordingKind.TestSound, Sound));
        await tests.RecordAsync(id, Ct);
        foreach (var (kind, test) in new (SoundKind, TestKind?)[] { (SoundKind.Peep, TestKind.Peep), (SoundKind.LongTone, null), (SoundKind.Attack, null), (SoundKind.Crow, TestKind.Crow), (SoundKind.LongTone, null) })
        {
            Done(await Book(db).CorrectAsync(Teacher, id, kind, (await Book(db).FindAsync(Teacher, id, Ct))!.Version, Operation(), Ct));
            await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => UntilSettledAsync(tests, id)));

            var fact = Assert.Single((await bench.FindAsync(Teacher, reed, Ct))!.Log.Facts);
            Assert.Equal((kind, test), (kind, (fact.Now as Test)?.TestKind));
        }
    }

    [Theory, OnBothEngines]
    public async Task A_recording_that_is_removed_takes_its_test_along_and_leaves_what_the_teacher_said_of_it(ClinicEngine engine)
    {
        var (db, _, batch) = await OpenAsync(engine);
        var (reed, bench, tests) = (batch.Reeds[0].Id, new BenchBook(db, TimeProvider.System), new MeasuredTests(db, TimeProvider.System));
        var scene = new RecordingScene(db);
        var (removed, said) = (await ReadAsync(db, await scene.SendAsync(Teacher, reed, RecordingKind.TestSound, Sound)), await ReadAsync(db, await scene.SendAsync(Teacher, reed, RecordingKind.TestSound, Sound)));
        await tests.RecordAsync(removed, Ct);
        await tests.RecordAsync(said, Ct);
        var second = (await bench.FindAsync(Teacher, reed, Ct))!.Log.Facts[1];
        Done(await bench.CorrectAsync(Teacher, reed, second.Tail, Done(Test.Of(TestKind.Crow, 2)), Operation(), Ct));

        Done(await scene.Recordings.RemoveAsync(Teacher, removed, Operation(), Ct));
        Done(await scene.Recordings.RemoveAsync(Teacher, said, Operation(), Ct));

        var log = (await bench.FindAsync(Teacher, reed, Ct))!.Log;
        Assert.Equal([FactState.TakenBack, FactState.Corrected], log.Facts.Select(fact => fact.State));
        Assert.Equal((2, null), (Assert.Single(log.Counting).Now.Step, log.Counting.Single().Now.MeasuredFrom));
    }

    [Theory, OnBothEngines]
    public async Task A_test_that_turns_out_to_be_a_peep_is_put_right_in_the_log_and_other_sounds_give_none(ClinicEngine engine)
    {
        var (db, _, batch) = await OpenAsync(engine);
        var (reed, bench, tests) = (batch.Reeds[0].Id, new BenchBook(db, TimeProvider.System), new MeasuredTests(db, TimeProvider.System));
        var scene = new RecordingScene(db);
        var id = await ReadAsync(db, await scene.SendAsync(Teacher, reed, RecordingKind.TestSound, Sound));
        await tests.RecordAsync(id, Ct);
        var seen = (await Book(db).FindAsync(Teacher, id, Ct))!;

        Done(await Book(db).CorrectAsync(Teacher, id, SoundKind.Peep, seen.Version, Operation(), Ct));
        await using var context = db.CreateDbContext();
        Assert.Equal(2, await context.Set<Job>().CountAsync(job => job.Kind == JobKind.Sound && job.Payload == id.Value.ToString("N"), Ct));
        await tests.RecordAsync(id, Ct);
        await tests.RecordAsync(id, Ct);
        await tests.RecordAsync(await ReadAsync(db, await scene.SendAsync(Teacher, reed, RecordingKind.ArrivalSound, Sound)), Ct);

        var fact = Assert.Single((await bench.FindAsync(Teacher, reed, Ct))!.Log.Facts);
        Assert.Equal((FactState.Corrected, 2, TestKind.Peep), (fact.State, fact.Chain.Count, Assert.IsType<Test>(fact.Now).TestKind));
    }

    [Theory, OnBothEngines]
    public async Task What_was_played_before_work_is_not_written_behind_it(ClinicEngine engine)
    {
        var (db, _, batch) = await OpenAsync(engine);
        var (reed, bench, tests) = (batch.Reeds[0].Id, new BenchBook(db, TimeProvider.System), new MeasuredTests(db, TimeProvider.System));
        var kept = await new RecordingScene(db).SendAsync(Teacher, reed, RecordingKind.TestSound, Sound);
        Done(await bench.RecordAsync(Teacher, reed, Clipped(0.2m), Operation(), Ct));

        await tests.RecordAsync(await ReadAsync(db, kept), Ct);

        Assert.Empty((await bench.FindAsync(Teacher, reed, Ct))!.Log.Live<Test>());
    }

    [Theory, OnBothEngines]
    public async Task What_was_played_before_the_reed_was_soaked_again_is_written_down(ClinicEngine engine)
    {
        var (db, _, batch) = await OpenAsync(engine);
        var (reed, bench, tests) = (batch.Reeds[0].Id, new BenchBook(db, TimeProvider.System), new MeasuredTests(db, TimeProvider.System));
        var kept = await new RecordingScene(db).SendAsync(Teacher, reed, RecordingKind.TestSound, Sound);
        Done(await bench.RecordAsync(Teacher, reed, Done(Adjustment.Of(new AdjustmentKindId("soak"), new Domain.Reeds.Place(Domain.Reeds.Zone.WholeReed))), Operation(), Ct));

        await tests.RecordAsync(await ReadAsync(db, kept), Ct);

        Assert.Equal(0, Assert.Single((await bench.FindAsync(Teacher, reed, Ct))!.Log.Live<Test>()).Pass);
    }

    [Theory, OnBothEngines]
    public async Task Work_that_was_only_worded_better_after_it_was_played_is_tried_by_it(ClinicEngine engine)
    {
        var (db, _, batch) = await OpenAsync(engine);
        var (reed, bench, tests) = (batch.Reeds[0].Id, new BenchBook(db, TimeProvider.System), new MeasuredTests(db, TimeProvider.System));
        var work = Done(await bench.RecordAsync(Teacher, reed, Clipped(0.2m), Operation(), Ct));
        var kept = await new RecordingScene(db).SendAsync(Teacher, reed, RecordingKind.TestSound, Sound);
        Done(await bench.CorrectAsync(Teacher, reed, work.Tail, Clipped(0.3m), Operation(), Ct));

        await tests.RecordAsync(await ReadAsync(db, kept), Ct);

        Assert.Single((await bench.FindAsync(Teacher, reed, Ct))!.Log.Live<Test>());
    }

    private static Adjustment Clipped(decimal millimetres) =>
        Done(Adjustment.Of(new AdjustmentKindId("clip-hair"), new Domain.Reeds.Place(Domain.Reeds.Zone.TipEdge), new Amount(Millimetres: millimetres)));

    /// <summary>The C5 of an A at 442 Hz is 525.6295 Hz by equal temperament (ISO 16:1975 for A4), so that 508 Hz are 59 cents below it.</summary>
    [Theory, OnBothEngines]
    public async Task A_measured_crow_reaches_what_may_be_behind_a_reeds_trouble_and_leaves_it_with_its_recording(ClinicEngine engine)
    {
        var (db, _, batch) = await OpenAsync(engine);
        var (reed, bench, scene) = (batch.Reeds[0].Id, new BenchBook(db, TimeProvider.System), new RecordingScene(db));
        var id = await ReadAsync(db, await scene.SendAsync(Teacher, reed, RecordingKind.TestSound, Sound), 508);
        async Task<(double? Cents, bool IsLow)> ReasonedAsync()
        {
            var view = (await bench.FindAsync(Teacher, reed, Ct))!;
            var now = ReedReading.Of(view.Catalogue, view.Log, view.Reed, view.Batch);
            return (now.Crow?.Middle.Value, now.Causes.Counted.Any(one => one.Sign.Value == "crow-low" && one is { Present: true, By: Teller.Bench }));
        }

        Assert.Equal((null, false), await ReasonedAsync());
        await new MeasuredTests(db, TimeProvider.System).RecordAsync(id, Ct);
        Assert.Equal((-59, true), await ReasonedAsync());
        Done(await scene.Recordings.RemoveAsync(Teacher, id, Operation(), Ct));
        Assert.Equal((null, false), await ReasonedAsync());
    }

    // As the worker: what clashes is tried again.
    private static async Task UntilSettledAsync(MeasuredTests tests, RecordingId id)
    {
        for (var tries = 0; ; tries++)
        {
            try
            {
                await tests.RecordAsync(id, Ct);
                return;
            }
            catch (InvalidOperationException) when (tries < 10)
            {
                // The log was changed at the same moment.
            }
        }
    }

    private static SoundReadingBook Book(TestDatabase db) => new(db, TimeProvider.System);

    private static SoundRegister Register(TestDatabase db, TimeProvider? time = null) =>
        new(db, db.Services.GetRequiredService<MediaFolder>(), time ?? TimeProvider.System);

    private static async Task<RecordingId> ReadAsync(TestDatabase db, RecordingView kept, double hertz = 500)
    {
        Assert.True(await Register(db).KeepAsync(kept.Id, MadeReadings.Crow(hertz), Ct));
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
