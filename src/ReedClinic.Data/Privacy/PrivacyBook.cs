using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Privacy;

/// <summary>What is kept of somebody: reading about it, taking a copy, and having it erased.</summary>
public sealed class PrivacyBook(IDbContextFactory<ClinicDb> databases, TimeProvider time, PrivacySettings settings, StudioBook studios, MediaFolder media, Outbox outbox)
{
    /// <summary>How many copies may be taken in 24 hours: our own choice; each one reads everything of a person.</summary>
    public const int MostCopiesADay = 3;

    /// <summary>What is typed to confirm that somebody is to be erased.</summary>
    public const string Confirmation = "erase";

    /// <summary>The field of a problem with that.</summary>
    public const string ConfirmationField = "Typed";

    private const string Erase = "erase-person";
    private const string Export = "export-person"; // of whom
    private const string Taken = "took-copy"; // by whom

    /// <summary>What the public page tells.</summary>
    public async Task<PrivacyView> ReadAsync(CancellationToken ct) => new(
        await studios.Read(ct).ConfigureAwait(false),
        DataMap.Own.Classes,
        settings.BackupDays,
        time.GetUtcNow().AddDays(settings.BackupDays));

    /// <summary>Whether this actor may take a copy: of their own, or of a student for whom they answer as a guardian.</summary>
    public async Task<bool> MayCopyAsync(Actor actor, StudentId? ward, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await OwnAsync(db, actor, ward, ct).ConfigureAwait(false) is not null;
    }

    /// <summary>
    /// A copy of everything that is kept of whoever asks, or of a student for whom they answer as a guardian. Asks for a
    /// fresh sign-in, and is given a few times a day.
    /// </summary>
    public async Task<Outcome<PersonCopy>> ExportAsync(Actor actor, StudentId? ward, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        if (await OwnAsync(db, actor, ward, ct).ConfigureAwait(false) is not { } whose)
        {
            return new Outcome<PersonCopy>.NotFound();
        }

        if (!actor.IsFresh)
        {
            return new Outcome<PersonCopy>.Refused([FreshSignIn.Problem]);
        }

        var subject = whose.Student?.Value ?? whose.Account!.Value.Value;
        var now = time.GetUtcNow();
        var since = now.AddDays(-1);
        if (await db.Set<DoneOperation>().CountAsync(done => done.Subject == actor.Account.Value && done.Verb == Taken && done.DoneAt > since, ct).ConfigureAwait(false) >= MostCopiesADay)
        {
            return new Outcome<PersonCopy>.Refused([new Problem("", $"You have taken {MostCopiesADay} copies in the last 24 hours. Please come back tomorrow.")]);
        }

        // Each copy counts and is noted, the one of a repeated form too: it is as much a copy as the first.
        if (!await db.WasDoneAsync(operation, Export, subject, ct).ConfigureAwait(false))
        {
            db.Note(operation, Export, subject, now);
        }

        db.Note(default, Taken, actor.Account.Value, now);
        db.Tell(AuditEvent.Exported, now, actor.Account.Value, subject);
        if (!await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false))
        {
            return new Outcome<PersonCopy>.Refused([DoneOperations.NotSaved]);
        }

