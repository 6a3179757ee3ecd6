using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Privacy;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>A database whose records are looked after, at a time that a test moves on.</summary>
public abstract class CaretakerScene
{
    private protected FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));

    private protected async Task ComesByAsync(TestDatabase db, AccountId account)
    {
        await using var context = db.CreateDbContext();
        await SignInOfAsync(context, account);
        await context.SaveChangesAsync(Ct);
        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears));
        await Caretaker(db).RoundAsync(Ct);
        await SendAsync(db);
        Clock.Advance(RetentionRules.Notice);

        for (var at = 1; ; at++)
        {
            var between = new InterruptedDatabases(db, at, other => other.Add(new Session(new SessionId(NewId()), account, SignInWay.Password, false, "Firefox", Clock.GetUtcNow())));
            var letGo = (await Caretaker(db, between).RoundAsync(Ct)).LetGo;
            Assert.Equal(between.WasThere ? 0 : 1, letGo);
            if (!between.WasThere)
            {
                Assert.True(at > 3); // it was there at each moment before
                break;
            }

            await context.Set<Session>().ExecuteDeleteAsync(Ct);
        }
    }

    private protected static (int Told, int LetGo) Told(RetentionRound round) => (round.Told, round.LetGo);

    private protected Outbox Outbox(TestDatabase db) => new(db.Services.GetRequiredService<IDataProtectionProvider>(), Clock, new OutboxSettings());

    private protected RecordsCaretaker Caretaker(TestDatabase db, IDbContextFactory<ClinicDb>? databases = null) =>
        new(databases ?? db, Clock, Outbox(db), db.Services.GetRequiredService<AuditChain>(), new PrivacySettings(35), NullLogger<RecordsCaretaker>.Instance);

    // Sends what waits, and says to whom.
    private protected async Task<IEnumerable<string>> SendAsync(TestDatabase db)
    {
        var board = new JobBoard(db, Clock);
        var sent = new List<string>();
        while (await board.ClaimAsync(JobKind.Mail, Ct) is { } job)
        {
            sent.Add(Outbox(db).Open(job)!.To);
            Assert.True(await board.DoneAsync(job, Ct));
        }

        return sent.Order(StringComparer.Ordinal);
    }

    private protected async Task<StudentId> StudentAsync(TestDatabase db, string? email, AgeAnswer age = AgeAnswer.OldEnough)
    {
        await using var context = db.CreateDbContext();
        var student = new Student(new StudentId(Guid.CreateVersion7(Clock.GetUtcNow())), "Ines");
        student.WriteTo(email);
        student.SayAge(age);
        context.Add(student);
        await context.SaveChangesAsync(Ct);
        return student.Id;
    }

    // A younger student whose guardian has agreed.
    private protected async Task<AccountId> WardAsync(TestDatabase db, string guardianEmail)
    {
        var (now, account) = (Clock.GetUtcNow(), new AccountId(NewId()));
        await using var context = db.CreateDbContext();
        var student = new Student(new StudentId(Guid.CreateVersion7(now)), "Pia");
        student.SayAge(AgeAnswer.Younger);
        student.Follow(Consent.Given);
        var guardianship = new Guardianship(new GuardianshipId(NewId()), student.Id, "Rosa", guardianEmail, now);
        guardianship.Give(account, now);
        context.AddRange(student, guardianship);
        await SignInOfAsync(context, account);
        await context.SaveChangesAsync(Ct);
        return account;
    }

    private protected static async Task JoinAsync(TestDatabase db, StudentId id, AccountId account)
    {
        await using var context = db.CreateDbContext();
        (await context.Set<Student>().SingleAsync(student => student.Id == id, Ct)).JoinAccount(account);
        await context.SaveChangesAsync(Ct);
    }

    private protected async Task LiveAsync(TestDatabase db, AccountId account)
    {
        await using var context = db.CreateDbContext();
        await SignInOfAsync(context, account);
        context.Add(new Session(new SessionId(NewId()), account, SignInWay.Password, false, "Firefox", Clock.GetUtcNow()));
        await context.SaveChangesAsync(Ct);
    }

    internal static async Task SignInOfAsync(ClinicDb context, AccountId account)
    {
        if (!await context.Users.AnyAsync(user => user.Id == account.Value, Ct))
        {
            context.Add(new ClinicAccount { Id = account.Value, UserName = account.Value.ToString(), DisplayName = "Ines" });
        }
    }
}
