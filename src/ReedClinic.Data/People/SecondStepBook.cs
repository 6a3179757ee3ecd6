using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>
/// The second step after a password: codes from an authenticator app, and codes kept on paper for the day the phone is gone.
/// OWASP ASVS 5.0: 6.3.3, 6.4.4, 6.5.1 to 6.5.5.
/// </summary>
public sealed class SecondStepBook(
    IDbContextFactory<ClinicDb> databases, TimeProvider time, IPasswordHasher<ClinicAccount> hasher, CodeSeal seal, Outbox outbox)
{
    private const string CodesOn = "codes-on";

    /// <summary>How many recovery codes somebody is given.</summary>
    public const int HowManyCodes = 10;

    /// <summary>
    /// A new key to be typed into an authenticator app; one that was shown before is no good any more. Codes are asked for
    /// only after one was right.
    /// </summary>
    /// <returns>The key's letters; NotFound when codes are asked for already.</returns>
    public async Task<Outcome<string>> BeginAsync(Actor actor, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var account = await db.OwnAccountAsync(actor, ct).ConfigureAwait(false);
        if (account is null || account.CodeSince is not null)
        {
            return new Outcome<string>.NotFound();
        }

        if (!actor.IsFresh)
        {
            return new Outcome<string>.Refused([FreshSignIn.Problem]);
        }

        if (await db.WasDoneAsync(operation, "codes-begin", account.Id, ct).ConfigureAwait(false) && seal.Open(account.CodeKey) is { } shown)
        {
            return new Outcome<string>.Done(TimeCode.ToLetters(shown));
        }

        var key = RandomNumberGenerator.GetBytes(TimeCode.KeyBytes);
        account.CodeKey = seal.Close(key);
        db.Note(operation, "codes-begin", account.Id, time.GetUtcNow());
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
            ? new Outcome<string>.Done(TimeCode.ToLetters(key))
            : new Outcome<string>.NotFound();
    }

    /// <summary>The key that was shown and waits for its first code; null when there is none, or whoever asks isn't fresh.</summary>
    public async Task<string?> WaitingAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var account = actor.IsFresh ? await db.OwnAccountAsync(actor, ct).ConfigureAwait(false) : null;
        return account is { CodeSince: null } && seal.Open(account.CodeKey) is { } key ? TimeCode.ToLetters(key) : null;
    }

    /// <summary>A first code was right: from now on one is asked for after the password. Recovery codes are made with it.</summary>
    /// <returns>The recovery codes, which are shown once.</returns>
    public async Task<Outcome<IReadOnlyList<string>>> ConfirmAsync(Actor actor, string? code, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var account = await db.OwnAccountAsync(actor, ct).ConfigureAwait(false);
        if (account is null || account.CodeSince is not null || seal.Open(account.CodeKey) is not { } key)
        {
            return await AnswerToRepeatAsync(db, actor, operation, ct).ConfigureAwait(false);
        }

        var now = time.GetUtcNow();
        if (!actor.IsFresh)
        {
            return new Outcome<IReadOnlyList<string>>.Refused([FreshSignIn.Problem]);
        }

        if (TimeCode.Matching(key, code, account.LastCodeStep, now) is not { } step)
        {
            return new Outcome<IReadOnlyList<string>>.Refused(
                [new Problem("Code", "That isn’t the code of this moment. Check that the clocks of your phone and of this computer agree, and type the next one.")]);
        }

        account.CodeSince = now;
        account.LastCodeStep = step;
        var codes = await NewCodesAsync(db, account, now, ct).ConfigureAwait(false);
        db.Notice(outbox, account, AuditEvent.CodesOn, now);
        db.Note(operation, CodesOn, account.Id, now);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
            ? new Outcome<IReadOnlyList<string>>.Done(codes)
            : await AnswerToRepeatAsync(db, actor, operation, ct).ConfigureAwait(false);
    }

    // A button that was pressed twice: the browser shows the second answer alone, and recovery codes stand nowhere to be shown
    // again. So there are new ones.
    private async Task<Outcome<IReadOnlyList<string>>> AnswerToRepeatAsync(ClinicDb db, Actor actor, OperationId operation, CancellationToken ct) =>
        actor.IsFresh && await db.WasDoneAsync(operation, CodesOn, actor.Account.Value, ct).ConfigureAwait(false)
            ? await NewRecoveryCodesAsync(actor, default, ct).ConfigureAwait(false)
            : new Outcome<IReadOnlyList<string>>.NotFound();

    /// <summary>
    /// Codes are no longer asked for. Whoever works here needs a passkey then, and a password that was short because of the
    /// codes has to be made longer first.
    /// </summary>
    public async Task<Outcome<AccountId>> EndAsync(Actor actor, string? password, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var account = await db.OwnAccountAsync(actor, ct).ConfigureAwait(false);
        if (account?.CodeSince is null)
        {
            return new Outcome<AccountId>.NotFound();
        }

        var passkey = await db.UserPasskeys.AnyAsync(key => key.UserId == account.Id, ct).ConfigureAwait(false);
        if (WhyNotEnd(actor, account, password, passkey) is { } problem)
        {
            return new Outcome<AccountId>.Refused([problem]);
        }

        var now = time.GetUtcNow();
        account.CodeSince = null;
        account.CodeKey = null;
        db.RemoveRange(await db.Set<RecoveryCode>().Where(code => code.Account == actor.Account).ToListAsync(ct).ConfigureAwait(false));
        db.Notice(outbox, account, AuditEvent.CodesOff, now);
        db.Note(operation, "codes-off", account.Id, now);
        await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        return new Outcome<AccountId>.Done(actor.Account);
    }

    /// <summary>New recovery codes; the old ones are no good any more.</summary>
    /// <returns>The codes, which are shown once.</returns>
    public async Task<Outcome<IReadOnlyList<string>>> NewRecoveryCodesAsync(Actor actor, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var account = await db.OwnAccountAsync(actor, ct).ConfigureAwait(false);
        if (account?.CodeSince is null)
        {
            return new Outcome<IReadOnlyList<string>>.NotFound();
        }

        if (!actor.IsFresh)
        {
            return new Outcome<IReadOnlyList<string>>.Refused([FreshSignIn.Problem]);
        }

        var now = time.GetUtcNow();
        var codes = await NewCodesAsync(db, account, now, ct).ConfigureAwait(false);
        db.Notice(outbox, account, AuditEvent.RecoveryCodesMade, now);
        db.Note(operation, "recovery-codes", account.Id, now);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
            ? new Outcome<IReadOnlyList<string>>.Done(codes)
            : new Outcome<IReadOnlyList<string>>.NotFound();
    }

    private Problem? WhyNotEnd(Actor actor, ClinicAccount account, string? password, bool passkey)
    {
        if (!actor.IsFresh)
        {
            return FreshSignIn.Problem;
        }

        if (account.LockoutEnd > time.GetUtcNow())
        {
            return SignInBook.Rests with { Field = "Password" };
        }

        if (account.PasswordHash is { } hash && hasher.VerifyHashedPassword(account, hash, password ?? "") == PasswordVerificationResult.Failed)
        {
            return new Problem("Password", "That isn’t your password.");
        }

        if (account.PasswordHash is not null && PasswordRule.ProblemWith(password) is not null)
        {
            return new Problem("Password", $"Without the codes a password needs {PasswordRule.Shortest} characters. Choose a longer one first.");
        }

        return actor.WorksHere && !passkey
            ? new Problem("", "Whoever works here needs a second step. Add a passkey first; then the codes can go.")
            : null;
    }

    private static async Task<IReadOnlyList<string>> NewCodesAsync(ClinicDb db, ClinicAccount account, DateTimeOffset now, CancellationToken ct)
    {
        var mine = new AccountId(account.Id);
        db.RemoveRange(await db.Set<RecoveryCode>().Where(code => code.Account == mine).ToListAsync(ct).ConfigureAwait(false));
        var codes = Enumerable.Range(0, HowManyCodes).Select(_ => RecoveryWords.New()).ToList();
        db.AddRange(codes.Select(code => new RecoveryCode { Hash = Tickets.HashOf(RecoveryWords.Plain(code)), Account = mine, MadeAt = now }));
        return codes;
    }
}

