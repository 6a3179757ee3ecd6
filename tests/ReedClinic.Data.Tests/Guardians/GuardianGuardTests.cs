using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.People;
using ReedClinic.Data.Tests.Engine;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Guardians.GuardianScene;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Guardians;

/// <summary>A guardian’s link that is over, and a student who has nobody to ask. OWASP ASVS 5.0: 6.4.1, 16.3.2.</summary>
public sealed class GuardianGuardTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Every_refused_link_is_noted_whoever_shows_it(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync();
        var grownUp = await scene.StudentAsync("Rosa", AgeAnswer.OldEnough);
        var used = await AnsweredAsync(scene, student);

        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Book<GuardianBook>().AgreeNewAsync(new string('a', 43), "Rosa", Password, Operation(), Ct));
        Assert.Equal(1, await ToldAsync(db));
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Book<GuardianBook>().AgreeAsync(grownUp, new string('a', 43), Operation(), Ct));
        Assert.Equal(2, await ToldAsync(db));
        await RenameAsync(db);
        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Book<GuardianBook>().AgreeNewAsync(used, "Rosa", Password, Operation(), Ct));
        Assert.Equal(3, await ToldAsync(db));
    }

    [Theory, OnBothEngines]
    public async Task An_answer_uses_its_link_up_and_is_not_given_twice_by_one_that_was_not(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var link = await AnsweredAsync(scene, await scene.StudentAsync());
        await using var context = db.CreateDbContext();
        Assert.NotNull((await context.Set<Ticket>().SingleAsync(Ct)).UsedAt);
        Assert.True(await context.Users.AnyAsync(user => user.Email!.StartsWith("guardian") && user.EmailConfirmed, Ct));

        await context.Set<Ticket>().ExecuteUpdateAsync(row => row.SetProperty(ticket => ticket.UsedAt, (DateTimeOffset?)null), Ct);

        Assert.Null(await scene.Book<GuardianBook>().ReadAsync(link, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_link_is_over_once_the_student_turns_out_to_be_old_enough_or_another_was_asked(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.FreshAsync(engine));
        var student = await scene.StudentAsync();
        var (first, second) = (NewEmail("first"), NewEmail("second"));
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", first, Operation(), Ct));
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", second, Operation(), Ct));

        Assert.IsType<Outcome<AccountId>.NotFound>(await scene.Book<GuardianBook>().AgreeNewAsync(await scene.SecretForAsync(first), "Rosa", "weak", Operation(), Ct));
        Assert.IsType<Outcome<AccountId>.Refused>(await scene.Book<GuardianBook>().AgreeNewAsync(await scene.SecretForAsync(second), "Rosa", "weak", Operation(), Ct));
        Done(await scene.Book<StudentBook>().CorrectAgeAsync(Teacher with { IsFresh = true }, student.Student!.Value, AgeAnswer.OldEnough, Operation(), Ct));

        Assert.Null(await scene.Book<GuardianBook>().ReadAsync(await scene.SecretForAsync(second), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Nobody_is_asked_for_one_who_is_old_enough_has_not_said_or_has_an_answer(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (grownUp, unsaid, answered) = (await scene.StudentAsync("Wim", AgeAnswer.OldEnough), await scene.StudentAsync("Juno"), await scene.StudentAsync());
        await scene.AgreedAsync(answered);
        await using (var context = db.CreateDbContext())
        {
            await context.Set<Student>().Where(person => person.Id == unsaid.Student).ExecuteUpdateAsync(row => row.SetProperty(person => person.Age, (AgeAnswer?)null), Ct);
        }

        var mails = (await scene.MailsAsync()).Count;
        Assert.Equal("", Assert.Single(Refused(await AskAsync(grownUp))).Field);
        Assert.Equal("Age", Assert.Single(Refused(await AskAsync(unsaid))).Field);
        Assert.Contains("agreed already", Assert.Single(Refused(await AskAsync(answered))).Message, StringComparison.Ordinal);
        Assert.Equal(mails, (await scene.MailsAsync()).Count);

        Task<Outcome<GuardianView>> AskAsync(Actor who) => scene.Book<GuardianBook>().AskAsync(who, "Rosa", NewEmail("rosa"), Operation(), Ct);
    }

    [Theory, OnBothEngines]
    public async Task An_age_that_is_put_right_is_noted_ends_what_the_guardian_sees_and_tells_nobody_what_stood_already(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync();
        var guardian = await scene.AgreedAsync(student);
        var mails = (await scene.MailsAsync()).Count;

        Done(await scene.Book<StudentBook>().CorrectAgeAsync(Teacher with { IsFresh = true }, student.Student!.Value, AgeAnswer.Younger, Operation(), Ct));
        Assert.Equal(mails, (await scene.MailsAsync()).Count);
        Assert.Single(await scene.Book<WardBook>().MineAsync(guardian, Ct));
        Done(await scene.Book<StudentBook>().CorrectAgeAsync(Teacher with { IsFresh = true }, student.Student!.Value, AgeAnswer.OldEnough, Operation(), Ct));

        Assert.Empty(await scene.Book<WardBook>().MineAsync(guardian, Ct));
        Assert.Empty((await scene.Book<AccountBook>().ActorFor(guardian.Account, Ct))!.Wards);
        await using var context = db.CreateDbContext();
        Assert.Equal(2, await context.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.AgeCorrected && note.Whom == student.Student.Value.Value && note.Who == Teacher.Account.Value, Ct));
    }

    [Theory, OnBothEngines]
    public async Task An_age_is_not_put_right_over_what_somebody_saved_at_the_same_moment_and_nobody_is_told(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync();
        var hand = new QuickerHand(
            db,
            context => context.ChangeTracker.Entries<Student>().Any(),
            other => other.Set<Student>().Single(person => person.Id == student.Student).Describe(null, null, null, "Malta"));

        var outcome = await new StudentBook(hand, TimeProvider.System, db.Outbox)
            .CorrectAgeAsync(Teacher with { IsFresh = true }, student.Student!.Value, AgeAnswer.OldEnough, Operation(), Ct);

        var stands = Assert.IsType<Outcome<Student>.Conflict>(outcome).Theirs;
        Assert.True(stands is { Age: AgeAnswer.Younger, Country: "Malta" });
        Assert.Empty(await scene.MailsAsync());
    }

    private static async Task<string?> AnsweredAsync(GuardianScene scene, Actor student)
    {
        var email = NewEmail("guardian");
        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
        var link = await scene.SecretForAsync(email);
        Done(await scene.Book<GuardianBook>().AgreeNewAsync(link, "Rosa", Password, Operation(), Ct));
        return link;
    }

    // So that the link’s own address is nobody’s any more, and the link alone is what is refused.
    private static async Task RenameAsync(TestDatabase db)
    {
        await using var context = db.CreateDbContext();
        await context.Users.Where(user => user.Email!.StartsWith("guardian"))
            .ExecuteUpdateAsync(row => row.SetProperty(user => user.NormalizedEmail, "ELSEWHERE@QUAY.EXAMPLE").SetProperty(user => user.NormalizedUserName, "ELSEWHERE@QUAY.EXAMPLE"), Ct);
    }

    private static async Task<int> ToldAsync(TestDatabase db)
    {
        await using var context = db.CreateDbContext();
        return await context.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.LinkRefused, Ct);
    }
}
