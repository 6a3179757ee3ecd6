using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;

namespace ReedClinic.Data.Jobs;

/// <summary>Where workers take work from and put it back. Each piece is held by one worker at a time.</summary>
public sealed class JobBoard(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    /// <summary>How long a worker has a piece for itself. Longer than any try may take.</summary>
    public static TimeSpan LeaseLength { get; } = TimeSpan.FromMinutes(2);

    /// <summary>How often a piece is tried before it is given up.</summary>
    public const int MostAttempts = 12;

    /// <summary>Takes the piece that has waited longest, or null when nothing is due.</summary>
    /// <param name="kind">What the worker can do.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Job?> ClaimAsync(JobKind kind, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var lease = new Guid(RandomNumberGenerator.GetBytes(16));
        return await db.ClaimJobAsync(kind, lease, time.GetUtcNow(), LeaseLength, ct).ConfigureAwait(false);
    }

    /// <summary>It is done: what the worker needed to know is forgotten.</summary>
    /// <param name="job">As it was claimed.</param>
    /// <param name="ct">Stops it.</param>
    /// <param name="way">How a mail was done; null for other work.</param>
    /// <returns>False when the lease had run out and another worker has it.</returns>
    public Task<bool> DoneAsync(Job job, CancellationToken ct, MailWay? way = null) => ChangeAsync(job, now => mine =>
    {
        (mine.DoneAt, mine.Way) = (now, way);
        mine.Payload = "";
        mine.Problem = null;
    }, ct);

    /// <summary>It can't be done now: tried again later, or given up after too many tries.</summary>
    /// <param name="job">As it was claimed.</param>
    /// <param name="problem">Why, in a few words that name nobody.</param>
    /// <param name="forEver">True when no later try could help.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>False when the lease had run out and another worker has it.</returns>
    public Task<bool> FailedAsync(Job job, string problem, bool forEver, CancellationToken ct) => ChangeAsync(job, now => mine =>
    {
        ArgumentNullException.ThrowIfNull(problem);
        mine.Problem = problem.Length > Job.LongestProblem ? problem[..Job.LongestProblem] : problem;
        mine.GaveUpAt = forEver || mine.Attempts >= MostAttempts ? now : null;
        mine.DueAt = now + Backoff(mine.Attempts);
        if (mine.GaveUpAt is not null)
        {
            mine.Payload = "";
        }
    }, ct);

    /// <summary>It can't be done now for a reason that isn't its own: it waits, and this was no try.</summary>
    /// <param name="job">As it was claimed.</param>
    /// <param name="problem">Why, in a few words that name nobody.</param>
    /// <param name="wait">How long.</param>
    /// <param name="ct">Stops it.</param>
    /// <returns>False when the lease had run out and another worker has it.</returns>
    public Task<bool> PutOffAsync(Job job, string problem, TimeSpan wait, CancellationToken ct) => ChangeAsync(job, now => mine =>
    {
        ArgumentNullException.ThrowIfNull(problem);
        (mine.Problem, mine.Attempts, mine.DueAt) = (problem, Math.Max(0, mine.Attempts - 1), now + wait);
    }, ct);

    /// <summary>How long to wait after a number of tries: a minute, doubled each time, six hours at most.</summary>
    /// <param name="attempts">How often it was tried.</param>
    public static TimeSpan Backoff(int attempts) =>
        TimeSpan.FromMinutes(Math.Min(Math.Pow(2, Math.Max(0, attempts - 1)), 360));

    private async Task<bool> ChangeAsync(Job job, Func<DateTimeOffset, Action<Job>> change, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(job);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var mine = await db.Set<Job>().SingleOrDefaultAsync(row => row.Id == job.Id && row.Lease == job.Lease, ct).ConfigureAwait(false);
        if (mine is null)
        {
            return false;
        }

        change(time.GetUtcNow())(mine);
        mine.Lease = null;
        mine.LeasedUntil = null;
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        return true;
    }
}
