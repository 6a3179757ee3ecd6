using System.Globalization;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Recurrence;

/// <summary>
/// Rolls the studio’s rates up once a day, so that nobody’s page reads the reeds of everybody else. A worker of the host calls it.
/// </summary>
public sealed class StudioRatesCaretaker(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    /// <summary>Asks for today’s round, unless somebody has.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task AskForRoundAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var once = string.Create(CultureInfo.InvariantCulture, $"rates:{now.UtcDateTime:yyyy-MM-dd}");
        if (!await db.Set<Job>().AnyAsync(job => job.Once == once, ct).ConfigureAwait(false))
        {
            db.Add(new Job { Id = Guid.CreateVersion7(now), Kind = JobKind.Rates, Once = once, MadeAt = now, DueAt = now });
            await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        }
    }

    /// <summary>Counts what has been sent by now, and puts it in place of what was counted before.</summary>
    /// <param name="ct">Stops it.</param>
    public Task RollUpAsync(CancellationToken ct) => databases.PatientlyAsync(RollUpAsync, ct);

    private async Task<int> RollUpAsync(Attempt attempt, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var asOf = time.GetUtcNow();
        var tally = new StudioTally();
        await foreach (var student in StudentsAsync(db, asOf, ct).ConfigureAwait(false))
        {
            tally.Add(student);
        }

        var likeness = tally.Likeness();
        List<StudioRateRow> rows = [.. tally.Rates().Select(rate => StudioRateRow.Of(rate, likeness, asOf))];
        var transaction = await attempt.BeginAsync(db, ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        await db.Set<StudioRateRow>().ExecuteDeleteAsync(ct).ConfigureAwait(false);
        db.AddRange(rows);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return rows.Count;
    }

    // Read once from end to end, one student after another: no more than one student’s sheets are held at a time.
    private static async IAsyncEnumerable<StudentHistory> StudentsAsync(
        ClinicDb db, DateTimeOffset asOf, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken ct)
    {
        var cells =
            from row in db.Set<SheetRow>().AsNoTracking()
            join reed in db.Set<Reed>() on row.ReedId equals reed.Id
            join batch in db.Set<Batch>() on reed.Batch equals batch.Id
            join student in db.Set<Student>().Where(BatchQueries.MayBeWorkedFor) on batch.Student equals student.Id
            where reed.Presence != Presence.Missing && batch.LetterSentAt != null && batch.LetterSentAt <= asOf
            orderby batch.Student, batch.SubmittedAt, batch.Id, reed.Number
            select new Cell(batch.Student, batch.Id, row);
        List<Cell> theirs = [];
        await foreach (var cell in cells.AsAsyncEnumerable().WithCancellation(ct).ConfigureAwait(false))
        {
            if (theirs.Count > 0 && theirs[0].Student != cell.Student)
            {
                yield return History(theirs);
                theirs.Clear();
            }

            theirs.Add(cell);
        }

        if (theirs.Count > 0)
        {
            yield return History(theirs);
        }
    }

    private static StudentHistory History(List<Cell> cells) => new(
    [
        .. cells.GroupBy(cell => cell.Batch)
            .Select(batch => new FindingSheet([.. batch.Select(cell => cell.Row.ReedId).Distinct()], batch.Select(cell => cell.Row))),
    ]);

    private sealed record Cell(StudentId Student, BatchId Batch, SheetRow Row);
}
