using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Catalogues;

/// <summary>An entry of a studio’s own catalogue.</summary>
/// <param name="Value">A version 7 identifier.</param>
public readonly record struct StudioEntryId(Guid Value);

/// <summary>What an entry of a studio’s own is.</summary>
public enum StudioEntryKind
{
    /// <summary>Something that can be the matter with a reed: found at the bench, and a cause of what is heard.</summary>
    Fault,

    /// <summary>Something that can be done.</summary>
    Adjustment,

    /// <summary>A way to try a reed, and the sign that it can show.</summary>
    Test,
}

/// <summary>What was typed for an entry. What its kind has no use for isn’t read.</summary>
/// <param name="Kind">What it is; null when nothing known was chosen.</param>
/// <param name="Name">Its plain name.</param>
/// <param name="Line">One line that explains it to a student; for a test, how it is done.</param>
public sealed record StudioEntryWords(StudioEntryKind? Kind, string? Name, string? Line)
{
    /// <summary>The part of the reed; null when none was chosen.</summary>
    public Zone? Zone { get; init; }

    /// <summary>For a fault: the test by which it shows.</summary>
    public TestCardId SeenBy { get; init; }

    /// <summary>For a fault: the signs in which it shows itself as well.</summary>
    public IReadOnlyList<SignId> Signs { get; init; } = [];

    /// <summary>For a fault: what to try, in this order.</summary>
    public IReadOnlyList<AdjustmentKindId> Steps { get; init; } = [];

    /// <summary>For an adjustment: whether it can be undone.</summary>
    public Reversible? Undo { get; init; }

    /// <summary>For an adjustment: one sentence of caution.</summary>
    public string? Caution { get; init; }

    /// <summary>For a test: what is right.</summary>
    public string? Right { get; init; }

    /// <summary>For a test: what shows when it isn’t right; it can be noted at the bench.</summary>
    public string? Shows { get; init; }

    /// <summary>For a test: the causes of which that tells.</summary>
    public IReadOnlyList<CauseId> Causes { get; init; } = [];
}
