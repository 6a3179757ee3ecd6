using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>
/// Sending reeds from a link, without making an account first. The link stays with the browser it was first used in; there
/// it opens again until the student chooses a password.
/// </summary>
public sealed class BeginBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, AccountRegister register, Outbox outbox, StrangerLinks links)
{
    /// <summary>
    /// Sends a link to whoever asks; while the studio isn't open to strangers, only to whoever began by one before and has no other
    /// way in. The answer is the same for every address.
    /// </summary>
    public Task<Outcome<bool>> AskAsync(string? email, OperationId operation, CancellationToken ct) =>
        links.AskAsync(TicketPurpose.Begin, email, operation, ct);

    /// <summary>Those who work here send a link to one address.</summary>
    /// <returns>The link's secret, for handing it over; NotFound to anybody else.</returns>
    public async Task<Outcome<SentLink>> SendAsync(Actor actor, string? email, bool byHand, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return actor.WorksHere
            ? await databases.InviteAsync(register, outbox, actor, TicketPurpose.Begin, email, byHand, operation, time.GetUtcNow(), ct).ConfigureAwait(false)
            : new Outcome<SentLink>.NotFound();
    }

    /// <summary>Where a link stands for one browser. Looking changes nothing.</summary>
    /// <param name="secret">The link's secret.</param>
    /// <param name="device">The browser's own secret; null when it has none.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<BeginState> ReadAsync(string? secret, string? device, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await StateAsync(db, await db.TicketOfAsync(secret, TicketPurpose.Begin, ct).ConfigureAwait(false), device, ct).ConfigureAwait(false);
    }

    /// <summary>Begins, or goes on in the browser that began. The person is made at the first time, with an account that only this link opens.</summary>
    /// <param name="secret">The link's secret.</param>
    /// <param name="device">The browser's own secret.</param>
    /// <param name="name">What they like to be called; asked at the first time.</param>
    /// <param name="age">Which side of the studio's set age they are on; asked at the first time.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Outcome<AccountId>> StartAsync(
        string? secret, string device, string? name, AgeAnswer? age, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var ticket = await db.TicketOfAsync(secret, TicketPurpose.Begin, ct).ConfigureAwait(false);
        switch (await StateAsync(db, ticket, device, ct).ConfigureAwait(false))
        {
            case BeginState.Again:
                return new Outcome<AccountId>.Done((await AccountOfAsync(db, ticket!, ct).ConfigureAwait(false))!.Value);
            case BeginState.New when Problems(name, age) is { Count: > 0 } problems:
                return new Outcome<AccountId>.Refused(problems);
            case BeginState.New:
                return await BindAsync(db, ticket!, null, device, name, age, ct).ConfigureAwait(false);
            case BeginState.NewLink:
                return await BindAsync(db, ticket!, ticket!.Account ?? await HolderAsync(db, ticket, ct).ConfigureAwait(false), device, name, age, ct).ConfigureAwait(false);
            default:
                db.Tell(AuditEvent.LinkRefused, time.GetUtcNow(), about: ticket?.Id.Value);
                await db.SaveChangesAsync(ct).ConfigureAwait(false);
                return new Outcome<AccountId>.NotFound();
        }
    }

    /// <summary>Sends a fresh link to the address that a link went to, when that one is expired or another browser's.</summary>
    public async Task<Outcome<bool>> SendNewAsync(string? secret, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.TicketOfAsync(secret, TicketPurpose.Begin, ct).ConfigureAwait(false) is { WithdrawnAt: null } ticket
            ? await links.SendAsync(db, TicketPurpose.Begin, ticket.Email, operation, toStrangers: true, ct).ConfigureAwait(false)
            : new Outcome<bool>.NotFound();
    }

    /// <summary>True while whoever asks can only come in by a link.</summary>
    public async Task<bool> IsUnclaimedAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.IsUnclaimedAsync(actor.Account, ct).ConfigureAwait(false);
    }

    /// <summary>
    /// Gives the account of whoever asks a password, when it has none. The link is no good from then on. Asks for a fresh sign-in:
    /// a browser that was left open is no reason to hand the account to whoever sits there.
    /// </summary>
    public async Task<Outcome<AccountId>> ClaimAsync(Actor actor, string? password, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.WasDoneAsync(operation, "claim-account", actor.Account.Value, ct).ConfigureAwait(false))
        {
            return new Outcome<AccountId>.Done(actor.Account);
        }

        if (!await db.IsUnclaimedAsync(actor.Account, ct).ConfigureAwait(false))
        {
            return new Outcome<AccountId>.NotFound();
        }

        if (!actor.IsFresh)
        {
            return new Outcome<AccountId>.Refused([FreshSignIn.Problem]);
        }

        var mine = await db.Users.AsNoTracking().SingleAsync(user => user.Id == actor.Account.Value, ct).ConfigureAwait(false);
        if (new NewAccount(mine.DisplayName, mine.Email, password).Problems() is { Count: > 0 } weak)
        {
            return new Outcome<AccountId>.Refused(weak);
        }

        db.Note(operation, "claim-account", actor.Account.Value, time.GetUtcNow());
        return await db.ClaimAsync(register, outbox, new Claim(actor.Account, password!, In: actor.Session), time.GetUtcNow(), ct).ConfigureAwait(false);
    }

    private async Task<BeginState> StateAsync(ClinicDb db, Ticket? ticket, string? device, CancellationToken ct)
    {
        if (ticket is null or { WithdrawnAt: not null })
        {
            return BeginState.Gone;
        }

        if (time.GetUtcNow() >= ticket.ExpiresAt)
        {
            return BeginState.Expired;
        }

        if (ticket.UsedAt is null)
        {
            return ticket.Account is not null ? BeginState.NewLink : await UnusedAsync(db, ticket, ct).ConfigureAwait(false);
        }

        var account = await AccountOfAsync(db, ticket, ct).ConfigureAwait(false);
        return account is null ? BeginState.Gone
            : !await db.IsUnclaimedAsync(account.Value, ct).ConfigureAwait(false) ? BeginState.Claimed
            : device is not null && ticket.DeviceHash == Tickets.HashOf(device) ? BeginState.Again
            : BeginState.Elsewhere;
    }

    // A second link to an address that came in by another way meanwhile. Only one that was mailed shows that the account is theirs.
    private async Task<BeginState> UnusedAsync(ClinicDb db, Ticket ticket, CancellationToken ct) =>
        await HolderAsync(db, ticket, ct).ConfigureAwait(false) is not { } holder ? BeginState.New
        : !await db.IsUnclaimedAsync(holder, ct).ConfigureAwait(false) ? BeginState.Claimed
        : await db.WasMailedAsync(ticket, ct).ConfigureAwait(false) ? BeginState.NewLink
        : BeginState.Elsewhere;

    private async Task<AccountId?> HolderAsync(ClinicDb db, Ticket ticket, CancellationToken ct)
    {
        var known = register.Fold(ticket.Email);
        return await db.Users.Where(user => user.NormalizedEmail == known).Select(user => (AccountId?)new AccountId(user.Id)).SingleOrDefaultAsync(ct).ConfigureAwait(false);
    }

    // The account that a link made carries the link's id as what made it; one that was there already stands in the link.
    private static async Task<AccountId?> AccountOfAsync(ClinicDb db, Ticket ticket, CancellationToken ct)
    {
        var madeBy = new OperationId(ticket.Id.Value);
        return ticket.Account ?? await db.Users.Where(user => user.MadeBy == madeBy).Select(user => (AccountId?)new AccountId(user.Id)).SingleOrDefaultAsync(ct).ConfigureAwait(false);
    }

    private static List<Problem> Problems(string? name, AgeAnswer? age)
    {
        List<Problem> problems = [.. new NewAccount(name, "a@a", new string('x', PasswordRule.Shortest)).Problems().Where(problem => problem.Field == nameof(NewAccount.Name))];
        if (age is null)
        {
            problems.Add(NewAccount.AgeProblem);
        }

        return problems;
    }

    private async Task<Outcome<AccountId>> BindAsync(ClinicDb db, Ticket ticket, AccountId? id, string device, string? name, AgeAnswer? age, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        ticket.StayWith(Tickets.HashOf(device));
        ticket.Use(now);
        var mailed = await db.WasMailedAsync(ticket, ct).ConfigureAwait(false);
        if (id is { } begun)
        {
            var mine = await db.Users.SingleAsync(user => user.Id == begun.Value, ct).ConfigureAwait(false);
            mine.EmailConfirmed |= mailed;
            ticket.Open(begun);
        }
        else
        {
            var account = register.New(PersonName.Read(name)!, ticket.Email, null, new OperationId(ticket.Id.Value));
            account.EmailConfirmed = mailed;
            id = new AccountId(account.Id);
            db.AddRange(account, AccountRegister.Holds(account.Id, Role.Student), register.PersonOf(account, age!.Value));
            db.Tell(AuditEvent.AccountMade, now, account.Id, account.Id);
        }

        db.Tell(AuditEvent.LinkUsed, now, id.Value.Value, about: ticket.Id.Value);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
            ? new Outcome<AccountId>.Done(id.Value)
            : new Outcome<AccountId>.NotFound();
    }
}

/// <summary>Where a link for beginning without an account stands, for one browser.</summary>
public enum BeginState
{
    /// <summary>There is no such link, or it was taken back.</summary>
    Gone,

    /// <summary>It waits to be used; the person isn't known yet.</summary>
    New,

    /// <summary>It waits to be used, by somebody who has begun before.</summary>
    NewLink,

    /// <summary>This browser began with it, and may go on.</summary>
    Again,

    /// <summary>Another browser began with it.</summary>
    Elsewhere,

    /// <summary>Its time is over.</summary>
    Expired,

    /// <summary>The student signs in now.</summary>
    Claimed,
}
