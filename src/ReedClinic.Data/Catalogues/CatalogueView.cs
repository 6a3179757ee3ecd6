using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Data.Catalogues;

/// <summary>The studio’s catalogue, and what of it is the studio’s own.</summary>
/// <param name="Catalogue">The shipped catalogue with the studio’s own entries.</param>
/// <param name="Own">The studio’s own, by name, those in use first.</param>
public sealed record CatalogueView(Catalogue Catalogue, IReadOnlyList<StudioEntryView> Own);

/// <summary>One entry of the studio’s own.</summary>
/// <param name="Id">Which.</param>
/// <param name="Key">Its lasting name.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Words">What it says, as it is typed.</param>
/// <param name="Reeds">In how many reeds’ logs it stands.</param>
/// <param name="RetiredAt">Since when it isn’t offered; null while it is.</param>
/// <param name="Version">The version to save against.</param>
public sealed record StudioEntryView(
    StudioEntryId Id, string Key, StudioEntryKind Kind, StudioEntryWords Words, int Reeds, DateTimeOffset? RetiredAt, Guid Version)
{
    /// <summary>What it is called.</summary>
    public string Name => Words.Name ?? "";

    internal static StudioEntryView Of(StudioEntry entry, int reeds) => new(
        entry.Id,
        entry.Key,
        entry.Kind,
        new StudioEntryWords(entry.Kind, entry.Name, entry.Line)
        {
            Zone = entry.Kind == StudioEntryKind.Test ? null : entry.Zone,
            SeenBy = new TestCardId(entry.SeenBy ?? ""),
            Signs = entry.Signs,
            Steps = entry.Steps,
            Undo = entry.Undo,
            Caution = entry.Caution,
            Right = entry.Right,
            Shows = entry.Shows,
            Causes = entry.Causes,
        },
        reeds,
        entry.RetiredAt,
        entry.Version);
}
