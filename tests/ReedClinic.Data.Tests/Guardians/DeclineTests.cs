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

    private static async Task<(Actor Student, string? Secret)> AskedAsync(GuardianScene scene)
    {
        var student = await scene.StudentAsync();
        var email = NewEmail("rosa");
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
        return (student, await scene.SecretForAsync(email));
    }
}
