using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Intake;

/// <summary>Asks which reeds go home put aside.</summary>
internal static class AsideQueries
{
    /// <summary>The reeds that were put aside and have no verdict, once the letter was sent; before it the bench is nobody else’s affair.</summary>
    public static async Task<IReadOnlyList<AsideReed>> AsideAsync(this ClinicDb db, Batch batch, CancellationToken ct)
    {
        List<ReedId> here = [.. batch.Reeds.Where(reed => reed.IsHere).Select(reed => reed.Id)];
        if (batch.Stage < Stage.LetterSent || !await db.Set<Parked>().AnyAsync(parked => here.Contains(parked.ReedId), ct).ConfigureAwait(false))
        {
            return [];
        }

        var entries = await db.Set<BenchEntry>().AsNoTracking().Where(entry => here.Contains(entry.ReedId)).OrderBy(entry => entry.Sequence).ToListAsync(ct).ConfigureAwait(false);
        return AsideReed.In(batch, entries.GroupBy(entry => entry.ReedId).ToDictionary(log => log.Key, BenchLog.Fold));
    }
}
