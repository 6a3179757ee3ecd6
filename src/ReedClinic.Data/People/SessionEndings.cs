using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Ending sessions as part of something else: a new password, a disabled account, a changed role.</summary>
internal static class SessionEndings
{
    /// <summary>Ends every session of an account but one, in what is about to be saved.</summary>
    public static async Task EndSessionsAsync(this ClinicDb db, AccountId account, SessionId? but, DateTimeOffset now, CancellationToken ct)
    {
        foreach (var session in await db.Set<Session>().Where(row => row.Account == account && row.EndedAt == null && row.Id != but)
            .ToListAsync(ct).ConfigureAwait(false))
        {
            session.End(now);
        }
    }
}
