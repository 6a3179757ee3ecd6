using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;

namespace ReedClinic.Data.Recordings;

/// <summary>What kept sounds say: for whoever hears the sound itself, and for nobody else.</summary>
public sealed class SoundReadingBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, BenchNews? news = null)
{
    private const string Correct = "correct-sound-kind";

    /// <summary>What one sound says; null when this actor doesn’t hear it, or it is none that is read.</summary>
    public async Task<SoundReadingView?> FindAsync(Actor actor, RecordingId id, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await ViewAsync(db, actor, id, ct).ConfigureAwait(false);
    }

    /// <summary>How far reading one has come: little, because a page asks for it again and again. Null as above.</summary>
    public async Task<ReadingStateView?> StateAsync(Actor actor, RecordingId id, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await (
            from recording in db.RecordingsSeenBy(actor)
            join reading in db.Set<SoundReading>() on recording.Id equals reading.Recording
            where recording.Id == id
            select new ReadingStateView(recording.Reed, reading.State)).SingleOrDefaultAsync(ct).ConfigureAwait(false);
    }

    /// <summary>The spectrogram of one, as a PNG; null as above, or when it has none.</summary>
    public async Task<byte[]?> PictureAsync(Actor actor, RecordingId id, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await (
            from recording in db.RecordingsSeenBy(actor)
            join reading in db.Set<SoundReading>() on recording.Id equals reading.Recording
            where recording.Id == id
            select reading.Picture).SingleOrDefaultAsync(ct).ConfigureAwait(false);
    }

    /// <summary>
    /// Says what is played. Those who work here may, and a student of what they gave. What was recorded at the bench to be measured
    /// is put into the log anew, as what it is.
    /// </summary>
    public Task<Outcome<SoundReadingView>> CorrectAsync(Actor actor, RecordingId id, SoundKind kind, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        return databases.PatientlyAsync((attempt, stop) => CorrectAsync(attempt, actor, id, kind, version, operation, stop), ct);
    }

    private async Task<Outcome<SoundReadingView>> CorrectAsync(
        Attempt attempt, Actor actor, RecordingId id, SoundKind kind, Guid version, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await db.HoldConsentAsync(attempt, db.BatchOf(id), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        if (await FindAsync(db, actor, id, ct).ConfigureAwait(false) is not var (recording, reading, place) || !Enum.IsDefined(kind))
        {
            return new Outcome<SoundReadingView>.NotFound();
        }

        if (!await db.WasDoneAsync(operation, Correct, id.Value, ct).ConfigureAwait(false))
        {
            if (place.IsPaused || reading.State != ReadingState.Read)
            {
                return new Outcome<SoundReadingView>.Refused([place.IsPaused ? actor.WorksHere ? People.ConsentTakenBack.Unworked : People.ConsentTakenBack.Unagreed : DoneOperations.NotSaved]);
            }

            db.ExpectVersion(reading, version);
            Say(db, recording, reading, place, kind, operation);
            if (!await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                await transaction.RollbackAsync(ct).ConfigureAwait(false);
                return await ViewAsync(db, actor, id, ct).ConfigureAwait(false) is { } theirs
                    ? new Outcome<SoundReadingView>.Conflict(theirs)
                    : new Outcome<SoundReadingView>.NotFound();
            }

            await transaction.CommitAsync(ct).ConfigureAwait(false);
            news?.Tell(recording.Reed);
        }

        return new Outcome<SoundReadingView>.Done((await ViewAsync(db, actor, id, ct).ConfigureAwait(false))!);
    }

    private static async Task<(Recording Recording, SoundReading Reading, ReedPlace Place)?> FindAsync(ClinicDb db, Actor actor, RecordingId id, CancellationToken ct) =>
        await db.RecordingsSeenBy(actor).AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, ct).ConfigureAwait(false) is { } recording && MayCorrect(actor, recording)
        && await db.Set<SoundReading>().SingleOrDefaultAsync(row => row.Recording == id, ct).ConfigureAwait(false) is { } reading
        && await db.PlaceOfAsync(actor, recording.Reed, ct).ConfigureAwait(false) is { } place
            ? (recording, reading, place)
            : null;

    private void Say(ClinicDb db, Recording recording, SoundReading reading, ReedPlace place, SoundKind kind, OperationId operation)
    {
        var now = time.GetUtcNow();
        reading.Correct(kind);
        if (recording.Kind == RecordingKind.TestSound)
        {
            db.AskToRead(recording.Id, place.Student, $"{SoundJobs.First(recording.Id)}:{operation.Value:N}", now);
        }

        db.Note(operation, Correct, recording.Id.Value, now);
    }

    private static bool MayCorrect(Actor actor, Recording recording) => actor.WorksHere || (!recording.FromStudio && recording.Kind.IsOfArrival());

    private static async Task<SoundReadingView?> ViewAsync(ClinicDb db, Actor actor, RecordingId id, CancellationToken ct)
    {
        var found = await (
            from recording in db.RecordingsSeenBy(actor)
            join reed in db.Set<Reed>() on recording.Reed equals reed.Id
            join batch in db.Set<Batch>() on reed.Batch equals batch.Id
            join reading in db.Set<SoundReading>() on recording.Id equals reading.Recording
            where recording.Id == id
            select new { recording.Reed, reed.Number, batch.Code, batch.TunesTo, reading.Version, reading.GuessHundredths, reading.GuessedKind, reading.SaidKind, reading.Trouble, reading.State, HasPicture = reading.Picture != null })
            .AsNoTracking().SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (found is null || await db.PlaceOfAsync(actor, found.Reed, ct).ConfigureAwait(false) is not { } place)
        {
            return null;
        }

        // The pictures stay where they are: they are asked for one by one.
        var rows = await (
            from recording in db.RecordingsSeenBy(actor)
            join reading in db.Set<SoundReading>() on recording.Id equals reading.Recording
            where recording.Reed == found.Reed && (recording.Id == id || reading.State == ReadingState.Read)
            orderby recording.RecordedAt
            select new { Recording = recording, reading.SaidKind, reading.GuessedKind, reading.Figures, reading.Series }).AsNoTracking().ToListAsync(ct).ConfigureAwait(false);
        var read = rows.Where(row => row.Figures is not null).Select(row => new ReadSoundView(
            row.Recording.ViewFor(actor, place), row.SaidKind ?? row.GuessedKind, row.Figures!, row.Series is null ? null : SoundSeries.Read(row.Series))).ToList();
        var own = rows.Single(row => row.Recording.Id == id).Recording;
        return new SoundReadingView(own.ViewFor(actor, place), found.Code, found.Number, found.State, found.Version)
        {
            Trouble = found.Trouble,
            Read = read.Find(one => one.Recording.Id == id),
            Guess = found is { GuessedKind: { } guess, GuessHundredths: { } share } ? new SoundGuess(guess, share / 100.0) : null,
            IsKindSaid = found.SaidKind is not null,
            IsOwn = actor.Student == place.Student,
            HasPicture = found.HasPicture,
            TunesTo = found.TunesTo,
            MayCorrect = MayCorrect(actor, own) && !place.IsPaused,
            Others = [.. read.Where(one => one.Recording.Id != id)],
        };
    }
}
