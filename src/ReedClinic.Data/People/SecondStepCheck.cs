using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>
/// Checks what is typed as the second step, for the host's sign-in. A code is taken once; wrong ones count as wrong
/// passwords do.
/// </summary>
public sealed class SecondStepCheck(IDbContextFactory<ClinicDb> databases, TimeProvider time, CodeSeal seal)
{
    /// <summary>True when a second step is asked for after this account's password.</summary>
    public async Task<bool> IsAskedOfAsync(AccountId id, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.Users.AnyAsync(account => account.Id == id.Value && account.CodeSince != null, ct).ConfigureAwait(false);
    }

    /// <summary>How the typed text proves the second step; null when it doesn't.</summary>
    /// <param name="id">Who gave the right password.</param>
    /// <param name="typed">Six digits from the app, or a recovery code.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<SignInWay?> TakeAsync(AccountId id, string? typed, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var account = await db.Users.SingleOrDefaultAsync(row => row.Id == id.Value && row.DisabledAt == null && row.CodeSince != null, ct).ConfigureAwait(false);
        if (account is null)
        {
            return null;
        }

        var now = time.GetUtcNow();
        var way = Code(account, typed, now) ?? await RecoveryAsync(db, id, typed, now, ct).ConfigureAwait(false);
        if (way is null)
        {
            return null;
        }

        // Whoever is in begins with no wrong tries. Of two who use one code at once, the second finds the account changed.
        account.AccessFailedCount = 0;
        account.ConcurrencyStamp = Guid.CreateVersion7(now).ToString();
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false) ? way : null;
    }

    private SignInWay? Code(ClinicAccount account, string? typed, DateTimeOffset now)
    {
        if (seal.Open(account.CodeKey) is not { } key || TimeCode.Matching(key, typed, account.LastCodeStep, now) is not { } step)
        {
            return null;
        }

        account.LastCodeStep = step;
        return SignInWay.PasswordAndCode;
    }

    private static async Task<SignInWay?> RecoveryAsync(ClinicDb db, AccountId id, string? typed, DateTimeOffset now, CancellationToken ct)
    {
        var hash = Tickets.HashOf(RecoveryWords.Plain(typed));
        if (await db.Set<RecoveryCode>().SingleOrDefaultAsync(code => code.Hash == hash && code.Account == id && code.UsedAt == null, ct).ConfigureAwait(false)
            is not { } mine)
        {
            return null;
        }

        mine.UsedAt = now;
        db.Tell(AuditEvent.RecoveryCodeUsed, now, id.Value);
        return SignInWay.PasswordAndRecoveryCode;
    }
}
