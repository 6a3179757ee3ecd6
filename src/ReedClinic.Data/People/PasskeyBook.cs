using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Somebody's passkeys. That a key is sound was checked by the framework before. OWASP ASVS 5.0: 6.5.6.</summary>
public sealed class PasskeyBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    /// <summary>The most passkeys one account has.</summary>
    public const int Most = 10;

    /// <summary>The longest name of a passkey, in UTF-16 characters.</summary>
    public const int LongestName = 60;

    /// <summary>Adds a passkey that was just made for the account that asks.</summary>
    public async Task<Outcome<AccountId>> AddAsync(Actor actor, UserPasskeyInfo passkey, string? name, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(passkey);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.OwnAccountAsync(actor, ct).ConfigureAwait(false) is not { } account)
        {
            return new Outcome<AccountId>.NotFound();
        }

        List<Problem> problems = [];
        var called = PlainText.Read(name, "Name", LongestName, problems) ?? "Passkey";
        if (!actor.IsFresh)
        {
            problems.Add(FreshSignIn.Problem);
        }

        if (await db.UserPasskeys.CountAsync(key => key.UserId == account.Id, ct).ConfigureAwait(false) >= Most)
        {
            problems.Add(new Problem("", $"You have {Most} passkeys already. Remove one that you no longer use first."));
        }

        if (problems.Count > 0)
        {
            return new Outcome<AccountId>.Refused(problems);
        }

        var now = time.GetUtcNow();
        await SignOthersOutAsync(db, actor, now, ct).ConfigureAwait(false);
        db.UserPasskeys.Add(Row(account, passkey, called));
        db.Notice(outbox, account, AuditEvent.PasskeyAdded, now);
        db.Note(operation, "add-passkey", account.Id, now);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
            ? new Outcome<AccountId>.Done(actor.Account)
            : new Outcome<AccountId>.NotFound();
    }

    /// <summary>Removes one. Whoever works here keeps a second step, and nobody is left without any way in.</summary>
    public async Task<Outcome<AccountId>> RemoveAsync(Actor actor, string? id, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var account = await db.OwnAccountAsync(actor, ct).ConfigureAwait(false);
        var keys = await db.UserPasskeys.Where(key => key.UserId == actor.Account.Value).ToListAsync(ct).ConfigureAwait(false);
        var wanted = keys.SingleOrDefault(key => Convert.ToHexStringLower(key.CredentialId) == id);
        if (account is null || wanted is null)
        {
            return new Outcome<AccountId>.NotFound();
        }

        if (!actor.IsFresh)
        {
            return new Outcome<AccountId>.Refused([FreshSignIn.Problem]);
        }

        if (keys.Count == 1 && account.PasswordHash is null)
        {
            return new Outcome<AccountId>.Refused([new Problem("", "This is your only way in. Choose a password first, or add another passkey.")]);
        }

        if (keys.Count == 1 && (actor.WorksHere || actor.OwesSecondStep) && account.CodeSince is null)
        {
            return new Outcome<AccountId>.Refused([new Problem("", "Whoever works here needs a second step. Add another passkey or an authenticator app first.")]);
        }

        var now = time.GetUtcNow();
        db.Remove(wanted);
        db.Notice(outbox, account, AuditEvent.PasskeyRemoved, now);
        db.Note(operation, "remove-passkey", account.Id, now);
        await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        return new Outcome<AccountId>.Done(actor.Account);
    }

    // An account that only a link opened is somebody's own from now on: whoever came in by the link in another browser is out.
    private static async Task SignOthersOutAsync(ClinicDb db, Actor actor, DateTimeOffset now, CancellationToken ct)
    {
        if (await db.IsUnclaimedAsync(actor.Account, ct).ConfigureAwait(false))
        {
            await db.EndSessionsAsync(actor.Account, actor.Session, now, ct).ConfigureAwait(false);
        }
    }

    private static IdentityUserPasskey<Guid> Row(ClinicAccount account, UserPasskeyInfo passkey, string name) => new()
    {
        UserId = account.Id,
        CredentialId = passkey.CredentialId,
        Data = new IdentityPasskeyData
        {
            PublicKey = passkey.PublicKey,
            Name = name,
            CreatedAt = passkey.CreatedAt,
            SignCount = passkey.SignCount,
            Transports = passkey.Transports,
            IsUserVerified = passkey.IsUserVerified,
            IsBackupEligible = passkey.IsBackupEligible,
            IsBackedUp = passkey.IsBackedUp,
            AttestationObject = passkey.AttestationObject,
            ClientDataJson = passkey.ClientDataJson,
        },
    };
}
