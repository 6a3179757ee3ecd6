using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Privacy;
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
}
