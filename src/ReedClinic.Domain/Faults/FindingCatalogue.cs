namespace ReedClinic.Domain.Faults;

/// <summary>The kinds of finding that have a name of their own.</summary>
public static class FindingCatalogue
{
    /// <summary>Every kind, from the tip down, faults before strengths.</summary>
    public static IReadOnlyList<FindingKind> All { get; } =
        [.. TipFindings.All, .. BodyFindings.All, .. WholeReedFindings.All, .. StrengthFindings.All];

    private static readonly Dictionary<FindingKindId, FindingKind> ById = All.ToDictionary(kind => kind.Id);

    /// <summary>The kind with this id.</summary>
    /// <param name="id">A lasting name.</param>
    /// <returns>The kind, or null for an unknown id and for "something else".</returns>
    public static FindingKind? Find(FindingKindId id) => id.Value is null ? null : ById.GetValueOrDefault(id);

    /// <summary>The plain name of a kind.</summary>
    /// <param name="id">A lasting name.</param>
    /// <returns>The name; "something else" for what has none.</returns>
    public static string NameOf(FindingKindId id) => Find(id)?.Name ?? "something else";
}
