using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Letters;

/// <summary>The mail that tells of a sent letter: how it stands, and sending it once more. For teachers and owners.</summary>
public sealed class LetterMailBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    /// <summary>How the last mail about a letter stands; null when no letter of this batch was sent, or for anybody else.</summary>
    public async Task<LetterMail?> LookAsync(Actor actor, BatchCode code, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await SentAsync(db, actor, code, ct).ConfigureAwait(false) is { } batch ? await StandsAsync(db, batch, ct).ConfigureAwait(false) : null;
    }

    /// <summary>Puts the same mail out once more. One that waits to go isn't sent twice: one whose last try failed is tried at once.</summary>
    public async Task<Outcome<LetterMail>> AgainAsync(Actor actor, BatchCode code, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        outbox.Ready();
        operation = operation.OrFresh(time.GetUtcNow());
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await SentAsync(db, actor, code, ct).ConfigureAwait(false) is not { } batch)
        {
            return new Outcome<LetterMail>.NotFound();
        }

        if (!await db.WasDoneAsync(operation, "mail-letter", batch.Id.Value, ct).ConfigureAwait(false))
        {
            if (await LastAsync(db.Set<Job>(), batch, ct).ConfigureAwait(false) is { DoneAt: null, GaveUpAt: null } waiting)
            {
                return await NowAsync(db, batch, waiting, operation, ct).ConfigureAwait(false);
            }

            if (await db.AddressForAsync(batch.Student, ct).ConfigureAwait(false) is null)
            {
                return new Outcome<LetterMail>.Refused([new Problem("", "Nobody’s address is known.")]);
            }

            var corrected = await db.Set<Letter>().AnyAsync(letter => letter.Batch == batch.Id && letter.SentOrdinal > 1, ct).ConfigureAwait(false);
            await outbox.PutNewsAsync(db, batch, PathOf(batch), ct, operation, corrected).ConfigureAwait(false);
            db.Note(operation, "mail-letter", batch.Id.Value, time.GetUtcNow());
            await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        }

        return new Outcome<LetterMail>.Done(await StandsAsync(db, batch, ct).ConfigureAwait(false));
    }

    // One whose last try failed goes at once, to where mail about its student goes by now.
    private async Task<Outcome<LetterMail>> NowAsync(ClinicDb db, Batch batch, Job waiting, OperationId operation, CancellationToken ct)
    {
        if (waiting.Problem is null || waiting.LeasedUntil > time.GetUtcNow())
        {
            return new Outcome<LetterMail>.Refused([new Problem("", "It is on its way already.")]);
        }

        if (await FormerAsync(db, batch, waiting, ct).ConfigureAwait(false) is var (mail, email, name))
        {
            outbox.Readdress(waiting, mail with { To = email, Name = name });
        }

        waiting.DueAt = time.GetUtcNow();
        db.Note(operation, "mail-letter", batch.Id.Value, time.GetUtcNow());
        await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        return new Outcome<LetterMail>.Done(await StandsAsync(db, batch, ct).ConfigureAwait(false));
    }

    private static string PathOf(Batch batch) => $"/letters/{batch.Code}";

    private static Task<Batch?> SentAsync(ClinicDb db, Actor actor, BatchCode code, CancellationToken ct) => (
        from batch in db.Set<Batch>().AsNoTracking()
        join letter in db.Set<Letter>() on batch.Id equals letter.Batch
        where actor.WorksHere && batch.Code == code && letter.SentNumber != null
        select batch).SingleOrDefaultAsync(ct);

    // A mail that waits under another address than mail about this student goes to by now; null where it is the same, or nobody’s is known.
    private async Task<(Mail Mail, string Email, string Name)?> FormerAsync(ClinicDb db, Batch batch, Job waiting, CancellationToken ct) =>
        outbox.Open(waiting) is { } mail && await db.AddressForAsync(batch.Student, ct).ConfigureAwait(false) is var (email, name) && !string.Equals(mail.To, email, StringComparison.OrdinalIgnoreCase)
            ? (mail, email, name) : null;

    private async Task<LetterMail> StandsAsync(ClinicDb db, Batch batch, CancellationToken ct)
    {
        var job = await LastAsync(db.Set<Job>().AsNoTracking(), batch, ct).ConfigureAwait(false);
        return job switch
        {
            null => new(await db.AddressForAsync(batch.Student, ct).ConfigureAwait(false) is null ? LetterMailState.None : LetterMailState.Forgotten, null, null),
            { DoneAt: { } done } => new(LetterMailState.Sent, done, null, job.Way),
            { GaveUpAt: { } end } => new(LetterMailState.GivenUp, end, job.Problem),
            _ => new(LetterMailState.Waiting, job.MadeAt, job.Problem) { Tries = job.Attempts, Next = job.DueAt, IsForFormerAddress = await FormerAsync(db, batch, job, ct).ConfigureAwait(false) is not null },
        };
    }

    private static Task<Job?> LastAsync(IQueryable<Job> jobs, Batch batch, CancellationToken ct)
    {
        var once = News.OnceOf(batch, PathOf(batch));
        return jobs.Where(row => row.Kind == JobKind.Mail && row.Once != null && row.Once.StartsWith(once)).OrderByDescending(row => row.Id).FirstOrDefaultAsync(ct);
    }
}

/// <summary>How the mail about a letter stands.</summary>
public enum LetterMailState
{
    /// <summary>Nothing is known of one, and nobody's address is either.</summary>
    None,

    /// <summary>Nothing is known of one any more: it was put out so long ago, or an address became known only afterwards.</summary>
    Forgotten,

    /// <summary>It waits to go, or will be tried again.</summary>
    Waiting,

    /// <summary>It is done: how, its way says.</summary>
    Sent,

    /// <summary>It was given up.</summary>
    GivenUp,
}

/// <summary>The last mail about a letter.</summary>
/// <param name="State">How it stands.</param>
/// <param name="At">Since when.</param>
/// <param name="Problem">Why the last try failed; it names nobody.</param>
/// <param name="Way">How one that is done was done; null where that was done before it was kept.</param>
public sealed record LetterMail(LetterMailState State, DateTimeOffset? At, string? Problem, MailWay? Way = null)
{
    /// <summary>How often one that waits was tried.</summary>
    public int Tries { get; init; }

    /// <summary>When one that waits may be tried next.</summary>
    public DateTimeOffset? Next { get; init; }

    /// <summary>Whether one that waits is addressed to where mail about its student doesn’t go any more.</summary>
    public bool IsForFormerAddress { get; init; }
}
