using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Intake;

/// <summary>Where every batch is, and moving one on.</summary>
public sealed class DeskBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    /// <summary>All batches of the studio, the newest first; empty for somebody who doesn't work here.</summary>
    public Task<IReadOnlyList<BatchRow>> AllAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return RowsAsync(actor, batches => actor.WorksHere ? batches : batches.Where(_ => false), ct);
    }

    /// <summary>The batches that this person sent, the newest first.</summary>
    public Task<IReadOnlyList<BatchRow>> MineAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return RowsAsync(
            actor,
            batches => actor.Student is { } me ? batches.Where(batch => batch.Student == me) : batches.Where(_ => false),
            ct);
    }

    /// <summary>One batch by its code; null when there is none that this actor may see.</summary>
    public async Task<BatchView?> BatchAsync(Actor actor, BatchCode code, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var view = await db.ViewAsync(db.Set<Batch>().SeenBy(actor).Where(batch => batch.Code == code), ct).ConfigureAwait(false);
        return view is null ? null : view with { Posting = await db.PostingAsync(view.Batch, ct).ConfigureAwait(false), Aside = await db.AsideAsync(view.Batch, ct).ConfigureAwait(false) };
    }

    /// <summary>The batch that a reed belongs to; null when there is none that this actor may see.</summary>
    public async Task<BatchView?> BatchOfReedAsync(Actor actor, ReedId reed, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var which = db.Set<Batch>().SeenBy(actor).Where(batch => batch.Reeds.Any(candidate => candidate.Id == reed));
        return await db.ViewAsync(which, ct).ConfigureAwait(false);
    }

    /// <summary>Posts the reeds back, or notes that they are home.</summary>
    public async Task<Outcome<BatchView>> MoveOnAsync(Actor actor, BatchId id, Stage stage, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.WorksHere)
        {
            return new Outcome<BatchView>.NotFound();
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var batch = await db.Set<Batch>().SingleOrDefaultAsync(candidate => candidate.Id == id, ct).ConfigureAwait(false);
        if (batch is null)
        {
            return new Outcome<BatchView>.NotFound();
        }

        if (stage is not (Stage.OnItsWayHome or Stage.Home))
        {
            return new Outcome<BatchView>.Refused([new Problem("stage", "The other stages begin by themselves.")]);
        }

        // A button that was drawn while they were in the post doesn’t bring them home once that was taken back.
        if ((stage == Stage.OnItsWayHome || batch.Stage >= Stage.OnItsWayHome) && batch.Reach(stage, time.GetUtcNow()))
        {
            if (stage == Stage.OnItsWayHome)
            {
                await PutNewsAsync(db, batch, operation, ct).ConfigureAwait(false);
                db.Tell(AuditEvent.PostedBack, time.GetUtcNow(), actor.Account.Value, batch.Student.Value, id.Value);
            }

            db.Note(operation, "move-on", id.Value, time.GetUtcNow());
            await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        }

        // Saved by this try, by another one or long ago: it is done when the batch stands there, and not before.
        var view = await db.ViewAsync(db.Set<Batch>().Where(candidate => candidate.Id == id), ct).ConfigureAwait(false);
        return view!.Batch.Stage >= stage ? new Outcome<BatchView>.Done(view) : new Outcome<BatchView>.Conflict(view);
    }

    // Posted once by mistake, and now in truth: that is told, too. A mail that still waits tells it by itself.
    private async Task PutNewsAsync(ClinicDb db, Batch batch, OperationId operation, CancellationToken ct)
    {
        var former = await db.NewsOfPosting(batch).Select(job => job.DoneAt != null || job.GaveUpAt != null).ToListAsync(ct).ConfigureAwait(false);
        if (former.TrueForAll(over => over))
        {
            await outbox.PutNewsAsync(db, batch, PostingQueries.PathOf(batch), ct, former.Count > 0 ? operation.OrFresh(time.GetUtcNow()) : null).ConfigureAwait(false);
        }
    }

    /// <summary>
    /// Takes back that the reeds were posted back: both stay in the audit. A mail that waits to tell of it is removed; one that
    /// went out can’t be fetched back, and one that was tried may have.
    /// </summary>
    public async Task<Outcome<BatchView>> TakePostingBackAsync(Actor actor, BatchId id, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var which = db.Set<Batch>().Where(candidate => actor.WorksHere && candidate.Id == id);
        if (await which.SingleOrDefaultAsync(ct).ConfigureAwait(false) is not { } batch)
        {
            return new Outcome<BatchView>.NotFound();
        }

        // A form that comes a second time takes nothing back that was posted since.
        var done = await db.WasDoneAsync(operation, PostingQueries.TakenBack, id.Value, ct).ConfigureAwait(false);
        if (!done && batch.TakePostingBack())
        {
            db.RemoveRange(await db.NewsOfPosting(batch).Where(job => job.DoneAt == null && job.GaveUpAt == null && job.Attempts == 0).ToListAsync(ct).ConfigureAwait(false));
            db.Tell(AuditEvent.PostingTakenBack, time.GetUtcNow(), actor.Account.Value, batch.Student.Value, id.Value);
            db.Note(operation, PostingQueries.TakenBack, id.Value, time.GetUtcNow());
            await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        }

        var view = await db.ViewAsync(which, ct).ConfigureAwait(false);
        return done || view!.Batch.Stage < Stage.OnItsWayHome ? new Outcome<BatchView>.Done(view!) : new Outcome<BatchView>.Conflict(view);
    }

    private async Task<IReadOnlyList<BatchRow>> RowsAsync(
        Actor actor, Func<IQueryable<Batch>, IQueryable<Batch>> which, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var workable = db.Set<Student>().Where(BatchQueries.MayBeWorkedFor);
        var letters = db.Set<Letter>();
        var rows =
            from batch in which(db.Set<Batch>().SeenBy(actor))
            join student in db.Set<Student>() on batch.Student equals student.Id
            orderby batch.SubmittedAt descending
            select new BatchRow(
                batch.Code,
                student.Name,
                batch.Stage,
                batch.HomeAt ?? batch.PostedBackAt ?? batch.LetterSentAt ?? batch.BenchStartedAt ?? batch.ArrivedAt ?? batch.SubmittedAt,
                batch.SubmittedAt,
                batch.Reeds.Count,
                batch.Reeds.Count(reed => reed.Presence == Presence.Missing),
                batch.Reeds.Count(reed => reed.Presence == Presence.Extra),
                batch.Questions.Count(question => question.Answer == null))
            {
                MayBeWorkedFor = workable.Any(person => person.Id == student.Id),
                IsPaused = student.Consent == Consent.Withdrawn,
                HasLetter = batch.LetterSentAt != null,
                Unfit = new UnfitReeds(
                    batch.Reeds.Where(reed => reed.Fitness == Fitness.Mould).OrderBy(reed => reed.Number).Select(reed => reed.Number).ToList(),
                    batch.Reeds.Where(reed => reed.Fitness == Fitness.DryFirst).OrderBy(reed => reed.Number).Select(reed => reed.Number).ToList()),
                CorrectedAt = letters.Where(letter => letter.Batch == batch.Id && letter.SentOrdinal > 1).Select(letter => letter.SentAt).FirstOrDefault(),
                IsBeingCorrected = letters.Any(letter => letter.Batch == batch.Id && letter.CorrectingSince != null),
            };
        return await rows.AsNoTracking().ToListAsync(ct).ConfigureAwait(false);
    }
}
