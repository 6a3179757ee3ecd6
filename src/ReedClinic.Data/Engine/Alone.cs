using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Data.Engine;

/// <summary>What only one may do at a time, in all processes.</summary>
internal enum AloneFor
{
    /// <summary>Putting links on the audit's chain.</summary>
    AuditChain = 7_301,

    /// <summary>Changing who owns the studio.</summary>
    Owners = 7_302,

    /// <summary>Taking room for a sound or a photograph.</summary>
    MediaRoom = 7_303,

    /// <summary>Sending invitations.</summary>
    Invitations = 7_304,

    /// <summary>Giving names in the studio’s own catalogue.</summary>
    Catalogue = 7_305,
}

/// <summary>Makes a transaction wait until it is the only one that does something.</summary>
internal static class Alone
{
    // SQLite's transactions write alone from their first statement on (they begin immediate), so nothing is to be asked there.
    public static async Task HoldAloneAsync(this ClinicDb db, AloneFor what, CancellationToken ct)
    {
        if (db is PostgresClinicDb)
        {
            await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({(int)what})", ct).ConfigureAwait(false);
        }
    }
}
