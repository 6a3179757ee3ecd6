using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>The account of whoever asks.</summary>
internal static class OwnAccount
{
    /// <summary>The account of whoever asks, to be changed; null when it is gone or disabled.</summary>
    public static async Task<ClinicAccount?> OwnAccountAsync(this ClinicDb db, Actor actor, CancellationToken ct) =>
        await db.Users.SingleOrDefaultAsync(user => user.Id == actor.Account.Value && user.DisabledAt == null, ct).ConfigureAwait(false);
}
