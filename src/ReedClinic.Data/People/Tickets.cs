using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Making one-time links and finding them again by their secret.</summary>
internal static class Tickets
{
    /// <summary>Makes a ticket, to be saved with the mail that carries its secret.</summary>
    /// <param name="purpose">What it is good for.</param>
    /// <param name="email">The one address it is sent to.</param>
    /// <param name="now">When.</param>
    /// <param name="account">The account it is for, where there is one.</param>
    /// <param name="student">The student it is for, where there is one.</param>
    /// <param name="madeBy">Who asked for it; null when the address itself did.</param>
    /// <returns>The ticket, and the secret that is nowhere else.</returns>
    public static (Ticket Ticket, string Secret) Make(
        TicketPurpose purpose, string email, DateTimeOffset now, AccountId? account = null, StudentId? student = null, AccountId? madeBy = null)
    {
        var secret = NewSecret();
        var ticket = new Ticket(new TicketId(Guid.CreateVersion7(now)), purpose, HashOf(secret), email, now, Ticket.LifeOf(purpose))
        {
            Account = account,
            Student = student,
            MadeBy = madeBy,
        };
        return (ticket, secret);
    }

    /// <summary>The ticket of a secret while it is good for this purpose; null for one that is expired, used, withdrawn, cut short or made up.</summary>
    public static async Task<Ticket?> FindTicketAsync(
        this ClinicDb db, string? secret, TicketPurpose purpose, DateTimeOffset now, CancellationToken ct)
    {
        var ticket = await db.TicketOfAsync(secret, purpose, ct).ConfigureAwait(false);
        return ticket?.IsGood(now) == true ? ticket : null;
    }

    /// <summary>The ticket of a secret, be it good or not; null for one that is cut short or made up.</summary>
    public static async Task<Ticket?> TicketOfAsync(this ClinicDb db, string? secret, TicketPurpose purpose, CancellationToken ct)
    {
        // One that is too short or too long isn't looked for: it can't be one of ours.
        if (!CanBe(secret))
        {
            return null;
        }

        var hash = HashOf(secret!);
        return await db.Set<Ticket>().SingleOrDefaultAsync(row => row.SecretHash == hash && row.Purpose == purpose, ct).ConfigureAwait(false);
    }

    /// <summary>What is noted of a ticket whose link was handed over instead of mailed.</summary>
    public const string HandedOver = "hand-over-link";

    /// <summary>True when whoever has a ticket's link can read the mail of its address: it was shown to nobody else.</summary>
    public static async Task<bool> WasMailedAsync(this ClinicDb db, Ticket ticket, CancellationToken ct)
    {
        var id = ticket.Id.Value;
        return !await db.Set<DoneOperation>().AnyAsync(done => done.Verb == HandedOver && done.Subject == id, ct).ConfigureAwait(false);
    }

    /// <summary>How many tickets of one purpose an address got lately.</summary>
    public static Task<int> TicketsToAsync(this ClinicDb db, TicketPurpose purpose, string email, DateTimeOffset since, CancellationToken ct)
    {
        var folded = Folding.OfEmail(email);
        return db.Set<Ticket>().CountAsync(ticket => ticket.Purpose == purpose && ticket.FoldedEmail == folded && ticket.MadeAt > since, ct);
    }

    /// <summary>How many tickets of one purpose an account asked for lately.</summary>
    public static Task<int> TicketsOfAsync(this ClinicDb db, TicketPurpose purpose, AccountId account, DateTimeOffset since, CancellationToken ct) =>
        db.Set<Ticket>().CountAsync(ticket => ticket.Purpose == purpose && ticket.Account == account && ticket.MadeAt > since, ct);

    /// <summary>Notes for the audit that a link was refused, in a save of its own.</summary>
    public static async Task NoteRefusedLinkAsync(
        this IDbContextFactory<ClinicDb> databases, Func<ClinicDb, Task<Ticket?>> which, DateTimeOffset now, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        db.Tell(AuditEvent.LinkRefused, now, about: (await which(db).ConfigureAwait(false))?.Id.Value);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
    }

    /// <summary>Takes back every ticket of one purpose that is still good for an address.</summary>
    public static async Task WithdrawTicketsAsync(this ClinicDb db, TicketPurpose purpose, string email, DateTimeOffset now, CancellationToken ct)
    {
        var folded = Folding.OfEmail(email);
        foreach (var ticket in await db.Set<Ticket>()
            .Where(row => row.Purpose == purpose && row.FoldedEmail == folded && row.UsedAt == null && row.WithdrawnAt == null && row.ExpiresAt > now)
            .ToListAsync(ct).ConfigureAwait(false))
        {
            ticket.Withdraw(now);
        }
    }

    /// <summary>A fresh secret: 256 random bits as RFC 4648 base 64 for addresses, 43 characters.</summary>
    public static string NewSecret() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Ticket.SecretBytes));

    /// <summary>False for what is too short or too long to be a secret of ours: it isn't looked for.</summary>
    public static bool CanBe(string? secret) => secret is { Length: SecretLength };

    /// <summary>What is kept of a secret.</summary>
    public static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    private const int SecretLength = 43;
}
