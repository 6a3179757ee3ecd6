using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Taking away everything that somebody shows beside a password.</summary>
internal static class Factors
{
    /// <summary>True when an account holds a role beside a student's.</summary>
    public static Task<bool> IsStaffAsync(this ClinicDb db, Guid account, CancellationToken ct)
    {
        var student = ClinicAccountConfiguration.IdOf(Role.Student);
        return db.UserRoles.AnyAsync(held => held.UserId == account && held.RoleId != student, ct);
    }

    /// <summary>Takes passkeys, codes and recovery codes away, in what is about to be saved; a mail tells of each that was there.</summary>
    public static async Task ForgetFactorsAsync(this ClinicDb db, Outbox outbox, ClinicAccount account, DateTimeOffset now, CancellationToken ct)
    {
        var id = new AccountId(account.Id);
        if (await db.UserPasskeys.Where(key => key.UserId == account.Id).ToListAsync(ct).ConfigureAwait(false) is { Count: > 0 } passkeys)
        {
            db.RemoveRange(passkeys);
            db.Notice(outbox, account, AuditEvent.PasskeyRemoved, now);
        }

        if (account.CodeSince is not null)
        {
            db.Notice(outbox, account, AuditEvent.CodesOff, now);
        }

        db.RemoveRange(await db.Set<RecoveryCode>().Where(code => code.Account == id).ToListAsync(ct).ConfigureAwait(false));
        account.CodeSince = null;
        account.CodeKey = null;
    }
}
