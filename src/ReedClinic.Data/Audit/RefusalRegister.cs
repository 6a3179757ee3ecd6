using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Audit;

/// <summary>Notes that somebody reached for what isn't theirs. OWASP ASVS 5.0: 16.3.2.</summary>
public sealed class RefusalRegister(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
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
