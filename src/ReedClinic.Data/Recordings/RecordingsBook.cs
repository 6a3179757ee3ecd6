using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Recordings;

/// <summary>The sounds and photographs of reeds: looking, giving out, describing, putting a memo into the letter, removing.</summary>
public sealed class RecordingsBook(IDbContextFactory<ClinicDb> databases, MediaFolder folder, TimeProvider time, BenchNews? news = null)
{
    private const string Describe = "describe-recording";
    private const string ToLetter = "recording-in-letter";
    private const string Remove = "remove-recording";

    /// <summary>What there is of one reed; null when there is no such reed for this actor.</summary>
    public async Task<ReedRecordingsView?> OfReedAsync(Actor actor, ReedId reed, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await db.PlaceOfAsync(actor, reed, ct).ConfigureAwait(false) is not { } place)
        {
            return null;
        }

        var rows = await db.RecordingsSeenBy(actor).AsNoTracking().Where(row => row.Reed == reed).OrderBy(row => row.RecordedAt).ToListAsync(ct).ConfigureAwait(false);
        var isHere = await db.Set<Reed>().AnyAsync(row => row.Id == reed && row.Presence != Presence.Missing, ct).ConfigureAwait(false);
        var may = Enum.GetValues<RecordingKind>().Where(kind => isHere && (actor.WorksHere || kind.IsOfArrival()) && place.Hindrance(actor, kind) is null);
        return new ReedRecordingsView([.. rows.Select(row => row.ViewFor(actor, place))], [.. may]) { IsOwn = actor.Student == place.Student };
    }

    /// <summary>What there is of all reeds of a batch, as its letter may play it; empty when there is nothing for this actor.</summary>
    public async Task<IReadOnlyList<RecordingView>> OfBatchAsync(Actor actor, BatchCode code, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var seen = db.RecordingsSeenBy(actor);
        var rows = await (
            from batch in db.Set<Batch>().SeenBy(actor)
            where batch.Code == code
            join reed in db.Set<Reed>() on batch.Id equals reed.Batch
            join recording in seen on reed.Id equals recording.Reed
            orderby recording.RecordedAt
            select recording).AsNoTracking().ToListAsync(ct).ConfigureAwait(false);
        return rows.Count > 0 && await db.PlaceOfAsync(actor, rows[0].Reed, ct).ConfigureAwait(false) is { } place
            ? [.. rows.Select(row => row.ViewFor(actor, place))]
            : [];
    }

    /// <summary>The file of one; null when there is none that this actor may have.</summary>
    public async Task<RecordingFile?> OpenAsync(Actor actor, RecordingId id, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.RecordingsSeenBy(actor).AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, ct).ConfigureAwait(false) is { } found
            && folder.Has(found.File)
            && await db.PlaceOfAsync(actor, found.Reed, ct).ConfigureAwait(false) is { } place
            ? new RecordingFile(found.ViewFor(actor, place), folder.PathOf(found.File), found.Sha256)
            : null;
    }

    /// <summary>Says what is heard or seen in one: whoever may remove it may.</summary>
    public Task<Outcome<RecordingView>> DescribeAsync(Actor actor, RecordingId id, string? words, OperationId operation, CancellationToken ct) =>
        ChangeAsync(actor, id, Describe, operation, (recording, place) => recording.MayGoBy(actor, place), (recording, _) => recording.Describe(words), ct);

    /// <summary>Puts a memo into the letter, so that the student hears it once the letter is sent, or takes it out. For those who work here.</summary>
    public Task<Outcome<RecordingView>> PutInLetterAsync(Actor actor, RecordingId id, bool isIn, OperationId operation, CancellationToken ct) =>
        ChangeAsync(
            actor,
            id,
            ToLetter,
            operation,
            (recording, _) => actor.WorksHere && recording.Kind == RecordingKind.VoiceMemo,
            (recording, place) =>
            {
                if (place.IsSent)
                {
                    return [RecordingRefusal.LetterSent.Problem(recording.Kind)];
                }

                recording.PutInLetter(isIn);
                return [];
            },
            ct);

    /// <summary>Removes one and its file, and takes back the test it gave. The studio may remove any, a student what they gave, until the parcel is opened.</summary>
    public async Task<Outcome<RecordingId>> RemoveAsync(Actor actor, RecordingId id, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        if (await databases.PatientlyAsync((attempt, stop) => TryRemoveAsync(attempt, actor, id, operation, stop), ct).ConfigureAwait(false) is { } ending)
        {
            return ending;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        await db.RemoveAskedAsync(folder, ct).ConfigureAwait(false);
        return new Outcome<RecordingId>.Done(id);
    }

    // Null when it is gone.
    private async Task<Outcome<RecordingId>?> TryRemoveAsync(Attempt attempt, Actor actor, RecordingId id, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.WasDoneAsync(operation, Remove, id.Value, ct).ConfigureAwait(false)
            ? null
            : await RemoveOnceAsync(attempt, db, actor, id, operation, ct).ConfigureAwait(false);
    }

    private async Task<Outcome<RecordingId>?> RemoveOnceAsync(Attempt attempt, ClinicDb db, Actor actor, RecordingId id, OperationId operation, CancellationToken ct)
    {
        var transaction = await db.HoldConsentAsync(attempt, db.BatchOf(id), ct).ConfigureAwait(false);
        await using var _ = transaction.ConfigureAwait(false);
        if (await FindAsync(db, actor, id, ct).ConfigureAwait(false) is not var (recording, place) || (!actor.WorksHere && (recording.FromStudio || !recording.Kind.IsOfArrival())))
        {
            return new Outcome<RecordingId>.NotFound();
        }

        if (!recording.MayGoBy(actor, place))
        {
            return new Outcome<RecordingId>.Refused([place.IsPaused ? People.ConsentTakenBack.Unagreed : RecordingRefusal.ParcelOpened.Problem(recording.Kind)]);
        }

        if (await db.TakeTestBackAsync(actor, recording, time.GetUtcNow(), ct).ConfigureAwait(false) is { } problem)
        {
            return new Outcome<RecordingId>.Refused([problem]);
        }

        db.Remove(recording);
        await LetPagesGoAsync(db, place.Batch, ct).ConfigureAwait(false);
        db.AskToRemove([recording.File], time.GetUtcNow());
        db.Note(operation, Remove, id.Value, time.GetUtcNow());
        if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
        {
            await transaction.CommitAsync(ct).ConfigureAwait(false);
        }
        else
        {
            await transaction.RollbackAsync(ct).ConfigureAwait(false);
            if (await FindAsync(db, actor, id, ct).ConfigureAwait(false) is not null)
            {
                return new Outcome<RecordingId>.Refused([DoneOperations.NotSaved]);
            }
        }

        news?.Tell(recording.Reed);
        return null;
    }

    // A kept page would show a player of nothing.
    private static async Task LetPagesGoAsync(ClinicDb db, BatchId batch, CancellationToken ct)
    {
        foreach (var sending in await db.Set<LetterSending>().Where(row => row.Batch == batch).ToListAsync(ct).ConfigureAwait(false))
        {
            sending.LetPageGo();
            db.Entry(sending).Property(row => row.Page).IsModified = true; // also where none is kept yet: it may be being kept just now
        }
    }

    private Task<Outcome<RecordingView>> ChangeAsync(
        Actor actor, RecordingId id, string verb, OperationId operation,
        Func<Recording, ReedPlace, bool> may, Func<Recording, ReedPlace, IReadOnlyList<Problem>> change, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        return databases.PatientlyAsync((attempt, stop) => TryAsync(attempt, actor, id, verb, operation, may, change, stop), ct);
    }

    private async Task<Outcome<RecordingView>> TryAsync(
        Attempt attempt, Actor actor, RecordingId id, string verb, OperationId operation,
        Func<Recording, ReedPlace, bool> may, Func<Recording, ReedPlace, IReadOnlyList<Problem>> change, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await db.HoldConsentAsync(attempt, db.BatchOf(id), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            if (await FindAsync(db, actor, id, ct).ConfigureAwait(false) is not var (recording, place) || !may(recording, place))
            {
                return new Outcome<RecordingView>.NotFound();
            }

            if (await db.WasDoneAsync(operation, verb, id.Value, ct).ConfigureAwait(false))
            {
                return new Outcome<RecordingView>.Done(recording.ViewFor(actor, place));
            }

            var problems = place.IsPaused ? [People.ConsentTakenBack.Unworked] : change(recording, place);
            if (problems.Count > 0)
            {
                return new Outcome<RecordingView>.Refused(problems);
            }

            db.Note(operation, verb, id.Value, time.GetUtcNow());
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                await transaction.CommitAsync(ct).ConfigureAwait(false);
                news?.Tell(recording.Reed);
                return new Outcome<RecordingView>.Done(recording.ViewFor(actor, place));
            }
        }

        return new Outcome<RecordingView>.Refused([DoneOperations.NotSaved]);
    }

    private static async Task<(Recording Recording, ReedPlace Place)?> FindAsync(ClinicDb db, Actor actor, RecordingId id, CancellationToken ct) =>
        await db.RecordingsSeenBy(actor).SingleOrDefaultAsync(row => row.Id == id, ct).ConfigureAwait(false) is { } found
        && await db.PlaceOfAsync(actor, found.Reed, ct).ConfigureAwait(false) is { } place
            ? (found, place)
            : null;
}
