using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>The accounts of the studio: making them, and what each may do.</summary>
public sealed class AccountBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, AccountRegister register)
{
    /// <summary>A student makes their own account; the person behind it is made with it. Nobody is signed in yet.</summary>
    public Task<Outcome<AccountId>> SignUp(NewAccount wanted, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        return register.MakeAsync(wanted, [Role.Student], operation, account => Person(account), ct);
    }

    /// <summary>The owner makes an account for a teacher.</summary>
    public async Task<Outcome<AccountId>> AddTeacher(
        Actor actor, NewAccount wanted, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(wanted);
        return actor.IsOwner
            ? await register.MakeAsync(wanted, [Role.Teacher], operation, _ => null, ct).ConfigureAwait(false)
            : new Outcome<AccountId>.NotFound();
    }

    /// <summary>
    /// Who an account is, with the rights it has now: ask for every operation, because a cookie remembers rights that
    /// were taken away since.
    /// </summary>
    /// <returns>Null when there is no such account.</returns>
    public async Task<Actor?> ActorFor(AccountId account, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using (db.ConfigureAwait(false))
        {
            var found = await db.Users.AsNoTracking()
                .Where(user => user.Id == account.Value)
                .Select(user => new
                {
                    Roles = db.UserRoles.Where(held => held.UserId == user.Id).Select(held => held.RoleId).ToList(),
                    Student = db.Set<Student>().Where(person => person.Account == account)
                        .Select(person => (StudentId?)person.Id).FirstOrDefault(),
                })
                .SingleOrDefaultAsync(ct).ConfigureAwait(false);
            return found is null
                ? null
                : new Actor(account, found.Student, Holds(found.Roles, Role.Teacher), Holds(found.Roles, Role.Owner));
        }
    }

    private static bool Holds(List<Guid> roles, Role role) => roles.Contains(ClinicAccountConfiguration.IdOf(role));

    private Student Person(ClinicAccount account)
    {
        var person = new Student(
            new StudentId(Guid.CreateVersion7(time.GetUtcNow())), account.DisplayName, new AccountId(account.Id));
        person.WriteTo(account.Email);
        return person;
    }
}
