using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Upkeep;

namespace ReedClinic.Data.Upkeep;

/// <summary>Reads how the machine stands. For the owners' page and for whoever watches the machine: it names nobody.</summary>
public sealed class UpkeepReader(IDbContextFactory<ClinicDb> databases, MediaFolder media, BackupSettings backups, TimeProvider time)
{
    /// <summary>What is known.</summary>
    /// <param name="mailIsOn">Whether mail goes anywhere.</param>
    /// <param name="stumbling">Work behind the pages that fails just now.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<UpkeepFacts> ReadAsync(bool mailIsOn, IReadOnlyList<StumblingWork> stumbling, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var open = db.Set<Job>().AsNoTracking().Where(job => job.DoneAt == null);
        // What failed is put off for hours and isn't due meanwhile, but it waits.
        var due = open.Where(job => job.GaveUpAt == null && job.Kind != JobKind.Mail && (job.DueAt <= now || job.Problem != null));
        var failing = open.Where(job => job.GaveUpAt == null && job.Kind == JobKind.Mail && job.Problem != null);
        var lateMail = open.Where(job => job.GaveUpAt == null && job.Kind == JobKind.Mail && mailIsOn && job.Problem == null && job.DueAt <= now);
        var given = open.Where(job => job.GaveUpAt != null);
        var (free, size) = Room(media.Path);
        var records = db.Folder();
        var (recordsFree, recordsSize) = records is null ? (null, null) : Room(records);
        return new UpkeepFacts(
            now,
            (await BackupAbout.NewestWholeAsync(backups.Folder, ct).ConfigureAwait(false))?.MadeAt,
            free,
            size,
            await due.Concat(lateMail).CountAsync(ct).ConfigureAwait(false),
            await due.Concat(lateMail).OrderBy(job => job.MadeAt).Select(job => (DateTimeOffset?)job.MadeAt).FirstOrDefaultAsync(ct).ConfigureAwait(false),
            await given.CountAsync(job => job.Kind != JobKind.Mail, ct).ConfigureAwait(false),
            mailIsOn,
            await failing.CountAsync(ct).ConfigureAwait(false),
            await given.CountAsync(job => job.Kind == JobKind.Mail, ct).ConfigureAwait(false),
            await db.Set<Recording>().SumAsync(row => (long)row.Bytes, ct).ConfigureAwait(false),
            RecordingLimits.OfStudio.Bytes,
            await db.SizeAsync(ct).ConfigureAwait(false))
        {
            RecordsFree = recordsFree,
            RecordsSize = recordsSize,
            RecordsAreElsewhere = records is null,
            Stumbling = stumbling,
        };
    }

    private static (long? Free, long? Size) Room(string folder)
    {
        try
        {
            var drive = new DriveInfo(folder);
            return (drive.AvailableFreeSpace, drive.TotalSize);
        }
        catch (Exception untold) when (untold is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return (null, null);
        }
    }
}
