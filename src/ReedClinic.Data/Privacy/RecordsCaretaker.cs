using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Privacy;

namespace ReedClinic.Data.Privacy;

/// <summary>
/// Lets go of what has been kept long enough, and sweeps what erasing leaves behind. A worker of the host calls it; how
/// long things are kept stands in <see cref="RetentionRules"/>. OWASP ASVS 5.0: 14.2.7.
/// </summary>
public sealed class RecordsCaretaker(
    IDbContextFactory<ClinicDb> databases, TimeProvider time, Outbox outbox, AuditChain audit, PrivacySettings settings, ILogger<RecordsCaretaker> log)
{
    private readonly Farewell _farewell = new(databases, time, outbox, settings, log);

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

        await _farewell.ClosedGuardiansAsync(ct).ConfigureAwait(false);
        var (told, letGo) = await _farewell.RoundAsync(ct).ConfigureAwait(false);
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

        gone += await db.Set<LetterLink>().Where(link => link.ClosedAt <= tickets || link.ExpiresAt <= tickets).ExecuteDeleteAsync(ct).ConfigureAwait(false);

        // The last one of an account says that somebody was here; without it their records would go too soon.
        gone += await db.Set<Session>().Where(session => (session.EndedAt <= sessions || session.EndsAt <= sessions)
            && db.Set<Session>().Any(later => later.Account == session.Account && (later.SeenAt > session.SeenAt || (later.SeenAt == session.SeenAt && later.StartedAt > session.StartedAt))))
            .ExecuteDeleteAsync(ct).ConfigureAwait(false);

        // That somebody was told, or couldn't be, is what lets their records go: it stays longer than the other jobs.
        gone += await db.Set<Job>().Where(job => job.GaveUpAt <= notices || job.DoneAt <= notices
            || ((job.GaveUpAt <= jobs || job.DoneAt <= jobs) && (job.Once == null || !EF.Functions.Like(job.Once, Farewell.Once + "%")))).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        gone += await db.Set<DoneOperation>().Where(done => done.DoneAt <= operations).ExecuteDeleteAsync(ct).ConfigureAwait(false);
        gone += await UnansweredAsync(db, now, ct).ConfigureAwait(false);
        gone += await LeftoversAsync(db, now, ct).ConfigureAwait(false);
        return gone + await db.Set<ErasedPerson>().Where(erased => erased.BackupsGoneAt <= now).ExecuteDeleteAsync(ct).ConfigureAwait(false);
    }

    // Whoever was named as a guardian and never answered, or said no: the link that was sent last is gone by now, or will never be used.
    private static async Task<int> UnansweredAsync(ClinicDb db, DateTimeOffset now, CancellationToken ct)
    {
        var asked = now - RetentionRules.UnansweredGuardian;
        var gone = await db.Set<Guardianship>().Where(row => row.GivenAt == null && row.AskedAt <= asked
                && !db.Set<Ticket>().Any(ticket => ticket.Student == row.Student && ticket.Purpose == TicketPurpose.Guardian && ticket.ExpiresAt > asked))
            .ExecuteDeleteAsync(ct).ConfigureAwait(false);
        await db.Set<Student>().Where(student => (student.Consent == Consent.Asked || student.Consent == Consent.Declined) && !db.Set<Guardianship>().Any(row => row.Student == student.Id))
            .ExecuteUpdateAsync(student => student.SetProperty(row => row.Consent, Consent.NotAsked).SetProperty(row => row.Version, Guid.CreateVersion7(now)), ct).ConfigureAwait(false);
        return gone;
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
}

/// <summary>What a round did.</summary>
/// <param name="Rows">How many rows went.</param>
/// <param name="Told">How many people were told that their records will go.</param>
/// <param name="LetGo">How many people's records went.</param>
public sealed record RetentionRound(int Rows, int Told, int LetGo);
