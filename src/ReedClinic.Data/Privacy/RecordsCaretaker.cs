using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Privacy;

namespace ReedClinic.Data.Privacy;

/// <summary>
/// Lets go of what has been kept long enough, and sweeps what erasing leaves behind. A worker of the host calls it; how
/// long things are kept stands in <see cref="RetentionRules"/>. OWASP ASVS 5.0: 14.2.7.
/// </summary>
public sealed partial class RecordsCaretaker(
    IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox, AuditChain audit, PrivacySettings settings, ILogger<RecordsCaretaker> log)
{
    private const string LettingGo = "letting-go:";
    private const int AtOnce = 200;

    /// <summary>Asks for today's round, unless somebody has.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task AskForRoundAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var now = time.GetUtcNow();
        var once = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"retention:{now.UtcDateTime:yyyy-MM-dd}");
        if (!await db.Set<Job>().AnyAsync(job => job.Once == once, ct).ConfigureAwait(false))
        {
            db.Add(new Job { Id = Guid.CreateVersion7(now), Kind = JobKind.Retention, Once = once, MadeAt = now, DueAt = now });
            await db.SaveUnlessDoneAsync(ct).ConfigureAwait(false);
        }
    }

    /// <summary>One round over everything.</summary>
    /// <param name="ct">Stops it.</param>
    /// <returns>How many rows went, and how many people were told or let go of.</returns>
    public async Task<RetentionRound> RoundAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var rows = await RowsAsync(db, time.GetUtcNow(), ct).ConfigureAwait(false);
        if (rows > 0)
        {
            db.AskForSweep(time.GetUtcNow());
            await db.SaveChangesAsync(ct).ConfigureAwait(false);
        }

        var (told, letGo) = await PeopleAsync(ct).ConfigureAwait(false);
        return new RetentionRound(rows, told, letGo);
    }

    /// <summary>Puts what was noted on the audit's chain, so that the erased are forgotten there, and sweeps the database.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task SweepAsync(CancellationToken ct)
    {
        while (await audit.SealAsync(ct).ConfigureAwait(false) > 0)
        {
            // It takes so many at once.
        }

        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        await db.SweepAsync(ct).ConfigureAwait(false);
    }

    private static async Task<int> RowsAsync(ClinicDb db, DateTimeOffset now, CancellationToken ct)
    {
        var (drafts, tickets, sessions) = (now - RetentionRules.UntouchedDraft, now - RetentionRules.EndedTicket, now - RetentionRules.EndedSession);
        var (jobs, notices, operations) = (now - RetentionRules.EndedJob, now - RetentionRules.SentNotice, now - RetentionRules.DoneOperation);
        var unsent = now - RetentionRules.UnsentMail;

        // While mail is off nobody tries, and addresses would stay: it counts as gone, so that what it held is swept.
        var gone = await db.Set<Job>().Where(job => job.Kind == JobKind.Mail && job.MadeAt <= unsent && job.DoneAt == null && job.GaveUpAt == null
            && (job.LeasedUntil == null || job.LeasedUntil <= now))
            .ExecuteUpdateAsync(job => job.SetProperty(row => row.GaveUpAt, now).SetProperty(row => row.Payload, "").SetProperty(row => row.Problem, "It couldn’t be sent in time."), ct).ConfigureAwait(false);
        gone += await db.Set<IntakeDraft>().Where(draft => draft.SavedAt <= drafts).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        gone += await db.Set<BenchDraft>().Where(draft => draft.KeptAt <= drafts).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        gone += await db.Set<Ticket>().Where(ticket => ticket.UsedAt <= tickets || ticket.WithdrawnAt <= tickets || ticket.ExpiresAt <= tickets).ExecuteDeleteAsync(ct).ConfigureAwait(false);

        // The last one of an account says that somebody was here; without it their records would go too soon.
        gone += await db.Set<Session>().Where(session => (session.EndedAt <= sessions || session.EndsAt <= sessions)
            && db.Set<Session>().Any(later => later.Account == session.Account && (later.SeenAt > session.SeenAt || (later.SeenAt == session.SeenAt && later.StartedAt > session.StartedAt))))
            .ExecuteDeleteAsync(ct).ConfigureAwait(false);

        // That somebody was told is what lets their records go: it stays longer than the other jobs.
        gone += await db.Set<Job>().Where(job => job.GaveUpAt <= jobs || job.DoneAt <= notices
            || (job.DoneAt <= jobs && (job.Once == null || !EF.Functions.Like(job.Once, LettingGo + "%")))).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        gone += await db.Set<DoneOperation>().Where(done => done.DoneAt <= operations).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        gone += await LeftoversAsync(db, now, ct).ConfigureAwait(false);
        return gone + await db.Set<ErasedPerson>().Where(erased => erased.BackupsGoneAt <= now).ExecuteDeleteAsync(ct).ConfigureAwait(false);
    }

    // What was written while its person was being erased, and what the audit called them: its last word was noted by then.
    private static async Task<int> LeftoversAsync(ClinicDb db, DateTimeOffset now, CancellationToken ct)
    {
        var sealedBy = now.AddDays(-1);
        var gone = await db.Set<Pseudonym>().Where(row => db.Set<ErasedPerson>().Any(erased => erased.Person == row.Person && erased.ErasedAt <= sealedBy))
            .ExecuteDeleteAsync(ct).ConfigureAwait(false);
        gone += await db.Set<StaffNote>().Where(note => !db.Set<Student>().Any(student => student.Id == note.Student)).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        gone += await db.Set<Guardianship>().Where(row => !db.Set<Student>().Any(student => student.Id == row.Student)).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        gone += await db.Set<Ticket>().Where(ticket => ticket.Student != null && !db.Set<Student>().Any(student => student.Id == ticket.Student)).ExecuteDeleteAsync(ct).ConfigureAwait(false);

        // Accounts have plain ids, which no query compares with ours.
        gone += await db.Database.ExecuteSqlAsync($"""DELETE FROM "Guardianships" WHERE "Account" IS NOT NULL AND NOT EXISTS (SELECT 1 FROM "AspNetUsers" WHERE "AspNetUsers"."Id" = "Guardianships"."Account")""", ct).ConfigureAwait(false);
        gone += await db.Database.ExecuteSqlAsync($"""DELETE FROM "Tickets" WHERE "Account" IS NOT NULL AND NOT EXISTS (SELECT 1 FROM "AspNetUsers" WHERE "AspNetUsers"."Id" = "Tickets"."Account")""", ct).ConfigureAwait(false);
        return gone + await db.Database.ExecuteSqlAsync($"""DELETE FROM "Sessions" WHERE NOT EXISTS (SELECT 1 FROM "AspNetUsers" WHERE "AspNetUsers"."Id" = "Sessions"."Account")""", ct).ConfigureAwait(false);
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Somebody's records couldn't be looked after; the next round tries again.")]
    private static partial void Stumbled(ILogger log, Exception failure);

    private async Task<(int Told, int LetGo)> PeopleAsync(CancellationToken ct)
    {
        var (told, letGo) = (0, 0);
        var keepYears = await KeepYearsAsync(ct).ConfigureAwait(false);
        foreach (var student in await QuietAsync(keepYears, ct).ConfigureAwait(false))
        {
            try
            {
                var care = await PersonAsync(student, keepYears, ct).ConfigureAwait(false);
                told += care is RecordsCare.Tell ? 1 : 0;
                letGo += care is RecordsCare.LetGo ? 1 : 0;
            }
            catch (Exception failure) when (!ct.IsCancellationRequested)
            {
                // The others mustn't wait for one; tomorrow's round tries again.
                Stumbled(log, failure);
            }
        }

        return (told, letGo);
    }

    // What was done about one person.
    private async Task<RecordsCare> PersonAsync(StudentId id, int keepYears, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        outbox.ReadyKeys();
        var transaction = await db.Database.BeginTransactionAsync(ct).ConfigureAwait(false);
        await using var __ = transaction.ConfigureAwait(false);
        if (!await HoldAsync(db, id, ct).ConfigureAwait(false))
        {
            return RecordsCare.Keep;
        }

        // Read again here, so that somebody who came by since the list was made stays.
        var student = new QuietStudent(id, await db.LastSignAsync(id, ct).ConfigureAwait(false));
        var now = time.GetUtcNow();
        var care = RetentionRules.CareFor(student.LastSign, keepYears, await ToldAtAsync(db, student.Id, ct).ConfigureAwait(false), now);
        if (care is RecordsCare.Tell && !await TellAsync(db, student, keepYears, now, ct).ConfigureAwait(false))
        {
            return RecordsCare.Keep;
        }

        if (care is RecordsCare.LetGo)
        {
            await LetGoAsync(db, student.Id, now, ct).ConfigureAwait(false);
        }

        await db.SaveChangesAsync(ct).ConfigureAwait(false);
        await transaction.CommitAsync(ct).ConfigureAwait(false);
        return care;
    }

    // Until the transaction ends nobody changes the student, a session of theirs or one of their guardian's; SQLite has one writer anyway. False when they are gone.
    private static async Task<bool> HoldAsync(ClinicDb db, StudentId id, CancellationToken ct)
    {
        if (db is PostgresClinicDb)
        {
            await db.Database.ExecuteSqlAsync($"""SELECT 1 FROM "Students" WHERE "Id" = {id.Value} FOR UPDATE""", ct).ConfigureAwait(false);
            await db.Database.ExecuteSqlAsync($"""SELECT 1 FROM "Sessions" WHERE "Account" = (SELECT "Account" FROM "Students" WHERE "Id" = {id.Value}) OR "Account" IN (SELECT "Account" FROM "Guardianships" WHERE "Student" = {id.Value}) FOR UPDATE""", ct).ConfigureAwait(false);
        }

        return await db.Set<Student>().AnyAsync(student => student.Id == id, ct).ConfigureAwait(false);
    }

    // Told is who was sent the mail: one that still waits, or was given up, has told nobody.
    private static async Task<DateTimeOffset?> ToldAtAsync(ClinicDb db, StudentId id, CancellationToken ct) =>
        await db.Set<Job>().Where(job => job.About == id.Value && EF.Functions.Like(job.Once!, LettingGo + "%") && job.DoneAt != null)
            .MaxAsync(job => job.DoneAt, ct).ConfigureAwait(false);

    // False when there is no address, or when a mail is on its way or was given up a short time ago.
    private async Task<bool> TellAsync(ClinicDb db, QuietStudent student, int keepYears, DateTimeOffset now, CancellationToken ct)
    {
        if (await db.AddressForAsync(student.Id, ct).ConfigureAwait(false) is not var (email, name)
            || await db.Set<Job>().AnyAsync(job => job.About == student.Id.Value && EF.Functions.Like(job.Once!, LettingGo + "%") && job.DoneAt == null, ct).ConfigureAwait(false))
        {
            return false;
        }

        var goes = student.LastSign.AddYears(keepYears);
        var earliest = now + RetentionRules.Notice;
        outbox.Put(
            db,
            new Mail(MailKind.LettingGo, email, name) { Path = "/", At = goes > earliest ? goes : earliest, About = student.Id.Value },
            string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{LettingGo}{student.Id.Value}:{now.UtcDateTime:yyyy-MM-dd}"));
        return true;
    }

    private async Task LetGoAsync(ClinicDb db, StudentId id, DateTimeOffset now, CancellationToken ct)
    {
        var account = await db.Set<Student>().Where(student => student.Id == id).Select(student => student.Account).SingleAsync(ct).ConfigureAwait(false);
        if (account is { } signIn && (await db.UserRoles.AnyAsync(held => held.UserId == signIn.Value && held.RoleId != ClinicAccountConfiguration.IdOf(Role.Student), ct).ConfigureAwait(false)
            || await db.Set<Guardianship>().AnyAsync(row => row.Account == signIn, ct).ConfigureAwait(false)))
        {
            account = null;
        }

        if (await db.AddressForAsync(id, ct).ConfigureAwait(false) is var (email, name))
        {
            outbox.Put(db, new Mail(MailKind.Erased, email, name) { At = now });
        }

        await db.EraseAsync(new Erasure(id, account), AuditEvent.LetGo, null, TimeSpan.FromDays(settings.BackupDays), now, ct).ConfigureAwait(false);
    }

    private async Task<int> KeepYearsAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await db.Set<Studio>().Select(studio => (int?)studio.KeepYears).SingleOrDefaultAsync(ct).ConfigureAwait(false) ?? Studio.UsualKeepYears;
    }

    // Those who have been quiet for nearly so long, have no parcel at the studio, can be told, and aren't just waiting.
    private async Task<List<StudentId>> QuietAsync(int keepYears, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var before = time.GetUtcNow().AddYears(-keepYears) + RetentionRules.Notice;
        var rows = await db.Set<Student>().AsNoTracking()
            .Where(student => !db.Set<Batch>().Any(batch => batch.Student == student.Id
                && ((batch.Stage != Stage.Home && batch.Stage != Stage.OnItsWayHome && batch.Stage != Stage.OnItsWay)
                    || batch.SubmittedAt > before || batch.LetterSentAt > before || batch.PostedBackAt > before || batch.HomeAt > before)))
            .Where(student => !db.Set<Session>().Any(session => session.SeenAt > before
                    && (session.Account == student.Account || db.Set<Guardianship>().Any(row => row.Student == student.Id && row.EndedAt == null && row.Account == session.Account)))
                && !db.Set<IntakeDraft>().Any(draft => draft.Student == student.Id && draft.SavedAt > before)
                && !db.Set<Guardianship>().Any(row => row.Student == student.Id && (row.AskedAt > before || row.GivenAt > before || row.WithdrawnAt > before)))
            .Where(student => (student.Age != AgeAnswer.Younger && student.Email != null)
                || (student.Age == AgeAnswer.Younger && db.Set<Guardianship>().Any(row => row.Student == student.Id && row.GivenAt != null)))
            .Select(student => student.Id)
            .ToListAsync(ct).ConfigureAwait(false);
        var since = time.GetUtcNow() - RetentionRules.Notice;
        var waiting = await db.Set<Job>().Where(job => EF.Functions.Like(job.Once!, LettingGo + "%") && (job.DoneAt == null || job.DoneAt > since))
            .Select(job => job.About).ToHashSetAsync(ct).ConfigureAwait(false);
        return [.. rows.Where(id => QuietStudent.MadeAt(id) <= before && !waiting.Contains(id.Value)).OrderBy(id => id.Value).Take(AtOnce)];
    }
}

/// <summary>What a round did.</summary>
/// <param name="Rows">How many rows went.</param>
/// <param name="Told">How many people were told that their records will go.</param>
/// <param name="LetGo">How many people's records went.</param>
public sealed record RetentionRound(int Rows, int Told, int LetGo);
