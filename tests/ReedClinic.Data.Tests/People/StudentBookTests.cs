using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.People;

public sealed class StudentBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task An_account_becomes_one_student_however_often_it_is_welcomed(ClinicEngine engine)
    {
        var book = await BookAsync(databases.OpenAsync(engine));
        var account = new Actor(new AccountId(NewId()), null, false, false);

        var students = await Task.WhenAll(Enumerable.Range(0, 10)
            .Select(_ => Task.Run(() => book.WelcomeAsync(account, "Ines", "Ines@Harbour.example", Operation(), Ct), Ct)));

        var only = Assert.Single(students.Select(student => Done(student).Id).Distinct());
        Assert.Equal(only, (await book.MeAsync(account, Ct))!.Id);
        Assert.Null(await book.MeAsync(new Actor(new AccountId(NewId()), null, false, false), Ct));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" \t ")]
    [InlineData("a\0b")]
    public async Task A_name_must_be_one(string name)
    {
        var book = await BookAsync(databases.OpenAsync(ClinicEngine.Sqlite));

        var refused = await book.WelcomeAsync(new Actor(new AccountId(NewId()), null, false, false), name, null, Operation(), Ct);

        Assert.Equal("Name", Assert.Single(Assert.IsType<Outcome<Student>.Refused>(refused).Problems).Field);
    }

    [Theory, OnBothEngines]
    public async Task A_teacher_finds_people_without_their_accents_and_capitals(ClinicEngine engine)
    {
        var book = await BookAsync(databases.FreshAsync(engine));
        await book.WelcomeAsync(new Actor(new AccountId(NewId()), null, false, false), "Łucja Žižka", "LUCJA@example.org", Operation(), Ct);
        await book.WelcomeAsync(new Actor(new AccountId(NewId()), null, false, false), "Ольга Ёлкина", null, Operation(), Ct);

        Assert.Equal("Łucja Žižka", Assert.Single(await book.FindAsync(Teacher, "lucja ziz", Ct)).Name);
        Assert.Equal("Łucja Žižka", Assert.Single(await book.FindAsync(Teacher, "lucja@EXAMPLE", Ct)).Name);
        Assert.Equal("Ольга Ёлкина", Assert.Single(await book.FindAsync(Teacher, "ЕЛК", Ct)).Name);
        Assert.Equal(2, (await book.FindAsync(Teacher, "", Ct)).Count);
        Assert.Empty(await book.FindAsync(Teacher, "100%_", Ct));
        Assert.Empty(await book.FindAsync(new Actor(new AccountId(NewId()), null, false, false), "lucja", Ct));
    }

    [Theory, OnBothEngines]
    public async Task What_is_asked_once_is_kept_and_two_forms_do_not_overwrite_each_other(ClinicEngine engine)
    {
        var book = await BookAsync(databases.OpenAsync(engine));
        var account = new Actor(new AccountId(NewId()), null, false, false);
        var student = Done(await book.WelcomeAsync(account, "Bram", null, Operation(), Ct));
        var details = new StudentDetails(Instrument.CorAnglais, new Tuning(new Hertz(441.5)), ScrapeStyle.ShortScrape, " Norway ");
        var operation = Operation();

        var described = Done(await book.DescribeAsync(account, details, student.Version, operation, Ct));
        var repeated = Done(await book.DescribeAsync(account, details, student.Version, operation, Ct));
        var late = await book.DescribeAsync(account, details with { Country = "Peru" }, student.Version, Operation(), Ct);

        Assert.Equal(441.5, described.TunesTo!.Value.A4.Value);
        Assert.Equal(described.Version, repeated.Version);
        Assert.Equal("Norway", Assert.IsType<Outcome<Student>.Conflict>(late).Theirs.Country);
    }

    [Theory, OnBothEngines]
    public async Task Who_said_younger_cannot_take_it_back_alone_and_those_who_work_here_can_put_it_right(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var book = new StudentBook(db, TimeProvider.System, db.Outbox);
        var account = new Actor(new AccountId(NewId()), null, false, false);
        var student = Done(await book.WelcomeAsync(account, "Bram", null, Operation(), Ct));
        Done(await book.SayAgeAsync(account, AgeAnswer.Younger, Operation(), Ct));
        await using (var context = db.CreateDbContext())
        {
            var answer = new Guardianship(new GuardianshipId(NewId()), student.Id, "Rosa", "rosa@harbour.example", TimeProvider.System.GetUtcNow());
            answer.Give(new AccountId(NewId()), TimeProvider.System.GetUtcNow());
            answer.Withdraw(TimeProvider.System.GetUtcNow());
            context.Add(answer);
            context.Set<Student>().Single(person => person.Id == student.Id).Follow(Consent.Withdrawn);
            await context.SaveChangesAsync(Ct);
        }

        Assert.IsType<Outcome<Student>.Refused>(await book.SayAgeAsync(account, AgeAnswer.OldEnough, Operation(), Ct));
        var fresh = Teacher with { IsFresh = true };
        Assert.IsType<Outcome<Student>.NotFound>(await book.CorrectAgeAsync(account with { IsFresh = true }, student.Id, AgeAnswer.OldEnough, Operation(), Ct));
        Assert.IsType<Outcome<Student>.Refused>(await book.CorrectAgeAsync(fresh, student.Id, null, Operation(), Ct));
        var stale = await book.CorrectAgeAsync(Teacher with { IsFresh = false }, student.Id, AgeAnswer.OldEnough, Operation(), Ct);
        Assert.Equal(FreshSignIn.Field, Assert.Single(Assert.IsType<Outcome<Student>.Refused>(stale).Problems).Field);
        var right = Done(await book.CorrectAgeAsync(fresh, student.Id, AgeAnswer.OldEnough, Operation(), Ct));

        Assert.True(right is { MayTakePart: true, Consent: Consent.NotAsked });
        Assert.False(Done(await book.CorrectAgeAsync(fresh, student.Id, AgeAnswer.Younger, Operation(), Ct)).MayTakePart);
    }

    private static async Task<StudentBook> BookAsync(Task<TestDatabase> opening)
    {
        var db = await opening;
        return new StudentBook(db, TimeProvider.System, db.Outbox);
    }
}
