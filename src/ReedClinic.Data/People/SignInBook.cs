using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>
/// What somebody signs in with: their address and their password, changed by themselves or won back by a link. What can't be
/// taken back wants a fresh sign-in. OWASP ASVS 5.0: 6.2.2, 6.2.3, 6.3.7, 6.3.8, 6.4.3, 7.5.1.
/// </summary>
public sealed class SignInBook(
    IDbContextFactory<ClinicDb> databases, TimeProvider time, IPasswordHasher<ClinicAccount> hasher, ILookupNormalizer fold, Outbox outbox)
{
    /// <summary>How many links one address is sent in an hour; what is asked beyond that is answered alike, and sent to nobody.</summary>
    public const int MostLinksAnHour = 3;

    internal static Problem Rests { get; } = new("Old", "After five wrong tries an account rests for five minutes. Please wait.");

    /// <summary>What the account that asks signs in with; null when it is gone.</summary>
    public async Task<SignInMeans?> ReadAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var id = actor.Account.Value;
        var account = await db.Users.AsNoTracking().SingleOrDefaultAsync(user => user.Id == id, ct).ConfigureAwait(false);
        if (account is null)
        {
            return null;
        }

        var passkeys = await db.UserPasskeys.AsNoTracking().Where(key => key.UserId == id).ToListAsync(ct).ConfigureAwait(false);
        var codes = await db.Set<RecoveryCode>().CountAsync(code => code.Account == actor.Account && code.UsedAt == null, ct).ConfigureAwait(false);
        return new SignInMeans(
            account.DisplayName,
            account.Email!,
            account.PasswordHash is not null,
            account.CodeSince,
            codes,
            [.. passkeys.OrderBy(key => key.Data.CreatedAt).Select(key => new PasskeyView(Convert.ToHexStringLower(key.CredentialId), key.Data.Name ?? "", key.Data.CreatedAt, key.Data.IsBackedUp))])
        {
            EmailProved = account.EmailConfirmed,
        };
    }

    /// <summary>
    /// Chooses another password; the old one is asked for, and every other browser is signed out. Where there is no old one, or
    /// the password alone doesn't count, a fresh sign-in is asked for instead: else an open browser, or half of what opens the
    /// account, would be enough to take the other half.
    /// </summary>
    public async Task<Outcome<AccountId>> ChangePasswordAsync(
        Actor actor, string? old, string? wanted, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.OwnAccountAsync(actor, ct).ConfigureAwait(false) is not { } account)
        {
            return new Outcome<AccountId>.NotFound();
        }

        if (await db.WasDoneAsync(operation, "change-password", account.Id, ct).ConfigureAwait(false))
        {
            return new Outcome<AccountId>.Done(actor.Account);
        }

        if (!actor.IsFresh && (account.PasswordHash is null || actor.OwesSecondStep))
        {
            return new Outcome<AccountId>.Refused([FreshSignIn.Problem]);
        }

        var problems = ProblemsWith(account, old, wanted);
        if (problems.Count > 0)
        {
            return new Outcome<AccountId>.Refused(problems);
        }

        await SetPasswordAsync(db, account, wanted!, actor.Session, ct).ConfigureAwait(false);
        db.Note(operation, "change-password", account.Id, time.GetUtcNow());
        await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        return new Outcome<AccountId>.Done(actor.Account);
    }

    /// <summary>
    /// Sends a link to choose a new password, if the address has an account. Whoever asks is told the same in either case.
    /// </summary>
    public async Task AskForPasswordAsync(string? email, CancellationToken ct)
    {
        if (EmailAddress.ReadAny(email) is not { } address)
        {
            return;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var folded = fold.NormalizeEmail(address);
        var account = await db.Users.SingleOrDefaultAsync(user => user.NormalizedEmail == folded && user.DisabledAt == null, ct).ConfigureAwait(false);
        if (await db.TicketsToAsync(TicketPurpose.NewPassword, address, now.AddHours(-1), ct).ConfigureAwait(false) < MostLinksAnHour)
        {
            // Nobody has shown that they read the mail of this address: it mustn't open what those who work here see.
            var unproved = await db.IsStaffAsync(account?.Id ?? default, ct).ConfigureAwait(false) && account is { EmailConfirmed: false };
            await PutLinkAsync(db, unproved ? null : account, account?.Email ?? address, now, ct).ConfigureAwait(false);
        }

        db.Tell(AuditEvent.PasswordAskedFor, now, whom: account?.Id);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
    }

    // An address that nobody has gets a ticket too, which is taken back at once, and a mail that isn't sent: the work is the same.
    private async Task PutLinkAsync(ClinicDb db, ClinicAccount? account, string address, DateTimeOffset now, CancellationToken ct)
    {
        await db.WithdrawTicketsAsync(TicketPurpose.NewPassword, address, now, ct).ConfigureAwait(false);
        var (ticket, secret) = Tickets.Make(TicketPurpose.NewPassword, address, now, account is null ? null : new AccountId(account.Id));
        db.Add(ticket);
        var mail = new Mail(MailKind.NewPassword, address, account?.DisplayName ?? address) { Secret = secret, At = ticket.ExpiresAt, About = account?.Id };
        if (account is null)
        {
            ticket.Withdraw(now);
            outbox.PutAside(db, mail);
        }
        else
        {
            outbox.Put(db, mail);
        }
    }

    /// <summary>True when a link to choose a new password is still good. Looking uses nothing up.</summary>
    public async Task<bool> IsGoodAsync(string? secret, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.FindTicketAsync(secret, TicketPurpose.NewPassword, time.GetUtcNow(), ct).ConfigureAwait(false) is not null;
    }

    /// <summary>
    /// Chooses a new password by a link, which is then used up; every browser is signed out. While nobody had shown that the
    /// address is theirs, somebody else may have made the account: what they came in with goes with their password. Nobody is signed in by it: a
    /// second step that was asked for before is asked for still.
    /// </summary>
    /// <returns>NotFound for a link that is no good any more.</returns>
    public async Task<Outcome<AccountId>> ChoosePasswordAsync(string? secret, string? wanted, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var ticket = await db.FindTicketAsync(secret, TicketPurpose.NewPassword, now, ct).ConfigureAwait(false);
        var account = ticket?.Account is { } id
            ? await db.Users.SingleOrDefaultAsync(user => user.Id == id.Value && user.DisabledAt == null, ct).ConfigureAwait(false)
            : null;
        if (account is null || Folding.OfEmail(account.Email!) != ticket!.FoldedEmail
            || (!account.EmailConfirmed && await db.IsStaffAsync(account.Id, ct).ConfigureAwait(false)))
        {
            db.Tell(AuditEvent.LinkRefused, now, about: ticket?.Id.Value);
            await db.SaveChangesAsync(ct).ConfigureAwait(false);
            return new Outcome<AccountId>.NotFound();
        }

        if (!account.EmailConfirmed)
        {
            await db.ForgetFactorsAsync(outbox, account, now, ct).ConfigureAwait(false);
            account.EmailConfirmed = true;
        }

        if (ProblemWith(account, wanted) is { } problem)
        {
            return new Outcome<AccountId>.Refused([new Problem("Password", problem)]);
        }

        ticket.Use(now);
        await SetPasswordAsync(db, account, wanted!, null, ct).ConfigureAwait(false);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
            ? new Outcome<AccountId>.Done(new AccountId(account.Id))
            : new Outcome<AccountId>.NotFound();
    }

    /// <summary>
    /// Asks for another address, or to show that the present one is theirs: a link goes to it, and nothing changes before it
    /// is used. Where too many went lately, it is said that none goes now.
    /// </summary>
    public async Task<Outcome<string>> AskForEmailAsync(Actor actor, string? email, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.OwnAccountAsync(actor, ct).ConfigureAwait(false) is not { } account)
        {
            return new Outcome<string>.NotFound();
        }

        if (!actor.IsFresh)
        {
            return new Outcome<string>.Refused([FreshSignIn.Problem]);
        }

        // Their own is taken as it stands, though it may be one that nobody could give today.
        var own = EmailAddress.ReadAny(email) is { } typed && Folding.OfEmail(typed) == Folding.OfEmail(account.Email!);
        if ((own ? account.Email : EmailAddress.Read(email)) is not { } address)
        {
            return new Outcome<string>.Refused([new Problem("Email", "Write the e-mail address in full, such as name@example.org.")]);
        }

        var now = time.GetUtcNow();
        if (!await db.WasDoneAsync(operation, "ask-for-email", account.Id, ct).ConfigureAwait(false))
        {
            if (await db.NoLinkNowAsync(account, own ? null : address, now, ct).ConfigureAwait(false) is { } problem)
            {
                return new Outcome<string>.Refused([problem]);
            }

            var (ticket, secret) = Tickets.Make(TicketPurpose.NewEmail, address, now, actor.Account);
            db.Add(ticket);
            outbox.Put(db, new Mail(MailKind.NewEmail, address, account.DisplayName) { Secret = secret, At = ticket.ExpiresAt, About = account.Id });
            db.Note(operation, "ask-for-email", account.Id, now);
            await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        }

        return new Outcome<string>.Done(address);
    }

    /// <summary>
    /// The link that went to the new address was opened, in a browser that is signed in to the account that asked: from now on
    /// it is theirs. The old one is told.
    /// </summary>
    /// <returns>NotFound for a link that is no good, isn't this account's, or whose address has an account already.</returns>
    public async Task<Outcome<string>> ConfirmEmailAsync(Actor actor, string? secret, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var account = await db.OwnAccountAsync(actor, ct).ConfigureAwait(false);
        var ticket = await db.FindTicketAsync(secret, TicketPurpose.NewEmail, now, ct).ConfigureAwait(false);
        if (account is not null && await db.WasDoneAsync(operation, "confirm-email", account.Id, ct).ConfigureAwait(false))
        {
            return new Outcome<string>.Done(account.Email!);
        }

        if (account is null || ticket is null || ticket.Account != actor.Account)
        {
            await databases.NoteRefusedLinkAsync(one => one.TicketOfAsync(secret, TicketPurpose.NewEmail, ct), now, ct).ConfigureAwait(false);
            return new Outcome<string>.NotFound();
        }

        if (Folding.OfEmail(account.Email!) != ticket.FoldedEmail)
        {
            Notice(db, account, AuditEvent.EmailChanged);
        }

        account.EmailConfirmed = true;
        account.Email = account.UserName = ticket.Email;
        account.NormalizedEmail = fold.NormalizeEmail(ticket.Email);
        account.NormalizedUserName = fold.NormalizeName(ticket.Email);
        ticket.Use(now);
        await db.WithdrawLinksAsync(actor.Account, now, ct).ConfigureAwait(false);
        await db.WriteToAsync(actor.Account, ticket.Email, ct).ConfigureAwait(false);
        db.Note(operation, "confirm-email", account.Id, now);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
            ? new Outcome<string>.Done(ticket.Email)
            : new Outcome<string>.NotFound();
    }

    private List<Problem> ProblemsWith(ClinicAccount account, string? old, string? wanted)
    {
        List<Problem> problems = [];
        if (account.LockoutEnd > time.GetUtcNow())
        {
            problems.Add(Rests);
        }
        else if (account.PasswordHash is { } hash && hasher.VerifyHashedPassword(account, hash, old ?? "") == PasswordVerificationResult.Failed)
        {
            problems.Add(new Problem("Old", "That isn’t your present password."));
        }

        if (ProblemWith(account, wanted) is { } problem)
        {
            problems.Add(new Problem("Password", problem));
        }

        return problems;
    }

    private static string? ProblemWith(ClinicAccount account, string? wanted) => PasswordRule.ProblemWith(
        wanted,
        account.CodeSince is null ? PasswordRule.Shortest : PasswordRule.ShortestWithSecondStep,
        CommonPasswords.List,
        account.DisplayName,
        account.Email);

    private async Task SetPasswordAsync(ClinicDb db, ClinicAccount account, string password, SessionId? but, CancellationToken ct)
    {
        account.PasswordHash = hasher.HashPassword(account, password);
        account.SecurityStamp = Convert.ToHexString(RandomNumberGenerator.GetBytes(20));
        account.AccessFailedCount = 0;
        account.LockoutEnd = null;
        await db.EndSessionsAsync(new AccountId(account.Id), but, time.GetUtcNow(), ct).ConfigureAwait(false);
        await db.WithdrawLinksAsync(new AccountId(account.Id), time.GetUtcNow(), ct).ConfigureAwait(false);
        Notice(db, account, AuditEvent.PasswordChanged);
    }

    private void Notice(ClinicDb db, ClinicAccount account, AuditEvent what) => db.Notice(outbox, account, what, time.GetUtcNow());
}

