using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Privacy;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>A database at which something else happens at the moment when it is opened for the n-th time.</summary>
internal sealed class InterruptedDatabases(TestDatabase db, int at, Action<ClinicDb> what) : IDbContextFactory<ClinicDb>
{
    private int _opened;

    public bool WasThere { get; private set; }

    public ClinicDb CreateDbContext()
    {
        if (++_opened == at)
        {
            WasThere = true;
            using var other = db.CreateDbContext();
            what(other);
            other.SaveChanges();
        }

        return db.CreateDbContext();
    }
}

/// <summary>Counts what is still there.</summary>
internal static class Kept
{
    /// <summary>How many rows have outlived their time.</summary>
    public static async Task<int> PastTheirTimeAsync(DateTimeOffset now, ClinicDb db)
    {
        bool Over(DateTimeOffset? since, TimeSpan kept) => since is { } at && RetentionRules.IsOver(at, kept, now);
        return (await db.Set<IntakeDraft>().ToListAsync(Ct)).Count(draft => Over(draft.SavedAt, RetentionRules.UntouchedDraft))
            + (await db.Set<BenchDraft>().ToListAsync(Ct)).Count(draft => Over(draft.KeptAt, RetentionRules.UntouchedDraft))
            + (await db.Set<Ticket>().ToListAsync(Ct)).Count(ticket => Over(ticket.UsedAt ?? ticket.WithdrawnAt ?? ticket.ExpiresAt, RetentionRules.EndedTicket))
            + (await db.Set<Session>().ToListAsync(Ct)).Count(session => Over(session.EndedAt ?? session.EndsAt, RetentionRules.EndedSession))
            + (await db.Set<Job>().ToListAsync(Ct)).Count(job => Over(job.DoneAt ?? job.GaveUpAt, RetentionRules.EndedJob))
            + (await db.Set<DoneOperation>().ToListAsync(Ct)).Count(done => Over(done.DoneAt, RetentionRules.DoneOperation));
    }

    /// <summary>One of each kind that has a time, ended at this moment where it can end.</summary>
    public static async Task FillAsync(TestDatabase db, StudentId student, AccountId account, DateTimeOffset now)
    {
        await using var context = db.CreateDbContext();
        await CaretakerScene.SignInOfAsync(context, account);
        context.Add(new IntakeDraft(new DraftId(NewId()), student, Operation(), "", now));
        var ticket = new Ticket(new TicketId(NewId()), TicketPurpose.Begin, Convert.ToHexStringLower(NewId().ToByteArray()), "a@harbour.example", now, TimeSpan.FromDays(3));
        ticket.Use(now);
        context.Add(ticket);
        var session = new Session(new SessionId(NewId()), account, SignInWay.Password, false, "Firefox", now);
        session.End(now);
        context.Add(session);
        context.Add(new Job { Id = NewId(), Kind = JobKind.Mail, MadeAt = now, DueAt = now, DoneAt = now });
        context.Add(new DoneOperation { Id = Operation(), Verb = "say-age", Subject = student.Value, DoneAt = now });
        await context.SaveChangesAsync(Ct);
    }
}
