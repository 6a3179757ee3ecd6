using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>The browsers that somebody is signed in with, as they see and end them. OWASP ASVS 5.0: 7.4.3, 7.4.5, 7.5.2.</summary>
public sealed class SessionBook(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    /// <summary>The live sessions of whoever asks, the latest first.</summary>
    public async Task<IReadOnlyList<SessionView>> MineAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var rows = await db.Set<Session>().AsNoTracking().Where(row => row.Account == actor.Account && row.EndedAt == null && row.EndsAt > now)
            .OrderByDescending(row => row.SeenAt).ToListAsync(ct).ConfigureAwait(false);
        return [.. rows.Where(row => row.IsLive(now)).Select(row => new SessionView(row.Id, row.Device, row.Way, row.StartedAt, row.SeenAt, row.Id == actor.Session))];
    }

    /// <summary>Ends one session of whoever asks; false when they have none such. Ending twice ends once.</summary>
    public async Task<bool> EndAsync(Actor actor, SessionId id, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return await EndWhereAsync(actor, row => row.Id == id, ct).ConfigureAwait(false) > 0;
    }

    /// <summary>Ends every session of whoever asks but the one they ask from, and says how many there were.</summary>
    public async Task<int> EndOthersAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return await EndWhereAsync(actor, row => row.Id != actor.Session, ct).ConfigureAwait(false);
    }

    private async Task<int> EndWhereAsync(Actor actor, Func<Session, bool> which, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var live = await db.Set<Session>().Where(row => row.Account == actor.Account && row.EndedAt == null).ToListAsync(ct).ConfigureAwait(false);
        var ended = live.Where(which).ToList();
        foreach (var session in ended)
        {
            session.End(now);
            db.Tell(AuditEvent.SignedOut, now, actor.Account.Value, about: session.Id.Value);
        }

        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        return ended.Count;
    }
}

/// <summary>A session as its owner sees it.</summary>
/// <param name="Id">Which.</param>
/// <param name="Device">What browser it is.</param>
/// <param name="Way">How it began.</param>
/// <param name="StartedAt">When it began.</param>
/// <param name="SeenAt">When something was last done in it, to the minute.</param>
/// <param name="IsThis">True for the one they ask from.</param>
public sealed record SessionView(SessionId Id, string Device, SignInWay Way, DateTimeOffset StartedAt, DateTimeOffset SeenAt, bool IsThis);
