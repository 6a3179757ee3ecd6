using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Intake.IntakeScene;
using Studio = ReedClinic.Data.Tests.Bench.Studio;

namespace ReedClinic.Data.Tests.Engine;

/// <summary>What an operation id answers for, and what it doesn't.</summary>
public sealed class OperationTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task An_id_that_was_used_for_one_thing_is_never_taken_for_another_that_was_done(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var batch = (await scene.BatchAsync(student)).Batch;
        var draft = Done(await scene.Intake.StartAsync(student, Operation(), Ct));
        var me = (await scene.Students.MeAsync(student, Ct))!;
        var used = Operation();
        Done(await scene.Arrival.AddExtraAsync(Teacher, batch.Id, "no tag, blue thread", used, Ct));

        var parcel = new SeenParcel(new Dictionary<ReedId, ReedArrival>(), "wet");
        var recorded = await scene.Arrival.RecordAsync(Teacher, batch.Id, parcel, (await Now()).Version, used, Ct);
        var moved = await scene.Desk.MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, used, Ct);
        var saved = await scene.Intake.SaveAsync(student, draft.Id, Form(), draft.Version, used, Ct);
        var described = await scene.Students.DescribeAsync(student, new StudentDetails(null, null, null, "Malta"), me.Version, used, Ct);

        Assert.IsType<Outcome<BatchView>.Conflict>(recorded);
        Assert.IsType<Outcome<BatchView>.Conflict>(moved);
        Assert.IsType<Outcome<DraftView>.Conflict>(saved);
        Assert.IsType<Outcome<Student>.Conflict>(described);
        Assert.Equal((null, Stage.Here), ((await Now()).ArrivalNote, (await Now()).Stage));

        async Task<Batch> Now() => (await scene.Desk.BatchAsync(Teacher, batch.Code, Ct))!.Batch;
    }

    [Theory, OnBothEngines]
    public async Task An_id_of_the_same_kind_on_another_row_saves_nothing_there_and_says_so(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var first = (await scene.BatchAsync(student)).Batch;
        var second = (await scene.BatchAsync(student)).Batch;
        var used = Operation();
        Done(await scene.Arrival.AddExtraAsync(Teacher, first.Id, "blue thread", used, Ct));

        var other = await scene.Arrival.AddExtraAsync(Teacher, second.Id, "red thread", used, Ct);

        Assert.Equal(3, Assert.IsType<Outcome<BatchView>.Conflict>(other).Theirs.Batch.Reeds.Count);
    }

    [Theory, OnBothEngines]
    public async Task Forms_that_bring_no_id_are_each_done(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var (ines, tove) = (await scene.StudentAsync(), await scene.StudentAsync("Tove Lind"));

        var drafts = new[] { Done(await scene.Intake.StartAsync(ines, default, Ct)), Done(await scene.Intake.StartAsync(tove, default, Ct)) };
        var filled = Done(await scene.Intake.SaveAsync(ines, drafts[0].Id, Form(), drafts[0].Version, default, Ct));
        var again = Done(await scene.Intake.SaveAsync(ines, filled.Id, Form(2), filled.Version, default, Ct));
        Done(await scene.Intake.SaveAsync(tove, drafts[1].Id, Form(), drafts[1].Version, default, Ct));
        var sent = Done(await scene.Intake.SubmitAsync(ines, drafts[0].Id, default, Ct)).Batch;
        Done(await scene.Intake.SubmitAsync(tove, drafts[1].Id, default, Ct));
        Done(await scene.Arrival.AddExtraAsync(Teacher, sent.Id, "blue thread", default, Ct));
        var extras = Done(await scene.Arrival.AddExtraAsync(Teacher, sent.Id, "red thread", default, Ct));

        Assert.NotEqual(drafts[0].Id, drafts[1].Id);
        Assert.Equal(2, again.Form.Reeds.Count);
        Assert.Equal(4, extras.Batch.Reeds.Count);
    }

    [Theory, OnBothEngines]
    public async Task An_entrys_id_in_another_reeds_log_is_refused_and_none_is_always_new(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var studio = new Studio(db);
        var book = new BenchBook(db, TimeProvider.System);
        var (one, other) = ((await studio.ReedAsync()).Id, (await studio.ReedAsync()).Id);
        var used = Operation();
        Done(await book.RecordAsync(Studio.Ada, one, Studio.Note("first"), used, Ct));

        var refused = await book.RecordAsync(Studio.Ada, other, Studio.Note("second"), used, Ct);
        Done(await book.RecordAsync(Studio.Ada, other, Studio.Note("third"), default, Ct));
        Done(await book.RecordAsync(Studio.Ada, one, Studio.Note("fourth"), default, Ct));

        Assert.Contains("Nothing was saved", Assert.Single(Assert.IsType<Outcome<BenchFact>.Refused>(refused).Problems).Message, StringComparison.Ordinal);
        Assert.Equal(2, (await book.FindAsync(Studio.Ada, one, Ct))!.Log.History.Count);
        Assert.Single((await book.FindAsync(Studio.Ada, other, Ct))!.Log.History);
    }

    [Theory, OnBothEngines]
    public async Task A_draft_in_any_script_takes_as_much_text_as_one_in_English(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var form = Form();
        form.Questions = new string('Ω', 100_000);

        var kept = await scene.DraftAsync(await scene.StudentAsync(), form);

        Assert.Equal(form.Questions, kept.Form.Questions);
    }
}