/// <summary>Seals the key of an authenticator app, so that whoever reads the database can make no codes.</summary>
public sealed class CodeSeal(IDataProtectionProvider keys)
{
    private readonly IDataProtector _seal = keys.CreateProtector("ReedClinic.CodeKey");

    /// <summary>Seals a key.</summary>
    /// <param name="key">The key.</param>
    public string Close(byte[] key) => Convert.ToBase64String(_seal.Protect(key));

    /// <summary>Opens a sealed key; null when there is none, or the seal can't be opened any more.</summary>
    /// <param name="stored">As it is stored.</param>
    public byte[]? Open(string? stored)
    {
        try
        {
            return stored is null ? null : _seal.Unprotect(Convert.FromBase64String(stored));
        }
        catch (CryptographicException)
        {
            return null;
        }
    }
}

/// <summary>Recovery codes: 120 random bits each, in letters and digits that aren't mistaken for one another.</summary>
internal static class RecoveryWords
{
    private const string Letters = "abcdefghjkmnpqrstuvwxyz23456789";
    private const int Length = 25; // 31 letters each: 123 bits
    private const int Group = 5;

    public static string New() => string.Join('-', RandomNumberGenerator.GetString(Letters, Length).Chunk(Group).Select(group => new string(group)));

    /// <summary>A code as it is compared: what was typed without dashes, spaces and capitals.</summary>
    public static string Plain(string? typed) => new([.. (typed ?? "").ToLowerInvariant().Where(char.IsAsciiLetterOrDigit).Take(Length + 1)]);
}
