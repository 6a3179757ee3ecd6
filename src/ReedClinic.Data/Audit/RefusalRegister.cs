using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Audit;

/// <summary>Notes that somebody reached for what isn't theirs. OWASP ASVS 5.0: 16.3.2.</summary>
public sealed class RefusalRegister(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    private long _lastFlood;

    /// <summary>
    /// Notes that somebody knocked more often than the limits allow: once a minute at most, however many there are. What is
    /// noted can't be taken away again, so a flood must not be able to fill the database. OWASP ASVS 5.0: 16.3.3.
    /// </summary>
    /// <param name="ct">Stops it.</param>
    public async Task NoteFloodAsync(CancellationToken ct)
    {
        var minute = time.GetUtcNow().ToUnixTimeSeconds() / 60;
        if (Interlocked.Exchange(ref _lastFlood, minute) == minute)
        {
            return;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        db.Tell(AuditEvent.TooMany, time.GetUtcNow());
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
    }

    /// <summary>Notes it. Nothing of the address is kept: it may hold words that somebody typed.</summary>
    /// <param name="who">Who reached for it.</param>
    /// <param name="ct">Stops it.</param>
    public async Task NoteAsync(AccountId who, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        db.Tell(AuditEvent.Refused, time.GetUtcNow(), who.Value);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
    }
}