        return new Outcome<PersonCopy>.Done(await db.CopyAsync(whose.Account, whose.Student, media, ct).ConfigureAwait(false));
    }

    /// <summary>
    /// What erasing would take: of whoever asks; of a student for whom they answer; for an owner, of any student. Null when
    /// there is no such person for this actor.
    /// </summary>
    public async Task<ErasureView?> LookAsync(Actor actor, StudentId? whom, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await WhomAsync(db, actor, whom, ct).ConfigureAwait(false) is { } erasure
            ? await ViewAsync(db, erasure, whom is null || whom == actor.Student, ct).ConfigureAwait(false)
            : null;
    }

    /// <summary>
    /// Erases somebody: every row of theirs, at once. Asks for a fresh sign-in and a typed word. It is refused while their
    /// reeds are at the studio, for the last owner, and for a guardian who still answers for a student. Whoever was erased is
    /// told by one last mail, and so is the guardian who answered for them.
    /// </summary>
    public async Task<Outcome<ErasureView>> EraseAsync(Actor actor, StudentId? whom, string? typed, OperationId operation, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        operation = operation.OrFresh(time.GetUtcNow());
        outbox.Ready();
        var erased = await databases.PatientlyAsync((attempt, stop) => EraseAsync(attempt, actor, whom, typed, operation, stop), ct).ConfigureAwait(false);
        if (erased is Outcome<ErasureView>.Done)
        {
            var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
            await using var _ = db.ConfigureAwait(false);
            await db.RemoveAskedAsync(media, ct).ConfigureAwait(false);
        }

        return erased;
    }

    private async Task<Outcome<ErasureView>> EraseAsync(
        Attempt attempt, Actor actor, StudentId? whom, string? typed, OperationId operation, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var transaction = await attempt.BeginAsync(db, ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        if (await WasErasedAsync(db, actor, whom, operation, ct).ConfigureAwait(false))
        {
            return new Outcome<ErasureView>.Done(ErasureView.Gone(whom is null || whom == actor.Student));
        }

        if (await WhomAsync(db, actor, whom, ct).ConfigureAwait(false) is not { } erasure)
        {
            return new Outcome<ErasureView>.NotFound();
        }

        if (erasure.Student is { } held)
        {
            await db.HoldAloneAsync(held, ct).ConfigureAwait(false); // before their rows, as whoever writes about their reeds does
        }

        var view = await ViewAsync(db, erasure, whom is null || whom == actor.Student, ct).ConfigureAwait(false);
        var problems = Hindrances(actor, view, typed);
        if (problems.Count > 0)
        {
            return new Outcome<ErasureView>.Refused(problems);
        }

        var now = time.GetUtcNow();
        await outbox.PutErasedAsync(db, erasure, now, ct).ConfigureAwait(false);
        await db.EraseAsync(erasure, AuditEvent.Erased, actor.Account, TimeSpan.FromDays(settings.BackupDays), now, ct).ConfigureAwait(false);
        db.Note(operation, Erase, erasure.Student?.Value ?? erasure.Account!.Value.Value, now);
        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return new Outcome<ErasureView>.Done(view);
    }

    // Whoever was erased can't be looked for any more; that this very form did it stands in what was done.
    private static Task<bool> WasErasedAsync(ClinicDb db, Actor actor, StudentId? whom, OperationId operation, CancellationToken ct)
    {
        Guid[] people = whom is { } student ? [student.Value] : [actor.Account.Value, .. actor.Student is { } me ? [me.Value] : Array.Empty<Guid>()];
        return db.Set<DoneOperation>().AnyAsync(done => done.Id == operation && done.Verb == Erase && people.Contains(done.Subject), ct);
    }

    private static IReadOnlyList<Problem> Hindrances(Actor actor, ErasureView view, string? typed) =>
        view.Hindrances.Count > 0 ? view.Hindrances
        : !actor.IsFresh ? [FreshSignIn.Problem]
        : !string.Equals(typed?.Trim(), Confirmation, StringComparison.OrdinalIgnoreCase)
            ? [new Problem(ConfirmationField, $"Type the word “{Confirmation}” to say that you mean it.")]
        : [];

    // Whose copy it is: a guardian's copy of a ward holds the student's records, and nothing of the student's sign-in.
    private static async Task<Erasure?> OwnAsync(ClinicDb db, Actor actor, StudentId? ward, CancellationToken ct)
    {
        if (ward is { } student && student != actor.Student)
        {
            return await db.GuardedBy(actor, student).AnyAsync(ct).ConfigureAwait(false) ? new Erasure(student, null) : null;
        }

        var me = await db.Set<Student>().Where(person => person.Account == actor.Account).Select(person => (StudentId?)person.Id).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        return me is not null || await db.Users.AnyAsync(user => user.Id == actor.Account.Value, ct).ConfigureAwait(false) ? new Erasure(me, actor.Account) : null;
    }

    private static async Task<Erasure?> WhomAsync(ClinicDb db, Actor actor, StudentId? whom, CancellationToken ct)
    {
        if (whom is not { } student || student == actor.Student)
        {
            return await OwnAsync(db, actor, null, ct).ConfigureAwait(false);
        }

        var person = await db.Set<Student>().AsNoTracking()
            .SingleOrDefaultAsync(row => row.Id == student && (actor.IsOwner || db.GuardedBy(actor, student).Any()), ct).ConfigureAwait(false);
        if (person is null)
        {
            return null;
        }

        // A sign-in that is more than this student's stays with its holder.
        var more = person.Account is { } account && (await db.UserRoles.AnyAsync(
                held => held.UserId == account.Value && held.RoleId != ClinicAccountConfiguration.IdOf(Role.Student), ct).ConfigureAwait(false)
            || await db.Set<Guardianship>().AnyAsync(row => row.Account == account, ct).ConfigureAwait(false));
        return new Erasure(student, more ? null : person.Account);
    }

    private async Task<ErasureView> ViewAsync(ClinicDb db, Erasure whom, bool isSelf, CancellationToken ct)
    {
        var batches = await db.Set<Batch>().AsNoTracking().Where(batch => batch.Student == whom.Student)
            .Select(batch => new { batch.Stage, Reeds = batch.Reeds.Count, Sent = batch.LetterSentAt != null }).ToListAsync(ct).ConfigureAwait(false);
        var roles = whom.Account is { } account
            ? await db.UserRoles.Where(held => held.UserId == account.Value).Select(held => held.RoleId).ToListAsync(ct).ConfigureAwait(false)
            : [];
        var hindrances = new List<Problem>();
        if (batches.Any(batch => batch.Stage is Stage.Here or Stage.AtTheBench or Stage.LetterSent))
        {
            hindrances.Add(new Problem("", "There are reeds at the studio. They have to be on their way home first, so that nobody there holds a parcel without knowing whose it is. Please ask the studio to post them."));
        }

        if (whom.Account is { } owner && roles.Contains(ClinicAccountConfiguration.IdOf(Role.Owner)) && !await AnotherOwnerAsync(db, owner, ct).ConfigureAwait(false))
        {
            hindrances.Add(new Problem("", "This is the studio’s only owner. Somebody else has to be made one first."));
        }

        if (whom.Account is { } guardian && await db.Set<Guardianship>().AnyAsync(row => row.Account == guardian && row.GivenAt != null && row.WithdrawnAt == null && row.EndedAt == null, ct).ConfigureAwait(false))
        {
            hindrances.Add(new Problem("", "You answer for a student here. Take your consent back first. Once you are erased, the student can ask somebody else; until then nothing is sent or worked on."));
        }

        return new ErasureView(
            await NameAsync(db, whom, ct).ConfigureAwait(false),
            isSelf,
            whom.Account is not null,
            roles.Any(role => role != ClinicAccountConfiguration.IdOf(Role.Student)),
            batches.Count,
            batches.Sum(batch => batch.Reeds),
            batches.Count(batch => batch.Sent),
            time.GetUtcNow().AddDays(settings.BackupDays),
            hindrances)
        {
            KeepsAccount = whom.Account is null && await db.Set<Student>().AnyAsync(person => person.Id == whom.Student && person.Account != null, ct).ConfigureAwait(false),
        };
    }

    private static async Task<bool> AnotherOwnerAsync(ClinicDb db, AccountId but, CancellationToken ct) =>
        await db.UserRoles.AnyAsync(
            held => held.RoleId == ClinicAccountConfiguration.IdOf(Role.Owner) && held.UserId != but.Value
                && db.Users.Any(user => user.Id == held.UserId && user.DisabledAt == null),
            ct).ConfigureAwait(false);

    private static async Task<string> NameAsync(ClinicDb db, Erasure whom, CancellationToken ct) => whom.Student is { } student
        ? await db.Set<Student>().Where(person => person.Id == student).Select(person => person.Name).SingleAsync(ct).ConfigureAwait(false)
        : await db.Users.Where(user => user.Id == whom.Account!.Value.Value).Select(user => user.DisplayName).SingleOrDefaultAsync(ct).ConfigureAwait(false) ?? "";
}
