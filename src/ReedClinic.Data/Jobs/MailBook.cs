using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Jobs;

/// <summary>What the owners see of mail: what waits, and what couldn't be sent.</summary>
public sealed class MailBook(IDbContextFactory<ClinicDb> databases)
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
        var failing = await mails.Where(job => job.GaveUpAt == null && job.Problem != null).OrderBy(job => job.DueAt).Take(MostShown).ToListAsync(ct).ConfigureAwait(false);
        return new MailView(
            await mails.CountAsync(job => job.GaveUpAt == null, ct).ConfigureAwait(false),
            [.. stuck.Select(job => new StuckMail(job.MadeAt, job.Problem ?? ""))])
        {
            Failing = [.. failing.Select(job => new FailingMail(job.MadeAt, job.Problem!, job.DueAt))],
        };
    }
}

/// <summary>How mail stands.</summary>
/// <param name="Waiting">How many mails wait to be sent.</param>
/// <param name="Stuck">Those that were given up, the latest first.</param>
public sealed record MailView(int Waiting, IReadOnlyList<StuckMail> Stuck)
{
    /// <summary>Those of the waiting ones that couldn't be sent yet and are tried again, the next to be tried first.</summary>
    public IReadOnlyList<FailingMail> Failing { get; init; } = [];
}

/// <summary>A mail that couldn't be sent yet.</summary>
/// <param name="MadeAt">When it was put out.</param>
/// <param name="Problem">Why.</param>
/// <param name="NextAt">When it is tried again.</param>
public sealed record FailingMail(DateTimeOffset MadeAt, string Problem, DateTimeOffset NextAt);

/// <summary>A mail that was given up. What it held is forgotten by then.</summary>
/// <param name="MadeAt">When it was put out.</param>
/// <param name="Problem">Why.</param>
public sealed record StuckMail(DateTimeOffset MadeAt, string Problem);
