using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>The accounts of the studio: making one with a link that was sent to its address, and what each may do.</summary>
public sealed class AccountBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, AccountRegister register, Outbox outbox)
{
    /// <summary>What a link to join is for; null for one that is expired, used, withdrawn, cut short or made up. Looking uses nothing up.</summary>
    public async Task<JoinView?> ReadAsync(string? secret, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.FindJoinAsync(secret, time.GetUtcNow(), ct).ConfigureAwait(false) is { } ticket
            ? new JoinView(ticket.Email, ticket.Purpose == TicketPurpose.JoinAsTeacher, AsksAge: ticket is { Purpose: TicketPurpose.JoinAsStudent, Account: null })
            : null;
    }

    /// <summary>
    /// Makes the account that a link is for. The address is the link's; the link is used up in the same save. Whoever began
    /// without an account gets theirs a password.
    /// </summary>
    /// <returns>NotFound for a link that is no good any more.</returns>
    public async Task<Outcome<AccountId>> JoinAsync(string? secret, NewAccount wanted, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        var outcome = await TryJoinAsync(secret, wanted, operation, ct).ConfigureAwait(false);
        if (outcome is Outcome<AccountId>.NotFound)
        {
            await databases.NoteRefusedLinkAsync(db => db.TicketToJoinAsync(secret, ct), time.GetUtcNow(), ct).ConfigureAwait(false);
        }

        return outcome;
    }

    private async Task<Outcome<AccountId>> TryJoinAsync(string? secret, NewAccount wanted, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        if (await db.TicketToJoinAsync(secret, ct).ConfigureAwait(false) is not { } ticket)
        {
            return new Outcome<AccountId>.NotFound();
        }

        var teacher = ticket.Purpose == TicketPurpose.JoinAsTeacher;
        wanted = wanted with { Email = ticket.Email };
        List<Problem> problems = [.. wanted.Problems()];
        if (!teacher && ticket.Account is null && wanted.Age is null)
        {
            problems.Add(NewAccount.AgeProblem);
        }

        if (problems.Count > 0)
        {
            return ticket.IsGood(now) ? new Outcome<AccountId>.Refused(problems) : new Outcome<AccountId>.NotFound();
        }

        return ticket.Account is { } begun
            ? await db.ClaimAsync(register, outbox, new Claim(begun, wanted.Password!, wanted.Name, ticket), now, ct).ConfigureAwait(false)
            : await register.MakeAsync(wanted, [teacher ? Role.Teacher : Role.Student], operation, (into, account) => UseAsync(into, secret, account, wanted.Age, now, ct), ct)
                .ConfigureAwait(false);
    }

    /// <summary>
    /// Who an account is, with the rights it has now, as if it had just shown everything it may be asked for. For commands
    /// and the demo: a browser's rights come from its session, see <see cref="SessionRegister"/>.
    /// </summary>
    /// <returns>Null when there is no such account, or it is disabled.</returns>
    public async Task<Actor?> ActorFor(AccountId account, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using (db.ConfigureAwait(false))
        {
            return (await db.RightsOfAsync(account, ct).ConfigureAwait(false))?.ToActor();
        }
    }

    private async Task<bool> UseAsync(ClinicDb db, string? secret, ClinicAccount account, AgeAnswer? age, DateTimeOffset now, CancellationToken ct)
    {
        if (await db.FindJoinAsync(secret, now, ct).ConfigureAwait(false) is not { } ticket)
        {
            return false;
        }

        ticket.Use(now);
        account.EmailConfirmed = await db.WasMailedAsync(ticket, ct).ConfigureAwait(false);
        db.Tell(AuditEvent.LinkUsed, now, account.Id, about: ticket.Id.Value);
        if (ticket.Purpose == TicketPurpose.JoinAsTeacher)
        {
            db.Tell(AuditEvent.RoleGiven, now, ticket.MadeBy?.Value, account.Id);
        }

        if (ticket.Purpose == TicketPurpose.JoinAsStudent)
        {
            db.Add(register.PersonOf(account, age!.Value));
        }

        return true;
    }
}

/// <summary>What a link to join is for.</summary>
/// <param name="Email">The address it was sent to, which the account will have.</param>
/// <param name="AsTeacher">True for one who will work here.</param>
/// <param name="AsksAge">True for a student who hasn't said it yet.</param>
public sealed record JoinView(string Email, bool AsTeacher, bool AsksAge);
