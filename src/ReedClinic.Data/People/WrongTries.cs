using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>
/// Counts wrong passwords and codes, in the database itself: of many that are tried at the same moment each one counts. An
/// account that was read before and is written back whole would count them as one. OWASP ASVS 5.0: 6.3.1.
/// </summary>
public sealed class WrongTries(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    /// <summary>How many wrong tries make an account rest.</summary>
    public const int Most = 5;

    /// <summary>How long it rests then.</summary>
    public static readonly TimeSpan Rest = TimeSpan.FromMinutes(5);

    /// <summary>Counts one.</summary>
    /// <param name="account">Whose.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>True when the account rests now.</returns>
    public async Task<bool> CountAsync(AccountId account, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var counted = false; // or perhaps, where the database went away while it said yes: then it isn't counted again
        return await databases.PatientlyAsync(async (attempt, stop) =>
        {
            var db = await databases.CreateDbContextAsync(stop).ConfigureAwait(false);
            await using var _ = db.ConfigureAwait(false);
            var mine = db.Users.Where(user => user.Id == account.Value);
            if (!counted)
            {
                var transaction = await attempt.BeginAsync(db, stop).ConfigureAwait(false);
                await using var __ = transaction.ConfigureAwait(false);
                await CountAsync(mine, now + Rest, stop).ConfigureAwait(false);
                counted = true;
                await transaction.CommitAsync(stop).ConfigureAwait(false);
            }

            return await mine.Select(user => user.LockoutEnd).SingleOrDefaultAsync(stop).ConfigureAwait(false) > now;
        }, ct).ConfigureAwait(false);
    }

    private static Task<int> CountAsync(IQueryable<ClinicAccount> mine, DateTimeOffset? until, CancellationToken ct) => mine.ExecuteUpdateAsync(
        row => row
            .SetProperty(user => user.LockoutEnd, user => user.AccessFailedCount + 1 >= Most ? until : user.LockoutEnd)
            .SetProperty(user => user.AccessFailedCount, user => user.AccessFailedCount + 1 >= Most ? 0 : user.AccessFailedCount + 1),
        ct);

    /// <summary>Forgets them: somebody is in.</summary>
    /// <param name="account">Whose.</param>
    /// <param name="ct">Stops it.</param>
    public async Task ForgetAsync(AccountId account, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        await db.Users.Where(user => user.Id == account.Value && user.AccessFailedCount > 0)
            .ExecuteUpdateAsync(row => row.SetProperty(user => user.AccessFailedCount, 0), ct).ConfigureAwait(false);
    }
}
