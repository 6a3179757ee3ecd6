using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Data.Privacy;

/// <summary>
/// Removes every row of a person. It is the one verb that deletes what was written for good; whoever calls it holds a
/// transaction, notes it for the audit, and asks for the sweep that takes what is left of the rows in the file.
/// </summary>
internal static class Erasing
{
    /// <summary>Who is to be erased: somebody who sends reeds, a sign-in, or both.</summary>
    public static async Task EraseAsync(
        this ClinicDb db, Erasure whom, AuditEvent why, AccountId? by, TimeSpan backupsKept, DateTimeOffset now, CancellationToken ct)
    {
        if (whom.Student is { } student)
        {
            await FilesAsync(db, student, now, ct).ConfigureAwait(false);
            await StudentAsync(db, student, now, ct).ConfigureAwait(false);
        }

        if (whom.Account is { } account)
        {
            await AccountAsync(db, account, now, ct).ConfigureAwait(false);
        }

        Guid[] gone = [.. whom.Student is { } person ? [person.Value] : Array.Empty<Guid>(), .. whom.Account is { } signIn ? [signIn.Value] : Array.Empty<Guid>()];
        foreach (var id in gone)
        {
            db.Tell(why, now, by?.Value, id);
            if (!await db.Set<ErasedPerson>().AnyAsync(row => row.Person == id, ct).ConfigureAwait(false))
            {
                db.Add(new ErasedPerson { Person = id, ErasedAt = now, BackupsGoneAt = now + backupsKept });
            }
        }

        db.AskForSweep(now);
    }

    /// <summary>Asks for the sweep, in what is about to be saved.</summary>
    public static void AskForSweep(this ClinicDb db, DateTimeOffset now) =>
        db.Add(new Job { Id = Guid.CreateVersion7(now), Kind = JobKind.Sweep, MadeAt = now, DueAt = now });

    // Rows go with their reeds; their files are noted, and removed once the rows are gone for good.
    private static async Task FilesAsync(ClinicDb db, StudentId id, DateTimeOffset now, CancellationToken ct)
    {
        var reeds = db.Set<Reed>().Where(reed => db.Set<Batch>().Any(batch => batch.Id == reed.Batch && batch.Student == id)).Select(reed => reed.Id);
        db.AskToRemove(await db.Set<Recording>().Where(row => reeds.Contains(row.Reed)).Select(row => row.File).ToListAsync(ct).ConfigureAwait(false), now);
        db.AskToRemove(await db.Set<Upload>().Where(row => reeds.Contains(row.Reed)).Select(row => row.File).ToListAsync(ct).ConfigureAwait(false), now);
    }

    private static async Task StudentAsync(ClinicDb db, StudentId id, DateTimeOffset now, CancellationToken ct)
    {
        var batches = await db.Set<Batch>().Where(batch => batch.Student == id).Select(batch => batch.Id).ToListAsync(ct).ConfigureAwait(false);
        var drafts = await db.Set<IntakeDraft>().Where(draft => draft.Student == id).Select(draft => draft.Id).ToListAsync(ct).ConfigureAwait(false);
        var address = await db.Set<Student>().Where(student => student.Id == id).Select(student => student.FoldedEmail).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        Guid[] subjects = [id.Value, .. batches.Select(batch => batch.Value), .. drafts.Select(draft => draft.Value)];
        await db.Set<DoneOperation>().Where(done => subjects.Contains(done.Subject)).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await db.Set<StaffNote>().Where(note => note.Student == id).ExecuteDeleteAsync(ct).ConfigureAwait(false);

        // In a small studio a rate may tell of one student: all are emptied, and counted anew without this one.
        await db.Set<StudioRateRow>().ExecuteDeleteAsync(ct).ConfigureAwait(false);
        db.Add(new Job { Id = Guid.CreateVersion7(now), Kind = JobKind.Rates, MadeAt = now, DueAt = now });
        await QuestionsAsync(db, address, ct).ConfigureAwait(false);
        await db.Set<Ticket>().Where(ticket => ticket.Student == id || (address != null && ticket.FoldedEmail == address)).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await db.Set<Job>().Where(job => job.About == id.Value).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await db.Set<Guardianship>().Where(guardian => guardian.Student == id).ExecuteDeleteAsync(ct).ConfigureAwait(false);

        // Reeds, questions, bench logs, sounds and photographs, the sheet, common threads, letters with all their versions: they go with their batch.
        await db.Set<Batch>().Where(batch => batch.Student == id).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await db.Set<IntakeDraft>().Where(draft => draft.Student == id).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await db.Set<Student>().Where(student => student.Id == id).ExecuteDeleteAsync(ct).ConfigureAwait(false);
    }

