using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>What an account is and may, as it stands in the database at this moment.</summary>
internal sealed record Rights(AccountId Account, string Name, StudentId? Student, bool Teaches, bool Owns, IReadOnlyList<StudentId> Wards, bool HasSecondStep = false, bool Guards = false)
{
    /// <summary>True when it holds a staff role.</summary>
    public bool IsStaff => Teaches || Owns;

    /// <summary>The actor with everything the account holds.</summary>
    public Actor ToActor() => new(Account, Student, Teaches, Owns) { Wards = Wards, Guards = Guards };

    /// <summary>The actor of a session: staff rights count only where the sign-in was strong enough for them.</summary>
    public Actor ToActor(Session session, bool passwordWillDo, DateTimeOffset now)
    {
        var strong = passwordWillDo || session.Way.IsStrong();
        return new Actor(Account, Student, Teaches && strong, Owns && strong)
        {
            Wards = Wards,
            Guards = Guards,
            Session = session.Id,
            // Whoever has a passkey or codes and works here proves nothing that counts by the password alone: else it would be
            // enough to add another passkey to it.
            IsFresh = session.IsFresh(now) && (strong || !IsStaff || !HasSecondStep),
            OwesSecondStep = IsStaff && !strong,
        };
    }
}

internal static class RightsReading
{
    /// <summary>The rights of an account; null when there is none, or it is disabled.</summary>
    public static async Task<Rights?> RightsOfAsync(this ClinicDb db, AccountId account, CancellationToken ct)
    {
        var teacher = ClinicAccountConfiguration.IdOf(Role.Teacher);
        var owner = ClinicAccountConfiguration.IdOf(Role.Owner);
        var found = await db.Users.AsNoTracking()
            .Where(user => user.Id == account.Value && user.DisabledAt == null)
            .Select(user => new
            {
                user.DisplayName,
                HasSecondStep = user.CodeSince != null || db.UserPasskeys.Any(key => key.UserId == user.Id),
                Teaches = db.UserRoles.Any(held => held.UserId == user.Id && held.RoleId == teacher),
                Owns = db.UserRoles.Any(held => held.UserId == user.Id && held.RoleId == owner),
                Student = db.Set<Student>().Where(person => person.Account == account).Select(person => (StudentId?)person.Id).FirstOrDefault(),
                Guards = db.Set<Guardianship>().Any(guardian => guardian.Account == account && guardian.GivenAt != null && guardian.EndedAt == null),
            })
            .SingleOrDefaultAsync(ct).ConfigureAwait(false);
        return found is null
            ? null
            : new Rights(
                account, found.DisplayName, found.Student, found.Teaches, found.Owns, found.Guards ? await db.WardsOfAsync(account, ct).ConfigureAwait(false) : [], found.HasSecondStep, found.Guards);
    }

    private static async Task<List<StudentId>> WardsOfAsync(this ClinicDb db, AccountId account, CancellationToken ct) =>
        await db.Set<Guardianship>().AsNoTracking()
            .Where(guardian => guardian.Account == account && guardian.GivenAt != null && guardian.WithdrawnAt == null && guardian.EndedAt == null)
            .Select(guardian => guardian.Student).ToListAsync(ct).ConfigureAwait(false);
}
