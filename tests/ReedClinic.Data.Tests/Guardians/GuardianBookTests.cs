using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Guardians.GuardianScene;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Guardians;

public sealed class GuardianBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Nothing_is_sent_before_a_guardian_has_agreed_and_it_is_afterwards(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var draft = await scene.Intake.DraftAsync(student, Form());

        var before = await scene.Intake.Intake.SubmitAsync(student, draft.Id, Operation(), Ct);
        var guardian = await scene.AgreedAsync(student);
        var after = await scene.Intake.Intake.SubmitAsync(student, draft.Id, Operation(), Ct);

        Assert.Equal(IntakeBook.GuardianField, Assert.Single(Refused(before)).Field);
        Assert.Equal(student.Student, Done(after).Student.Id);
        Assert.Equal([student.Student!.Value], guardian.Wards);
    }

    [Theory, OnBothEngines]
    public async Task The_link_tells_the_first_name_alone_and_reading_it_changes_nothing(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync("Pia Marit Kestrel");
        var email = NewEmail("rosa");
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
        var secret = await scene.SecretForAsync(email);

        var first = await scene.Book<GuardianBook>().ReadAsync(secret, Ct);
        var second = await scene.Book<GuardianBook>().ReadAsync(secret, Ct);

        Assert.Equal(first, second);
        Assert.Equal("Pia", first!.FirstName);
        Assert.False(first.HasAccount);
        Assert.DoesNotContain("Kestrel", first.ToString(), StringComparison.Ordinal);
        await using var context = db.CreateDbContext();
        Assert.Null((await context.Set<Ticket>().SingleAsync(Ct)).UsedAt);
    }

    [Theory, OnBothEngines]
    public async Task A_link_answers_once_and_its_form_sent_twice_makes_one_account(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync();
        var email = NewEmail("rosa");
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
        var secret = await scene.SecretForAsync(email);
        var operation = Operation();

        var first = await scene.Book<GuardianBook>().AgreeNewAsync(secret, "Rosa", Password, operation, Ct);
        var again = await scene.Book<GuardianBook>().AgreeNewAsync(secret, "Rosa", Password, operation, Ct);
        var another = await scene.Book<GuardianBook>().AgreeNewAsync(secret, "Rosa", Password, Operation(), Ct);

        Assert.Equal(Done(first), Done(again));
        Assert.IsType<Outcome<AccountId>.NotFound>(another);
        await using var context = db.CreateDbContext();
        Assert.Equal(2, await context.Users.CountAsync(Ct)); // the student and the guardian
        Assert.Empty(await context.UserRoles.Where(held => held.UserId == Done(first).Value).ToListAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_student_answers_neither_for_themselves_nor_with_their_own_address(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var another = await scene.StudentAsync("Juno");
        var own = (await scene.Book<StudentBook>().MeAsync(student, Ct))!.Email!;
        var email = NewEmail("rosa");

        var ownAddress = await scene.Book<GuardianBook>().AskAsync(student, "Rosa", own.ToUpperInvariant(), Operation(), Ct);
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
        var secret = await scene.SecretForAsync(email);
        var self = await scene.Book<GuardianBook>().AgreeAsync(student, secret, Operation(), Ct);
        var younger = await scene.Book<GuardianBook>().AgreeAsync(another, secret, Operation(), Ct);

        Assert.Equal("Email", Assert.Single(Refused(ownAddress)).Field);
        Assert.NotEmpty(Refused(self));
        Assert.NotEmpty(Refused(younger));
        Assert.Equal(Consent.Asked, (await scene.Book<GuardianBook>().MineAsync(student, Ct))!.Consent);
    }

    [Theory, OnBothEngines]
    public async Task A_grown_up_with_a_sign_in_answers_with_it(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var grownUp = await scene.StudentAsync("Rosa", AgeAnswer.OldEnough);
        var email = (await scene.Book<StudentBook>().MeAsync(grownUp, Ct))!.Email!;
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
        var secret = await scene.SecretForAsync(email);

        var question = await scene.Book<GuardianBook>().ReadAsync(secret, Ct);
        var withoutSignIn = await scene.Book<GuardianBook>().AgreeNewAsync(secret, "Rosa", "another long password", Operation(), Ct);
        var answered = await scene.Book<GuardianBook>().AgreeAsync(grownUp, secret, Operation(), Ct);

        Assert.True(question!.HasAccount);
        Assert.IsType<Outcome<AccountId>.Refused>(withoutSignIn);
        Assert.Equal(grownUp.Account, Done(answered));
        Assert.Equal(student.Student, Assert.Single(await scene.Book<WardBook>().MineAsync(grownUp, Ct)).Student);
    }

    [Theory, OnBothEngines]
    public async Task Guardians_are_asked_three_times_a_day_and_only_the_last_link_is_good(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        string[] emails = [NewEmail("a"), NewEmail("b"), NewEmail("c")];
        foreach (var email in emails)
        {
            Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
        }

        var fourth = await scene.Book<GuardianBook>().AskAsync(student, "Rosa", NewEmail("d"), Operation(), Ct);

        Assert.NotEmpty(Refused(fourth));
        Assert.Null(await scene.Book<GuardianBook>().ReadAsync(await scene.SecretForAsync(emails[0]), Ct));
        Assert.Null(await scene.Book<GuardianBook>().ReadAsync(await scene.SecretForAsync(emails[1]), Ct));
        Assert.NotNull(await scene.Book<GuardianBook>().ReadAsync(await scene.SecretForAsync(emails[2]), Ct));
    }

    [Theory, OnBothEngines]
    public async Task After_six_mails_a_day_an_address_gets_only_the_first_question_of_each_student(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var (guardians, email) = (scene.Book<GuardianBook>(), NewEmail("rosa"));
        for (var i = 0; i < GuardianBook.MostAsksToOneADay / GuardianBook.MostAsksADay; i++)
        {
            var busy = await scene.StudentAsync();
            for (var asked = 0; asked < GuardianBook.MostAsksADay; asked++)
            {
                Done(await guardians.AskAsync(busy, "Rosa", email, Operation(), Ct));
            }
        }

        var another = await scene.StudentAsync();
        Done(await guardians.AskAsync(another, "Rosa", email.ToUpperInvariant(), Operation(), Ct));
        var again = Assert.Single(Refused(await guardians.AskAsync(another, "Rosa", email, Operation(), Ct)));
        Assert.Equal("Email", again.Field);
        Assert.Contains("You asked this address today already", again.Message, StringComparison.Ordinal);
        Done(await guardians.AskAsync(another, "Rosa", NewEmail("else"), Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Questions_at_one_moment_are_counted_one_after_the_other(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var emails = Enumerable.Range(0, 8).Select(i => NewEmail("rosa" + i)).ToList();

        var asked = await Task.WhenAll(emails.Select(email => Task.Run(() => scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct))));

        Assert.Equal(GuardianBook.MostAsksADay, asked.Count(outcome => outcome is Outcome<GuardianView>.Done));
    }

    /// <summary>Nothing is said to be worked on that is worked on already, isn’t touched for its mould, or was never there.</summary>
    [Theory, OnBothEngines]
    public async Task A_guardian_and_a_student_are_told_only_of_reeds_that_wait_for_a_yes(ClinicEngine engine)
    {
        (Stage Stage, Fitness?[] Reeds, int Here, int KeptApart, bool UnderWay)[] cases =
        [
            (Stage.OnItsWay, [null, null], 0, 0, true),
            (Stage.Here, [Fitness.Fit, null, Fitness.Mould], 2, 1, true),
            (Stage.AtTheBench, [Fitness.Mould, Fitness.Mould], 0, 2, false),
            (Stage.LetterSent, [Fitness.Fit, Fitness.Mould], 0, 0, false),
            (Stage.OnItsWayHome, [Fitness.Fit], 0, 0, false),
        ];
        var db = await databases.OpenAsync(engine);
        foreach (var one in cases)
        {
            var scene = new GuardianScene(db);
            var student = await scene.StudentAsync(age: AgeAnswer.OldEnough);
            var batch = (await scene.Intake.BatchAsync(student, one.Reeds.Length)).Batch;
            await using var context = db.CreateDbContext();
            await context.Set<Batch>().Where(row => row.Id == batch.Id).ExecuteUpdateAsync(set => set.SetProperty(row => row.Stage, one.Stage), Ct);
            foreach (var (reed, fitness) in batch.Reeds.Zip(one.Reeds))
            {
                await context.Set<Reed>().Where(row => row.Id == reed.Id).ExecuteUpdateAsync(set => set.SetProperty(row => row.Fitness, fitness), Ct);
            }

            await context.Set<Student>().Where(row => row.Id == student.Student).ExecuteUpdateAsync(set => set.SetProperty(row => row.Age, AgeAnswer.Younger), Ct);
            var email = NewEmail("rosa");
            Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
            var secret = await scene.SecretForAsync(email);
            var question = (await scene.Book<GuardianBook>().ReadAsync(secret, Ct))!;
            Done(await scene.Book<GuardianBook>().AgreeNewAsync(secret, "Rosa", Password, Operation(), Ct));
            var own = (await scene.Book<StudentBook>().MeAsync(student, Ct))!.Email;
            var told = (await scene.MailsAsync()).Last(mail => mail.Kind == MailKind.GuardianAnswered && mail.To == own);

            Assert.Equal((one.Here, one.KeptApart, one.UnderWay, one.KeptApart), (question.ReedsHere, question.KeptApart, told.UnderWay, told.KeptApart));
        }
    }

    [Theory, OnBothEngines]
    public async Task Every_step_is_noted_for_the_audit_and_told_by_mail(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync();
        var guardian = await scene.AgreedAsync(student);
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));

        await using var context = db.CreateDbContext();
        var events = await context.Set<AuditNote>().Where(note => note.Whom == student.Student.Value.Value).OrderBy(note => note.At).ThenBy(note => note.Id).Select(note => note.Event).ToListAsync(Ct);
        Assert.Equal([AuditEvent.ConsentAsked, AuditEvent.ConsentGiven, AuditEvent.ConsentWithdrawn], events);
        Assert.Equal(
            [MailKind.GuardianAsked, MailKind.GuardianAnswered, MailKind.GuardianAnswered, MailKind.GuardianAnswered, MailKind.GuardianAnswered],
            (await scene.MailsAsync()).Select(mail => mail.Kind));
        Assert.Equal(
            [("Pia", null, null), ("Pia", "ConsentGiven", "/wards"), (null, "ConsentGiven", "/intake"), ("Pia", "ConsentWithdrawn", "/wards"), (null, "ConsentWithdrawn", "/guardian")],
            (await scene.MailsAsync()).Select(mail => (mail.Ward, mail.What, mail.Path)));
    }
}
