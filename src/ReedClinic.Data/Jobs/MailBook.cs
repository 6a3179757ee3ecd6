using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Jobs;

/// <summary>What the owners see of mail: what waits, and what couldn't be sent.</summary>
public sealed class MailBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    private const int MostShown = 50;

    /// <summary>How mail stands; null to anybody but an owner.</summary>
    public async Task<MailView?> LookAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsOwner)
        {
            return null;
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var mails = db.Set<Job>().AsNoTracking().Where(job => job.Kind == JobKind.Mail && job.DoneAt == null);
        var stuck = await mails.Where(job => job.GaveUpAt != null).OrderByDescending(job => job.MadeAt).Take(MostShown).ToListAsync(ct).ConfigureAwait(false);
        return new MailView(
            await mails.CountAsync(job => job.GaveUpAt == null, ct).ConfigureAwait(false),
            [.. stuck.Select(job => (Job: job, Mail: outbox.Open(job))).Select(one => new StuckMail(one.Mail?.Kind, one.Mail?.To, one.Job.MadeAt, one.Job.Problem ?? ""))]);
    }

    /// <summary>Tries everything again that was given up.</summary>
    /// <returns>How many there are; NotFound to anybody but an owner.</returns>
    public async Task<Outcome<int>> TryAgainAsync(Actor actor, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsOwner)
        {
            return new Outcome<int>.NotFound();
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var stuck = await db.Set<Job>().Where(job => job.Kind == JobKind.Mail && job.DoneAt == null && job.GaveUpAt != null).ToListAsync(ct).ConfigureAwait(false);
        foreach (var job in stuck)
        {
            (job.GaveUpAt, job.Attempts, job.DueAt) = (null, 0, time.GetUtcNow());
        }

        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        return new Outcome<int>.Done(stuck.Count);
    }
}

/// <summary>How mail stands.</summary>
/// <param name="Waiting">How many mails wait to be sent.</param>
/// <param name="Stuck">Those that were given up, the latest first.</param>
public sealed record MailView(int Waiting, IReadOnlyList<StuckMail> Stuck);

/// <summary>A mail that couldn't be sent.</summary>
/// <param name="Kind">What it was about; null when it can't be read any more.</param>
/// <param name="To">To whom; null when it can't be read any more.</param>
/// <param name="MadeAt">When it was put out.</param>
/// <param name="Problem">Why.</param>
public sealed record StuckMail(MailKind? Kind, string? To, DateTimeOffset MadeAt, string Problem);
