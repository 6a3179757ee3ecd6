using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Inviting people, which is the owners' to do.</summary>
public sealed class InvitationBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, AccountRegister register, Outbox outbox)
{
    private static readonly TimeSpan Remembered = TimeSpan.FromDays(30);

    /// <summary>The links that were sent and not used: those that are good, and those whose time ran out lately.</summary>
    public async Task<IReadOnlyList<InvitationView>> OpenAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsOwner)
        {
            return [];
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var since = now - Remembered;
        var rows = await db.Set<Ticket>().AsNoTracking()
            .Where(row => row.MadeBy != null && Invitations.Purposes.Contains(row.Purpose) && row.UsedAt == null && row.WithdrawnAt == null && row.ExpiresAt > since)
            .OrderByDescending(row => row.MadeAt).ToListAsync(ct).ConfigureAwait(false);
        return [.. rows.Select(row => new InvitationView(row.Id, row.Email, row.Purpose, row.MadeAt, row.ExpiresAt, row.IsGood(now)))];
    }

    /// <summary>Invites somebody to teach, or to send reeds.</summary>
    /// <param name="actor">Who invites.</param>
    /// <param name="role">As what.</param>
    /// <param name="email">The address.</param>
    /// <param name="byHand">True when the link is handed over instead of mailed: then whoever uses it hasn't shown that the address is theirs.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>The link's secret, for handing it over; NotFound to anybody but an owner.</returns>
    public async Task<Outcome<SentLink>> InviteAsync(Actor actor, Role role, string? email, bool byHand, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsOwner || role == Role.Owner)
        {
            return new Outcome<SentLink>.NotFound();
        }

        var purpose = role == Role.Teacher ? TicketPurpose.JoinAsTeacher : TicketPurpose.JoinAsStudent;
        return await databases.InviteAsync(register, outbox, actor, purpose, email, byHand, operation, time.GetUtcNow(), ct).ConfigureAwait(false);
    }

    /// <summary>Sends a fresh link in place of one; the old one is no good from then on.</summary>
    public async Task<Outcome<SentLink>> SendAgainAsync(Actor actor, TicketId id, bool byHand, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await FindAsync(db, actor, id, ct).ConfigureAwait(false) is { UsedAt: null } ticket
            ? await databases.InviteAsync(register, outbox, actor, ticket.Purpose, ticket.Email, byHand, operation, time.GetUtcNow(), ct).ConfigureAwait(false)
            : new Outcome<SentLink>.NotFound();
    }

    /// <summary>Takes a link back. Doing it twice does it once; one that was used stays used.</summary>
    public async Task<Outcome<bool>> WithdrawAsync(Actor actor, TicketId id, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await FindAsync(db, actor, id, ct).ConfigureAwait(false) is not { UsedAt: null } ticket)
        {
            return new Outcome<bool>.NotFound();
        }

        if (ticket.WithdrawnAt is null)
        {
            var now = time.GetUtcNow();
            ticket.Withdraw(now);
            db.Note(operation, "withdraw-link", id.Value, now);
            db.Tell(AuditEvent.InvitationWithdrawn, now, actor.Account.Value, about: id.Value);
            await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        }

        return new Outcome<bool>.Done(true);
    }

    private static async Task<Ticket?> FindAsync(ClinicDb db, Actor actor, TicketId id, CancellationToken ct) =>
        actor.IsOwner ? await db.Set<Ticket>().SingleOrDefaultAsync(row => row.Id == id && row.MadeBy != null && Invitations.Purposes.Contains(row.Purpose), ct).ConfigureAwait(false) : null;
}

/// <summary>A link that was sent and not used yet.</summary>
/// <param name="Id">Which.</param>
/// <param name="Email">To whom.</param>
/// <param name="Purpose">What for.</param>
/// <param name="MadeAt">When.</param>
/// <param name="ExpiresAt">Until when it is good.</param>
/// <param name="IsGood">False when its time is over.</param>
public sealed record InvitationView(TicketId Id, string Email, TicketPurpose Purpose, DateTimeOffset MadeAt, DateTimeOffset ExpiresAt, bool IsGood);
