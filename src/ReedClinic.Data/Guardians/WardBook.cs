using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Guardians;

/// <summary>What a guardian sees of their students, and taking consent back.</summary>
public sealed class WardBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox)
{
    private const string Withdraw = "withdraw-consent";
    private const string GiveAgain = "give-consent-again";

    /// <summary>The students for whom whoever asks answers, or did until they took it back.</summary>
    public async Task<IReadOnlyList<WardView>> MineAsync(Actor actor, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var mine = await db.Set<Guardianship>().AsNoTracking().Where(row => row.Account == actor.Account && row.GivenAt != null && row.EndedAt == null)
            .OrderBy(row => row.GivenAt).ToListAsync(ct).ConfigureAwait(false);
        var wards = new List<WardView>();
        foreach (var guardianship in mine)
        {
            wards.Add(await ViewAsync(db, guardianship, ct).ConfigureAwait(false));
        }

        return wards;
    }

    /// <summary>One of them; null when there is none such.</summary>
    public async Task<WardView?> ReadAsync(Actor actor, StudentId ward, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.GuardedBy(actor, ward).AsNoTracking().SingleOrDefaultAsync(ct).ConfigureAwait(false) is { } guardianship
            ? await ViewAsync(db, guardianship, ct).ConfigureAwait(false)
            : null;
    }

    /// <summary>
    /// Takes consent back: from this moment nothing more is done with the student's reeds, and the student reads but writes
    /// nothing. Private links to their letters are closed for good. Asks for a fresh sign-in.
    /// </summary>
    public Task<Outcome<WardView>> WithdrawAsync(Actor actor, StudentId ward, OperationId operation, CancellationToken ct) =>
        ChangeAsync(actor, ward, Withdraw, operation, async (db, guardianship, student, now) =>
        {
            guardianship.Withdraw(now);
            await db.CloseLinksAsync(ward, actor.Account, now, ct).ConfigureAwait(false);
            student.Follow(Consent.Withdrawn);
            if (student.Account is { } account)
            {
                await db.EndSessionsAsync(account, null, now, ct).ConfigureAwait(false);
            }

            db.Tell(AuditEvent.ConsentWithdrawn, now, actor.Account.Value, ward.Value, guardianship.Id.Value);
            outbox.PutAnswered(db, guardianship, student, GuardianRules.Withdrawn, now);
        }, ct);

    /// <summary>Agrees again after having taken it back. Asks for a fresh sign-in.</summary>
    public Task<Outcome<WardView>> GiveAgainAsync(Actor actor, StudentId ward, OperationId operation, CancellationToken ct) =>
        ChangeAsync(actor, ward, GiveAgain, operation, async (db, guardianship, student, now) =>
        {
            await db.GiveAsync(guardianship, student, actor.Account, now, ct).ConfigureAwait(false);
            outbox.PutAnswered(db, guardianship, student, GuardianRules.GivenAgain, now);
        }, ct);

    private async Task<Outcome<WardView>> ChangeAsync(
        Actor actor, StudentId ward, string verb, OperationId operation,
        Func<ClinicDb, Guardianship, Student, DateTimeOffset, Task> change, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var which = db.GuardedBy(actor, ward);
        for (var tries = 1; tries <= DoneOperations.MostTries; tries++)
        {
            if (await which.SingleOrDefaultAsync(ct).ConfigureAwait(false) is not { } guardianship)
            {
                return new Outcome<WardView>.NotFound();
            }

            var wasDone = await db.WasDoneAsync(operation, verb, ward.Value, ct).ConfigureAwait(false);
            if (!wasDone && !actor.IsFresh)
            {
                return new Outcome<WardView>.Refused([FreshSignIn.Problem]);
            }

            if (wasDone || guardianship.Stands == Consent.Given != (verb == Withdraw)
                || await TryAsync(db, guardianship, verb, operation, change, ct).ConfigureAwait(false))
            {
                return new Outcome<WardView>.Done(await ViewAsync(db, await which.AsNoTracking().SingleAsync(ct).ConfigureAwait(false), ct).ConfigureAwait(false));
            }
        }

        return new Outcome<WardView>.Refused([DoneOperations.NotSaved]);
    }

    // False when somebody saved the student at the same moment: then nothing is changed yet.
    private async Task<bool> TryAsync(
        ClinicDb db, Guardianship guardianship, string verb, OperationId operation,
        Func<ClinicDb, Guardianship, Student, DateTimeOffset, Task> change, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var student = await db.Set<Student>().SingleAsync(person => person.Id == guardianship.Student, ct).ConfigureAwait(false);
        await change(db, guardianship, student, now).ConfigureAwait(false);
        db.Note(operation, verb, student.Id.Value, now);
        return await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
    }

    private static async Task<WardView> ViewAsync(ClinicDb db, Guardianship guardianship, CancellationToken ct)
    {
        var id = guardianship.Student;
        var student = await db.Set<Student>().Where(person => person.Id == id).Select(person => new { person.Name, person.Account }).SingleAsync(ct).ConfigureAwait(false);
        var batches = await db.Set<Batch>().Where(batch => batch.Student == id).OrderByDescending(batch => batch.SubmittedAt)
            .Select(batch => new WardBatch(batch.Code, batch.Stage, batch.SubmittedAt, batch.Reeds.Count)
            {
                HasLetter = batch.LetterSentAt != null,
                StandsSince = batch.HomeAt ?? batch.PostedBackAt ?? batch.LetterSentAt ?? batch.BenchStartedAt ?? batch.ArrivedAt ?? batch.SubmittedAt,
                Missing = batch.Reeds.Count(reed => reed.Presence == Presence.Missing),
                Unfit = new UnfitReeds(
                    batch.Reeds.Where(reed => reed.Fitness == Fitness.Mould).OrderBy(reed => reed.Number).Select(reed => reed.Number).ToList(),
                    batch.Reeds.Where(reed => reed.Fitness == Fitness.DryFirst).OrderBy(reed => reed.Number).Select(reed => reed.Number).ToList()),
                CorrectedAt = db.Set<Letter>().Where(letter => letter.Batch == batch.Id && letter.SentOrdinal > 1).Select(letter => letter.SentAt).FirstOrDefault(),
            })
            .ToListAsync(ct).ConfigureAwait(false);
        return new WardView(
            id,
            student.Name,
            guardianship.Stands,
            guardianship.WithdrawnAt ?? guardianship.GivenAt ?? guardianship.AskedAt,
            batches,
            await db.Set<Question>().CountAsync(question => db.Set<Batch>().Any(batch => batch.Id == question.Batch && batch.Student == id), ct).ConfigureAwait(false),
            await db.Set<IntakeDraft>().CountAsync(draft => draft.Student == id && draft.BecameBatch == null, ct).ConfigureAwait(false))
        {
            Account = student.Account,
        };
    }
}

/// <summary>Which students somebody answers for.</summary>
internal static class Guarding
{
    /// <summary>The guardianship of one student that this account holds or held.</summary>
    public static IQueryable<Guardianship> GuardedBy(this ClinicDb db, Actor actor, StudentId ward) =>
        db.Set<Guardianship>().Where(row => row.Student == ward && row.Account == actor.Account && row.GivenAt != null && row.EndedAt == null);
}
