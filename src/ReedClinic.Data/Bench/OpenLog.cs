using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Bench;

/// <summary>A reed's log as it was read, and what has to be saved together with a new entry.</summary>
internal sealed class OpenLog
{
    private readonly ClinicDb db;
    private readonly ReedId reed;
    private readonly BatchId batch;

    private OpenLog(ClinicDb db, ReedId reed, BatchId batch, IReadOnlyList<BenchEntry> entries)
    {
        this.db = db;
        this.reed = reed;
        this.batch = batch;
        Entries = entries;
        Log = BenchLog.Fold(entries);
    }

    internal IReadOnlyList<BenchEntry> Entries { get; }

    internal BenchLog Log { get; }

    internal static async Task<OpenLog?> Read(ClinicDb db, ReedId reed, CancellationToken ct)
    {
        var batch = await db.Set<Reed>().Where(row => row.Id == reed).Select(row => (BatchId?)row.Batch)
            .SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (batch is not { } known)
        {
            return null;
        }

        var entries = await db.Set<BenchEntry>().AsNoTracking().Where(entry => entry.ReedId == reed)
            .OrderBy(entry => entry.Sequence).ToListAsync(ct).ConfigureAwait(false);
        return new OpenLog(db, reed, known, entries);
    }

    /// <summary>Adds an entry, the rows of the sheet that change with it, and the batch's first day at the bench.</summary>
    internal async Task<BenchLog> Add(BenchEntry entry, CancellationToken ct)
    {
        db.Add(entry);
        var after = BenchLog.Fold([.. Entries, entry]);
        await FindingSheetRows.UpdateAsync(db, reed, after, ct).ConfigureAwait(false);

        // Most entries find the batch at the bench already, and then nothing of it is read.
        var waiting = await db.Set<Batch>().SingleOrDefaultAsync(row => row.Id == batch && row.BenchStartedAt == null, ct)
            .ConfigureAwait(false);
        waiting?.Reach(Stage.AtTheBench, entry.RecordedAt);
        return after;
    }
}
