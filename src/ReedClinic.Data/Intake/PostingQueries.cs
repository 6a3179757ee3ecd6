using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Data.Intake;

/// <summary>What is known of the posting of a batch’s reeds beside its day.</summary>
/// <param name="TakenBackAt">While they are here: when it was last taken back that they were posted; null for never, or long ago.</param>
/// <param name="ToldAt">While they are in the post: when the mail that tells of it went out; null when none did.</param>
/// <param name="IsBeingTold">While they are in the post: whether that mail waits to go out.</param>
public sealed record BatchPosting(DateTimeOffset? TakenBackAt = null, DateTimeOffset? ToldAt = null, bool IsBeingTold = false);

/// <summary>Asks for it.</summary>
internal static class PostingQueries
{
    /// <summary>The operation that takes a posting back.</summary>
    public const string TakenBack = "take-posting-back";

    /// <summary>The page that the news of a posting leads to.</summary>
    public static string PathOf(Batch batch) => $"/batches/{batch.Code}";

    /// <summary>The mails that told of a posting, whether they went out or wait.</summary>
    public static IQueryable<Job> NewsOfPosting(this ClinicDb db, Batch batch)
    {
        var once = News.OnceOf(batch, PathOf(batch));
        return db.Set<Job>().AsNoTracking().Where(job => job.Kind == JobKind.Mail && job.Once != null && job.Once.StartsWith(once));
    }

    /// <summary>What is known of a batch’s posting.</summary>
    public static async Task<BatchPosting> PostingAsync(this ClinicDb db, Batch batch, CancellationToken ct)
    {
        if (batch.Stage < Stage.OnItsWayHome)
        {
            return new(TakenBackAt: await db.Set<DoneOperation>().Where(done => done.Subject == batch.Id.Value && done.Verb == TakenBack)
                .OrderByDescending(done => done.Id).Select(done => (DateTimeOffset?)done.DoneAt).FirstOrDefaultAsync(ct).ConfigureAwait(false));
        }

        var mail = batch.Stage > Stage.OnItsWayHome ? null : await db.NewsOfPosting(batch).OrderByDescending(job => job.Id).FirstOrDefaultAsync(ct).ConfigureAwait(false);
        return new(ToldAt: mail?.DoneAt, IsBeingTold: mail is { DoneAt: null, GaveUpAt: null });
    }
}
