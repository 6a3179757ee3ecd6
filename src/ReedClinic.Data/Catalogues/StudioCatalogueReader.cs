using Microsoft.EntityFrameworkCore;
using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Data.Catalogues;

/// <summary>Reads the studio’s catalogue: the shipped one with what the owner added.</summary>
/// <remarks>
/// The few rows are read each time, so that every process of the studio sees a change at once. What is made of them is kept: versions are
/// drawn at random, so the same versions are the same entries, whosesoever they are.
/// </remarks>
internal static class StudioCatalogueReader
{
    private static Kept? _kept;

    /// <summary>The catalogue as it stands at this moment.</summary>
    /// <param name="db">The context.</param>
    /// <param name="ct">Stops it.</param>
    public static async Task<Catalogue> ReadAsync(ClinicDb db, CancellationToken ct)
    {
        var entries = await EntriesAsync(db, ct).ConfigureAwait(false);
        if (entries.Count == 0)
        {
            return Catalogue.Shipped;
        }

        var stamp = string.Join(' ', entries.Select(entry => $"{entry.Id.Value:N}{entry.Version:N}"));
        if (Volatile.Read(ref _kept) is { } kept && kept.Stamp == stamp)
        {
            return kept.Catalogue;
        }

        var made = new Kept(stamp, StudioCatalogue.Of(entries));
        Volatile.Write(ref _kept, made);
        return made.Catalogue;
    }

    /// <summary>All entries, retired ones included, in a lasting order.</summary>
    public static async Task<List<StudioEntry>> EntriesAsync(ClinicDb db, CancellationToken ct) =>
        await db.Set<StudioEntry>().AsNoTracking().OrderBy(entry => entry.Key).ToListAsync(ct).ConfigureAwait(false);

    private sealed record Kept(string Stamp, Catalogue Catalogue);
}
