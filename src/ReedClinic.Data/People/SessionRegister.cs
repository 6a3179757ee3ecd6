using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>
/// Who is signed in with which browser: the host's way to begin, follow and end a session. People look at and end their own
/// through <see cref="SessionBook"/>. OWASP ASVS 5.0: 7.2.1 to 7.2.4, 7.3.1, 7.3.2, 7.4.1.
/// </summary>
public sealed class SessionRegister(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    private static readonly TimeSpan ToTheMinute = TimeSpan.FromMinutes(1);

    /// <summary>
    /// True where a password alone is enough for staff too. Only the host may say so, and only in Development, whose demo
    /// has nothing to protect.
    /// </summary>
    public bool PasswordWillDo { get; set; }

    /// <summary>Begins a session for somebody who has just proved who they are.</summary>
    /// <param name="account">Who.</param>
    /// <param name="way">How they proved it.</param>
    /// <param name="device">What browser it is, in a few words.</param>
    /// <param name="instead">The session that this one takes the place of: a new sign-in is a new token.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>Null when the account is gone or disabled.</returns>
    public async Task<SessionId?> BeginAsync(AccountId account, SignInWay way, string device, SessionId? instead, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.RightsOfAsync(account, ct).ConfigureAwait(false) is not { } rights)
        {
            return null;
        }

        var now = time.GetUtcNow();
        var session = new Session(new SessionId(new Guid(RandomNumberGenerator.GetBytes(16))), account, way, rights.IsStaff, device, now);
        var others = await db.Set<Session>().Where(row => row.Account == account && row.EndedAt == null)
            .OrderByDescending(row => row.SeenAt).ToListAsync(ct).ConfigureAwait(false);
        foreach (var old in others.Where((row, place) => row.Id == instead || place >= SessionRules.Most - 1))
        {
            old.End(now);
        }

        db.Add(session);
        db.Tell(AuditEvent.SignedIn, now, account.Value, about: session.Id.Value);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        return session.Id;
    }

    /// <summary>Who is behind a session, with the rights of this moment; null when it has ended.</summary>
    /// <param name="id">The session, as the sealed cookie has it.</param>
    /// <param name="acting">True when they do something: that keeps it from running out. A page that only watches doesn't.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<SignedInPerson?> WhoAsync(SessionId id, bool acting, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var session = await db.Set<Session>().AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, ct).ConfigureAwait(false);
        if (session?.IsLive(now) != true || await db.RightsOfAsync(session.Account, ct).ConfigureAwait(false) is not { } rights)
        {
            return null;
        }

        if (acting)
        {
            await SeenAsync(session, ct).ConfigureAwait(false);
        }

        return new SignedInPerson(rights.ToActor(session, PasswordWillDo, now), rights.Name, session);
    }

    /// <summary>Notes, to the minute, that somebody did something in a session.</summary>
    /// <param name="session">The session, as it was read.</param>
    /// <param name="ct">Stops it.</param>
    internal async Task SeenAsync(Session session, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        if (now - session.SeenAt < ToTheMinute)
        {
            return;
        }

        // Without the tracker: of two who see it at once, either may be the one that is written.
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        try
        {
            await db.Set<Session>().Where(row => row.Id == session.Id && row.EndedAt == null)
                .ExecuteUpdateAsync(row => row.SetProperty(seen => seen.SeenAt, now), ct).ConfigureAwait(false);
        }
        catch (Exception trouble) when (RecordsTrouble.Of(trouble) is RecordsState.Full)
        {
            // What is there can be read on, also where there is no room to note who did.
        }
    }

    /// <summary>Notes that a sign-in was refused.</summary>
    /// <param name="account">The account that was meant; null when there is none.</param>
    /// <param name="lockedOut">True when it rests for a while from now on.</param>
    /// <param name="ct">Stops it.</param>
    public async Task RefuseAsync(AccountId? account, bool lockedOut, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        db.Tell(lockedOut ? AuditEvent.LockedOut : AuditEvent.SignInRefused, time.GetUtcNow(), whom: account?.Value);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
    }

    /// <summary>Ends a session: somebody signs out.</summary>
    /// <param name="id">The session.</param>
    /// <param name="ct">Stops it.</param>
    public async Task EndAsync(SessionId id, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.Set<Session>().SingleOrDefaultAsync(row => row.Id == id && row.EndedAt == null, ct).ConfigureAwait(false) is { } session)
        {
            var now = time.GetUtcNow();
            session.End(now);
            db.Tell(AuditEvent.SignedOut, now, session.Account.Value, about: id.Value);
            await db.SaveChangesAsync(ct).ConfigureAwait(false);
        }
    }
}

/// <summary>Who is signed in.</summary>
/// <param name="Actor">Who they are and what they may, at this moment.</param>
/// <param name="Name">What they are called.</param>
/// <param name="Session">With which browser.</param>
public sealed record SignedInPerson(Actor Actor, string Name, Session Session);
