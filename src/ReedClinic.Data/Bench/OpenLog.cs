using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Bench;

/// <summary>A reed's log as it was read, and what has to be saved together with a new entry.</summary>
internal sealed class OpenLog
{
    private readonly ClinicDb db;
    private readonly ReedId reed;
    private readonly BatchId batch;
    private readonly Instrument? instrument;
    private readonly bool mayBeWorked;

    private OpenLog(
        ClinicDb db, ReedId reed, BatchId batch, Instrument? instrument, bool mayBeWorked, IReadOnlyList<BenchEntry> entries)
    {
        this.instrument = instrument;
        this.mayBeWorked = mayBeWorked;
        this.db = db;
        this.reed = reed;
        this.batch = batch;
        Entries = entries;
        Log = BenchLog.Fold(entries);
    }

    internal IReadOnlyList<BenchEntry> Entries { get; }

    internal BenchLog Log { get; }

    /// <summary>What keeps entries out of this log, whatever stands in it; null when nothing does.</summary>
    /// <remarks>A guardian who took their consent back, or a length that no reed of the batch's instrument has.</remarks>
    private Problem? Against(IEnumerable<BenchEntry> entries) => mayBeWorked
        ? entries.Select(entry => ReedLengths.Check(instrument, entry)).FirstOrDefault(problem => problem is not null)
        : ConsentTakenBack.Unworked;

    /// <summary>The entries with what the studio’s own kinds among them are called now; or what keeps them out of this log.</summary>
    internal async Task<(IReadOnlyList<BenchEntry> Named, Problem? Problem)> TakeAsync(IReadOnlyList<BenchEntry> entries, CancellationToken ct)
    {
        if (Against(entries) is { } problem)
        {
            return (entries, problem);
        }

        var own = entries.Any(IsOwn) ? (await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false)).Own : OwnKinds.None;
        List<BenchEntry> named = [];
        foreach (var entry in entries)
        {
            switch (own.Named(entry, Log))
            {
                case Outcome<BenchEntry>.Done(var said):
                    named.Add(said);
                    break;
                case Outcome<BenchEntry>.Refused(var problems):
                    return (entries, problems[0]);
            }
        }

        return (named, null);
    }

    private static bool IsOwn(BenchEntry entry) => OwnId.Is(entry switch
    {
        Finding finding => finding.FindingKind.Value,
        LookedFor looked => looked.FindingKind.Value,
        Adjustment work => work.AdjustmentKind.Value,
        _ => null,
    });

    internal static async Task<OpenLog?> Read(ClinicDb db, Actor actor, ReedId reed, CancellationToken ct)
    {
        var found = await db.Set<Reed>().Where(row => row.Id == reed)
            .Select(row => new
            {
                row.Batch,
                Instrument = db.Set<Batch>().Where(batch => batch.Id == row.Batch).Select(batch => batch.Instrument).FirstOrDefault(),
                MayBeWorked = db.WorkedBy(actor).Any(batch => batch.Id == row.Batch),
            })
            .SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (found is null)
        {
            return null;
        }

        var entries = await db.Set<BenchEntry>().AsNoTracking().Where(entry => entry.ReedId == reed)
            .OrderBy(entry => entry.Sequence).ToListAsync(ct).ConfigureAwait(false);
        return new OpenLog(db, reed, found.Batch, found.Instrument, found.MayBeWorked, entries);
    }

    /// <summary>Adds entries, the rows of the sheet that change with them, and the batch's first day at the bench.</summary>
    internal async Task<BenchLog> Add(IReadOnlyList<BenchEntry> said, CancellationToken ct)
    {
        db.AddRange(said);
        var after = BenchLog.Fold([.. Entries, .. said]);
        await FindingSheetRows.UpdateAsync(db, reed, after, ct).ConfigureAwait(false);

        // Most entries find the batch at the bench already, and then nothing of it is read.
        var waiting = await db.Set<Batch>().SingleOrDefaultAsync(row => row.Id == batch && row.BenchStartedAt == null, ct)
            .ConfigureAwait(false);
        waiting?.Reach(Stage.AtTheBench, said[0].RecordedAt);
        return after;
    }
}
