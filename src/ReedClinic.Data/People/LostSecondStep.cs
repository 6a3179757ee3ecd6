using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>
/// For somebody who has lost every passkey and code, and whose identity whoever runs the machine has made sure of: takes the
/// second step away, so that they set one up anew after their password. No page does this. OWASP ASVS 5.0: 6.4.4.
/// </summary>
public sealed class LostSecondStep(IDbContextFactory<ClinicDb> databases, TimeProvider time, ILookupNormalizer fold, Outbox outbox)
{
    /// <summary>Takes it away; every browser is signed out, and a mail says so.</summary>
    /// <param name="email">The address they sign in with.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>False when nobody has this address.</returns>
    public async Task<bool> ForgetAsync(string? email, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var folded = fold.NormalizeEmail(EmailAddress.ReadAny(email) ?? "");
        if (await db.Users.SingleOrDefaultAsync(user => user.NormalizedEmail == folded, ct).ConfigureAwait(false) is not { } account)
        {
            return false;
        }

        var (now, id) = (time.GetUtcNow(), new AccountId(account.Id));
        await db.ForgetFactorsAsync(outbox, account, now, ct).ConfigureAwait(false);
        await db.EndSessionsAsync(id, null, now, ct).ConfigureAwait(false);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        return true;
    }
}
