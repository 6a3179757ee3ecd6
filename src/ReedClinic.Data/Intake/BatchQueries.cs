using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Intake;

/// <summary>What every reading of batches shares: whose rows somebody sees, and what belongs to a whole batch.</summary>
internal static class BatchQueries
{
    /// <summary>
    /// The batches that this actor may see: all for those who work here, else their own and those of the students for whom
    /// they answer as a guardian, else none.
    /// </summary>
    public static IQueryable<Batch> SeenBy(this IQueryable<Batch> batches, Actor actor)
    {
        if (actor.WorksHere)
        {
            return batches;
        }

        // A comparison with null would be compared in SQL and find nothing, but only by accident.
        List<StudentId> theirs = [.. actor.Wards, .. actor.Student is { } me ? [me] : Array.Empty<StudentId>()];
        return theirs.Count > 0 ? batches.Where(batch => theirs.Contains(batch.Student)) : batches.Where(batch => false);
    }

    /// <summary><see cref="Student.MayBeWorkedFor"/> as the database is asked for it.</summary>
    public static Expression<Func<Student, bool>> MayBeWorkedFor { get; } = student => student.Consent != Consent.Withdrawn
        && (student.Age == null || student.Age != AgeAnswer.Younger || student.Consent == Consent.Given);

    /// <summary>
    /// The batches that this actor may work on: for those who work here, all but those whose student needs a guardian who agrees
    /// and has none at this moment (<see cref="Student.MayBeWorkedFor"/>). These only go home.
    /// </summary>
    public static IQueryable<Batch> WorkedBy(this ClinicDb db, Actor actor) => actor.WorksHere
        ? db.Set<Batch>().Where(batch => db.Set<Student>().Where(MayBeWorkedFor).Any(student => student.Id == batch.Student))
        : db.Set<Batch>().Where(batch => false);

    /// <summary>
    /// Begins the transaction in which something is written about batches. It comes before <see cref="WorkedBy"/> is asked, and
    /// is committed after the save: consent that is taken back at the same moment is either seen, or waits for the save.
    /// </summary>
    public static Task<IDbContextTransaction> HoldConsentAsync(this ClinicDb db, Attempt attempt, IQueryable<Batch> which, CancellationToken ct) =>
        db.HoldAsync(attempt, which.Select(batch => batch.Student), ct);

    /// <summary>The batch, its reeds and its questions.</summary>
    public static IQueryable<Batch> Whole(this IQueryable<Batch> batches) =>
        batches.Include(batch => batch.Reeds).Include(batch => batch.Questions).AsSplitQuery();

    /// <summary>One whole batch with its student, or null.</summary>
    public static async Task<BatchView?> ViewAsync(this ClinicDb db, IQueryable<Batch> which, CancellationToken ct)
    {
        var batch = await which.Whole().AsNoTracking().SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (batch is null)
        {
            return null;
        }

        var student = await db.Set<Student>().AsNoTracking().SingleAsync(person => person.Id == batch.Student, ct).ConfigureAwait(false);
        var corrected = batch.LetterSentAt is null ? null : await db.Set<Letter>().Where(letter => letter.Batch == batch.Id && letter.SentOrdinal > 1)
            .Select(letter => letter.SentAt).FirstOrDefaultAsync(ct).ConfigureAwait(false);
        return new BatchView(batch, student) { CorrectedAt = corrected };
    }
}
