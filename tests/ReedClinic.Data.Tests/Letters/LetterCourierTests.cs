using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

/// <summary>Whom the mail about a letter brings a private link: who has no other way in, at an address that they have shown to be theirs.</summary>
public sealed class LetterCourierTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Who_began_by_a_link_gets_one_that_opens_the_letter_and_is_kept_in_no_job(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var batch = await scene.SentAsync(await scene.BegunAsync());
        var (job, mail) = await scene.NewsAsync(batch);

        var parcel = await scene.Courier.PackAsync(job, mail, Ct);

        Assert.Equal(batch.Code.ToString(), (await scene.Links.ReadAsync(parcel.Secret, Ct))!.Sent.Letter.Code);
        Assert.Equal(scene.Clock.GetUtcNow().AddDays(30), parcel.ExpiresAt!.Value, TimeSpan.FromMilliseconds(1));
        Assert.DoesNotContain(parcel.Secret!, parcel.ToString(), StringComparison.Ordinal);
        var link = Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links);
        Assert.Null(link.MadeBy);
        var (after, same) = await scene.NewsAsync(batch);
        Assert.Equal(job.Payload, after.Payload);
        Assert.Null(same.Secret);
        await using var db = scene.Database.CreateDbContext();
        Assert.Empty(await EveryColumn.HoldingAsync(db, parcel.Secret!, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_mail_that_is_tried_again_brings_another_secret_and_the_former_opens_nothing(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var batch = await scene.SentAsync(await scene.BegunAsync());
        var (job, mail) = await scene.NewsAsync(batch);

        var first = await scene.Courier.PackAsync(job, mail, Ct);
        var second = await scene.Courier.PackAsync(job, mail, Ct);

        Assert.Null(await scene.Links.ReadAsync(first.Secret, Ct));
        Assert.NotNull(await scene.Links.ReadAsync(second.Secret, Ct));
        var link = Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links);

        Done(await scene.Links.CloseAsync(Teacher, batch.Code, link.Id, Ct));
        Assert.Null((await scene.Courier.PackAsync(job, mail, Ct)).Secret); // what was closed stays closed
        Assert.Null(await scene.Links.ReadAsync(second.Secret, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Who_can_sign_in_gets_none_nor_does_an_address_that_nobody_has_shown_to_be_theirs(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var young = await scene.People.StudentAsync();
        await scene.People.AgreedAsync(young);

        await NoneAsync(scene, await scene.GrownAsync());
        await NoneAsync(scene, young);
        await NoneAsync(scene, await scene.BegunAsync(byHand: true));
    }

    [Theory, OnBothEngines]
    public async Task A_student_without_an_account_gets_none_because_nobody_has_opened_a_link_at_their_address(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var begun = await scene.BegunAsync();
        var batch = await scene.SentAsync(begun);
        var (job, mail) = await scene.NewsAsync(batch);
        await scene.ChangeAsync(db => db.Set<Student>().Where(person => person.Id == begun.Student)
            .ExecuteUpdateAsync(person => person.SetProperty(row => row.Account, (AccountId?)null), Ct));

        Assert.Equal(LetterParcel.Empty, await scene.Courier.PackAsync(job, mail, Ct));
    }

    [Theory, OnBothEngines]
    public async Task What_changed_while_the_mail_waited_counts(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var begun = await scene.BegunAsync();
        var batch = await scene.SentAsync(begun);
        var (job, mail) = await scene.NewsAsync(batch);
        var theirs = await scene.SentAsync(await scene.BegunAsync());
        Assert.Null((await scene.Courier.PackAsync(job, mail with { Path = $"/letters/{theirs.Code}" }, Ct)).Secret);
        Assert.Null((await scene.Courier.PackAsync(job, mail with { Path = $"/batches/{batch.Code}" }, Ct)).Secret);
        Assert.NotNull((await scene.Courier.PackAsync(job, mail, Ct)).Secret);

        await scene.ChangeAsync(async db => (await db.Set<Student>().SingleAsync(person => person.Id == begun.Student, Ct)).WriteTo("elsewhere@harbour.example"));
        Assert.Null((await scene.Courier.PackAsync(job, mail, Ct)).Secret);
        await scene.ChangeAsync(async db => (await db.Set<Student>().SingleAsync(person => person.Id == begun.Student, Ct)).WriteTo(mail.To));
        Assert.NotNull((await scene.Courier.PackAsync(job, mail, Ct)).Secret);

        Done(await scene.People.Book<BeginBook>().ClaimAsync(begun with { IsFresh = true }, "nine gulls over the pier", Operation(), Ct));
        Assert.Null((await scene.Courier.PackAsync(job, mail, Ct)).Secret);
    }

    private static async Task NoneAsync(SentLetterScene scene, Actor student)
    {
        var batch = await scene.SentAsync(student);
        var (job, mail) = await scene.NewsAsync(batch);
        Assert.Equal(LetterParcel.Empty, await scene.Courier.PackAsync(job, mail, Ct));
        await using var db = scene.Database.CreateDbContext();
        Assert.False(await db.Set<LetterLink>().AnyAsync(link => link.Batch == batch.Id, Ct));
    }
}
