using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Letters;

/// <summary>
/// Private links to letters that were sent. Those who work here make and close them; whoever has one reads that letter without
/// a sign-in, and nothing else.
/// </summary>
public sealed class LetterLinkBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, MediaFolder media)
{
    private static readonly TimeSpan Often = TimeSpan.FromMinutes(1);

    /// <summary>The links to a letter; null while none was sent, and for everybody who doesn't work here.</summary>
    public async Task<LetterLinksView?> OfAsync(Actor actor, BatchCode code, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await Sent(db, actor, code).Select(batch => new { batch.Id, batch.Student }).SingleOrDefaultAsync(ct).ConfigureAwait(false) is not { } sent)
        {
            return null;
        }

        var rows = await db.Set<LetterLink>().AsNoTracking().Where(link => link.Batch == sent.Id).OrderByDescending(link => link.MadeAt).ToListAsync(ct).ConfigureAwait(false);
        var makers = rows.Where(link => link.MadeBy is not null).Select(link => link.MadeBy!.Value.Value).Distinct().ToList();
        var names = await db.Users.Where(user => makers.Contains(user.Id)).ToDictionaryAsync(user => user.Id, user => user.DisplayName, ct).ConfigureAwait(false);
        var now = time.GetUtcNow();
        return new LetterLinksView(
            [.. rows.Select(link => new LetterLinkView(
                link.Id, link.MadeAt, link.MadeBy is { } by ? names.GetValueOrDefault(by.Value, "") : null, link.ExpiresAt, link.ClosedAt, link.LastOpenedAt, link.IsOpen(now)))],
            await db.WithOpenLinks().AnyAsync(batch => batch.Id == sent.Id, ct).ConfigureAwait(false),
            await db.Set<Student>().AnyAsync(student => student.Id == sent.Student && student.Age == AgeAnswer.Younger, ct).ConfigureAwait(false));
    }

    /// <summary>Makes a link to a letter that was sent. Its secret is told once: the same form again gives the same link without it.</summary>
    /// <param name="actor">Who makes it.</param>
    /// <param name="code">The batch.</param>
    /// <param name="days">For how many days it is good.</param>
    /// <param name="operation">Made when the form opened.</param>
    /// <param name="ct">Stops it.</param>
    public Task<Outcome<MadeLetterLink>> MakeAsync(Actor actor, BatchCode code, int days, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        var secret = Tickets.NewSecret(); // one for all tries: the last one tells what an earlier one may have saved
        return databases.PatientlyAsync((attempt, stop) => MakeAsync(attempt, actor, code, days, secret, operation, stop), ct);
    }

    private async Task<Outcome<MadeLetterLink>> MakeAsync(
        Attempt attempt, Actor actor, BatchCode code, int days, string secret, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var which = Sent(db, actor, code);
        var transaction = await db.HoldConsentAsync(attempt, which, ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        if (await which.Select(batch => new { batch.Id, batch.Student }).SingleOrDefaultAsync(ct).ConfigureAwait(false) is not { } sent)
        {
            return new Outcome<MadeLetterLink>.NotFound();
        }

        if (await MadeAsync(db, sent.Id, operation, secret, ct).ConfigureAwait(false) is { } before)
        {
            return new Outcome<MadeLetterLink>.Done(before);
        }

        if (await HindranceAsync(db, sent.Id, days, time.GetUtcNow(), ct).ConfigureAwait(false) is { } problem)
        {
            return new Outcome<MadeLetterLink>.Refused([problem]);
        }

        var link = Add(db, actor, sent.Id, sent.Student, days, secret, operation);
        if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
        {
            await transaction.CommitAsync(ct).ConfigureAwait(false);
            return new Outcome<MadeLetterLink>.Done(new MadeLetterLink(link.Id, link.ExpiresAt, secret));
        }

        // PostgreSQL takes nothing more in a transaction in which something clashed.
        await transaction.DisposeAsync().ConfigureAwait(false);
        return await MadeAsync(db, sent.Id, operation, secret, ct).ConfigureAwait(false) is { } first
            ? new Outcome<MadeLetterLink>.Done(first)
            : new Outcome<MadeLetterLink>.Refused([DoneOperations.NotSaved]);
    }

    /// <summary>
    /// Closes a link for good, whatever its student or guardian say: from this moment on it opens nothing. It needs no
    /// operation: closed is closed, however often it is asked, and one form has a button for each link.
    /// </summary>
    public async Task<Outcome<LetterLinkId>> CloseAsync(Actor actor, BatchCode code, LetterLinkId id, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            if (await Sent(db, actor, code).Select(batch => new { batch.Id, batch.Student }).SingleOrDefaultAsync(ct).ConfigureAwait(false) is not { } sent
                || await db.Set<LetterLink>().SingleOrDefaultAsync(row => row.Id == id && row.Batch == sent.Id, ct).ConfigureAwait(false) is not { } link)
            {
                return new Outcome<LetterLinkId>.NotFound();
            }

            if (link.ClosedAt is not null)
            {
                return new Outcome<LetterLinkId>.Done(id);
            }

            link.Close(time.GetUtcNow());
            db.Tell(AuditEvent.LetterLinkClosed, time.GetUtcNow(), actor.Account.Value, sent.Student.Value, id.Value);
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                return new Outcome<LetterLinkId>.Done(id);
            }
        }

        return new Outcome<LetterLinkId>.Refused([DoneOperations.NotSaved]);
    }

    /// <summary>What a link opens; null when it opens nothing, whatever the reason. That it was opened is noted.</summary>
    public async Task<LinkedLetter?> ReadAsync(string? secret, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        if (db.OpenedBy(secret, now) is not { } opened)
        {
            return null;
        }

        var hash = Tickets.HashOf(secret!);
        if (await db.SentAsync(opened, null, ct).ConfigureAwait(false) is not { } sent
            || await db.Set<LetterLink>().Where(row => row.SecretHash == hash).Select(row => new { row.Id, row.ExpiresAt, row.LastOpenedAt }).SingleOrDefaultAsync(ct).ConfigureAwait(false) is not { } link)
        {
            return null; // also one that went, or got another secret, since the letter was read
        }

        await NoteOpenedAsync(link.Id, link.LastOpenedAt, now, ct).ConfigureAwait(false);
        return new LinkedLetter(await db.WithPicturesAsync(sent, media, ct).ConfigureAwait(false), [.. (await RecordingsAsync(db, opened, ct).ConfigureAwait(false)).Select(View)], link.ExpiresAt);
    }

    /// <summary>A sound or photograph of the letter that a link opens; null for any other, and for a link that opens nothing.</summary>
    public async Task<RecordingFile?> OpenAsync(string? secret, RecordingId id, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return db.OpenedBy(secret, time.GetUtcNow()) is { } opened
            && (await RecordingsAsync(db, opened, ct).ConfigureAwait(false)).FirstOrDefault(one => one.Id == id) is { } found
            && media.Has(found.File)
            ? new RecordingFile(View(found), media.PathOf(found.File), found.Sha256)
            : null;
    }

    private static IQueryable<Batch> Sent(ClinicDb db, Actor actor, BatchCode code) =>
        db.Set<Batch>().Where(batch => actor.WorksHere && batch.Code == code && db.Set<Letter>().Any(letter => letter.Batch == batch.Id && letter.SentNumber != null));

    private LetterLink Add(ClinicDb db, Actor actor, BatchId batch, StudentId student, int days, string secret, OperationId operation)
    {
        var now = time.GetUtcNow();
        var link = new LetterLink(new LetterLinkId(Guid.CreateVersion7(now)), batch, Tickets.HashOf(secret), actor.Account, operation, now, days);
        db.Add(link);
        db.Tell(AuditEvent.LetterLinkMade, now, actor.Account.Value, student.Value, link.Id.Value);
        return link;
    }

    // The secret is told only by whoever made the link with it.
    private static async Task<MadeLetterLink?> MadeAsync(ClinicDb db, BatchId batch, OperationId operation, string secret, CancellationToken ct) =>
        await db.Set<LetterLink>().AsNoTracking().SingleOrDefaultAsync(link => link.Operation == operation && link.Batch == batch, ct).ConfigureAwait(false) is { } made
            ? new MadeLetterLink(made.Id, made.ExpiresAt, made.SecretHash == Tickets.HashOf(secret) ? secret : null)
            : null;

    private static async Task<Problem?> HindranceAsync(ClinicDb db, BatchId batch, int days, DateTimeOffset now, CancellationToken ct) =>
        !LetterLink.Lives.Contains(days) ? new Problem("Days", "Choose one of these.")
        : !await db.WithOpenLinks().AnyAsync(row => row.Id == batch, ct).ConfigureAwait(false)
            ? new Problem("", "No link opens this letter now: no guardian agrees to it, or the student’s sign-in is closed.")
        : await db.Set<LetterLink>().CountAsync(link => link.Batch == batch && link.MadeBy != null && link.ClosedAt == null && link.ExpiresAt > now, ct).ConfigureAwait(false) >= LetterLink.MostOpen
            ? new Problem("", $"This letter has {LetterLink.MostOpen} open links already. Close those that nobody needs.")
        : null;

    // Once a minute at most: a letter with sounds asks often. No two requests are both the first; and the first is told to the
    // audit in the same transaction, so that a try that is made again neither tells it twice nor loses it.
    private async Task NoteOpenedAsync(LetterLinkId id, DateTimeOffset? before, DateTimeOffset now, CancellationToken ct)
    {
        if (before >= now - Often)
        {
            return;
        }

        await databases.PatientlyAsync(async (attempt, stop) =>
        {
            var db = await databases.CreateDbContextAsync(stop).ConfigureAwait(false);
            await using var _ = db.ConfigureAwait(false);
            var transaction = await attempt.BeginAsync(db, stop).ConfigureAwait(false);
            await using var __ = transaction.ConfigureAwait(false);
            var noted = await db.Set<LetterLink>().Where(link => link.Id == id && link.LastOpenedAt == before)
                .ExecuteUpdateAsync(link => link.SetProperty(row => row.LastOpenedAt, now), stop).ConfigureAwait(false);
            if (noted > 0 && before is null)
            {
                db.Tell(AuditEvent.LetterLinkOpened, now, about: id.Value);
                await db.SaveChangesAsync(stop).ConfigureAwait(false);
            }

            await transaction.CommitAsync(stop).ConfigureAwait(false);
            return noted;
        }, ct).ConfigureAwait(false);
    }

    // Those that were there when the letter was sent as it is shown, as on its kept page.
    private static async Task<IReadOnlyList<Recording>> RecordingsAsync(ClinicDb db, IQueryable<Batch> opened, CancellationToken ct)
    {
        var shown =
            from letter in db.Set<Letter>()
            join sending in db.Set<LetterSending>() on new { letter.Batch, Ordinal = letter.SentOrdinal } equals new { sending.Batch, sending.Ordinal }
            join reed in db.Set<Reed>() on letter.Batch equals reed.Batch
            select new { Reed = reed.Id, sending.SentAt };
        var then = db.RecordingsOf(opened).Where(recording => shown.Any(one => one.Reed == recording.Reed && recording.RecordedAt <= one.SentAt));
        return [.. LetterLinks.InLetter(await then.AsNoTracking().OrderBy(recording => recording.RecordedAt).ToListAsync(ct).ConfigureAwait(false))];
    }

    private static RecordingView View(Recording recording) => new(
        recording.Id, recording.Reed, recording.Kind, recording.Type, recording.Bytes, recording.Milliseconds, recording.Words, recording.PassId,
        recording.AtSequence, recording.InLetter, recording.FromStudio, recording.RecordedAt);
}
