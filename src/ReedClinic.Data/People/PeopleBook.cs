using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Who has an account here and what each may do, which is the owners' to say. The studio always keeps one owner who can come in.</summary>
public sealed class PeopleBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    private static readonly Guid OwnerRole = ClinicAccountConfiguration.IdOf(Role.Owner);
    private static readonly Guid TeacherRole = ClinicAccountConfiguration.IdOf(Role.Teacher);

    /// <summary>Everybody who has an account: those who work here first, then by name.</summary>
    public async Task<IReadOnlyList<PersonView>> AllAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsOwner)
        {
            return [];
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var users = await db.Users.AsNoTracking().ToListAsync(ct).ConfigureAwait(false);
        var roles = (await db.UserRoles.AsNoTracking().ToListAsync(ct).ConfigureAwait(false)).ToLookup(held => held.UserId, held => held.RoleId);
        var students = (await db.Set<Student>().Select(person => person.Account).ToListAsync(ct).ConfigureAwait(false)).ToHashSet();
        var guardians = (await db.Set<Guardianship>().Where(row => row.GivenAt != null && row.EndedAt == null).Select(row => row.Account).ToListAsync(ct).ConfigureAwait(false)).ToHashSet();
        var seen = (await db.Set<Session>().Select(session => new { session.Account, session.SeenAt }).ToListAsync(ct).ConfigureAwait(false))
            .GroupBy(session => session.Account).ToDictionary(mine => mine.Key, mine => (DateTimeOffset?)mine.Max(session => session.SeenAt));
        var rows = users.Select(user => new PersonView(
            new AccountId(user.Id),
            user.DisplayName,
            user.Email!,
            roles[user.Id].Contains(OwnerRole),
            roles[user.Id].Contains(TeacherRole),
            students.Contains(new AccountId(user.Id)),
            user.CreatedAt,
            seen.GetValueOrDefault(new AccountId(user.Id)),
            user.DisabledAt)
        { Guards = guardians.Contains(new AccountId(user.Id)) });
        return [.. rows.OrderBy(row => !row.Owns).ThenBy(row => !row.Teaches).ThenBy(row => row.Name, StringComparer.Ordinal)];
    }

    /// <summary>Lets an account teach, or no longer.</summary>
    public Task<Outcome<bool>> SetTeacherAsync(Actor actor, AccountId account, bool teaches, OperationId operation, CancellationToken ct) =>
        ChangeAsync(actor, account, operation, teaches ? "let-teach" : "end-teaching", (db, user, _) => SetAsync(db, user, Role.Teacher, teaches, ct), ct);

    /// <summary>Makes an account an owner, or no longer.</summary>
    public Task<Outcome<bool>> SetOwnerAsync(Actor actor, AccountId account, bool owns, OperationId operation, CancellationToken ct) =>
        ChangeAsync(actor, account, operation, owns ? "let-own" : "end-owning", (db, user, _) => SetAsync(db, user, Role.Owner, owns, ct), ct);

    /// <summary>Closes an account: nobody can sign in with it, and whoever is signed in with it is out at once. A guardian’s yes ends with it.</summary>
    public Task<Outcome<bool>> DisableAsync(Actor actor, AccountId account, OperationId operation, CancellationToken ct) =>
        ChangeAsync(actor, account, operation, "disable", async (db, user, now) =>
        {
            if (user.DisabledAt is not null)
            {
                return null;
            }

            user.DisabledAt = now;
            await db.CloseAsync(outbox, account, actor.Account, now, ct).ConfigureAwait(false);
            return AuditEvent.Disabled;
        }, ct);

    /// <summary>Opens a closed account again.</summary>
    public Task<Outcome<bool>> EnableAsync(Actor actor, AccountId account, OperationId operation, CancellationToken ct) =>
        ChangeAsync(actor, account, operation, "enable", (_, user, _) =>
        {
            var before = user.DisabledAt;
            user.DisabledAt = null;
            return Task.FromResult<AuditEvent?>(before is null ? null : AuditEvent.Enabled);
        }, ct);

    private static async Task<AuditEvent?> SetAsync(ClinicDb db, ClinicAccount user, Role role, bool wanted, CancellationToken ct)
    {
        var held = await db.UserRoles.SingleOrDefaultAsync(row => row.UserId == user.Id && row.RoleId == ClinicAccountConfiguration.IdOf(role), ct).ConfigureAwait(false);
        if (held is null == !wanted)
        {
            return null;
        }

        if (held is null)
        {
            db.Add(AccountRegister.Holds(user.Id, role));
            return AuditEvent.RoleGiven;
        }

        db.Remove(held);
        return AuditEvent.RoleTaken;
    }

    // One at a time in all processes, or two owners could take each other's role at the same moment.
    private Task<Outcome<bool>> ChangeAsync(
        Actor actor, AccountId account, OperationId operation, string verb, Func<ClinicDb, ClinicAccount, DateTimeOffset, Task<AuditEvent?>> change, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        outbox.Ready();
        return databases.PatientlyAsync((attempt, stop) => TryAsync(attempt, actor, account, operation, verb, change, stop), ct);
    }

    private async Task<Outcome<bool>> TryAsync(
        Attempt attempt, Actor actor, AccountId account, OperationId operation, string verb, Func<ClinicDb, ClinicAccount, DateTimeOffset, Task<AuditEvent?>> change, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await attempt.BeginAsync(db, ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        await db.HoldAloneAsync(AloneFor.Owners, ct).ConfigureAwait(false);
        if (!actor.IsOwner || await db.Users.SingleOrDefaultAsync(user => user.Id == account.Value, ct).ConfigureAwait(false) is not { } person)
        {
            return new Outcome<bool>.NotFound();
        }

        if (!actor.IsFresh)
        {
            return new Outcome<bool>.Refused([FreshSignIn.Problem]);
        }

        var now = time.GetUtcNow();
        if (await db.WasDoneAsync(operation, verb, account.Value, ct).ConfigureAwait(false) || await change(db, person, now).ConfigureAwait(false) is not { } happened)
        {
            return new Outcome<bool>.Done(true);
        }

        db.Note(operation, verb, account.Value, now);
        db.Tell(happened, now, actor.Account.Value, account.Value);
        return await SaveAsync(db, person, happened, now, ct).ConfigureAwait(false);
    }

    private async Task<Outcome<bool>> SaveAsync(ClinicDb db, ClinicAccount person, AuditEvent happened, DateTimeOffset now, CancellationToken ct)
    {
        var account = new AccountId(person.Id);
        await db.EndSessionsAsync(account, null, now, ct).ConfigureAwait(false);
        outbox.Put(db, new Mail(MailKind.Notice, person.Email!, person.DisplayName) { What = happened.ToString(), At = now, About = account.Value });
        if (!await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
        {
            return new Outcome<bool>.Conflict(false);
        }

        if (!await SomebodyOwnsAsync(db, ct).ConfigureAwait(false))
        {
            await db.Database.RollbackTransactionAsync(ct).ConfigureAwait(false);
            return new Outcome<bool>.Refused([new Problem("", "The studio needs an owner who can sign in. Make somebody else an owner first.")]);
        }

        await db.Database.CommitTransactionAsync(ct).ConfigureAwait(false);
        return new Outcome<bool>.Done(true);
    }

    private static Task<bool> SomebodyOwnsAsync(ClinicDb db, CancellationToken ct) =>
        db.UserRoles.AnyAsync(held => held.RoleId == OwnerRole && db.Users.Any(user => user.Id == held.UserId && user.DisabledAt == null), ct);
}

/// <summary>Somebody who has an account.</summary>
/// <param name="Account">Which.</param>
/// <param name="Name">What they are called.</param>
/// <param name="Email">Their address.</param>
/// <param name="Owns">Runs the studio.</param>
/// <param name="Teaches">Works at the bench.</param>
/// <param name="Sends">Sends reeds.</param>
/// <param name="Since">When the account was made.</param>
/// <param name="SeenAt">When they last did something; null when that is too long ago to be kept, or never.</param>
/// <param name="DisabledAt">Since when it is closed.</param>
public sealed record PersonView(
    AccountId Account, string Name, string Email, bool Owns, bool Teaches, bool Sends, DateTimeOffset Since, DateTimeOffset? SeenAt, DateTimeOffset? DisabledAt)
{
    /// <summary>Answers for a student, or did until they took it back.</summary>
    public bool Guards { get; init; }
}
