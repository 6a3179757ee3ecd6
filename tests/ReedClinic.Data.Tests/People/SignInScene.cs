using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Tests.People;

/// <summary>One account, a clock that is set by hand, and every Book about signing in.</summary>
internal sealed class SignInScene(TestDatabase db)
{
    public const string Password = "seven boats in the harbour";

    // Hashing is made quick here; how strong it is in the real thing has a test of its own.
    private static readonly PasswordHasher<ClinicAccount> Hasher = new(Options.Create(new PasswordHasherOptions { IterationCount = 1_000 }));

    public TestDatabase Databases => db;

    public FakeTimeProvider Time { get; } = new(new DateTimeOffset(2031, 3, 4, 9, 0, 0, TimeSpan.Zero));

    public static CancellationToken Ct => TestContext.Current.CancellationToken;

    public SessionRegister Sessions => new(db, Time);

    public SessionBook SessionBook => new(db, Time);

    public SecondStepCheck Check => new(db, Time, Get<CodeSeal>());

    public SignInBook SignIn => new(db, Time, Hasher, Get<ILookupNormalizer>(), new Outbox(Get<Microsoft.AspNetCore.DataProtection.IDataProtectionProvider>(), Time, new OutboxSettings()));

    public SecondStepBook SecondStep => new(db, Time, Hasher, Get<CodeSeal>(), Get<Outbox>());

    public PasskeyBook Passkeys => new(db, Time, Get<Outbox>());

    public static OperationId Operation() => new(Guid.CreateVersion7(TimeProvider.System.GetUtcNow()));

    public static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    public static Problem Refused<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Refused>(outcome).Problems[0];

    /// <summary>A new account with these roles.</summary>
    public async Task<AccountId> AccountAsync(string email, params Role[] roles)
    {
        var fold = Get<ILookupNormalizer>();
        var account = new ClinicAccount
        {
            Id = Operation().Value,
            UserName = email,
            NormalizedUserName = fold.NormalizeName(email),
            Email = email,
            NormalizedEmail = fold.NormalizeEmail(email),
            DisplayName = "Runa",
            MadeBy = Operation(),
        };
        account.PasswordHash = Hasher.HashPassword(account, Password);
        await using var context = db.CreateDbContext();
        context.Add(account);
        var names = roles.Select(role => role.ToString()).ToList();
        context.AddRange((await context.Roles.Where(role => names.Contains(role.Name!)).ToListAsync(Ct))
            .Select(role => new IdentityUserRole<Guid> { UserId = account.Id, RoleId = role.Id }));
        await context.SaveChangesAsync(Ct);
        return new AccountId(account.Id);
    }

    /// <summary>How often each thing is told to the audit.</summary>
    public async Task<int> ToldAsync(AuditEvent what)
    {
        await using var context = db.CreateDbContext();
        return await context.Set<AuditNote>().CountAsync(note => note.Event == what, Ct);
    }

    /// <summary>Takes an account's password away, as if it had never had one.</summary>
    public async Task ForgetPasswordAsync(AccountId account)
    {
        await using var context = db.CreateDbContext();
        await context.Users.Where(user => user.Id == account.Value).ExecuteUpdateAsync(row => row.SetProperty(user => user.PasswordHash, (string?)null), Ct);
    }

    /// <summary>Signs in and says who that is then.</summary>
    public async Task<Actor> InAsync(AccountId account, SignInWay way = SignInWay.Password)
    {
        var session = Assert.NotNull(await Sessions.BeginAsync(account, way, "Firefox on Android", null, Ct));
        return (await WhoAsync(session))!;
    }

    public async Task<Actor?> WhoAsync(SessionId session, bool acting = true) => (await Sessions.WhoAsync(session, acting, Ct))?.Actor;

    /// <summary>The mails that wait, as they were put out.</summary>
    public async Task<IReadOnlyList<Mail>> MailAsync()
    {
        await using var context = db.CreateDbContext();
        var jobs = await context.Set<Job>().AsNoTracking().Where(job => job.Kind == JobKind.Mail && job.DoneAt == null).OrderBy(job => job.Id).ToListAsync(Ct);
        return [.. jobs.Select(job => Get<Outbox>().Open(job)!)];
    }

    public T Get<T>()
        where T : notnull
        => db.Services.GetRequiredService<T>();
}