    // What somebody wrote as a teacher in other people's records stays: who wrote it is an id that leads nowhere then.
    private static async Task AccountAsync(ClinicDb db, AccountId id, DateTimeOffset now, CancellationToken ct)
    {
        var email = await db.Users.Where(user => user.Id == id.Value).Select(user => user.Email).SingleOrDefaultAsync(ct).ConfigureAwait(false);
        var address = email is null ? null : Folding.OfEmail(email);
        await HoldWardsAsync(db, id, address, ct).ConfigureAwait(false);
        await db.Set<DoneOperation>().Where(done => done.Subject == id.Value).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await db.Set<Session>().Where(session => session.Account == id).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await db.Set<RecoveryCode>().Where(code => code.Account == id).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await QuestionsAsync(db, address, ct).ConfigureAwait(false);
        await db.Set<Ticket>().Where(ticket => ticket.Account == id || (address != null && ticket.FoldedEmail == address)).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await db.Set<Job>().Where(job => job.About == id.Value).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await db.Set<BenchDraft>().Where(draft => draft.Account == id).ExecuteDeleteAsync(ct).ConfigureAwait(false);

        // Their students can ask somebody else; until one agrees nothing is sent or worked on. Another yes opens no link that they had.
        foreach (var ward in await db.Set<Guardianship>().Where(guardian => guardian.Account == id && guardian.EndedAt == null).Select(guardian => guardian.Student).ToListAsync(ct).ConfigureAwait(false))
        {
            await db.CloseLinksNowAsync(ward, now, ct).ConfigureAwait(false);
        }

        await db.Set<Student>().Where(student => db.Set<Guardianship>().Any(guardian => guardian.Account == id && guardian.Student == student.Id && guardian.EndedAt == null))
            .ExecuteUpdateAsync(student => student.SetProperty(row => row.Consent, Consent.NotAsked).SetProperty(row => row.Version, Guid.CreateVersion7(now)), ct).ConfigureAwait(false);
        await db.Set<Guardianship>().Where(guardian => guardian.Account == id).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        if (address is not null)
        {
            await UnansweredAsync(db, address, now, ct).ConfigureAwait(false);
        }

        // Roles, passkeys and the rest of Identity's rows go with the account.
        await db.Users.Where(user => user.Id == id.Value).ExecuteDeleteAsync(ct).ConfigureAwait(false);
    }

    // Those whom they answer for or were asked about, before their links: in the order in which a student asks a guardian.
    private static async Task HoldWardsAsync(ClinicDb db, AccountId id, string? address, CancellationToken ct)
    {
        var wards = await db.Set<Guardianship>().Where(guardian => guardian.Account == id || (address != null && guardian.FoldedEmail == address))
            .Select(guardian => guardian.Student).ToListAsync(ct).ConfigureAwait(false);
        foreach (var ward in wards.OrderBy(ward => ward.Value))
        {
            await db.HoldAloneAsync(ward, ct).ConfigureAwait(false);
        }
    }

    // Mail that asks the erased to answer for somebody waits under that student's name.
    private static async Task QuestionsAsync(ClinicDb db, string? address, CancellationToken ct)
    {
        var asked = await db.Set<Ticket>().Where(ticket => ticket.Purpose == TicketPurpose.Guardian && ticket.FoldedEmail == address).Select(ticket => ticket.Id).ToListAsync(ct).ConfigureAwait(false);
        var mails = asked.ConvertAll(GuardianRules.AskedOnce);
        await db.Set<Job>().Where(job => mails.Contains(job.Once!)).ExecuteDeleteAsync(ct).ConfigureAwait(false);
    }

    // Where the erased was asked and never answered, their name and address stand with the student, who can ask somebody else.
    private static async Task UnansweredAsync(ClinicDb db, string address, DateTimeOffset now, CancellationToken ct)
    {
        await db.Set<Student>().Where(student => db.Set<Guardianship>().Any(guardian => guardian.FoldedEmail == address && guardian.GivenAt == null && guardian.EndedAt == null && guardian.Student == student.Id))
            .ExecuteUpdateAsync(student => student.SetProperty(row => row.Consent, Consent.NotAsked).SetProperty(row => row.Version, Guid.CreateVersion7(now)), ct).ConfigureAwait(false);
        await db.Set<Guardianship>().Where(guardian => guardian.FoldedEmail == address && guardian.GivenAt == null).ExecuteDeleteAsync(ct).ConfigureAwait(false);
    }
}

/// <summary>Who is to be erased.</summary>
/// <param name="Student">As somebody who sends reeds.</param>
/// <param name="Account">As somebody who signs in.</param>
internal sealed record Erasure(StudentId? Student, AccountId? Account)
{
    /// <summary>What the person goes by: as somebody who sends reeds, else as somebody who signs in.</summary>
    public Guid Person => Student?.Value ?? Account!.Value.Value;
}
