using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.People;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Bench;

/// <summary>Puts together what the bench shows. Who may see it is settled before.</summary>
internal static class BenchReader
{
    internal static async Task<BenchView?> Reed(ClinicDb db, ReedId reed, CancellationToken ct)
    {
        var batch = await Batches(db).SingleOrDefaultAsync(row => row.Reeds.Any(one => one.Id == reed), ct)
            .ConfigureAwait(false);
        if (batch is null)
        {
            return null;
        }

        var student = await StudentOf(db, batch, ct).ConfigureAwait(false);
        var entries = await Entries(db).Where(entry => entry.ReedId == reed).ToListAsync(ct).ConfigureAwait(false);
        return new BenchView(
            student,
            batch,
            batch.Reeds.Single(one => one.Id == reed),
            BenchLog.Fold(entries),
            await NamesOf(db, entries, ct).ConfigureAwait(false),
            await LastTime(db, batch, ct).ConfigureAwait(false));
    }

    internal static async Task<BatchAtBenchView?> Batch(ClinicDb db, BatchCode code, CancellationToken ct)
    {
        var batch = await Batches(db).SingleOrDefaultAsync(row => row.Code == code, ct).ConfigureAwait(false);
        if (batch is null)
        {
            return null;
        }

        var reeds = batch.Reeds.Select(reed => reed.Id).ToList();
        var entries = await Entries(db).Where(entry => reeds.Contains(entry.ReedId)).ToListAsync(ct).ConfigureAwait(false);
        var logs = entries.ToLookup(entry => entry.ReedId);
        return new BatchAtBenchView(
            await StudentOf(db, batch, ct).ConfigureAwait(false),
            batch,
            [.. batch.Reeds.Select(reed => new ReedAtBench(reed, BenchLog.Fold(logs[reed.Id])))],
            await db.Set<CommonThread>().AsNoTracking().SingleOrDefaultAsync(thread => thread.BatchId == batch.Id, ct)
                .ConfigureAwait(false));
    }

    private static IQueryable<Batch> Batches(ClinicDb db) => db.Set<Batch>().AsNoTracking()
        .Include(batch => batch.Reeds).Include(batch => batch.Questions).AsSplitQuery();

    private static IQueryable<BenchEntry> Entries(ClinicDb db) =>
        db.Set<BenchEntry>().AsNoTracking().OrderBy(entry => entry.Sequence);

    private static Task<Student> StudentOf(ClinicDb db, Batch batch, CancellationToken ct) =>
        db.Set<Student>().AsNoTracking().SingleAsync(student => student.Id == batch.Student, ct);

    private static async Task<Dictionary<AccountId, string>> NamesOf(
        ClinicDb db, List<BenchEntry> entries, CancellationToken ct)
    {
        var accounts = entries.Select(entry => entry.RecordedBy.Value).Distinct().ToList();
        return await db.Set<ClinicAccount>().AsNoTracking().Where(account => accounts.Contains(account.Id))
            .ToDictionaryAsync(account => new AccountId(account.Id), account => account.DisplayName, ct).ConfigureAwait(false);
    }

    private static Task<CommonThread?> LastTime(ClinicDb db, Batch batch, CancellationToken ct) => (
        from thread in db.Set<CommonThread>().AsNoTracking()
        join other in db.Set<Batch>() on thread.BatchId equals other.Id
        where other.Student == batch.Student && other.SubmittedAt < batch.SubmittedAt
        orderby other.SubmittedAt descending
        select thread).FirstOrDefaultAsync(ct);
}
