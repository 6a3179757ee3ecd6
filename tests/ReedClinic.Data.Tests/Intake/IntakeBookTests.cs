using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Intake;

public sealed class IntakeBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_closed_tab_loses_nothing(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var form = Form(2);
        form.Reeds[1].HoursPlayed = "rather many";
        form.Reeds[1].Bothers = "das hohe Fis  ♭ 王 \" <b>";

        var draft = await scene.DraftAsync(student, form);
        var read = await scene.Intake.ReadAsync(student, draft.Id, Ct);

        Assert.Equal("rather many", read!.Form.Reeds[1].HoursPlayed);
        Assert.Equal("das hohe Fis  ♭ 王 \" <b>", read.Form.Reeds[1].Bothers);
        Assert.Equal(draft.Id, Assert.Single(await scene.Intake.OpenAsync(student, Ct)).Id);
    }

    [Theory, OnBothEngines]
    public async Task What_was_begun_is_thrown_away_by_its_student_alone_as_it_stands_and_once(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var (student, other) = (await scene.StudentAsync(), await scene.StudentAsync());
        var draft = await scene.DraftAsync(student, Form(2));
        var operation = Operation();

        Assert.IsType<Outcome<DraftId>.NotFound>(await scene.Intake.DropAsync(other, draft.Id, draft.Version, Operation(), Ct));
        Assert.IsType<Outcome<DraftId>.Conflict>(await scene.Intake.DropAsync(student, draft.Id, NewId(), Operation(), Ct));
        Assert.Single(await scene.Intake.OpenAsync(student, Ct));
        Done(await scene.Intake.DropAsync(student, draft.Id, draft.Version, operation, Ct));
        Done(await scene.Intake.DropAsync(student, draft.Id, draft.Version, operation, Ct));

        Assert.Empty(await scene.Intake.OpenAsync(student, Ct));
        Assert.IsType<Outcome<DraftId>.NotFound>(await scene.Intake.DropAsync(student, draft.Id, draft.Version, Operation(), Ct));
        await scene.BatchAsync(student);
        Assert.Single(await scene.Desk.MineAsync(student, Ct)); // what was sent isn't thrown away
    }

    [Theory, OnBothEngines]
    public async Task An_intake_becomes_a_batch_with_everything_that_was_said(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var sent = await scene.BatchAsync(student, reeds: 12);

        var read = await scene.Desk.BatchAsync(student, sent.Batch.Code, Ct);

        Assert.Equal(12, read!.Batch.Reeds.Count);
        Assert.Equal(Enumerable.Range(1, 12), read.Batch.Reeds.Select(reed => reed.Number));
        Assert.Equal(Stage.OnItsWay, read.Batch.Stage);
        Assert.Equal(442, read.Batch.TunesTo!.Value.A4.Value);
        Assert.Equal(2, read.Batch.Reeds[4].Scales.Response!.Value.Value);
        Assert.Null(read.Batch.Reeds[4].Scales.Sound);
        Assert.Equal(90, read.Batch.Reeds[4].MinutesPlayed);
        Assert.Equal("Which one should I play first?", Assert.Single(read.Batch.Questions).Text);
        Assert.Equal("Ines Kestrel", read.Student.Name);
        Assert.Equal("Portugal", read.Student.Country);
        Assert.Empty(await scene.Intake.OpenAsync(student, Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_next_intake_begins_with_what_is_known_of_the_student(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        await scene.BatchAsync(student);

        var next = Done(await scene.Intake.StartAsync(student, Operation(), Ct));

        Assert.Equal("442", next.Form.TunesTo);
        Assert.Equal("Portugal", next.Form.Country);
        Assert.Single(next.Form.Reeds);
    }

    [Theory, OnBothEngines]
    public async Task Sent_twenty_times_at_once_it_is_one_batch(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var scene = new IntakeScene(db);
        var student = await scene.StudentAsync();
        var draft = await scene.DraftAsync(student, Form());
        var operation = Operation();

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 20)
            .Select(_ => Task.Run(() => scene.Intake.SubmitAsync(student, draft.Id, operation, Ct), Ct)));

        Assert.Single(outcomes.Select(outcome => Done(outcome).Batch.Id).Distinct());
        await using var context = db.CreateDbContext();
        Assert.Equal(1, await context.Set<Batch>().CountAsync(batch => batch.Student == student.Student, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Sent_again_from_another_tab_it_is_still_one_batch(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var draft = await scene.DraftAsync(student, Form());

        var first = Done(await scene.Intake.SubmitAsync(student, draft.Id, Operation(), Ct));
        var second = Done(await scene.Intake.SubmitAsync(student, draft.Id, Operation(), Ct));

        Assert.Equal(first.Batch.Id, second.Batch.Id);
        var late = await scene.Intake.SaveAsync(student, draft.Id, Form(), draft.Version, Operation(), Ct);
        Assert.Equal(first.Batch.Code, Assert.IsType<Outcome<DraftView>.Conflict>(late).Theirs.Became);
    }

    [Theory, OnBothEngines]
    public async Task Starting_twice_with_one_operation_is_one_draft(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var operation = Operation();

        var drafts = await Task.WhenAll(Enumerable.Range(0, 5)
            .Select(_ => Task.Run(() => scene.Intake.StartAsync(student, operation, Ct), Ct)));

        Assert.Single(drafts.Select(draft => Done(draft).Id).Distinct());
    }

    [Theory, OnBothEngines]
    public async Task Of_two_tabs_the_second_to_save_is_shown_what_stands(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var draft = Done(await scene.Intake.StartAsync(student, Operation(), Ct));
        var mine = Form(1);
        mine.Reeds[0].Bothers = "mine";
        var operation = Operation();
        var saved = Done(await scene.Intake.SaveAsync(student, draft.Id, mine, draft.Version, operation, Ct));

        var theirs = await scene.Intake.SaveAsync(student, draft.Id, Form(2), draft.Version, Operation(), Ct);
        var repeated = Done(await scene.Intake.SaveAsync(student, draft.Id, mine, draft.Version, operation, Ct));

        Assert.Equal("mine", Assert.IsType<Outcome<DraftView>.Conflict>(theirs).Theirs.Form.Reeds[0].Bothers);
        Assert.Equal(saved.Version, repeated.Version);
    }

    [Theory, OnBothEngines]
    public async Task What_cannot_be_sent_stays_a_draft_and_says_why(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var draft = await scene.DraftAsync(student, Form(13));

        var refused = Assert.IsType<Outcome<BatchView>.Refused>(
            await scene.Intake.SubmitAsync(student, draft.Id, Operation(), Ct));

        Assert.Equal("Reeds", Assert.Single(refused.Problems).Field);
        Assert.Equal(13, (await scene.Intake.ReadAsync(student, draft.Id, Ct))!.Form.Reeds.Count);
    }

    [Theory, OnBothEngines]
    public async Task Nobody_else_sees_a_draft_or_a_batch(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var owner = await scene.StudentAsync();
        var other = await scene.StudentAsync("Tove Lind");
        var nobody = new Actor(new AccountId(NewId()), null, false, false);
        var draft = await scene.DraftAsync(owner, Form());
        var batch = await scene.BatchAsync(owner);

        foreach (var stranger in new[] { other, nobody })
        {
            Assert.Null(await scene.Intake.ReadAsync(stranger, draft.Id, Ct));
            Assert.IsType<Outcome<DraftView>.NotFound>(
                await scene.Intake.SaveAsync(stranger, draft.Id, Form(), draft.Version, Operation(), Ct));
            Assert.IsType<Outcome<BatchView>.NotFound>(await scene.Intake.SubmitAsync(stranger, draft.Id, Operation(), Ct));
            Assert.Null(await scene.Desk.BatchAsync(stranger, batch.Batch.Code, Ct));
            Assert.Null(await scene.Desk.BatchOfReedAsync(stranger, batch.Batch.Reeds[0].Id, Ct));
            Assert.Empty(await scene.Desk.MineAsync(stranger, Ct));
            Assert.Empty(await scene.Desk.AllAsync(stranger, Ct));
        }

        Assert.IsType<Outcome<DraftView>.NotFound>(await scene.Intake.StartAsync(nobody, Operation(), Ct));
        Assert.Null(await scene.Intake.ReadAsync(Teacher, draft.Id, Ct));
        Assert.NotNull(await scene.Desk.BatchAsync(Teacher, batch.Batch.Code, Ct));
        Assert.NotNull(await scene.Desk.BatchOfReedAsync(Teacher, batch.Batch.Reeds[0].Id, Ct));
    }
}
