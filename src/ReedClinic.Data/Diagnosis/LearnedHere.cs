using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Effects;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Diagnosis;

/// <summary>What this bench has taught.</summary>
/// <param name="Catalogue">The catalogue, with what the teachers said of causes here.</param>
/// <param name="Counts">What they said.</param>
/// <param name="Effects">What passes have shown of adjustments.</param>
/// <param name="Reeds">From so many reeds’ logs.</param>
/// <param name="ReadAt">When it was read.</param>
public sealed record Learned(Catalogue Catalogue, StudioCounts Counts, LearnedEffects Effects, int Reeds, DateTimeOffset ReadAt);

/// <summary>
/// Learns from the studio’s own logs and keeps the result for a while: what adjustments do from the newest reeds that were worked on, and
/// what the teachers said of causes. Logs of students for whom nothing may be done now aren’t learned from.
/// </summary>
public sealed class LearnedHere(IDbContextFactory<ClinicDb> databases, TimeProvider time, BenchNews? news = null) : IDisposable
{
    /// <summary>So many of the newest adjustments are looked at.</summary>
    public const int MostWork = 2_000;

    /// <summary>The logs of at most so many reeds are read.</summary>
    public const int MostReeds = 300;

    /// <summary>The words on causes of at most so many entries are read, the newest.</summary>
    public const int MostWords = 5_000;

    /// <summary>For so long what was learned of adjustments is kept: a few passes more change little.</summary>
    public static readonly TimeSpan Kept = TimeSpan.FromMinutes(30);

    private readonly SemaphoreSlim _one = new(1, 1);
    private Learned? _kept;
    private int _counted;

    /// <summary>What is kept, however old; null when nothing was read yet. It never waits.</summary>
    public Learned? AtHand => Volatile.Read(ref _kept);

    /// <summary>True when it is time to read anew.</summary>
    public bool IsDue => AtHand is not { } kept || time.GetUtcNow() - kept.ReadAt >= Kept;

    private int Judged => news?.Judged ?? 0;

    /// <inheritdoc />
    public void Dispose() => _one.Dispose();

    /// <summary>What is kept, read anew when it is time; only one reads at a time.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task<Learned> ReadAsync(CancellationToken ct)
    {
        if (!IsDue)
        {
            return AtHand!;
        }

        await _one.WaitAsync(ct).ConfigureAwait(false);
        try
        {
            if (IsDue)
            {
                var judged = Judged;
                var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
                await using var _ = db.ConfigureAwait(false);
                Volatile.Write(ref _kept, await LearnAsync(db, time.GetUtcNow(), ct).ConfigureAwait(false));
                Volatile.Write(ref _counted, judged);
            }

            return AtHand!;
        }
        finally
        {
            _one.Release();
        }
    }

    /// <summary>
    /// Reads anew what is due: everything after a while; what the teachers said of causes as soon as a word on one was said or taken back in
    /// any log. Only one counts at a time: who finds somebody counting goes on with what is at hand, and whatever was said meanwhile is
    /// counted by the one who counts.
    /// </summary>
    /// <param name="ct">Stops it.</param>
    /// <returns>True when something else is at hand now.</returns>
    public async Task<bool> CatchUpAsync(CancellationToken ct)
    {
        if (IsDue)
        {
            await ReadAsync(ct).ConfigureAwait(false);
            return true;
        }

        var before = AtHand!.Counts.All;
        while (Volatile.Read(ref _counted) != Judged && await _one.WaitAsync(TimeSpan.Zero, ct).ConfigureAwait(false))
        {
            try
            {
                var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
                await using var _ = db.ConfigureAwait(false);
                await CountAnewAsync(db, ct).ConfigureAwait(false);
            }
            finally
            {
                _one.Release();
            }
        }

        return !before.SequenceEqual(AtHand!.Counts.All);
    }

