using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Guardians.GuardianScene;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Guardians;

/// <summary>A guardian who was asked says no.</summary>
public sealed class DeclineTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_no_is_an_answer_that_hinders_and_that_a_new_question_may_change(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var (student, secret) = await AskedAsync(scene);
        var draft = await scene.Intake.DraftAsync(student, Form());

        Assert.Equal("Pia", Done(await scene.Book<DeclineBook>().DeclineAsync(null, secret, Operation(), Ct)));

        var stands = (await scene.Book<GuardianBook>().MineAsync(student, Ct))!;
        Assert.Equal((Consent.Declined, false, true), (stands.Consent, stands.MayTakePart, stands.MayAsk));
        Assert.Contains("said no", Assert.Single(Refused(await scene.Intake.Intake.SubmitAsync(student, draft.Id, Operation(), Ct))).Message, StringComparison.Ordinal);
        Assert.Null(await scene.Book<GuardianBook>().ReadAsync(secret, Ct));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Book<GuardianBook>().AgreeNewAsync(secret, "Rosa", Password, Operation(), Ct));

        await scene.AgreedAsync(student);
        Assert.Equal(Consent.Given, (await scene.Book<GuardianBook>().MineAsync(student, Ct))!.Consent);
        Done(await scene.Intake.Intake.SubmitAsync(student, draft.Id, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_no_makes_no_sign_in_is_noted_for_the_audit_and_told_to_both_once(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (student, secret) = await AskedAsync(scene);
        var operation = Operation();

        Done(await scene.Book<DeclineBook>().DeclineAsync(null, secret, operation, Ct));
        Assert.Equal("Pia", Done(await scene.Book<DeclineBook>().DeclineAsync(null, secret, operation, Ct)));
        Assert.IsType<Outcome<string>.NotFound>(await scene.Book<DeclineBook>().DeclineAsync(null, secret, Operation(), Ct));

        await using var context = db.CreateDbContext();
        Assert.Equal(1, await context.Users.CountAsync(Ct));
        Assert.Null((await context.Set<Guardianship>().SingleAsync(Ct)).Account);
        var events = await context.Set<AuditNote>().Where(note => note.Whom == student.Student!.Value.Value).OrderBy(note => note.At).ThenBy(note => note.Id).Select(note => note.Event).ToListAsync(Ct);
        Assert.Equal([AuditEvent.ConsentAsked, AuditEvent.ConsentDeclined], events);
        Assert.Equal(1, await context.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.LinkRefused, Ct));
        Assert.Equal(
            [("Pia", "ConsentDeclined", null), (null, "ConsentDeclined", "/guardian")],
            (await scene.MailsAsync()).Skip(1).Select(mail => (mail.Ward, mail.What, mail.Path)));
    }

    [Theory, OnBothEngines]
    public async Task A_student_says_no_neither_for_themselves_nor_for_another(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var (student, secret) = await AskedAsync(scene);

        Assert.NotEmpty(Refused(await scene.Book<DeclineBook>().DeclineAsync(student, secret, Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Book<DeclineBook>().DeclineAsync(await scene.StudentAsync("Juno"), secret, Operation(), Ct)));
        Assert.Equal(Consent.Asked, (await scene.Book<GuardianBook>().MineAsync(student, Ct))!.Consent);
        Done(await scene.Book<DeclineBook>().DeclineAsync(await scene.StudentAsync("Rosa", AgeAnswer.OldEnough), secret, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Those_who_work_here_see_a_no_as_not_agreed_and_a_corrected_age_brings_it_back(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var (student, secret) = await AskedAsync(scene);
        Done(await scene.Book<DeclineBook>().DeclineAsync(null, secret, Operation(), Ct));
        var teacher = new Actor(new AccountId(NewId()), null, IsTeacher: true, IsOwner: false) { IsFresh = true };

        var seen = (await scene.Book<StudentBook>().ReadAsync(teacher, student.Student!.Value, Ct))!;
        Done(await scene.Book<StudentBook>().CorrectAgeAsync(teacher, seen.Id, AgeAnswer.OldEnough, Operation(), Ct));
        var back = Done(await scene.Book<StudentBook>().CorrectAgeAsync(teacher, seen.Id, AgeAnswer.Younger, Operation(), Ct));

        Assert.Equal((Consent.Declined, false, false), (seen.Consent, seen.MayBeWorkedFor, seen.MayTakePart));
        Assert.Equal((Consent.Declined, false), (back.Consent, back.MayTakePart));
    }

    [Theory, OnBothEngines]
    public async Task Who_said_no_or_never_answered_is_told_nothing_of_an_age_that_is_put_right(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.FreshAsync(engine));
        var teacher = new Actor(new AccountId(NewId()), null, IsTeacher: true, IsOwner: false) { IsFresh = true };
        var (declined, secret) = await AskedAsync(scene);
        var (waiting, _) = await AskedAsync(scene);
        Done(await scene.Book<DeclineBook>().DeclineAsync(null, secret, Operation(), Ct));
        var told = (await scene.MailsAsync()).Count;

        foreach (var student in new[] { declined, waiting })
        {
            Done(await scene.Book<StudentBook>().CorrectAgeAsync(teacher, student.Student!.Value, AgeAnswer.OldEnough, Operation(), Ct));
            Done(await scene.Book<StudentBook>().CorrectAgeAsync(teacher, student.Student!.Value, AgeAnswer.Younger, Operation(), Ct));
        }

        var mails = (await scene.MailsAsync()).Skip(told).ToList();
        Assert.Equal(4, mails.Count);
        Assert.All(mails, mail => Assert.StartsWith("student-", mail.To, StringComparison.Ordinal));
        Assert.All(mails, mail => Assert.Equal("/guardian", mail.Path));
    }

    [Theory, OnBothEngines]
    public async Task Who_said_no_is_not_asked_again_by_the_same_student_for_a_day(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var email = NewEmail("rosa");
        var (student, secret) = await AskedAsync(scene, email);
        Done(await scene.Book<DeclineBook>().DeclineAsync(null, secret, Operation(), Ct));
        var mails = (await scene.MailsAsync()).Count;

        var held = Assert.Single(Refused(await AskAsync(student, email.ToUpperInvariant())));
        Assert.Equal(("Email", true), (held.Field, held.Message.Contains("said no in the last 24 hours", StringComparison.Ordinal)));
        Assert.Equal(mails, (await scene.MailsAsync()).Count);
        Done(await AskAsync(await scene.StudentAsync("Juno"), email)); // another student's question is another one
        Done(await AskAsync(student, NewEmail("else")));
        Assert.Equal("Email", Assert.Single(Refused(await AskAsync(student, email))).Field); // asking somebody else between doesn't undo it

        await using (var context = db.CreateDbContext())
        {
            var before = TimeProvider.System.GetUtcNow().AddHours(-25);
            await context.Set<DoneOperation>().ExecuteUpdateAsync(row => row.SetProperty(done => done.DoneAt, before), Ct);
        }

        Done(await AskAsync(student, email));

        Task<Outcome<GuardianView>> AskAsync(Actor who, string address) => scene.Book<GuardianBook>().AskAsync(who, "Rosa", address, Operation(), Ct);
    }

    private static async Task<(Actor Student, string? Secret)> AskedAsync(GuardianScene scene, string? address = null)
    {
        var student = await scene.StudentAsync();
        var email = address ?? NewEmail("rosa");
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
        return (student, await scene.SecretForAsync(email));
    }
}
