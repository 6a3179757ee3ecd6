using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Recurrence;

/// <summary>What is common to the reeds of a batch, and what the teacher chose to say of it. For teachers and owners.</summary>
public sealed class CommonThreadBook(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    private const string Choose = "choose-common-thread";

    /// <summary>The sheet, the candidates and what was chosen; null when there is no such batch for this actor.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="code">The batch's code.</param>
    /// <param name="ct">Cancels the reading.</param>
    public async Task<CommonThreadView?> FindAsync(Actor actor, BatchCode code, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.WorksHere)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await BenchReader.Batch(db, code, ct).ConfigureAwait(false) is not { } atBench)
        {
            return null;
        }

        var batch = atBench.Batch;
        var upToNow = db.Set<Batch>().Where(other => other.Student == batch.Student && (other.Id == batch.Id || other.SubmittedAt < batch.SubmittedAt));
        return new CommonThreadView(
            atBench,
            await StudentSheetReader.ReadAsync(db, batch.Student, upToNow, ct).ConfigureAwait(false),
            await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false));
    }

    /// <summary>Keeps what the teacher chose. A conflict gives what somebody else chose meanwhile.</summary>
    /// <param name="actor">Who chooses.</param>
    /// <param name="code">The batch's code.</param>
    /// <param name="choice">What was chosen.</param>
    /// <param name="version">The version that the form was opened on; empty when nothing was chosen then.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public Task<Outcome<CommonThread>> ChooseAsync(
        Actor actor, BatchCode code, ThreadChoice choice, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(choice);
        operation = operation.OrFresh(time.GetUtcNow());
        return databases.PatientlyAsync((attempt, stop) => ChooseAsync(attempt, actor, code, choice, version, operation, stop), ct);
    }

    private async Task<Outcome<CommonThread>> ChooseAsync(
        Attempt attempt, Actor actor, BatchCode code, ThreadChoice choice, Guid version, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var batch = await db.Set<Batch>().Where(row => actor.WorksHere && row.Code == code)
            .Select(row => (BatchId?)row.Id).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (batch is not { } known)
        {
            return new Outcome<CommonThread>.NotFound();
        }

        var transaction = await db.HoldConsentAsync(attempt, db.Set<Batch>().Where(row => row.Id == known), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        if (!await db.WorkedBy(actor).AnyAsync(row => row.Id == known, ct).ConfigureAwait(false))
        {
            return new Outcome<CommonThread>.Refused([ConsentTakenBack.Unworked]);
        }

        if (CommonThread.Check(choice = choice.InWords((await StudioCatalogueReader.ReadAsync(db, ct).ConfigureAwait(false)).Own)) is { Count: > 0 } problems)
        {
            return new Outcome<CommonThread>.Refused(problems);
        }

        var mine = db.Set<CommonThread>().Where(thread => thread.BatchId == known);
        if (!await db.WasDoneAsync(operation, Choose, known.Value, ct).ConfigureAwait(false)
            && !await SaveAsync(db, mine, known, choice, version, actor.Account, operation, ct).ConfigureAwait(false)
            && !await db.WasDoneAsync(operation, Choose, known.Value, ct).ConfigureAwait(false))
        {
            // Nothing was chosen yet and still nothing was saved: the id belongs to something else.
            return await mine.AsNoTracking().SingleOrDefaultAsync(ct).ConfigureAwait(false) is { } stands
                ? new Outcome<CommonThread>.Conflict(stands)
                : new Outcome<CommonThread>.Refused([new Problem("", UsedElsewhere.Words)]);
        }

        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return new Outcome<CommonThread>.Done(await mine.AsNoTracking().SingleAsync(ct).ConfigureAwait(false));
    }

    private async Task<bool> SaveAsync(
        ClinicDb db,
        IQueryable<CommonThread> mine,
        BatchId batch,
        ThreadChoice choice,
        Guid version,
        AccountId account,
        OperationId operation,
        CancellationToken ct)
    {
        var thread = await mine.SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (thread is null)
        {
            thread = CommonThread.For(batch);
            db.Add(thread);
        }
        else
        {
            db.ExpectVersion(thread, version);
        }

        var now = time.GetUtcNow();
        thread.Choose(choice, account, now);
        db.Note(operation, Choose, batch.Value, now);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
    }
}
