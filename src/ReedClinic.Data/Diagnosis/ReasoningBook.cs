using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Engine;
using ReedClinic.Data.People;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Diagnosis;

/// <summary>A reed with everything that its reasoning rests on.</summary>
/// <param name="AtBench">The reed, its batch and its log.</param>
/// <param name="Learned">What this bench has taught, with the counts of this moment.</param>
public sealed record ReasoningView(BenchView AtBench, Learned Learned);

/// <summary>What somebody who works here chose for their bench.</summary>
/// <param name="Line">True for the quiet line.</param>
public sealed record ReasoningChoice(bool Line);

/// <summary>What is reasoned at the bench, who wants to see it there, and what is kept of what teachers said. For teachers and owners.</summary>
public sealed class ReasoningBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, LearnedHere here, BenchNews? news = null)
{
    private const string Choose = "choose-reasoning-line";
    private const string Forget = "forget-cause-counts";

    /// <summary>What the reasoning of one reed rests on; null when there is no such reed for this actor.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<ReasoningView?> FindAsync(Actor actor, ReedId reed, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.WorksHere)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await BenchReader.Reed(db, reed, ct).ConfigureAwait(false) is not { } view)
        {
            return null;
        }

        await here.ReadAsync(ct).ConfigureAwait(false);
        await here.TakeAsync(db, ct).ConfigureAwait(false);
        return new ReasoningView(view, here.AtHand!);
    }

    /// <summary>What the teachers here have said of causes; null for anybody else.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<StudioCounts?> CountsAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.WorksHere)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await LearnedHere.CountAsync(db, ct).ConfigureAwait(false);
    }

    /// <summary>Whether the one who asks wants the quiet line at the bench; no until they said so.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>Null for anybody who doesn’t work here.</returns>
    public async Task<ReasoningChoice?> WantsLineAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.Users.Where(user => actor.WorksHere && user.Id == actor.Account.Value && user.DisabledAt == null)
            .Select(user => new ReasoningChoice(user.ReasoningLine)).SingleOrDefaultAsync(ct).ConfigureAwait(false);
    }

    /// <summary>Chooses, for the one who asks, whether the quiet line is at the bench.</summary>
    /// <param name="actor">Who chooses.</param>
    /// <param name="wanted">True for the line.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Outcome<bool>> ChooseLineAsync(Actor actor, bool wanted, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            if (!actor.WorksHere || await db.OwnAccountAsync(actor, ct).ConfigureAwait(false) is not { } account)
            {
                return new Outcome<bool>.NotFound();
            }

            if (await db.WasDoneAsync(operation, Choose, account.Id, ct).ConfigureAwait(false))
            {
                return new Outcome<bool>.Done(account.ReasoningLine);
            }

            account.ReasoningLine = wanted;
            db.Note(operation, Choose, account.Id, time.GetUtcNow());
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                return new Outcome<bool>.Done(wanted);
            }
        }

        return new Outcome<bool>.Refused([DoneOperations.NotSaved]);
    }

    /// <summary>
    /// Begins the counts anew: what was said of causes until now counts no more. What stands in the logs stays there. For owners.
    /// </summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Outcome<StudioCounts>> ForgetAsync(Actor actor, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            if (await db.Set<Studio>().SingleOrDefaultAsync(row => actor.IsOwner, ct).ConfigureAwait(false) is not { } studio)
            {
                return new Outcome<StudioCounts>.NotFound();
            }

            var about = studio.FirstOwner.Value;
            var done = await db.WasDoneAsync(operation, Forget, about, ct).ConfigureAwait(false);
            if (!done)
            {
                studio.CountCausesAnew(time.GetUtcNow());
                db.Note(operation, Forget, about, time.GetUtcNow());
            }

            if (done || await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                var counts = await here.TakeAsync(db, ct).ConfigureAwait(false);
                news?.TellCountsBegan();
                return new Outcome<StudioCounts>.Done(counts);
            }
        }

        return new Outcome<StudioCounts>.Refused([DoneOperations.NotSaved]);
    }
}
