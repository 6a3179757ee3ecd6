using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Privacy;

/// <summary>
/// Whoever was erased and may still be in a back-up. The list stands in the database that a restore replaces, so it is written
/// down elsewhere, and whoever is on it is erased again after a restore. For whoever runs the machine; no page does this.
/// </summary>
public sealed class ErasedPeople(IDbContextFactory<ClinicDb> databases, TimeProvider time, PrivacySettings settings)
{
    /// <summary>The ids, the first erased first: they lead nowhere.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task<IReadOnlyList<Guid>> ListAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.Set<ErasedPerson>().OrderBy(row => row.ErasedAt).ThenBy(row => row.Person).Select(row => row.Person).ToListAsync(ct).ConfigureAwait(false);
    }

    /// <summary>Erases these again, wherever their reeds are: all of them, or nobody. Those who aren't there are noted all the same.</summary>
    /// <param name="people">Their ids.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>How many were there.</returns>
    public async Task<int> EraseAgainAsync(IReadOnlyCollection<Guid> people, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(people);
        var found = 0; // a later try finds nobody whom an earlier one erased
        await databases.PatientlyAsync(async (attempt, stop) => found = Math.Max(found, await EraseAgainAsync(attempt, people, stop).ConfigureAwait(false)), ct).ConfigureAwait(false);
        return found;
    }

    private async Task<int> EraseAgainAsync(Attempt attempt, IReadOnlyCollection<Guid> people, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await attempt.BeginAsync(db, ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        var found = 0;
        foreach (var id in people.Distinct())
        {
            var (student, account) = (new StudentId(id), new AccountId(id));
            var sends = await db.Set<Student>().AnyAsync(row => row.Id == student, ct).ConfigureAwait(false);
            found += sends || await db.Users.AnyAsync(user => user.Id == id, ct).ConfigureAwait(false) ? 1 : 0;
            await db.EraseAsync(sends ? new Erasure(student, null) : new Erasure(null, account), AuditEvent.Erased, null, TimeSpan.FromDays(settings.BackupDays), time.GetUtcNow(), ct).ConfigureAwait(false);
            await db.SaveChangesAsync(ct).ConfigureAwait(false);
        }

        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return found;
    }
}
