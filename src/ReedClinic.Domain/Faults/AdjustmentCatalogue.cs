namespace ReedClinic.Domain.Faults;

/// <summary>The kinds of adjustment that have a name of their own.</summary>
public static class AdjustmentCatalogue
{
    /// <summary>Every kind: what can be undone first, the knife later, the clip last.</summary>
    public static IReadOnlyList<AdjustmentKind> All { get; } = [.. GentleAdjustments.All, .. KnifeAdjustments.All];

    private static readonly Dictionary<AdjustmentKindId, AdjustmentKind> ById = All.ToDictionary(kind => kind.Id);

    /// <summary>The kind with this id.</summary>
    /// <param name="id">A lasting name.</param>
    /// <returns>The kind, or null for an unknown id and for "something else".</returns>
    public static AdjustmentKind? Find(AdjustmentKindId id) => id.Value is null ? null : ById.GetValueOrDefault(id);

    /// <summary>The plain name of a kind.</summary>
    /// <param name="id">A lasting name.</param>
    /// <returns>The name; "something else" for what has none.</returns>
    public static string NameOf(AdjustmentKindId id) => Find(id)?.Name ?? "something else";
}
