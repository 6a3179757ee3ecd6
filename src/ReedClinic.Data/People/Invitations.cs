using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Links that somebody of the studio sends to one address.</summary>
internal static class Invitations
{
    private const string Invite = "send-link";

    /// <summary>What somebody of the studio sends links for. A student's question to a guardian is none of them.</summary>
    internal static readonly TicketPurpose[] Purposes = [TicketPurpose.JoinAsTeacher, TicketPurpose.JoinAsStudent, TicketPurpose.Begin];

    /// <summary>Sends one, in place of an earlier one to the same address, whatever that was for. One that is handed over proves nothing of the address, and isn’t mailed too.</summary>
    public static async Task<Outcome<SentLink>> InviteAsync(
        this IDbContextFactory<ClinicDb> databases, AccountRegister register, Outbox outbox, Actor actor, TicketPurpose purpose, string? email, bool byHand, OperationId operation, DateTimeOffset now, CancellationToken ct)
    {
        if (EmailAddress.Read(email) is not { } address)
        {
            return Refused("Write the e-mail address in full, such as name@example.org.");
        }

        operation = operation.OrFresh(now);
        outbox.Ready();
        SentLink? tried = null; // the last try tells the secret of what an earlier one may have saved
        return await databases.PatientlyAsync(async (attempt, stop) =>
        {
            var db = await databases.CreateDbContextAsync(stop).ConfigureAwait(false);
            await using var _ = db.ConfigureAwait(false);
            return await db.WasSentAsync(operation, stop).ConfigureAwait(false) is { } before
                ? new Outcome<SentLink>.Done(before.Id == tried?.Id ? tried : before)
                : await db.InviteAsync(attempt, register, outbox, new Invited(actor, purpose, address, byHand, operation, now), link => tried = link, stop).ConfigureAwait(false);
        }, ct).ConfigureAwait(false);
    }

    private static async Task<Outcome<SentLink>> InviteAsync(
        this ClinicDb db, Attempt attempt, AccountRegister register, Outbox outbox, Invited wish, Action<SentLink> about, CancellationToken ct)
    {
        var (actor, purpose, address, byHand, operation, now) = wish;

        // One after the other: else two at the same moment would both be good.
        var transaction = await attempt.BeginAsync(db, ct).ConfigureAwait(false);
        await using var _ = transaction.ConfigureAwait(false);
        await db.HoldAloneAsync(AloneFor.Invitations, ct).ConfigureAwait(false);
        var known = register.Fold(address);
        var account = await db.Users.AsNoTracking().Where(user => user.NormalizedEmail == known).Select(user => (AccountId?)new AccountId(user.Id)).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (account is { } there && (purpose != TicketPurpose.Begin || !await db.IsUnclaimedAsync(there, ct).ConfigureAwait(false)))
        {
            return Refused("This address has an account already.");
        }

        var replaced = await db.ReplaceAsync(address, now, ct).ConfigureAwait(false);
        var (ticket, secret) = Tickets.Make(purpose, address, now, account, madeBy: actor.Account);
        db.Put(outbox, ticket, secret, byHand, operation, now);
        var link = new SentLink(ticket.Id, ticket.Email, purpose, secret) { Replaced = replaced };
        about(link);
        if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
        {
            await transaction.CommitAsync(ct).ConfigureAwait(false);
            return new Outcome<SentLink>.Done(link);
        }

        await transaction.DisposeAsync().ConfigureAwait(false);
        return await db.WasSentAsync(operation, ct).ConfigureAwait(false) is { } first ? new Outcome<SentLink>.Done(first) : Refused("Somebody else did that at the same moment. Please look again.");
    }

    private sealed record Invited(Actor By, TicketPurpose Purpose, string Address, bool ByHand, OperationId Operation, DateTimeOffset Now);

    private static void Put(this ClinicDb db, Outbox outbox, Ticket ticket, string secret, bool byHand, OperationId operation, DateTimeOffset now)
    {
        db.Add(ticket);
        db.Note(operation, Invite, ticket.Id.Value, now);
        db.Tell(AuditEvent.Invited, now, ticket.MadeBy?.Value, about: ticket.Id.Value);
        if (byHand)
        {
            db.Note(default, Tickets.HandedOver, ticket.Id.Value, now);
        }
        else
        {
            outbox.Put(db, StrangerLinks.MailOf(ticket, secret));
        }
    }

    // True when somebody of the studio had sent one that was still good: an address that asked for itself is told nothing of it.
    private static async Task<bool> ReplaceAsync(this ClinicDb db, string address, DateTimeOffset now, CancellationToken ct)
    {
        var folded = Folding.OfEmail(address);
        var replaced = await db.Set<Ticket>().AnyAsync(
            row => row.FoldedEmail == folded && Purposes.Contains(row.Purpose) && row.MadeBy != null && row.UsedAt == null && row.WithdrawnAt == null && row.ExpiresAt > now, ct)
            .ConfigureAwait(false);
        foreach (var purpose in Purposes)
        {
            await db.WithdrawTicketsAsync(purpose, address, now, ct).ConfigureAwait(false);
        }

        return replaced;
    }

    private static Outcome<SentLink>.Refused Refused(string why) => new([new Problem("Email", why)]);

    // The secret is nowhere any more: whoever repeats gets the first answer without it.
    private static async Task<SentLink?> WasSentAsync(this ClinicDb db, OperationId operation, CancellationToken ct)
    {
        var done = await db.Set<DoneOperation>().AsNoTracking().SingleOrDefaultAsync(row => row.Id == operation && row.Verb == Invite, ct).ConfigureAwait(false);
        var ticket = done is null ? null : await db.Set<Ticket>().AsNoTracking().SingleOrDefaultAsync(row => row.Id == new TicketId(done.Subject), ct).ConfigureAwait(false);
        return ticket is null ? null : new SentLink(ticket.Id, ticket.Email, ticket.Purpose, null);
    }
}

/// <summary>A link that was sent.</summary>
/// <param name="Id">Which.</param>
/// <param name="Email">To whom.</param>
/// <param name="Purpose">What for.</param>
/// <param name="Secret">Its secret, told once, for handing the link over where no mail goes out.</param>
public sealed record SentLink(TicketId Id, string Email, TicketPurpose Purpose, string? Secret)
{
    /// <summary>True when it took the place of one that was still good.</summary>
    public bool Replaced { get; init; }

    /// <summary>Keeps the secret out of logs.</summary>
    public override string ToString() => $"{nameof(SentLink)} {{ {Purpose} }}";
}
