using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Engine;

/// <summary>Keeps students as they are until a transaction ends.</summary>
internal static class Holding
{
    /// <summary>
    /// Begins a transaction in which nobody changes these students: whoever wants to waits until it ends, and whoever did is
    /// seen by what is read from now on. Several may hold the same student.
    /// </summary>
    public static async Task<IDbContextTransaction> HoldAsync(this ClinicDb db, Attempt attempt, IQueryable<StudentId> whom, CancellationToken ct)
    {
        // SQLite's transactions write alone from their first statement on (they begin immediate), so nothing is to be asked there.
        var transaction = await attempt.BeginAsync(db, ct).ConfigureAwait(false);
        if (db is PostgresClinicDb)
        {
            foreach (var student in await whom.ToListAsync(ct).ConfigureAwait(false))
            {
                await db.Database.ExecuteSqlAsync($"""SELECT 1 FROM "Students" WHERE "Id" = {student.Value} FOR SHARE""", ct).ConfigureAwait(false);
            }
        }

        return transaction;
    }

    /// <summary>The same of the sessions of a student and their guardian: whoever comes by at this moment is seen.</summary>
    public static async Task HoldSessionsAsync(this ClinicDb db, StudentId student, CancellationToken ct)
    {
        if (db is PostgresClinicDb)
        {
            await db.Database.ExecuteSqlAsync($"""SELECT 1 FROM "Sessions" WHERE "Account" = (SELECT "Account" FROM "Students" WHERE "Id" = {student.Value}) OR "Account" IN (SELECT "Account" FROM "Guardianships" WHERE "Student" = {student.Value}) FOR UPDATE""", ct).ConfigureAwait(false);
        }
    }

    /// <summary>The same of an account and its sessions.</summary>
    public static async Task HoldAloneAsync(this ClinicDb db, AccountId account, CancellationToken ct)
    {
        if (db is PostgresClinicDb)
        {
            await db.Database.ExecuteSqlAsync($"""SELECT 1 FROM "AspNetUsers" WHERE "Id" = {account.Value} FOR UPDATE""", ct).ConfigureAwait(false);
            await db.Database.ExecuteSqlAsync($"""SELECT 1 FROM "Sessions" WHERE "Account" = {account.Value} FOR UPDATE""", ct).ConfigureAwait(false);
        }
    }

    /// <summary>In a transaction: from now on nobody else holds or changes this student until it ends.</summary>
    public static async Task HoldAloneAsync(this ClinicDb db, StudentId student, CancellationToken ct)
    {
        if (db is PostgresClinicDb)
        {
            await db.Database.ExecuteSqlAsync($"""SELECT 1 FROM "Students" WHERE "Id" = {student.Value} FOR UPDATE""", ct).ConfigureAwait(false);
        }
    }
}
