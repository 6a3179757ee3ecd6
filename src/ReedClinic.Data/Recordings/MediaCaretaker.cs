using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Data.Recordings;

/// <summary>Keeps the folder of sounds and photographs and the rows about them in step. A worker of the host calls it.</summary>
public sealed partial class MediaCaretaker(IDbContextFactory<ClinicDb> databases, MediaFolder folder, TimeProvider time, ILogger<MediaCaretaker> log)
{
    /// <summary>How long something that was begun may lie. A round comes every hour, so that nothing lies a whole day.</summary>
    public static TimeSpan AbandonedAfter { get; } = TimeSpan.FromHours(23);

    /// <summary>How long a file may lie without a row: longer than it takes from writing the one to saving the other.</summary>
    public static TimeSpan OrphanAfter { get; } = TimeSpan.FromHours(1);

    /// <summary>Asks for this hour's round, unless somebody has.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task AskForRoundAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var once = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"media:{now.UtcDateTime:yyyy-MM-ddTHH}");
        if (!await db.Set<Job>().AnyAsync(job => job.Once == once, ct).ConfigureAwait(false))
        {
            db.Add(new Job { Id = Guid.CreateVersion7(now), Kind = JobKind.Media, Once = once, MadeAt = now, DueAt = now });
            await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        }
    }

    /// <summary>Removes the files whose rows went.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task RemoveAskedAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        await db.RemoveAskedAsync(folder, ct).ConfigureAwait(false);
    }

    /// <summary>One round: what was begun and left, what nobody knows of, and what is missing.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task<MediaRound> SweepAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var since = now - AbandonedAfter;
        var unused = await db.PicturesUnused(since).ToListAsync(ct).ConfigureAwait(false);
        db.RemoveRange(unused);
        db.AskToRemove(unused.Select(picture => picture.File), now);
        var left = await db.Set<Upload>().Where(upload => upload.StartedAt <= since).ToListAsync(ct).ConfigureAwait(false);
        db.RemoveRange(left);
        db.AskToRemove(left.Select(upload => upload.File), now);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        await db.RemoveAskedAsync(folder, ct).ConfigureAwait(false);

        // First the files, then the rows: a file that came in between has its row by then, or is young.
        var lying = folder.All().ToList();
        var kept = await db.Set<Recording>().AsNoTracking().Select(row => new { row.Id, row.File }).ToListAsync(ct).ConfigureAwait(false);
        var pictures = await db.Set<NotePicture>().AsNoTracking().Select(row => new { row.Key, row.File }).ToListAsync(ct).ConfigureAwait(false);
        var known = kept.Select(row => row.File).Concat(pictures.Select(row => row.File)).Concat(await db.Set<Upload>().AsNoTracking().Select(row => row.File).ToListAsync(ct).ConfigureAwait(false)).ToHashSet();
        var orphans = lying.Where(file => !known.Contains(file.Name) && file.WrittenAt <= now - OrphanAfter).Select(file => file.Name).Distinct().ToList();
        orphans.ForEach(folder.Remove);
        var missing = kept.Where(row => !folder.Has(row.File)).Select(row => row.Id).ToList();
        missing.ForEach(id => Missing(id.Value));
        pictures.Where(row => !folder.Has(row.File)).ToList().ForEach(row => MissingPicture(row.Key));
        if (left.Count + orphans.Count > 0)
        {
            Swept(left.Count, orphans.Count);
        }

        return new MediaRound(left.Count, orphans.Count, missing);
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Sounds and photographs: {Left} that were begun and left, and {Orphans} files that nobody knows of, went.")]
    private partial void Swept(int left, int orphans);

    [LoggerMessage(Level = LogLevel.Error, Message = "The file of picture {Key} is missing. Bring it back from a back-up, or take the picture out of notes and letters.")]
    private partial void MissingPicture(string key);

    [LoggerMessage(Level = LogLevel.Error, Message = "The file of recording {Id} is missing. Bring it back from a back-up, or remove the recording.")]
    private partial void Missing(Guid id);
}

/// <summary>What a round did.</summary>
/// <param name="Left">How many files that were begun and left went.</param>
/// <param name="Orphans">How many files without a row went.</param>
/// <param name="Missing">Which recordings lack their file.</param>
public sealed record MediaRound(int Left, int Orphans, IReadOnlyList<RecordingId> Missing);
