using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>
/// Writes a new account with everything that belongs to it in one save. Identity's own manager would save the account
/// and each role by itself, and leave half an account behind when it is interrupted.
/// </summary>
public sealed class AccountRegister(
    IDbContextFactory<ClinicDb> databases, TimeProvider time, IPasswordHasher<ClinicAccount> hasher, ILookupNormalizer fold)
{
    /// <summary>Makes an account that nobody was invited to: for the demo and for tests. No page comes here.</summary>
    /// <param name="wanted">Whose.</param>
    /// <param name="role">What it may be.</param>
    /// <param name="operation">The operation.</param>
    /// <param name="ct">Stops it.</param>
    public Task<Outcome<AccountId>> AdmitAsync(NewAccount wanted, Role role, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        return MakeAsync(
            wanted,
            [role],
            operation,
            account =>
            {
                account.EmailConfirmed = true; // whoever calls this vouches for it
                return role == Role.Student ? PersonOf(account, wanted.Age ?? AgeAnswer.OldEnough) : null;
            },
            ct);
    }

    /// <summary>Makes the account, or says why not; the same operation again gives the first answer.</summary>
    /// <param name="wanted">What was typed.</param>
    /// <param name="roles">What the account may be.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="also">More rows for the same save, made from the new account.</param>
    /// <param name="ct">Stops it.</param>
    internal Task<Outcome<AccountId>> MakeAsync(
        NewAccount wanted, IReadOnlyList<Role> roles, OperationId operation, Func<ClinicAccount, object?> also, CancellationToken ct) =>
        MakeAsync(
            wanted,
            roles,
            operation,
            (db, account) =>
            {
                if (also(account) is { } row)
                {
                    db.Add(row);
                }

                return Task.FromResult(true);
            },
            ct);

    /// <summary>The same, with more changes for the same save; when they can't be made, no account is: the answer is NotFound.</summary>
    /// <param name="wanted">What was typed.</param>
    /// <param name="roles">What the account may be.</param>
    /// <param name="operation">The form's operation.</param>
    /// <param name="also">More changes for the same save; false when they can't be made any more.</param>
    /// <param name="ct">Stops it.</param>
    internal async Task<Outcome<AccountId>> MakeAsync(
        NewAccount wanted, IReadOnlyList<Role> roles, OperationId operation, Func<ClinicDb, ClinicAccount, Task<bool>> also, CancellationToken ct)
    {
        var problems = wanted.Problems();
        if (problems.Count > 0)
        {
            return new Outcome<AccountId>.Refused(problems);
        }

        operation = operation.OrFresh(time.GetUtcNow());
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using (db.ConfigureAwait(false))
        {
            var account = New(PersonName.Read(wanted.Name)!, EmailAddress.Read(wanted.Email)!, wanted.Password, operation);
            db.Add(account);
            db.AddRange(roles.Select(role => Holds(account.Id, role)));
            db.Tell(AuditEvent.AccountMade, account.CreatedAt, account.Id, account.Id);
            try
            {
                if (await also(db, account).ConfigureAwait(false))
                {
                    await db.SaveChangesAsync(ct).ConfigureAwait(false);
                    return new Outcome<AccountId>.Done(new AccountId(account.Id));
                }
            }
            catch (DbUpdateConcurrencyException)
            {
                // Somebody else was quicker with what belongs to it.
            }
            catch (DbUpdateException failure) when (failure.IsUniqueClash())
            {
                return await AnswerToRepeatAsync(wanted, operation, ct).ConfigureAwait(false);
            }

            return await AnswerToRepeatAsync(wanted, operation, ct).ConfigureAwait(false) is Outcome<AccountId>.Done repeat
                ? repeat
                : new Outcome<AccountId>.NotFound();
        }
    }

    /// <summary>An address as accounts are found by it.</summary>
    /// <param name="email">The address.</param>
    internal string Fold(string email) => fold.NormalizeEmail(email);

    /// <summary>What is kept of a password.</summary>
    internal string HashOf(ClinicAccount account, string password) => hasher.HashPassword(account, password);

    /// <summary>An account that holds a role.</summary>
    internal static IdentityUserRole<Guid> Holds(Guid account, Role role) => new() { UserId = account, RoleId = ClinicAccountConfiguration.IdOf(role) };

    /// <summary>The person behind a student's account.</summary>
    internal Student PersonOf(ClinicAccount account, AgeAnswer age)
    {
        var person = new Student(new StudentId(Guid.CreateVersion7(time.GetUtcNow())), account.DisplayName, new AccountId(account.Id));
        person.WriteTo(account.Email);
        person.SayAge(age);
        return person;
    }

    /// <summary>A new account, not saved yet. Without a password nobody signs in with it but by a link.</summary>
    internal ClinicAccount New(string name, string email, string? password, OperationId operation)
    {
        var account = new ClinicAccount
        {
            Id = Guid.CreateVersion7(time.GetUtcNow()),
            UserName = email,
            NormalizedUserName = fold.NormalizeName(email),
            Email = email,
            NormalizedEmail = fold.NormalizeEmail(email),
            DisplayName = name,
            CreatedAt = time.GetUtcNow(),
            MadeBy = operation,
            LockoutEnabled = true,
            SecurityStamp = NewStamp(),
        };
        account.PasswordHash = password is null ? null : hasher.HashPassword(account, password);
        return account;
    }

    /// <summary>A fresh stamp, for whenever somebody's sign-in changes.</summary>
    internal static string NewStamp() => Convert.ToHexString(RandomNumberGenerator.GetBytes(20));

    // Whoever repeats an operation must know its password too: an operation id alone opens nothing.
    private async Task<Outcome<AccountId>> AnswerToRepeatAsync(NewAccount wanted, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using (db.ConfigureAwait(false))
        {
            var email = fold.NormalizeEmail(EmailAddress.Read(wanted.Email)!);
            var first = await db.Users.AsNoTracking()
                .SingleOrDefaultAsync(account => account.MadeBy == operation && account.NormalizedEmail == email, ct)
                .ConfigureAwait(false);
            if (first?.PasswordHash is { } hash
                && hasher.VerifyHashedPassword(first, hash, wanted.Password!) != PasswordVerificationResult.Failed)
            {
                return new Outcome<AccountId>.Done(new AccountId(first.Id));
            }

            return new Outcome<AccountId>.Refused(
                [new Problem(nameof(NewAccount.Email), "This address can’t be used for a new account. If it is yours, try to sign in.")]);
        }
    }
}
