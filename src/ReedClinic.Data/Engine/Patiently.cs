using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Data.Engine;

/// <summary>Work in a transaction of its own, tried again as a whole when the database was away for a moment.</summary>
internal static class Patiently
{
    /// <summary>Does it, and again when it has to be.</summary>
    /// <typeparam name="T">What comes of it.</typeparam>
    /// <param name="databases">The studio's records.</param>
    /// <param name="work">Makes a context of its own each time, and knows by its operation what it has done already.</param>
    /// <param name="ct">Stops it.</param>
    public static async Task<T> PatientlyAsync<T>(this IDbContextFactory<ClinicDb> databases, Func<Attempt, CancellationToken, Task<T>> work, CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return await Attempt.MakeAsync(db.Database.CreateExecutionStrategy(), work, ct).ConfigureAwait(false);
    }
}
