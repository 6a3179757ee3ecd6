using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;

namespace ReedClinic.Data.Engine;

/// <summary>Taking one job so that no other worker has it: one statement on either engine.</summary>
internal static class JobClaim
{
    public static async Task<Job?> ClaimJobAsync(
        this ClinicDb db, JobKind kind, Guid lease, DateTimeOffset now, TimeSpan length, CancellationToken ct)
    {
        // SQLite has one writer at a time, so nothing needs to be skipped there.
        var skip = db is PostgresClinicDb ? "FOR UPDATE SKIP LOCKED" : "";
        var sql = $$"""
            UPDATE "Jobs" SET "Lease" = {0}, "LeasedUntil" = {1}, "Attempts" = "Attempts" + 1
            WHERE "Id" = (
                SELECT "Id" FROM "Jobs"
                WHERE "Kind" = {2} AND "DoneAt" IS NULL AND "GaveUpAt" IS NULL AND "DueAt" <= {3}
                    AND ("LeasedUntil" IS NULL OR "LeasedUntil" <= {3})
                ORDER BY "DueAt" LIMIT 1 {{skip}})
            RETURNING *
            """;
        var claimed = await db.Set<Job>()
            .FromSqlRaw(sql, lease, (now + length).UtcDateTime, kind.ToString(), now.UtcDateTime)
            .AsNoTracking().ToListAsync(ct).ConfigureAwait(false);
        return claimed.SingleOrDefault();
    }
}
