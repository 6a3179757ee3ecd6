using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Guardians.GuardianScene;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Guardians;

/// <summary>A guardian who is gone, or whose question is nobody else’s business.</summary>
public sealed class GuardianLeavingTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly Actor Mara = new(new AccountId(NewId()), null, IsTeacher: false, IsOwner: true) { IsFresh = true };

    [Theory, OnBothEngines]
    public async Task A_question_to_a_guardian_is_no_invitation_of_the_studio(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (student, email) = (await scene.StudentAsync(), NewEmail("rosa"));
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
        await using var context = db.CreateDbContext();
        var ticket = await context.Set<Ticket>().SingleAsync(row => row.Purpose == TicketPurpose.Guardian, Ct);
        var invitations = scene.Book<InvitationBook>();

        Assert.Empty(await invitations.OpenAsync(Mara, Ct));
        Assert.IsType<Outcome<SentLink>.NotFound>(await invitations.SendAgainAsync(Mara, ticket.Id, false, Operation(), Ct));
        Assert.IsType<Outcome<bool>.NotFound>(await invitations.WithdrawAsync(Mara, ticket.Id, Operation(), Ct));

        Assert.NotNull(await scene.Book<GuardianBook>().ReadAsync(await scene.SecretForAsync(email), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Of_an_erased_guardian_nothing_stays_where_they_were_asked_and_had_not_answered(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (one, sibling) = (await scene.StudentAsync(), await scene.StudentAsync("Wim Kestrel"));
        var guardian = await scene.AgreedAsync(one);
        var email = (await scene.Book<SignInBook>().ReadAsync(guardian, Ct))!.Email;
        Done(await scene.Book<GuardianBook>().AskAsync(sibling, "Rosa Kestrel", email, Operation(), Ct));
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, one.Student!.Value, Operation(), Ct));

        Done(await scene.Book<PrivacyBook>().EraseAsync(guardian, null, "erase", Operation(), Ct));

        await using var context = db.CreateDbContext();
        Assert.Empty(await context.Set<Guardianship>().ToListAsync(Ct));
        Assert.DoesNotContain(await scene.MailsAsync(), mail => mail.Kind == MailKind.GuardianAsked);
        var stands = (await scene.Book<GuardianBook>().MineAsync(sibling, Ct))!;
        Assert.Equal((Consent.NotAsked, null), (stands.Consent, stands.Email));
        Done(await scene.Book<GuardianBook>().AskAsync(sibling, "Tove", NewEmail("tove"), Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_guardian_whose_account_is_closed_answers_for_nobody_any_more_and_their_student_is_told(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync();
        var guardian = await scene.AgreedAsync(student);

        Done(await scene.Book<PeopleBook>().DisableAsync(await OwnerAsync(scene), guardian.Account, Operation(), Ct));

        Assert.Equal(Consent.NotAsked, (await scene.Book<GuardianBook>().MineAsync(student, Ct))!.Consent);
        var told = Assert.Single(await scene.MailsAsync(), mail => mail.Kind == MailKind.GuardianGone);
        Assert.Equal((await scene.Book<SignInBook>().ReadAsync(student, Ct))!.Email, told.To);
        await using var context = db.CreateDbContext();
        Assert.Equal(1, await context.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.ConsentWithdrawn && note.Whom == student.Student!.Value.Value, Ct));
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Tove", NewEmail("tove"), Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Who_agrees_is_written_to_whoever_the_question_went_to(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.FreshAsync(engine));
        var (one, other) = (await scene.StudentAsync(), await scene.StudentAsync("Wim Kestrel"));
        var mother = await scene.AgreedAsync(one);
        var theirs = (await scene.Book<SignInBook>().ReadAsync(mother, Ct))!.Email;
        var asked = NewEmail("father");
        Done(await scene.Book<GuardianBook>().AskAsync(other, "Tove", asked, Operation(), Ct));

        Done(await scene.Book<GuardianBook>().AgreeAsync(mother, await scene.SecretForAsync(asked), Operation(), Ct));

        var answered = (await scene.MailsAsync()).Where(mail => mail.Kind == MailKind.GuardianAnswered && mail.Path == "/wards").ToList();
        Assert.Equal([theirs, theirs], answered.Select(mail => mail.To));
        Assert.Equal(theirs, (await scene.Book<GuardianBook>().MineAsync(other, Ct))!.Email);
    }

    [Theory, OnBothEngines]
    public async Task The_yes_of_a_closed_guardian_does_not_come_back_when_an_age_is_put_right(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.FreshAsync(engine));
        var (student, owner) = (await scene.StudentAsync(), await OwnerAsync(scene));
        var guardian = await scene.AgreedAsync(student);
        var teacher = owner with { IsTeacher = true };
        Done(await scene.Book<StudentBook>().CorrectAgeAsync(teacher, student.Student!.Value, AgeAnswer.OldEnough, Operation(), Ct));
        Done(await scene.Book<PeopleBook>().DisableAsync(owner, guardian.Account, Operation(), Ct));

        var right = Done(await scene.Book<StudentBook>().CorrectAgeAsync(teacher, student.Student.Value, AgeAnswer.Younger, Operation(), Ct));

        Assert.NotEqual(Consent.Given, right.Consent);
        Assert.False(right.MayTakePart);
    }

    [Theory, OnBothEngines]
    public async Task A_student_who_is_erased_leaves_no_mail_that_asks_them_to_answer_for_somebody(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (ann, brother) = (await scene.StudentAsync("Ann Kestrel", AgeAnswer.OldEnough), await scene.StudentAsync());
        var email = (await scene.Book<SignInBook>().ReadAsync(ann, Ct))!.Email;
        Done(await scene.Book<GuardianBook>().AskAsync(brother, "Ann Kestrel", email, Operation(), Ct));

        Done(await scene.Book<PrivacyBook>().EraseAsync(ann with { IsFresh = true }, null, "erase", Operation(), Ct));

        Assert.DoesNotContain(await scene.MailsAsync(), mail => mail.Kind == MailKind.GuardianAsked);
        await using var context = db.CreateDbContext();
        Assert.Empty(await context.Set<Guardianship>().ToListAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_consent_that_was_taken_back_stays_so_when_the_account_is_closed(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.FreshAsync(engine));
        var student = await scene.StudentAsync();
        var guardian = await scene.AgreedAsync(student);
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));

        Done(await scene.Book<PeopleBook>().DisableAsync(await OwnerAsync(scene), guardian.Account, Operation(), Ct));

        Assert.Equal(Consent.Withdrawn, (await scene.Book<GuardianBook>().MineAsync(student, Ct))!.Consent);
        Assert.DoesNotContain(await scene.MailsAsync(), mail => mail.Kind == MailKind.GuardianGone);
    }

    private static async Task<Actor> OwnerAsync(GuardianScene scene)
    {
        var account = Done(await scene.Book<AccountRegister>().AdmitAsync(new NewAccount("Mara", NewEmail("mara"), Password), Role.Owner, Operation(), Ct));
        return (await scene.Book<AccountBook>().ActorFor(account, Ct))! with { IsOwner = true, IsFresh = true };
    }
}
