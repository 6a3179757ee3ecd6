using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Intake;

/// <summary>Opening a parcel: finding its batch and noting what lies in it.</summary>
public sealed class ArrivalBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    /// <summary>The field that the refusal to remove a reed stands beside.</summary>
    public const string Removing = "Remove";

    /// <summary>How long a sound or a photograph that was begun keeps its reed. What isn't finished by then goes with it.</summary>
    public static TimeSpan Sending { get; } = TimeSpan.FromHours(1);

    /// <summary>Finds a batch by the code on its slip, or says what is wrong with the code.</summary>
    public async Task<CodeSearch> FindAsync(Actor actor, string? typed, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var seen = db.Set<Batch>().SeenBy(actor);
        var read = BatchCode.Read(typed);
        if (read is Outcome<BatchCode>.Done(var code)
            && await db.ViewAsync(seen.Where(batch => batch.Code == code), ct).ConfigureAwait(false) is { } found)
        {
            return new CodeSearch(found, null, []);
        }

        var near = BatchCode.NearTo(typed);
        var rows = await (
            from batch in seen.Where(batch => near.Contains(batch.Code))
            join student in db.Set<Student>() on batch.Student equals student.Id
            orderby batch.SubmittedAt descending
            select new { batch.Code, student.Name, batch.Stage }).Take(5).ToListAsync(ct).ConfigureAwait(false);
        return new CodeSearch(
            null,
            read is Outcome<BatchCode>.Refused(var problems) ? problems[0].Message : "No batch has this code.",
            [.. rows.Select(row => new NearCode(row.Code, BatchCode.Difference(typed, row.Code), row.Name, row.Stage))]);
    }

    /// <summary>Notes what was seen of some or all reeds, and of the parcel as a whole.</summary>
    public Task<Outcome<BatchView>> RecordAsync(
        Actor actor, BatchId id, SeenParcel seen, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(seen);
        return ChangeAsync(actor, id, "record-arrival", version, operation, (batch, now) => Apply(batch, seen, now), ct);
    }

    /// <summary>Adds a reed that lay in the parcel without having been announced. The batch then has the <see cref="OperationId.VersionAfter"/>.</summary>
    public Task<Outcome<BatchView>> AddExtraAsync(
        Actor actor, BatchId id, string? howToRecognise, OperationId operation, CancellationToken ct) =>
        ChangeAsync(
            actor,
            id,
            "add-extra-reed",
            null,
            operation,
            (batch, now) => batch.AddExtra(new ReedId(Guid.CreateVersion7(now)), howToRecognise, now)
                is Outcome<Reed>.Refused(var problems) ? problems : [],
            ct);

    /// <summary>Removes a reed that was added as an unannounced one by mistake, as long as nothing was done on it and no letter went out. The same of its version. An operation that removed another reed is refused.</summary>
    public Task<Outcome<BatchView>> RemoveExtraAsync(Actor actor, BatchId id, ReedId reed, OperationId operation, CancellationToken ct) =>
        ChangeAsync(actor, id, "remove-extra-reed", null, operation, (batch, _) => batch.RemoveExtra(reed), ct, reed);

    // One page has one operation for all its buttons: pressed twice in a row, the second can’t be told from the first by it.
    private static Problem AnotherWent { get; } = new(Removing, "Another reed was removed by the press right before, and this one stays. Press once more to remove it, too.");

    private static async Task<Problem?> RefusedAsync(ClinicDb db, Actor actor, Batch batch, ReedId? without, DateTimeOffset now, CancellationToken ct) =>
        !await db.WorkedBy(actor).AnyAsync(row => row.Id == batch.Id, ct).ConfigureAwait(false) ? ConsentTakenBack.Unworked
        : without is { } reed && await KeepsAsync(db, batch, reed, now, ct).ConfigureAwait(false) is { } why ? new Problem(Removing, why)
        : null;

    // What hangs on a reed goes with it: whoever is about to write something of it waits, and is refused afterwards.
    private static async Task<string?> KeepsAsync(ClinicDb db, Batch batch, ReedId reed, DateTimeOffset now, CancellationToken ct)
    {
        await db.HoldAloneAsync(batch.Student, ct).ConfigureAwait(false);
        var since = now - Sending;
        return await db.Set<BenchEntry>().AnyAsync(entry => entry.ReedId == reed, ct).ConfigureAwait(false)
            || await db.Set<BenchDraft>().AnyAsync(draft => draft.ReedId == reed, ct).ConfigureAwait(false) ? "Something was written of this reed at the bench already, so it stays."
            : await db.Set<Recording>().AnyAsync(recording => recording.Reed == reed, ct).ConfigureAwait(false) ? "A sound or a photograph of this reed is kept. Remove that first, if this reed was added by mistake."
            : await db.Set<Upload>().AnyAsync(upload => upload.Reed == reed && upload.Refusal == null && upload.StartedAt > since, ct).ConfigureAwait(false) ? "Somebody began to send a sound or a photograph of this reed within the last hour, and it isn’t all here. The reed can be removed an hour after that began; what isn’t all here by then goes with it."
            : null;
    }

    // The reeds are part of the batch: two forms on one version clash even where they touch different reeds.
    private Task<Outcome<BatchView>> ChangeAsync(
        Actor actor, BatchId id, string verb, Guid? version, OperationId operation,
        Func<Batch, DateTimeOffset, IReadOnlyList<Problem>> change, CancellationToken ct, ReedId? without = null)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        outbox.Ready();
        return databases.PatientlyAsync((attempt, stop) => TryAsync(attempt, actor, id, verb, version, operation, change, without, stop), ct);
    }

    private async Task<Outcome<BatchView>> TryAsync(
        Attempt attempt, Actor actor, BatchId id, string verb, Guid? version, OperationId operation,
        Func<Batch, DateTimeOffset, IReadOnlyList<Problem>> change, ReedId? without, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var which = Workable(db, actor).Where(batch => batch.Id == id);
        var transaction = await db.HoldConsentAsync(attempt, which, ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        var done = await db.WasDoneAsync(operation, verb, id.Value, ct).ConfigureAwait(false);
        if (!done && await which.Whole().SingleOrDefaultAsync(ct).ConfigureAwait(false) is { } batch)
        {
            var (now, before) = (time.GetUtcNow(), UnfitReeds.Of(batch.Reeds));
            var problems = await RefusedAsync(db, actor, batch, without, now, ct).ConfigureAwait(false) is { } refused ? [refused] : change(batch, now);
            if (problems.Count > 0)
            {
                return new Outcome<BatchView>.Refused(problems);
            }

            db.Entry(batch).Property(parcel => parcel.Stage).IsModified = true;
            await FollowAsync(db, batch, version, operation, without, now, ct).ConfigureAwait(false);
            await outbox.PutUnfitAsync(db, batch, before, ct).ConfigureAwait(false);
            db.Note(operation, verb, id.Value, now);
            done = await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
                || await db.WasDoneAsync(operation, verb, id.Value, ct).ConfigureAwait(false);
        }

        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return await db.ViewAsync(which, ct).ConfigureAwait(false) switch
        {
            null => new Outcome<BatchView>.NotFound(),
            var stands when done && stands.Batch.Reeds.Any(reed => reed.Id == without) => new Outcome<BatchView>.Refused([AnotherWent]),
            var stands when done => new Outcome<BatchView>.Done(stands),
            var stands => new Outcome<BatchView>.Conflict(stands),
        };
    }

    // A whole form clashes with what came since it was opened; what only adds or removes one reed says which version it came after.
    private static async Task FollowAsync(ClinicDb db, Batch batch, Guid? version, OperationId operation, ReedId? without, DateTimeOffset now, CancellationToken ct)
    {
        if (version is { } expected)
        {
            db.ExpectVersion(batch, expected);
        }
        else
        {
            db.ChangedBy[batch] = operation;
        }

        if (without is { } gone)
        {
            await db.GiveUpUploadsAsync(gone, now, ct).ConfigureAwait(false);
        }
    }

    private static List<Problem> Apply(Batch batch, SeenParcel seen, DateTimeOffset at)
    {
        var problems = new List<Problem>();
        var note = PlainText.Read(seen.Note, "Note", IntakeLimits.ArrivalNote, problems, severalLines: true);
        foreach (var reed in batch.Reeds)
        {
            if (seen.Reeds.TryGetValue(reed.Id, out var arrival))
            {
                problems.AddRange(batch.RecordArrival(
                    reed.Id, arrival, at, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Reeds[{reed.Number}].")));
            }
        }

        if (problems.Count == 0)
        {
            batch.NoteOnArrival(note, seen.NoteInLetter);
        }

        return problems;
    }

    private static IQueryable<Batch> Workable(ClinicDb db, Actor actor) =>
        actor.WorksHere ? db.Set<Batch>() : db.Set<Batch>().Where(batch => false);
}

/// <summary>What was seen when a parcel was opened. Problems name a field as “Reeds[3].Fitness”, by the number on the tag.</summary>
/// <param name="Reeds">What was seen of each reed; reeds that aren't named stay as they are.</param>
/// <param name="Note">A note on the parcel as a whole.</param>
public sealed record SeenParcel(IReadOnlyDictionary<ReedId, ReedArrival> Reeds, string? Note)
{
    /// <summary>Whether the letter tells the note.</summary>
    public bool NoteInLetter { get; init; }
}
