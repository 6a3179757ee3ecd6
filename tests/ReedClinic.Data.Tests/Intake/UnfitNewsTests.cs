using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Intake;

/// <summary>Who is told of reeds that can't be played as they came, and how often.</summary>
public sealed class UnfitNewsTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Mould_is_told_to_the_student_once_and_a_correction_tells_only_what_is_new(ClinicEngine engine)
    {
        var (scene, student) = await GrownAsync(engine);
        var batch = (await scene.Intake.BatchAsync(student)).Batch;
        var operation = Operation();

        batch = await NoteAsync(scene, batch, operation, Fitness.Fit, Fitness.Mould, Fitness.DryFirst);
        batch = await NoteAsync(scene, batch, operation, Fitness.Fit, Fitness.Mould, Fitness.DryFirst); // the same form, once more
        var mail = Assert.Single(await ToldAsync(scene, batch));
        Assert.Equal(($"/batches/{batch.Code}", null, (Guid?)batch.Student.Value), (mail.Path, mail.Ward, mail.About));
        Assert.Equal("2|3|", Of(mail));

        batch = await NoteAsync(scene, batch, Operation(), Fitness.Fit, Fitness.Fit, Fitness.Fit); // wiped, looked at again, dried
        batch = await NoteAsync(scene, batch, Operation(), Fitness.Fit, Fitness.Mould, Fitness.DryFirst); // and again as it was
        Assert.Single(await ToldAsync(scene, batch));

        batch = await NoteAsync(scene, batch, Operation(), Fitness.Mould, Fitness.Mould, Fitness.DryFirst);
        Assert.Equal(["1||", "2|3|"], (await ToldAsync(scene, batch)).Select(Of).Order());
    }

    [Theory, OnBothEngines]
    public async Task Mould_that_is_taken_back_before_the_mail_went_is_not_told_and_what_stands_is(ClinicEngine engine)
    {
        var (scene, student) = await GrownAsync(engine);
        var batch = (await scene.Intake.BatchAsync(student)).Batch;

        batch = await NoteAsync(scene, batch, Operation(), Fitness.Mould, Fitness.Mould, Fitness.Fit);
        batch = await NoteAsync(scene, batch, Operation(), Fitness.Mould, Fitness.DryFirst, Fitness.Fit);
        Assert.Equal("1|2|", Of(Assert.Single(await ToldAsync(scene, batch))));

        batch = await NoteAsync(scene, batch, Operation(), Fitness.Fit, Fitness.Fit, Fitness.Fit);
        Assert.Empty(await ToldAsync(scene, batch));
    }

    [Theory, OnBothEngines]
    public async Task Mould_that_was_told_by_mistake_is_taken_back_by_a_mail_and_told_once_more_where_it_is_noted_again(ClinicEngine engine)
    {
        var (scene, student) = await GrownAsync(engine);
        var batch = (await scene.Intake.BatchAsync(student)).Batch;
        batch = await NoteAsync(scene, batch, Operation(), Fitness.Mould, Fitness.Mould, Fitness.DryFirst);
        await SendAsync(scene, MailWay.Posted);

        batch = await NoteAsync(scene, batch, Operation(), Fitness.Mould, Fitness.Fit, Fitness.Fit); // a damp one that has dried is no mistake
        Assert.Equal("||2", Of(Assert.Single(await ToldAsync(scene, batch))));
        batch = await NoteAsync(scene, batch, Operation(), Fitness.Mould, Fitness.Mould, Fitness.DryFirst);
        Assert.Empty(await ToldAsync(scene, batch)); // that it was a mistake hasn't gone, and what has gone holds
        batch = await NoteAsync(scene, batch, Operation(), Fitness.Fit, Fitness.DryFirst, Fitness.Fit);
        Assert.Equal("|2|1, 2", Of(Assert.Single(await ToldAsync(scene, batch))));

        await SendAsync(scene, MailWay.Posted);
        batch = await NoteAsync(scene, batch, Operation(), Fitness.Fit, Fitness.Mould, Fitness.Fit);
        Assert.Equal("2||", Of(Assert.Single(await ToldAsync(scene, batch))));
    }

    [Theory, OnBothEngines]
    public async Task A_mail_that_was_tried_may_have_been_read_so_that_what_is_wrong_in_it_is_taken_back(ClinicEngine engine)
    {
        var (scene, student) = await GrownAsync(engine);
        var batch = (await scene.Intake.BatchAsync(student)).Batch;
        batch = await NoteAsync(scene, batch, Operation(), Fitness.Mould, Fitness.Mould, Fitness.Fit);
        await SendAsync(scene, way: null);

        batch = await NoteAsync(scene, batch, Operation(), Fitness.Mould, Fitness.Fit, Fitness.Fit);

        Assert.Equal("1||2", Of(Assert.Single(await ToldAsync(scene, batch))));
    }

    [Theory, OnBothEngines]
    public async Task A_form_that_is_not_saved_takes_no_mail_back(ClinicEngine engine)
    {
        var (scene, student) = await GrownAsync(engine);
        var batch = (await scene.Intake.BatchAsync(student)).Batch;
        var opened = batch;
        batch = await NoteAsync(scene, batch, Operation(), Fitness.Mould, Fitness.Fit, Fitness.Fit);

        Assert.IsType<Outcome<BatchView>.Conflict>(await scene.Intake.Arrival.RecordAsync(
            Teacher, opened.Id, Parcel(opened, Fitness.Fit, Fitness.Fit, Fitness.Fit), opened.Version, Operation(), Ct));

        Assert.Equal("1||", Of(Assert.Single(await ToldAsync(scene, batch))));
    }

    [Theory, OnBothEngines]
    public async Task Nothing_is_told_of_fit_reeds_nor_of_what_was_not_saved(ClinicEngine engine)
    {
        var (scene, student) = await GrownAsync(engine);
        var batch = (await scene.Intake.BatchAsync(student)).Batch;
        var opened = batch;

        batch = await NoteAsync(scene, batch, Operation(), Fitness.Fit, Fitness.Fit, Fitness.Fit);
        Assert.Empty(await ToldAsync(scene, batch));

        // Somebody else saved since this form was opened, and what it says is rolled back.
        Assert.IsType<Outcome<BatchView>.Conflict>(await scene.Intake.Arrival.RecordAsync(
            Teacher, opened.Id, Parcel(opened, Fitness.Mould, Fitness.Mould, Fitness.Mould), opened.Version, Operation(), Ct));
        Assert.IsType<Outcome<BatchView>.Refused>(await scene.Intake.Arrival.RecordAsync(
            Teacher, batch.Id, Parcel(batch, Fitness.Mould, null, Fitness.Fit), batch.Version, Operation(), Ct));
        Assert.Empty(await ToldAsync(scene, batch));
    }

    [Theory, OnBothEngines]
    public async Task The_guardian_of_a_younger_student_is_told_of_whose_reeds_they_are(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var guardian = await scene.AgreedAsync(student);
        var batch = (await scene.Intake.BatchAsync(student)).Batch;

        batch = await NoteAsync(scene, batch, Operation(), Fitness.Fit, Fitness.Mould, Fitness.DryFirst);

        var mail = Assert.Single(await ToldAsync(scene, batch));
        Assert.Equal(("Rosa Kestrel", "Pia"), (mail.Name, mail.Ward));
        Assert.StartsWith("guardian-", mail.To, StringComparison.Ordinal);
        var ward = Assert.Single(await scene.Book<WardBook>().MineAsync(guardian, Ct));
        var unfit = Assert.Single(ward.Batches).Unfit;
        var mine = Assert.Single(await scene.Intake.Desk.MineAsync(student, Ct)).Unfit;
        Assert.Equal("2|3", Of(unfit.Mouldy, unfit.Damp));
        Assert.Equal("2|3", Of(mine.Mouldy, mine.Damp));
    }

    private static string Of(Mail mail) => $"{Of(mail.Mouldy, mail.Damp)}|{string.Join(", ", mail.NoMould)}";

    private static string Of(IReadOnlyList<int> mouldy, IReadOnlyList<int> damp) => $"{string.Join(", ", mouldy)}|{string.Join(", ", damp)}";

    private async Task<(GuardianScene Scene, Domain.People.Actor Student)> GrownAsync(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        return (scene, await scene.StudentAsync("Runa Holt", AgeAnswer.OldEnough));
    }

    private static async Task<Batch> NoteAsync(GuardianScene scene, Batch batch, OperationId operation, params Fitness?[] seen) =>
        Done(await scene.Intake.Arrival.RecordAsync(Teacher, batch.Id, Parcel(batch, seen), batch.Version, operation, Ct)).Batch;

    private static SeenParcel Parcel(Batch batch, params Fitness?[] seen) => new(
        batch.Reeds.Zip(seen).ToDictionary(pair => pair.First.Id, pair => new ReedArrival(Presence.Here, Fitness: pair.Second)), null);

    // All that waits goes to the mail server, or is tried in vain where there is no way.
    private static async Task SendAsync(GuardianScene scene, MailWay? way)
    {
        var board = scene.Book<JobBoard>();
        while (await board.ClaimAsync(JobKind.Mail, Ct) is { } job)
        {
            Assert.True(way is null ? await board.FailedAsync(job, "The mail server took too long.", forEver: false, Ct) : await board.DoneAsync(job, Ct, way));
        }
    }

    // What waits: nothing has gone but by SendAsync.
    private static async Task<List<Mail>> ToldAsync(GuardianScene scene, Batch batch)
    {
        await using var db = scene.Database.CreateDbContext();
        var jobs = await db.Set<Job>().Where(job => job.About == batch.Student.Value && job.Kind == JobKind.Mail && job.DoneAt == null).OrderBy(job => job.MadeAt).ThenBy(job => job.Id).ToListAsync(Ct);
        return [.. jobs.Select(job => scene.Database.Outbox.Open(job)!).Where(mail => mail.Kind == MailKind.Unfit)];
    }
}