/// <summary>What somebody signs in with.</summary>
/// <param name="Name">What they are called.</param>
/// <param name="Email">Their address.</param>
/// <param name="HasPassword">True when they have a password.</param>
/// <param name="CodeSince">Since when codes of an authenticator app are asked for; null while they aren't.</param>
/// <param name="RecoveryCodesLeft">How many recovery codes are left.</param>
/// <param name="Passkeys">Their passkeys, the oldest first.</param>
public sealed record SignInMeans(
    string Name, string Email, bool HasPassword, DateTimeOffset? CodeSince, int RecoveryCodesLeft, IReadOnlyList<PasskeyView> Passkeys)
{
    /// <summary>True when a link that was mailed to the address was opened: then a forgotten password can be won back by mail.</summary>
    public bool EmailProved { get; init; }

    /// <summary>False while only a link opens the account.</summary>
    public bool IsClaimed => HasPassword || Passkeys.Count > 0;

    /// <summary>True when a password alone doesn't open the account.</summary>
    public bool HasSecondStep => CodeSince is not null || Passkeys.Count > 0;
}

/// <summary>A passkey as its owner sees it.</summary>
/// <param name="Id">Its id, in hexadecimal.</param>
/// <param name="Name">What its owner calls it.</param>
/// <param name="AddedAt">When it was added.</param>
/// <param name="IsBackedUp">True when it is kept on more than one device, as its maker says.</param>
public sealed record PasskeyView(string Id, string Name, DateTimeOffset AddedAt, bool IsBackedUp);
