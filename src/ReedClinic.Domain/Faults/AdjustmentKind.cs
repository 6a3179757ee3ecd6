using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Faults;

/// <summary>The lasting name of a kind of adjustment, such as <c>thin-tip-corners</c>.</summary>
/// <param name="Value">Small letters and hyphens; never renamed once it has been stored.</param>
public readonly record struct AdjustmentKindId(string Value)
{
    /// <summary>Anything that isn't in the catalogue; the words say what it is.</summary>
    public static AdjustmentKindId SomethingElse { get; } = new("something-else");

    /// <summary>True where an entry’s own words say what it is: “something else”, and whatever is the studio’s own.</summary>
    public bool IsInWords => this == SomethingElse || OwnId.Is(Value);

    /// <summary>True for what every reed has before it is played: it is wetted (common practice). Nobody’s leave is asked for that.</summary>
    public bool Prepares => Value is "soak";

    /// <summary>True when it is known that the cane doesn’t come back.</summary>
    public bool TakesAway => AdjustmentCatalogue.Find(this) is { } kind ? kind.Reversible == Reversible.No : OwnId.TakesCane(Value);
}

/// <summary>Whether an adjustment can be undone.</summary>
public enum Reversible
{
    /// <summary>Undone in minutes.</summary>
    Yes,

    /// <summary>Undone in part, or for a while.</summary>
    Partly,

    /// <summary>The cane is gone.</summary>
    No,
}

/// <summary>A kind of adjustment.</summary>
/// <param name="Id">Its lasting name.</param>
/// <param name="Name">Its plain name, as a thing to do, in small letters.</param>
/// <param name="Done">The same as something that has been done, for a log or a letter.</param>
/// <param name="Zone">The part of the reed that is usually worked.</param>
/// <param name="Reversible">Whether it can be undone.</param>
/// <param name="UsualAmount">How much is usual, in words; null where that says nothing.</param>
/// <param name="Caution">One sentence of caution.</param>
/// <param name="Mark">How it is known.</param>
public sealed record AdjustmentKind(
    AdjustmentKindId Id,
    string Name,
    string Done,
    Zone Zone,
    Reversible Reversible,
    string? UsualAmount,
    string Caution,
    EvidenceMark Mark);
