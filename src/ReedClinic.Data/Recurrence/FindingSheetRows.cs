using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Recurrence;

/// <summary>Keeps the stored sheet in step with the logs.</summary>
public static class FindingSheetRows
{
    /// <summary>Makes the rows of one reed say what its log says.</summary>
    /// <param name="db">The context; the caller saves.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="ct">Cancels the reading.</param>
    public static async Task UpdateAsync(ClinicDb db, ReedId reed, BenchLog log, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(db);
        var stored = await db.Set<SheetRow>().Where(row => row.ReedId == reed).ToDictionaryAsync(row => row.FindingKind, ct)
            .ConfigureAwait(false);
        foreach (var row in SheetRow.Of(reed, log))
        {
            if (stored.Remove(row.FindingKind, out var there))
            {
                there.Become(row);
            }
            else
            {
                db.Add(row);
            }
        }

        db.RemoveRange(stored.Values);
    }

    /// <summary>Works the whole sheet out again, for when the rules of <see cref="SheetRow"/> have changed.</summary>
    /// <param name="db">The context; the caller saves.</param>
    /// <param name="ct">Cancels the reading.</param>
    public static async Task RebuildAsync(ClinicDb db, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(db);
        var reeds = await db.Set<BenchEntry>().Select(entry => entry.ReedId)
            .Union(db.Set<SheetRow>().Select(row => row.ReedId)).ToListAsync(ct).ConfigureAwait(false);
        foreach (var reed in reeds)
        {
            var entries = await db.Set<BenchEntry>().AsNoTracking().Where(entry => entry.ReedId == reed).ToListAsync(ct)
                .ConfigureAwait(false);
            await UpdateAsync(db, reed, BenchLog.Fold(entries), ct).ConfigureAwait(false);
        }
    }
}
