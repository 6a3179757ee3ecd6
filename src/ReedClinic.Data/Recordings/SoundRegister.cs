using System.Globalization;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;

namespace ReedClinic.Data.Recordings;

/// <summary>A sound that is to be read.</summary>
/// <param name="Recording">Which.</param>
/// <param name="Path">Where its file lies; null where it doesn’t.</param>
/// <param name="HasEnded">True where it was read before: only what follows from it may be lacking.</param>
public sealed record SoundToRead(RecordingId Recording, string? Path, bool HasEnded);

/// <summary>
/// What the worker that reads sounds needs of the records: which is due, and where what was found is put. Nothing here is
/// asked by a person. Every step may be done twice: a reading that ended stays as it is.
/// </summary>
public sealed class SoundRegister(IDbContextFactory<ClinicDb> databases, MediaFolder folder, TimeProvider time, BenchNews? news = null)
{
    private const int MostAsked = 200;

    /// <summary>
    /// Opens the sound of a job and says that it is being read; null when it is gone, or its student’s guardian took their
    /// consent back: it then waits until that changes.
    /// </summary>
    /// <param name="job">As it was claimed.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<SoundToRead?> OpenAsync(Job job, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (job.SoundOf() is not { } id)
        {
            return null;
        }

        var found = await ChangeAsync(id, (reading, _) => reading.Begin(), ct).ConfigureAwait(false);
        return found is var (recording, reading)
            ? new SoundToRead(id, folder.Has(recording.File) ? folder.PathOf(recording.File) : null, reading.HasEnded)
            : null;
    }

    /// <summary>Keeps what was found in a sound.</summary>
    /// <param name="id">Which.</param>
    /// <param name="found">What was found.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>False when the sound is gone.</returns>
    public async Task<bool> KeepAsync(RecordingId id, SoundFindings found, CancellationToken ct) =>
        await ChangeAsync(id, (reading, now) => reading.Keep(found, now), ct).ConfigureAwait(false) is not null;

    /// <summary>Says that nothing can be read from a sound.</summary>
    /// <param name="id">Which.</param>
    /// <param name="why">Why not.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>False when the sound is gone.</returns>
    public async Task<bool> GiveUpAsync(RecordingId id, SoundTrouble why, CancellationToken ct) =>
        await ChangeAsync(id, (reading, now) => reading.GiveUp(why, now), ct).ConfigureAwait(false) is not null;

    /// <summary>Says that nothing can be read from the sound of a job.</summary>
    /// <param name="job">As it was claimed.</param>
    /// <param name="why">Why not.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>False when the sound is gone.</returns>
    public async Task<bool> GiveUpAsync(Job job, SoundTrouble why, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(job);
        return job.SoundOf() is { } id && await GiveUpAsync(id, why, ct).ConfigureAwait(false);
    }

    /// <summary>
    /// Asks for what was kept before sounds were read, and for what waits and nobody works on: a guardian may have taken their
    /// consent back and given it again.
    /// </summary>
    /// <param name="ct">Stops it.</param>
    /// <returns>How many were asked for.</returns>
    public async Task<int> AskForLeftAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var open = db.Set<Job>().Where(job => job.Kind == JobKind.Sound && job.DoneAt == null && job.GaveUpAt == null);
        var left = await (
            from recording in db.Set<Recording>()
            join reed in db.Set<Reed>() on recording.Reed equals reed.Id
            join batch in db.Set<Batch>() on reed.Batch equals batch.Id
            join student in db.Set<Student>().Where(BatchQueries.MayBeWorkedFor) on batch.Student equals student.Id
            join reading in db.Set<SoundReading>() on recording.Id equals reading.Recording into readings
            from reading in readings.DefaultIfEmpty()
            where recording.Kind == RecordingKind.ArrivalSound || recording.Kind == RecordingKind.FinalSound || recording.Kind == RecordingKind.TestSound
            where reading == null || reading.State == ReadingState.Waiting || reading.State == ReadingState.BeingRead
            orderby recording.RecordedAt
            select new { recording.Id, Student = student.Id, IsNew = reading == null }).Take(MostAsked).ToListAsync(ct).ConfigureAwait(false);
        var going = (await open.Select(job => job.Payload).ToListAsync(ct).ConfigureAwait(false)).ToHashSet();
        var asked = 0;
        foreach (var row in left.Where(row => !going.Contains(row.Id.Value.ToString("N", CultureInfo.InvariantCulture))))
        {
            if (row.IsNew)
            {
                db.Add(new SoundReading(row.Id, now));
            }

            // One by one: where another process asks for one at the same moment, or it goes, the others are asked for all the same.
            db.AskToRead(row.Id, row.Student, string.Create(CultureInfo.InvariantCulture, $"{SoundJobs.First(row.Id)}:{now.UtcDateTime:yyyy-MM-ddTHH}"), now);
            asked += await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false) ? 1 : 0;
            db.ChangeTracker.Clear();
        }

        return asked;
    }

    /// <summary>Takes back that nothing can be read where that was so for the form alone and it is read by now; <see cref="AskForLeftAsync"/> asks for them.</summary>
    /// <param name="reads">Whether what lies in a file is of a form that is read.</param>
    /// <param name="ct">Stops it.</param>
    public async Task AskAgainAsync(Func<string, bool> reads, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(reads);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var refused = await (
            from reading in db.Set<SoundReading>()
            where reading.State == ReadingState.CannotBeRead && reading.Trouble == SoundTrouble.FormNotRead
            join recording in db.Set<Recording>() on reading.Recording equals recording.Id
            select new { recording.Id, recording.File }).ToListAsync(ct).ConfigureAwait(false);
        foreach (var row in refused.Where(row => folder.Has(row.File) && reads(folder.PathOf(row.File))))
        {
            await ChangeAsync(row.Id, (reading, now) => reading.AskAgain(now), ct).ConfigureAwait(false);
        }
    }

    private Task<(Recording Recording, SoundReading Reading)?> ChangeAsync(RecordingId id, Action<SoundReading, DateTimeOffset> change, CancellationToken ct) =>
        databases.PatientlyAsync((attempt, stop) => ChangeAsync(attempt, id, change, stop), ct);

    private async Task<(Recording Recording, SoundReading Reading)?> ChangeAsync(
        Attempt attempt, RecordingId id, Action<SoundReading, DateTimeOffset> change, CancellationToken ct)
    {
        for (var tries = 1; ; tries++)
        {
            var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
            await using var _ = db.ConfigureAwait(false);
            var transaction = await db.HoldConsentAsync(attempt, db.BatchOf(id), ct).ConfigureAwait(false);
            await using var __ = transaction.ConfigureAwait(false);
            var recording = await db.Set<Recording>().AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, ct).ConfigureAwait(false);
            var reading = await db.Set<SoundReading>().SingleOrDefaultAsync(row => row.Recording == id, ct).ConfigureAwait(false);
            if (recording is null || reading is null || !await db.BatchOf(id).AnyAsync(batch => db.Set<Student>().Where(BatchQueries.MayBeWorkedFor).Any(student => student.Id == batch.Student), ct).ConfigureAwait(false))
            {
                return null;
            }

            change(reading, time.GetUtcNow());
            try
            {
                await db.SaveChangesAsync(ct).ConfigureAwait(false);
                await transaction.CommitAsync(ct).ConfigureAwait(false);
                news?.Tell(recording.Reed);
                return (recording, reading);
            }
            catch (DbUpdateConcurrencyException) when (tries < DoneOperations.MostTries)
            {
                // Somebody corrected it or removed the sound at the same moment: what stands now decides.
            }
        }
    }
}
