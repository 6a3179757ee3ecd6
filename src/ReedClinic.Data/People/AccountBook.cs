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
        return wanted.Age is null
            ? Task.FromResult<Outcome<AccountId>>(new Outcome<AccountId>.Refused([.. wanted.Problems(), NewAccount.AgeProblem]))
            : register.MakeAsync(wanted, [Role.Student], operation, account => Person(account, wanted.Age!.Value), ct);
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

    private Student Person(ClinicAccount account, AgeAnswer age)
    {
        var person = new Student(
            new StudentId(Guid.CreateVersion7(time.GetUtcNow())), account.DisplayName, new AccountId(account.Id));
        person.WriteTo(account.Email);
        person.SayAge(age);
        return person;
    }
}
