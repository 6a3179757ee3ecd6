using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Tests.People;

/// <summary>An owner who sends links, a clock that is set by hand, and every Book that a link opens.</summary>
internal sealed class LinkScene : IAsyncDisposable
{
    public const string Password = "seven small reeds in a tin";

    private readonly AsyncServiceScope _scope;

    public LinkScene(TestDatabase db)
    {
        Db = db;
        _scope = db.Services.CreateAsyncScope();
        var outbox = _scope.ServiceProvider.GetRequiredService<Outbox>();
        Register = _scope.ServiceProvider.GetRequiredService<AccountRegister>();
        var links = new StrangerLinks(db, Clock, Register, outbox);
        Accounts = new AccountBook(db, Clock, Register, outbox);
        Invitations = new InvitationBook(db, Clock, Register, outbox);
        SignUps = new SignUpBook(links);
        Begins = new BeginBook(db, Clock, Register, outbox, links);
        People = new PeopleBook(db, Clock, outbox);
    }

    public static Actor Owner { get; } = new(new AccountId(NewOperation().Value), null, IsTeacher: false, IsOwner: true) { IsFresh = true };

    public static CancellationToken Ct => TestContext.Current.CancellationToken;

    public TestDatabase Db { get; }

    public FakeTimeProvider Clock { get; } = new(TimeProvider.System.GetUtcNow());

    public AccountRegister Register { get; }

    public AccountBook Accounts { get; }

    public InvitationBook Invitations { get; }

    public SignUpBook SignUps { get; }

    public BeginBook Begins { get; }

    public PeopleBook People { get; }

    public SessionRegister Sessions => Get<SessionRegister>();

    public T Get<T>()
        where T : notnull => _scope.ServiceProvider.GetRequiredService<T>();

    public static NewAccount New(string name, string? email = null) => new(name, email ?? "nobody@harbour.example", Password) { Age = AgeAnswer.OldEnough };

    public static OperationId NewOperation() => new(Guid.CreateVersion7(TimeProvider.System.GetUtcNow()));

    public static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    public async Task<string> InviteAsync(Role role, string email, bool byHand = false) =>
        Done(await Invitations.InviteAsync(Owner, role, email, byHand, NewOperation(), Ct)).Secret!;

    public async Task<AccountId> OpenStudioAsync() => Done(await _scope.ServiceProvider.GetRequiredService<StudioBook>().Open(
        Db.Services.GetRequiredService<FirstRunCode>().Text, "Quay Reeds", null, New("Mara", "mara@harbour.example"), NewOperation(), Ct));

    /// <summary>The same Book on another way to the database.</summary>
    public BeginBook BeginsBy(IDbContextFactory<ClinicDb> databases)
    {
        var outbox = Get<Outbox>();
        return new BeginBook(databases, Clock, Register, outbox, new StrangerLinks(databases, Clock, Register, outbox));
    }

    /// <summary>Somebody who began by a link, and the session they are in with.</summary>
    public async Task<(AccountId Account, SessionId Session)> BegunAsync(string email)
    {
        var secret = Done(await Begins.SendAsync(Owner, email, byHand: false, NewOperation(), Ct)).Secret;
        var account = Done(await Begins.StartAsync(secret, new string('p', 43), "Jory", AgeAnswer.OldEnough, NewOperation(), Ct));
        return (account, (await Sessions.BeginAsync(account, SignInWay.Link, "Firefox on Android", null, Ct))!.Value);
    }

    public async Task<int> MailsAsync()
    {
        await using var db = Db.CreateDbContext();
        return await db.Set<Job>().CountAsync(job => job.Kind == JobKind.Mail, Ct);
    }

    public async Task<Mail> LatestMailAsync()
    {
        await using var db = Db.CreateDbContext();
        return Db.Services.GetRequiredService<Outbox>().Open((await db.Set<Job>().AsNoTracking().Where(job => job.Kind == JobKind.Mail).ToListAsync(Ct)).MaxBy(job => job.Id)!)!;
    }

    public ValueTask DisposeAsync() => _scope.DisposeAsync();
}
