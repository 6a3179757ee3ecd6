using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Intake;

/// <summary>Opening a parcel: finding its batch and noting what lies in it.</summary>
public sealed class ArrivalBook(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
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

    /// <summary>Adds a reed that lay in the parcel without having been announced.</summary>
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

    // The reeds are part of the batch: two forms on one version clash even where they touch different reeds.
    private Task<Outcome<BatchView>> ChangeAsync(
        Actor actor, BatchId id, string verb, Guid? version, OperationId operation,
        Func<Batch, DateTimeOffset, IReadOnlyList<Problem>> change, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        return databases.PatientlyAsync((attempt, stop) => TryAsync(attempt, actor, id, verb, version, operation, change, stop), ct);
    }

    private async Task<Outcome<BatchView>> TryAsync(
        Attempt attempt, Actor actor, BatchId id, string verb, Guid? version, OperationId operation,
        Func<Batch, DateTimeOffset, IReadOnlyList<Problem>> change, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var which = Workable(db, actor).Where(batch => batch.Id == id);
        var transaction = await db.HoldConsentAsync(attempt, which, ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        var done = await db.WasDoneAsync(operation, verb, id.Value, ct).ConfigureAwait(false);
        if (!done && await which.Whole().SingleOrDefaultAsync(ct).ConfigureAwait(false) is { } batch)
        {
            var now = time.GetUtcNow();
            var problems = await db.WorkedBy(actor).AnyAsync(row => row.Id == id, ct).ConfigureAwait(false) ? change(batch, now) : [ConsentTakenBack.Unworked];
            if (problems.Count > 0)
            {
                return new Outcome<BatchView>.Refused(problems);
            }

            db.Entry(batch).Property(parcel => parcel.Stage).IsModified = true;
            if (version is { } expected)
            {
                db.ExpectVersion(batch, expected);
            }

            db.Note(operation, verb, id.Value, now);
            done = await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
                || await db.WasDoneAsync(operation, verb, id.Value, ct).ConfigureAwait(false);
        }

        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return await db.ViewAsync(which, ct).ConfigureAwait(false) switch
        {
            null => new Outcome<BatchView>.NotFound(),
            var stands when done => new Outcome<BatchView>.Done(stands),
            var stands => new Outcome<BatchView>.Conflict(stands),
        };
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
            batch.NoteOnArrival(note);
        }

        return problems;
    }

    private static IQueryable<Batch> Workable(ClinicDb db, Actor actor) =>
        actor.WorksHere ? db.Set<Batch>() : db.Set<Batch>().Where(batch => false);
}

/// <summary>What was seen when a parcel was opened. Problems name a field as “Reeds[3].Fitness”, by the number on the tag.</summary>
/// <param name="Reeds">What was seen of each reed; reeds that aren't named stay as they are.</param>
/// <param name="Note">A note on the parcel as a whole.</param>
public sealed record SeenParcel(IReadOnlyDictionary<ReedId, ReedArrival> Reeds, string? Note);
