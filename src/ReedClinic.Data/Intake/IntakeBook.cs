using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Engine;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Intake;

/// <summary>Writing an intake and sending it off.</summary>
public sealed class IntakeBook(IDbContextFactory<ClinicDb> databases, TimeProvider time)
{
    private const int TriesForACode = 5;
    private const string SaveDraft = "save-draft";
    private const string DropDraft = "drop-draft";

    /// <summary>The field of the problem that a student's age isn't known.</summary>
    public const string AgeField = "Age";

    /// <summary>The field of the problem that a guardian hasn't agreed.</summary>
    public const string GuardianField = "Guardian";

    /// <summary>What keeps a student from sending reeds, whatever the reeds are: their age isn't known, or their guardian hasn't agreed.</summary>
    /// <param name="student">The student; nobody is hindered by this.</param>
    public static IReadOnlyList<Problem> Hindrance(Student? student) => student switch
    {
        null or { MayTakePart: true } => [],
        { Age: null } => [new Problem(AgeField, "Before reeds can be sent, please say whether you are old enough to decide alone.")],
        { Consent: Consent.Withdrawn } => [new Problem(GuardianField, "Your guardian has taken their consent back, so nothing can be sent. Please talk with them.")],
        { Consent: Consent.Declined } => [new Problem(GuardianField, "Your guardian has said no for now, so nothing can be sent. What you wrote is kept; if they change their mind, you can ask again.")],
        _ => [new Problem(GuardianField, "A guardian has to agree before reeds can be sent. What you wrote is kept until then.")],
    };

    /// <summary>Starts an intake, with what is known of the student filled in and one reed to begin with.</summary>
    public Task<Outcome<DraftView>> StartAsync(Actor actor, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        return databases.PatientlyAsync((attempt, stop) => StartAsync(attempt, actor, operation, stop), ct);
    }

