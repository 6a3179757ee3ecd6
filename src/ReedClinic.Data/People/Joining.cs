using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Links to join, and giving an account that was begun by a link a password of its own.</summary>
internal static class Joining
{
    /// <summary>The link to join while it is good.</summary>
    public static async Task<Ticket?> FindJoinAsync(this ClinicDb db, string? secret, DateTimeOffset now, CancellationToken ct) =>
        await db.TicketToJoinAsync(secret, ct).ConfigureAwait(false) is { } ticket && ticket.IsGood(now) ? ticket : null;

    /// <summary>The link to join, be it good or not.</summary>
    public static async Task<Ticket?> TicketToJoinAsync(this ClinicDb db, string? secret, CancellationToken ct) =>
        await db.TicketOfAsync(secret, TicketPurpose.JoinAsTeacher, ct).ConfigureAwait(false)
        ?? await db.TicketOfAsync(secret, TicketPurpose.JoinAsStudent, ct).ConfigureAwait(false);

    /// <summary>True while nobody can sign in with it but by a link.</summary>
    public static async Task<bool> IsUnclaimedAsync(this ClinicDb db, AccountId account, CancellationToken ct) =>
        await db.Users.AnyAsync(
            user => user.Id == account.Value && user.PasswordHash == null && !db.UserPasskeys.Any(key => key.UserId == user.Id), ct).ConfigureAwait(false);

    /// <summary>
    /// Gives an account that has none a password, and uses up the link that allowed it. Whoever came in by a link in another
    /// browser is out, and a mail tells: it may not have been the one who chose the password.
    /// </summary>
    public static async Task<Outcome<AccountId>> ClaimAsync(
        this ClinicDb db, AccountRegister register, Outbox outbox, Claim claim, DateTimeOffset now, CancellationToken ct)
    {
        var (account, by) = (claim.Account, claim.By);
        if (by?.IsGood(now) == false
            || !await db.IsUnclaimedAsync(account, ct).ConfigureAwait(false)
            || await db.Users.SingleOrDefaultAsync(user => user.Id == account.Value && user.DisabledAt == null, ct).ConfigureAwait(false) is not { } mine)
        {
            return new Outcome<AccountId>.NotFound();
        }

        by?.Use(now);
        mine.EmailConfirmed |= by is not null && await db.WasMailedAsync(by, ct).ConfigureAwait(false);
        mine.PasswordHash = register.HashOf(mine, claim.Password);
        mine.SecurityStamp = AccountRegister.NewStamp();
        mine.ConcurrencyStamp = AccountRegister.NewStamp();
        if (PersonName.Read(claim.Name) is { } called)
        {
            mine.DisplayName = called;
            (await db.Set<Student>().SingleOrDefaultAsync(person => person.Account == account, ct).ConfigureAwait(false))?.Rename(called);
        }

        await db.EndSessionsAsync(account, claim.In, now, ct).ConfigureAwait(false);
        db.Notice(outbox, mine, AuditEvent.PasswordChanged, now);
        try
        {
            await db.SaveChangesAsync(ct).ConfigureAwait(false);
            return new Outcome<AccountId>.Done(account);
        }
        catch (DbUpdateConcurrencyException)
        {
            return new Outcome<AccountId>.NotFound();
        }
    }
}

/// <summary>What makes an account that was begun by a link somebody's own.</summary>
/// <param name="Account">Which.</param>
/// <param name="Password">The password that was chosen; it was checked.</param>
/// <param name="Name">What they are called from now on; null when that stays.</param>
/// <param name="By">The link that allows it; null for whoever is in already.</param>
/// <param name="In">The browser it was chosen in, which stays in.</param>
internal sealed record Claim(AccountId Account, string Password, string? Name = null, Ticket? By = null, SessionId? In = null)
{
    /// <summary>Keeps the password out of logs.</summary>
    public override string ToString() => nameof(Claim);
}
