using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.People;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Picks;
using ReedClinic.Domain.Faults;
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
            await LastTime(db, batch, ct).ConfigureAwait(false))
        {
            Catalogue = await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false),
        };
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

    // An entry that anything supersedes was put better or taken back. The rare first wording that stands again after the undo of
    // its correction is left out: it is a habit all the same when it is done again.
    internal static async Task<HabitsView> Habits(ClinicDb db, AccountId teacher, CancellationToken ct)
    {
        var entries = await db.Set<BenchEntry>().AsNoTracking()
            .Where(entry => entry.RecordedBy == teacher && ((entry is Test && ((Test)entry).MeasuredFrom == null) || entry is Adjustment))
            .Where(entry => !db.Set<BenchEntry>().Any(later => later.Supersedes == entry.Id))
            .OrderByDescending(entry => entry.RecordedAt).ThenByDescending(entry => entry.Sequence)
            .Take(HabitsView.Most).ToListAsync(ct).ConfigureAwait(false);
        List<Habit> habits = [.. entries.Select(Habit.Of).OfType<Habit>()];
        if (habits.Exists(IsOwn))
        {
            // What the owner retired is no pick any more.
            var own = (await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false)).Own;
            habits.RemoveAll(habit => IsOwn(habit) && own.Adjustments.All(kind => kind.Id != habit.Work!.Kind));
        }

        return new HabitsView(habits);
    }

    private static bool IsOwn(Habit habit) => OwnId.Is(habit.Work?.Kind.Value);

    // Two readings, however many reeds there are.
    internal static async Task<StripView?> Strip(ClinicDb db, BatchId batch, CancellationToken ct)
    {
        var reeds = await db.Set<Reed>().AsNoTracking().Where(reed => reed.Batch == batch).OrderBy(reed => reed.Number)
            .Select(reed => new { reed.Id, reed.Number, reed.HowToRecognise, reed.Presence }).ToListAsync(ct).ConfigureAwait(false);
        if (reeds.Count == 0)
        {
            return null;
        }

        var entries = await Entries(db).Where(entry => db.Set<Reed>().Any(reed => reed.Batch == batch && reed.Id == entry.ReedId))
            .ToListAsync(ct).ConfigureAwait(false);
        var logs = entries.ToLookup(entry => entry.ReedId);
        return new StripView(
        [
            .. reeds.Select(reed => new ReedOnStrip(
                reed.Id, reed.Number, reed.HowToRecognise, reed.Presence, ReedStates.Of(BenchLog.Fold(logs[reed.Id])))),
        ]);
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
