using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.Tests.Recordings;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Guardians.GuardianScene;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Guardians;

/// <summary>Consent that is taken back between what a Book read and what it saves: OWASP ASVS 5.0, 8.3.2 and 2.3.3.</summary>
public sealed class WithdrawalMomentTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public Task It_waits_for_an_entry_at_the_bench(ClinicEngine engine) => WaitsAsync(engine, async (hand, scene, batch) =>
    {
        Done(await new BenchBook(hand, TimeProvider.System).RecordAsync(Teacher, batch.Reeds[0].Id, Done(Note.Of("thin")), Operation(), Ct));
        Assert.NotEmpty(Refused(await AfterAsync(scene, batch, () => scene.Book<BenchBook>().RecordAsync(Teacher, batch.Reeds[0].Id, Done(Note.Of("more")), Operation(), Ct))));
    });

    [Theory, OnBothEngines]
    public Task It_waits_for_what_is_half_typed_at_the_bench(ClinicEngine engine) => WaitsAsync(engine, async (hand, scene, batch) =>
    {
        Assert.True(await new BenchDraftBook(hand, TimeProvider.System).KeepAsync(Teacher, batch.Reeds[0].Id, "half typed", Ct));
        Assert.False(await AfterAsync(scene, batch, () => scene.Book<BenchDraftBook>().KeepAsync(Teacher, batch.Reeds[0].Id, "half typed more", Ct)));
    });

    [Theory, OnBothEngines]
    public Task It_waits_for_the_common_thread(ClinicEngine engine) => WaitsAsync(engine, async (hand, scene, batch) =>
    {
        var chosen = Done(await new CommonThreadBook(hand, TimeProvider.System).ChooseAsync(Teacher, batch.Code, new ThreadChoice(LessonWords: "Corners."), Guid.Empty, Operation(), Ct));
        Assert.NotEmpty(Refused(await AfterAsync(scene, batch, () => scene.Book<CommonThreadBook>().ChooseAsync(Teacher, batch.Code, new ThreadChoice(LessonWords: "Tip."), chosen.Version, Operation(), Ct))));
    });

    [Theory, OnBothEngines]
    public Task It_waits_for_what_was_seen_of_a_parcel(ClinicEngine engine) => WaitsAsync(engine, async (hand, scene, batch) =>
    {
        var seen = new SeenParcel(new Dictionary<ReedId, ReedArrival>(), "wet");
        var view = Done(await new ArrivalBook(hand, TimeProvider.System, scene.Database.Outbox).RecordAsync(Teacher, batch.Id, seen, batch.Version, Operation(), Ct));
        Assert.NotEmpty(Refused(await AfterAsync(scene, batch, () => scene.Book<ArrivalBook>().RecordAsync(Teacher, batch.Id, seen, view.Batch.Version, Operation(), Ct))));
    });

    [Theory, OnBothEngines]
    public Task It_waits_for_a_letter(ClinicEngine engine) => WaitsAsync(engine, async (hand, scene, batch) =>
    {
        var db = scene.Database;
        Done(await new LetterBook(hand, TimeProvider.System, db.Outbox).AnswerAsync(Teacher, batch.Code, batch.Questions[0].Id, "Yes.", Operation(), Ct));
        Assert.NotEmpty(Refused(await AfterAsync(scene, batch, () => scene.Book<LetterBook>().AnswerAsync(Teacher, batch.Code, batch.Questions[0].Id, "No.", Operation(), Ct))));
    });

    [Theory, OnBothEngines]
    public Task It_waits_for_a_sound_that_is_begun(ClinicEngine engine) => WaitsAsync(engine, async (hand, scene, batch) =>
    {
        var wish = new RecordingWish(batch.Reeds[0].Id, RecordingKind.ArrivalSound, 100);
        Done(await new RecordingScene(scene.Database, databases: hand).Uploads.StartAsync(Teacher, wish, Operation(), Ct));
        Assert.NotEmpty(Refused(await AfterAsync(scene, batch, () => new RecordingScene(scene.Database).Uploads.StartAsync(Teacher, wish, Operation(), Ct))));
    });

    [Theory, OnBothEngines]
    public Task It_waits_for_a_sound_that_is_finished(ClinicEngine engine) => WaitsAsync(engine, async (hand, scene, batch) =>
    {
        var recordings = new RecordingScene(scene.Database);
        var (first, second) = (await SentAsync(), await SentAsync());
        Done(await new RecordingScene(scene.Database, databases: hand).Uploads.FinishAsync(Teacher, first, null, Operation(), Ct));
        Assert.IsNotType<Outcome<RecordingView>.Done>(await AfterAsync(scene, batch, () => recordings.Uploads.FinishAsync(Teacher, second, null, Operation(), Ct)));

        Task<RecordingId> SentAsync() => recordings.PutAsync(Teacher, batch.Reeds[0].Id, RecordingKind.ArrivalSound, SoundFiles.Mp3(4));
    });

    [Theory, OnBothEngines]
    public Task It_waits_for_the_words_of_a_sound(ClinicEngine engine) => WaitsAsync(engine, async (hand, scene, batch) =>
    {
        var recordings = new RecordingScene(scene.Database);
        var kept = await recordings.SendAsync(Teacher, batch.Reeds[0].Id, RecordingKind.ArrivalSound, SoundFiles.Mp3(4));
        Done(await new RecordingScene(scene.Database, databases: hand).Recordings.DescribeAsync(Teacher, kept.Id, "thin", Operation(), Ct));
        Assert.NotEmpty(Refused(await AfterAsync(scene, batch, () => recordings.Recordings.DescribeAsync(Teacher, kept.Id, "thinner", Operation(), Ct))));
    });

    [Theory, OnBothEngines]
    public async Task It_waits_for_an_intake_that_is_being_written(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var guardian = await scene.AgreedAsync(student);
        var draft = await scene.Intake.DraftAsync(student, Form());
        var hand = new LateGuardian(scene.Database, student.Student!.Value);

        var saved = Done(await new IntakeBook(hand, TimeProvider.System).SaveAsync(student, draft.Id, Form(2), draft.Version, Operation(), Ct));

        Assert.False(hand.GotThrough);
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));
        Assert.NotEmpty(Refused(await scene.Book<IntakeBook>().SaveAsync(student, draft.Id, Form(3), saved.Version, Operation(), Ct)));
    }

    [Theory, OnBothEngines]
    public async Task It_waits_for_an_intake_that_is_begun(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var guardian = await scene.AgreedAsync(student);
        var hand = new LateGuardian(scene.Database, student.Student!.Value);

        Done(await new IntakeBook(hand, TimeProvider.System).StartAsync(student, Operation(), Ct));

        Assert.False(hand.GotThrough);
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));
        Assert.NotEmpty(Refused(await scene.Book<IntakeBook>().StartAsync(student, Operation(), Ct)));
    }

    // The Book saves while the guardian's answer waits; once it is through, nothing is written any more.
    private async Task WaitsAsync(ClinicEngine engine, Func<LateGuardian, GuardianScene, Batch, Task> work)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        await scene.AgreedAsync(student);
        var batch = (await scene.Intake.BatchAsync(student)).Batch;
        var hand = new LateGuardian(scene.Database, student.Student!.Value);
        await work(hand, scene, batch);
        Assert.False(hand.GotThrough);
    }

    // What a Book says after the guardian took consent back.
    private static async Task<T> AfterAsync<T>(GuardianScene scene, Batch batch, Func<Task<T>> then)
    {
        await using var context = scene.Database.CreateDbContext();
        var account = (await context.Set<Guardianship>().SingleAsync(row => row.Student == batch.Student, Ct)).Account!.Value;
        var guardian = new Actor(account, null, false, false) { IsFresh = true };
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, batch.Student, Operation(), Ct));
        return await then();
    }

    /// <summary>A guardian whose answer comes when a Book is about to save, and who doesn't wait long.</summary>
    private sealed class LateGuardian(TestDatabase db, StudentId ward) : IDbContextFactory<ClinicDb>
    {
        /// <summary>Null while they haven't tried; true when the answer was saved in between.</summary>
        public bool? GotThrough { get; private set; }

        public ClinicDb CreateDbContext()
        {
            var context = db.CreateDbContext();
            context.SavingChanges += (_, _) => GotThrough ??= Try();
            return context;
        }

        private bool Try()
        {
            using var other = db.CreateDbContext();
            other.Database.OpenConnection();
            other.Database.SetCommandTimeout(1);
            other.Database.ExecuteSqlRaw(db.Engine == ClinicEngine.Sqlite ? "PRAGMA busy_timeout=300" : "SET lock_timeout='300ms'");
            try
            {
                return other.Set<Student>().Where(student => student.Id == ward)
                    .ExecuteUpdate(student => student.SetProperty(row => row.Consent, Consent.Withdrawn)) == 1;
            }
            catch (Exception late) when (late is DbException || late.InnerException is DbException)
            {
                return false; // it would have waited
            }
        }
    }
}