    /// <summary>Takes the counts and the catalogue as they are now into what is kept, after whoever counts just now: what was counted later stays.</summary>
    /// <param name="db">The context.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>The counts.</returns>
    internal async Task<StudioCounts> TakeAsync(ClinicDb db, CancellationToken ct)
    {
        await _one.WaitAsync(ct).ConfigureAwait(false);
        try
        {
            return await CountAnewAsync(db, ct).ConfigureAwait(false);
        }
        finally
        {
            _one.Release();
        }
    }

    // Only by whoever holds the one place. The number is read first: what is said while it counts is counted once more.
    private async Task<StudioCounts> CountAnewAsync(ClinicDb db, CancellationToken ct)
    {
        var judged = Judged;
        var counts = await CountAsync(db, ct).ConfigureAwait(false);
        var catalogue = await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false);
        if (AtHand is { } kept)
        {
            Volatile.Write(ref _kept, kept with { Counts = counts, Catalogue = counts.LayOver(catalogue) });
        }

        Volatile.Write(ref _counted, judged);
        return counts;
    }

    /// <summary>What the teachers said of causes, as it stands at this moment.</summary>
    internal static async Task<StudioCounts> CountAsync(ClinicDb db, CancellationToken ct)
    {
        var since = await db.Set<Domain.People.Studio>().Select(studio => studio.CausesCountSince).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        var reeds = ReedsOfWorked(db);
        var words = await db.Set<CauseJudged>().AsNoTracking()
            .Where(word => reeds.Contains(word.ReedId)).OrderByDescending(word => word.RecordedAt).Take(MostWords).ToListAsync(ct).ConfigureAwait(false);
        var judged = words.Select(word => word.ReedId).Distinct().ToList();

        // A word that was taken back is told by what supersedes it, however long that chain is.
        var undone = await db.Set<Undo>().AsNoTracking().Where(undo => judged.Contains(undo.ReedId)).ToListAsync(ct).ConfigureAwait(false);
        var logs = words.Cast<BenchEntry>().Concat(undone).GroupBy(entry => entry.ReedId).Select(BenchLog.Fold);
        return StudioCounts.Of(logs, since);
    }

    private static async Task<Learned> LearnAsync(ClinicDb db, DateTimeOffset now, CancellationToken ct)
    {
        var counts = await CountAsync(db, ct).ConfigureAwait(false);
        var catalogue = counts.LayOver(await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false));
        var worked = ReedsOfWorked(db);
        var newest = await db.Set<Adjustment>().AsNoTracking().OrderByDescending(work => work.RecordedAt).Take(MostWork)
            .Where(work => worked.Contains(work.ReedId)).Select(work => work.ReedId).ToListAsync(ct).ConfigureAwait(false);
        var reeds = newest.Distinct().Take(MostReeds).ToList();
        var whose = await (
            from reed in db.Set<Reed>().AsNoTracking()
            join batch in db.Set<Batch>() on reed.Batch equals batch.Id
            where reeds.Contains(reed.Id)
            select new { reed.Id, batch.Student }).ToDictionaryAsync(row => row.Id, row => row.Student, ct).ConfigureAwait(false);
        var entries = await db.Set<BenchEntry>().AsNoTracking().Where(entry => reeds.Contains(entry.ReedId)).ToListAsync(ct).ConfigureAwait(false);
        var passes = PassReading.Together(entries.GroupBy(entry => entry.ReedId).Where(log => whose.ContainsKey(log.Key))
            .Select(log => PassReading.Of(BenchLog.Fold(log), whose[log.Key], CrowTarget.OnC(Tuning.Standard))));
        return new Learned(catalogue, counts, LearnedEffects.Learn(passes, catalogue), reeds.Count, now);
    }

    private static IQueryable<ReedId> ReedsOfWorked(ClinicDb db) =>
        from reed in db.Set<Reed>()
        join batch in db.Set<Batch>() on reed.Batch equals batch.Id
        join student in db.Set<Student>().Where(BatchQueries.MayBeWorkedFor) on batch.Student equals student.Id
        select reed.Id;
}