    private async Task<Outcome<DraftView>> StartAsync(Attempt attempt, Actor actor, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await db.HoldAsync(attempt, db.Set<Student>().Where(person => person.Id == actor.Student).Select(person => person.Id), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        var student = await db.Set<Student>().SingleOrDefaultAsync(person => person.Id == actor.Student, ct).ConfigureAwait(false);
        if (student is not { IsPaused: false })
        {
            return student is null ? new Outcome<DraftView>.NotFound() : new Outcome<DraftView>.Refused([ConsentTakenBack.Paused]);
        }

        var now = time.GetUtcNow();
        var form = IntakeFill.For(student);
        if (!await db.Set<IntakeDraft>().AnyAsync(draft => draft.StartedBy == operation, ct).ConfigureAwait(false))
        {
            db.Add(new IntakeDraft(new DraftId(Guid.CreateVersion7(now)), student.Id, operation, Write(form), now));
            if (await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
            {
                await transaction.CommitAsync(ct).ConfigureAwait(false);
            }
        }

        await transaction.DisposeAsync().ConfigureAwait(false); // what a quicker hand saved is read outside of what failed here
        return await AnswerAsync(db, MyDrafts(db, actor).Where(draft => draft.StartedBy == operation), ct).ConfigureAwait(false);
    }

    /// <summary>The intakes that this person hasn't sent yet, the newest first.</summary>
    public async Task<IReadOnlyList<DraftView>> OpenAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var drafts = await MyDrafts(db, actor).Where(draft => draft.BecameBatch == null)
            .OrderByDescending(draft => draft.SavedAt).AsNoTracking().ToListAsync(ct).ConfigureAwait(false);
        var isPaused = actor.Student is { } me && await IsPausedAsync(db, me, ct).ConfigureAwait(false);
        return [.. drafts.Select(draft => View(draft, null, isPaused))];
    }

    /// <summary>One intake of this person; null when there is none.</summary>
    public async Task<DraftView?> ReadAsync(Actor actor, DraftId id, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await ReadAsync(db, MyDrafts(db, actor).Where(draft => draft.Id == id), ct).ConfigureAwait(false);
    }

    /// <summary>
    /// Keeps what has been typed, however odd. A second tab that saved first wins: the answer is then what stands, so that
    /// the page can show both.
    /// </summary>
    public async Task<Outcome<DraftView>> SaveAsync(
        Actor actor, DraftId id, IntakeForm form, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(form);
        operation = operation.OrFresh(time.GetUtcNow());
        return Write(form) is { Length: <= IntakeDraft.LongestPayload } payload
            ? await databases.PatientlyAsync((attempt, stop) => SaveAsync(attempt, actor, id, payload, version, operation, stop), ct).ConfigureAwait(false)
            : new Outcome<DraftView>.Refused([new Problem("", "This is more text than one intake can hold. Please shorten it.")]);
    }

    private async Task<Outcome<DraftView>> SaveAsync(
        Attempt attempt, Actor actor, DraftId id, string payload, Guid version, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var mine = MyDrafts(db, actor).Where(draft => draft.Id == id);
        if (await db.WasDoneAsync(operation, SaveDraft, id.Value, ct).ConfigureAwait(false))
        {
            return await AnswerAsync(db, mine, ct).ConfigureAwait(false);
        }

        var transaction = await db.HoldAsync(attempt, mine.Select(row => row.Student), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        var draft = await mine.SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (draft is null || await IsPausedAsync(db, draft.Student, ct).ConfigureAwait(false))
        {
            return draft is null ? new Outcome<DraftView>.NotFound() : new Outcome<DraftView>.Refused([ConsentTakenBack.Paused]);
        }

        if (draft.BecameBatch is null && await KeepAsync(db, draft, payload, version, operation, ct).ConfigureAwait(false))
        {
            await transaction.CommitAsync(ct).ConfigureAwait(false);
            return await AnswerAsync(db, mine, ct).ConfigureAwait(false);
        }

        var theirs = await ReadAsync(db, mine, ct).ConfigureAwait(false);
        return theirs is null ? new Outcome<DraftView>.NotFound() : new Outcome<DraftView>.Conflict(theirs);
    }

    /// <summary>Throws away for good what was begun and not sent. What another tab wrote since isn't thrown away with it.</summary>
    public Task<Outcome<DraftId>> DropAsync(Actor actor, DraftId id, Guid version, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        return databases.PatientlyAsync((attempt, stop) => DropAsync(attempt, actor, id, version, operation, stop), ct);
    }

    private async Task<Outcome<DraftId>> DropAsync(Attempt attempt, Actor actor, DraftId id, Guid version, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (actor.Student is not null && await db.WasDoneAsync(operation, DropDraft, id.Value, ct).ConfigureAwait(false))
        {
            return new Outcome<DraftId>.Done(id);
        }

        var mine = MyDrafts(db, actor).Where(draft => draft.Id == id && draft.BecameBatch == null);
        var transaction = await db.HoldAsync(attempt, mine.Select(row => row.Student), ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        var draft = await mine.SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (draft is null || await IsPausedAsync(db, draft.Student, ct).ConfigureAwait(false))
        {
            return draft is null ? new Outcome<DraftId>.NotFound() : new Outcome<DraftId>.Refused([ConsentTakenBack.Paused]);
        }

        db.ExpectVersion(draft, version);
        db.Remove(draft);
        db.Note(operation, DropDraft, id.Value, time.GetUtcNow());
        if (!await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
        {
            return new Outcome<DraftId>.Conflict(id);
        }

        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return new Outcome<DraftId>.Done(id);
    }

    private async Task<bool> KeepAsync(ClinicDb db, IntakeDraft draft, string payload, Guid version, OperationId operation, CancellationToken ct)
    {
        draft.Keep(payload, time.GetUtcNow());
        db.ExpectVersion(draft, version);
        db.Note(operation, SaveDraft, draft.Id.Value, time.GetUtcNow());
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false)
            || await db.WasDoneAsync(operation, SaveDraft, draft.Id.Value, ct).ConfigureAwait(false);
    }

    /// <summary>
    /// Sends the intake off: it becomes a batch with a code. However often and from however many tabs it is sent, one
    /// batch comes of it, and that is the answer.
    /// </summary>
    public async Task<Outcome<BatchView>> SubmitAsync(Actor actor, DraftId id, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        for (var attempt = 1; ; attempt++)
        {
            var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
            await using var _ = db.ConfigureAwait(false);
            var draft = await MyDrafts(db, actor).SingleOrDefaultAsync(mine => mine.Id == id, ct).ConfigureAwait(false);
            if (draft is null)
            {
                return new Outcome<BatchView>.NotFound();
            }

            if (draft.BecameBatch is { } batch)
            {
                return await SentAsync(db, actor, batch, ct).ConfigureAwait(false);
            }

            if (await NotYetAsync(db, draft.Student, ct).ConfigureAwait(false) is { } notYet)
            {
                return new Outcome<BatchView>.Refused([notYet]);
            }

            switch (IntakeReader.Read(Parse(draft.Payload)))
            {
                case Outcome<AnnouncedBatch>.Refused(var problems):
                    return new Outcome<BatchView>.Refused(problems);
                case Outcome<AnnouncedBatch>.Done(var said):
                    await AnnounceAsync(db, draft, said, operation, ct).ConfigureAwait(false);
                    break;
            }

            // Saved or not, the next round reads what stands; a clash of codes draws another one.
            if (attempt > TriesForACode)
            {
                throw new InvalidOperationException("No free batch code was found.");
            }
        }
    }

    private async Task AnnounceAsync(ClinicDb db, IntakeDraft draft, AnnouncedBatch said, OperationId operation, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var batch = Batch.Announce(
            new BatchId(Guid.CreateVersion7(now)),
            BatchCode.FromNumber(RandomNumberGenerator.GetInt32(BatchCode.HowMany)),
            draft.Student,
            operation,
            said,
            () => Guid.CreateVersion7(now),
            now);
        var student = await db.Set<Student>().SingleAsync(person => person.Id == draft.Student, ct).ConfigureAwait(false);
        if (!student.MayTakePart)
        {
            return; // taken back just now: the next round says so
        }

        student.Describe(
            said.Instrument ?? student.Instrument,
            said.TunesTo ?? student.TunesTo,
            said.Scrape ?? student.Scrape,
            Parse(draft.Payload).Country ?? student.Country);

        // Saved even when nothing of the student changed, so that consent that is taken back in between clashes with it.
        db.Entry(student).Property(person => person.Version).IsModified = true;
        draft.Become(batch.Id);
        db.Add(batch);
        await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
    }

    private static async Task<Outcome<BatchView>> SentAsync(ClinicDb db, Actor actor, BatchId batch, CancellationToken ct) =>
        await db.ViewAsync(db.Set<Batch>().SeenBy(actor).Where(sent => sent.Id == batch), ct).ConfigureAwait(false) is { } view
            ? new Outcome<BatchView>.Done(view)
            : new Outcome<BatchView>.NotFound();

    // Below the studio's set age nothing is sent before a guardian has agreed, however complete it is.
    private static async Task<Problem?> NotYetAsync(ClinicDb db, StudentId id, CancellationToken ct) =>
        Hindrance(await db.Set<Student>().AsNoTracking().SingleAsync(person => person.Id == id, ct).ConfigureAwait(false)) is [var problem, ..] ? problem : null;

    private static Task<bool> IsPausedAsync(ClinicDb db, StudentId id, CancellationToken ct) =>
        db.Set<Student>().AnyAsync(person => person.Id == id && person.Consent == Consent.Withdrawn, ct);

    private static IQueryable<IntakeDraft> MyDrafts(ClinicDb db, Actor actor) => actor.Student is { } me
        ? db.Set<IntakeDraft>().Where(draft => draft.Student == me)
        : db.Set<IntakeDraft>().Where(draft => false);

    private static async Task<Outcome<DraftView>> AnswerAsync(ClinicDb db, IQueryable<IntakeDraft> which, CancellationToken ct) =>
        await ReadAsync(db, which, ct).ConfigureAwait(false) is { } view
            ? new Outcome<DraftView>.Done(view)
            : new Outcome<DraftView>.NotFound();

    private static async Task<DraftView?> ReadAsync(ClinicDb db, IQueryable<IntakeDraft> which, CancellationToken ct)
    {
        var draft = await which.AsNoTracking().SingleOrDefaultAsync(ct).ConfigureAwait(false);
        if (draft is null)
        {
            return null;
        }

        BatchCode? became = draft.BecameBatch is { } batch
            ? await db.Set<Batch>().Where(sent => sent.Id == batch).Select(sent => sent.Code).SingleAsync(ct).ConfigureAwait(false)
            : null;
        return View(draft, became, await IsPausedAsync(db, draft.Student, ct).ConfigureAwait(false));
    }

    private static DraftView View(IntakeDraft draft, BatchCode? became, bool isPaused) =>
        new(draft.Id, Parse(draft.Payload), draft.Version, draft.SavedAt, became) { IsPaused = isPaused };

    private static string Write(IntakeForm form) => JsonSerializer.Serialize(form, StoredText.Json);

    private static IntakeForm Parse(string payload) =>
        payload.Length == 0 ? new IntakeForm() : JsonSerializer.Deserialize<IntakeForm>(payload) ?? new IntakeForm();
}
