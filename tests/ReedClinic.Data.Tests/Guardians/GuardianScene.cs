using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Guardians;

/// <summary>A student below the set age, and a guardian who can be asked.</summary>
internal sealed class GuardianScene(TestDatabase db)
{
    public const string Password = "seven boats in the harbour";

    private static int _people;

    public TestDatabase Database => db;

    public IntakeScene Intake { get; } = new(db);

    public T Book<T>()
        where T : notnull => db.Services.CreateScope().ServiceProvider.GetRequiredService<T>();

    public static string NewEmail(string name) => $"{name}-{Interlocked.Increment(ref _people)}-{NewId():N}@harbour.example";

    /// <summary>A student with a sign-in of their own.</summary>
    public async Task<Actor> StudentAsync(string name = "Pia Kestrel", AgeAnswer age = AgeAnswer.Younger)
    {
        var account = Done(await Book<AccountRegister>().AdmitAsync(new NewAccount(name, NewEmail("student"), Password) { Age = age }, Role.Student, Operation(), Ct));
        return (await Book<AccountBook>().ActorFor(account, Ct))!;
    }

    /// <summary>The secret of the last link that was put out to an address.</summary>
    public async Task<string?> SecretForAsync(string email) =>
        (await MailsAsync()).Last(mail => mail.To == email && mail.Kind == MailKind.GuardianAsked).Secret;

    public async Task<IReadOnlyList<Mail>> MailsAsync()
    {
        await using var context = db.CreateDbContext();
        var jobs = await context.Set<Job>().Where(job => job.Kind == JobKind.Mail && job.DoneAt == null).OrderBy(job => job.MadeAt).ThenBy(job => job.Id).ToListAsync(Ct);
        return [.. jobs.Select(job => db.Outbox.Open(job)!)];
    }

    /// <summary>The guardian of a student, who has agreed.</summary>
    public async Task<Actor> AgreedAsync(Actor student, string name = "Rosa Kestrel")
    {
        var email = NewEmail("guardian");
        Done(await Book<GuardianBook>().AskAsync(student, name, email, Operation(), Ct));
        var account = Done(await Book<GuardianBook>().AgreeNewAsync(await SecretForAsync(email), name, Password, Operation(), Ct));
        return (await Book<AccountBook>().ActorFor(account, Ct))! with { IsFresh = true };
    }

    public static IReadOnlyList<Problem> Refused<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Refused>(outcome).Problems;
}
