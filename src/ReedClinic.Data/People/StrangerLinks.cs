using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>
/// Links that an address asks for itself. Whoever asks is told the same, with the same work, whether or not the address is
/// known here: only the mail says, to whoever reads it. OWASP ASVS 5.0: 6.3.8.
/// </summary>
/// <param name="databases">The database.</param>
/// <param name="time">The clock.</param>
/// <param name="register">Folds an address as accounts are found by it.</param>
/// <param name="outbox">Sends the mail.</param>
public sealed class StrangerLinks(IDbContextFactory<ClinicDb> databases, TimeProvider time, AccountRegister register, Outbox outbox)
{
    /// <summary>How many mails one address gets in an hour, whoever asks for them.</summary>
    public const int MostInAnHour = 3;

    // Links of another kind (a forgotten password) have a count of their own and don't use this one up.
    private static readonly TicketPurpose[] OfStrangers = [TicketPurpose.Begin, TicketPurpose.JoinAsStudent];

    /// <summary>Puts out the mail that fits the address.</summary>
    /// <param name="purpose">Making an account, or beginning without one.</param>
    /// <param name="email">What was typed.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>NotFound while the studio isn't open to strangers; but whoever began by a link gets another one then too.</returns>
    internal async Task<Outcome<bool>> AskAsync(TicketPurpose purpose, string? email, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var open = await db.Set<Studio>().Select(studio => (bool?)studio.SignUpOpen).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (open is null || (open is false && purpose != TicketPurpose.Begin))
        {
            return new Outcome<bool>.NotFound();
        }

        return EmailAddress.Read(email) is { } address
            ? await SendAsync(db, purpose, address, operation, open.Value, ct).ConfigureAwait(false)
            : new Outcome<bool>.Refused([new Problem("Email", "Write the e-mail address in full, such as name@example.org.")]);
    }

    /// <summary>The same for an address that is sure already; one that nobody has is written to only where strangers may come.</summary>
    internal async Task<Outcome<bool>> SendAsync(ClinicDb db, TicketPurpose purpose, string address, OperationId operation, bool toStrangers, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var folded = Folding.OfEmail(address);
        var hourAgo = now.AddHours(-1);
        var lately = await db.Set<Ticket>()
            .CountAsync(row => row.FoldedEmail == folded && row.MadeBy == null && row.MadeAt > hourAgo && OfStrangers.Contains(row.Purpose), ct).ConfigureAwait(false);
        var known = register.Fold(address);
        var account = await db.Users.AsNoTracking().Where(user => user.NormalizedEmail == known)
            .Select(user => new { user.Id, Bare = user.DisabledAt == null && user.PasswordHash == null && !db.UserPasskeys.Any(key => key.UserId == user.Id) })
            .SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (lately >= MostInAnHour)
        {
            return new Outcome<bool>.Done(true);
        }

        // One who can sign in, or whom nothing is sent, gets a ticket too, which is taken back at once: the work is the same.
        var (ticket, secret) = Tickets.Make(purpose, address, now, account is { Bare: true } ? new AccountId(account.Id) : null);
        var has = account is { Bare: false };
        var nobody = account is null && !toStrangers;
        if (has || nobody)
        {
            ticket.Withdraw(now);
        }

        db.Add(ticket);
        db.Note(operation, "ask-for-link", ticket.Id.Value, now);
        var mail = has ? new Mail(MailKind.HaveAccount, address) { About = account?.Id } : MailOf(ticket, secret);
        if (nobody)
        {
            outbox.PutAside(db, mail);
        }
        else
        {
            outbox.Put(db, mail);
        }

        await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        return new Outcome<bool>.Done(true);
    }

    /// <summary>The mail that carries a ticket's secret.</summary>
    internal static Mail MailOf(Ticket ticket, string secret) => new(
        ticket.Purpose switch
        {
            TicketPurpose.JoinAsTeacher => MailKind.JoinAsTeacher,
            TicketPurpose.JoinAsStudent => MailKind.JoinAsStudent,
            _ => MailKind.Begin,
        },
        ticket.Email)
    {
        Secret = secret,
        At = ticket.ExpiresAt,
        About = ticket.Account?.Value,
    };
}
