using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Guardians.GuardianScene;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

/// <summary>
/// A private link ends for good with the yes that it was made under: another yes, whoever gives it, doesn't open it again. OWASP
/// ASVS 5.0: 8.3.2, 2.3.3.
/// </summary>
public sealed class LetterLinkEndTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Consent_that_was_taken_back_closes_links_and_given_again_opens_none_of_them(ClinicEngine engine)
    {
        var (scene, student, guardian, batch, made) = await MadeAsync(engine);
        var ward = student.Student!.Value;

        Done(await scene.People.Book<WardBook>().WithdrawAsync(guardian, ward, Operation(), Ct));

        Assert.NotNull(Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links).ClosedAt);
        Done(await scene.People.Book<WardBook>().GiveAgainAsync(guardian, ward, Operation(), Ct));
        Assert.True((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.MayOpen);
        Assert.Null(await scene.Links.ReadAsync(made.Secret, Ct));
        Assert.NotNull(await scene.Links.ReadAsync((await scene.MadeAsync(batch)).Secret, Ct));
        await using var db = scene.Database.CreateDbContext();
        var noted = await db.Set<AuditNote>().SingleAsync(note => note.Event == AuditEvent.LetterLinkClosed && note.What == made.Id.Value, Ct);
        Assert.Equal((guardian.Account.Value, ward.Value), (noted.Who!.Value, noted.Whom!.Value));
    }

    [Theory, OnBothEngines]
    public async Task A_guardian_who_took_consent_back_and_was_erased_reads_nothing_when_another_agrees(ClinicEngine engine)
    {
        var (scene, student, guardian, _, made) = await MadeAsync(engine);
        Done(await scene.People.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));
        Done(await scene.People.Book<PrivacyBook>().EraseAsync(guardian, null, "erase", Operation(), Ct));

        await scene.People.AgreedAsync(student, "Tove Kestrel");

        Assert.Null(await scene.Links.ReadAsync(made.Secret, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Nor_does_one_who_was_erased_again_after_a_back_up_came_back(ClinicEngine engine)
    {
        var (scene, student, guardian, batch, made) = await MadeAsync(engine);
        var erased = ActivatorUtilities.CreateInstance<ErasedPeople>(scene.Database.Services);
        Assert.Equal(1, await erased.EraseAgainAsync([guardian.Account.Value], Ct));
        Assert.NotNull(Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links).ClosedAt);

        await scene.People.AgreedAsync(student, "Tove Kestrel");

        Assert.Null(await scene.Links.ReadAsync(made.Secret, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Nor_does_one_whose_sign_in_was_closed(ClinicEngine engine)
    {
        var (scene, student, guardian, batch, made) = await MadeAsync(engine);
        var owner = Done(await scene.People.Book<AccountRegister>().AdmitAsync(new NewAccount("Mara", NewEmail("mara"), Password), Role.Owner, Operation(), Ct));
        var mara = (await scene.People.Book<AccountBook>().ActorFor(owner, Ct))! with { IsOwner = true, IsFresh = true };
        Done(await scene.People.Book<PeopleBook>().DisableAsync(mara, guardian.Account, Operation(), Ct));
        Assert.NotNull(Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links).ClosedAt);

        await scene.People.AgreedAsync(student, "Tove Kestrel");

        Assert.Null(await scene.Links.ReadAsync(made.Secret, Ct));
    }

    [Theory, OnBothEngines]
    public async Task When_an_age_is_put_right_links_are_closed_whichever_way_and_stay_so(ClinicEngine engine)
    {
        var (scene, student, _, batch, guardians) = await MadeAsync(engine);
        var (ward, teacher) = (student.Student!.Value, Teacher with { IsFresh = true });

        Done(await scene.People.Book<StudentBook>().CorrectAgeAsync(teacher, ward, AgeAnswer.OldEnough, Operation(), Ct));
        Assert.Null(await scene.Links.ReadAsync(guardians.Secret, Ct));
        var own = await scene.MadeAsync(batch);
        Done(await scene.People.Book<StudentBook>().CorrectAgeAsync(teacher, ward, AgeAnswer.OldEnough, Operation(), Ct)); // nothing new
        Assert.NotNull(await scene.Links.ReadAsync(own.Secret, Ct));

        Done(await scene.People.Book<StudentBook>().CorrectAgeAsync(teacher, ward, AgeAnswer.Younger, Operation(), Ct)); // their guardian’s yes counts again

        Assert.True((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.MayOpen);
        Assert.Null(await scene.Links.ReadAsync(own.Secret, Ct));
        Assert.Null(await scene.Links.ReadAsync(guardians.Secret, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_student_who_says_that_they_are_younger_closes_the_links_to_their_letters(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.GrownAsync();
        var batch = await scene.SentAsync(student);
        var made = await scene.MadeAsync(batch);
        Assert.NotNull(await scene.Links.ReadAsync(made.Secret, Ct));
        await using (var db = scene.Database.CreateDbContext())
        {
            // Whose records are older than the question was never asked.
            await db.Set<Student>().Where(row => row.Id == student.Student).ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Age, (AgeAnswer?)null), Ct);
        }

        Assert.NotNull(await scene.Links.ReadAsync(made.Secret, Ct));

        Done(await scene.People.Book<StudentBook>().SayAgeAsync(student, AgeAnswer.Younger, Operation(), Ct));

        Assert.NotNull(Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links).ClosedAt);
    }

    [Theory, OnBothEngines]
    public async Task One_that_was_made_while_consent_was_taken_back_is_opened_by_no_other_yes(ClinicEngine engine)
    {
        var (scene, student, guardian, batch, _) = await MadeAsync(engine);
        var (ward, secret) = (student.Student!.Value, new string('q', 43));
        var late = new AboutToSave(scene.Database, () => Add(scene.Database, batch.Id, secret, scene.Clock.GetUtcNow()));

        Done(await new WardBook(late, TimeProvider.System, scene.Database.Outbox).WithdrawAsync(guardian, ward, Operation(), Ct));
        Assert.True(late.Answer);
        Done(await scene.People.Book<WardBook>().GiveAgainAsync(guardian, ward, Operation(), Ct));

        Assert.Null(await scene.Links.ReadAsync(secret, Ct));
    }

    [Theory, OnBothEngines]
    public async Task One_that_is_closed_while_its_mail_is_tried_once_more_is_not_opened_again(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var batch = await scene.SentAsync(await scene.BegunAsync());
        var (job, mail) = await scene.NewsAsync(batch);
        var first = await scene.Courier.PackAsync(job, mail, Ct);
        var late = new AboutToSave(scene.Database, () => Close(scene.Database, batch.Id, scene.Clock.GetUtcNow()));

        var second = await new LetterCourier(late, scene.Clock, scene.Database.Services.GetRequiredService<MediaFolder>()).PackAsync(job, mail, Ct);

        Assert.True(late.Answer);
        Assert.Null(second.Secret);
        Assert.Null(await scene.Links.ReadAsync(first.Secret, Ct));
        Assert.False(Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links).IsOpen);
    }

    [Theory, OnBothEngines]
    public async Task One_that_gets_another_secret_while_it_is_read_opens_the_letter_or_nothing_and_never_fails(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var batch = await scene.SentAsync(await scene.GrownAsync());
        var opened = new List<bool>();
        for (var after = 1; opened.Count < after; after++)
        {
            var made = await scene.MadeAsync(batch, 7);
            var renewed = new BetweenQuestions(scene.Database, after, made.Id);
            var read = await new LetterLinkBook(renewed, scene.Clock, scene.Database.Services.GetRequiredService<MediaFolder>()).ReadAsync(made.Secret, Ct);
            if (renewed.WasDone)
            {
                opened.Add(read is not null);
            }

            Done(await scene.Links.CloseAsync(Teacher, batch.Code, made.Id, Ct));
            if (!renewed.WasDone)
            {
                break;
            }
        }

        Assert.Equal([false, true], opened.Distinct()); // first it opens nothing, and once it was read all of it
    }

    private static bool Close(TestDatabase database, BatchId batch, DateTimeOffset now)
    {
        using var other = database.CreateDbContext();
        other.Set<LetterLink>().Single(link => link.Batch == batch).Close(now);
        return other.SaveChanges() > 0;
    }

    private static bool Add(TestDatabase database, BatchId batch, string secret, DateTimeOffset now)
    {
        using var other = database.CreateDbContext();
        other.Add(new LetterLink(new LetterLinkId(NewId()), batch, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret))), Teacher.Account, Operation(), now, LetterLink.UsualDays));
        return other.SaveChanges() > 0;
    }

    private async Task<(SentLetterScene Scene, Actor Student, Actor Guardian, Batch Batch, MadeLetterLink Made)> MadeAsync(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.People.StudentAsync();
        var guardian = await scene.People.AgreedAsync(student);
        var batch = await scene.SentAsync(student);
        var made = await scene.MadeAsync(batch);
        Assert.NotNull(await scene.Links.ReadAsync(made.Secret, Ct));
        return (scene, student, guardian, batch, made);
    }

    /// <summary>Something that happens once, between what a Book read and what it saves.</summary>
    private sealed class AboutToSave(TestDatabase database, Func<bool> happens) : IDbContextFactory<ClinicDb>
    {
        /// <summary>What came of it; null while it hasn't happened.</summary>
        public bool? Answer { get; private set; }

        public ClinicDb CreateDbContext()
        {
            var context = database.CreateDbContext();
            context.SavingChanges += (_, _) => Answer ??= happens();
            return context;
        }
    }

    /// <summary>A link that gets another secret after the so-manieth question to the database.</summary>
    private sealed class BetweenQuestions(TestDatabase database, int after, LetterLinkId link) : IDbContextFactory<ClinicDb>
    {
        private int _asked;

        /// <summary>False when fewer questions were asked.</summary>
        public bool WasDone { get; private set; }

        public ClinicDb CreateDbContext()
        {
            var context = database.CreateDbContext();
            context.Database.GetDbConnection().StateChange += (_, change) =>
            {
                if (change.CurrentState == System.Data.ConnectionState.Closed && ++_asked == after)
                {
                    using var other = database.CreateDbContext();
                    WasDone = other.Set<LetterLink>().Where(row => row.Id == link)
                        .ExecuteUpdate(links => links.SetProperty(row => row.SecretHash, $"{link.Value:N}{link.Value:N}")) == 1;
                }
            };
            return context;
        }
    }
}
