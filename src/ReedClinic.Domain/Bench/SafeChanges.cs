using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench;

/// <summary>
/// What a student may expect who allowed safe changes only. The intake says what they are: small steps that are unlikely to spoil
/// the reed, and stopping early. So cane may be taken, a little at a time. Bench and letter read it here.
/// </summary>
/// <remarks>Common practice, with no source.</remarks>
public static class SafeChanges
{
    private const int MostStrokes = 6;
    private const decimal MostMillimetres = 0.2m;

    private static readonly AdjustmentKindId[] TakeNoCane = [new("retie"), new("retire")];

    // What an adjuster takes only by choice, what often ends a reed, and a whole clip: no small step.
    private static readonly AdjustmentKindId[] NoSmallStep =
        [new("thin-tip-centre"), new("dust-heart"), new("thin-spine"), new("thin-rails"), new("narrow-edges"), new("clip"), new("retie")];

    /// <summary>Whether an adjustment takes cane away.</summary>
    /// <param name="kind">The adjustment.</param>
    /// <returns>Null for what isn't in the catalogue: nobody but the teacher knows.</returns>
    public static bool? TakesCane(AdjustmentKindId kind) => AdjustmentCatalogue.Find(kind) is { } known
        ? known.Reversible == Reversible.No && !TakeNoCane.Contains(known.Id)
        : OwnId.Is(kind.Value) ? OwnId.TakesCane(kind.Value) : null;

    /// <summary>Whether it is a step that a student expects who allowed safe changes only.</summary>
    /// <param name="kind">The adjustment.</param>
    /// <param name="amount">How much: up to 6 strokes, and up to 0.2 mm.</param>
    /// <returns>True for whatever can be undone; false for what isn't in the catalogue, and for cane taken in a way of the studio's own.</returns>
    public static bool IsSmallStep(AdjustmentKindId kind, Amount amount) =>
        AdjustmentCatalogue.Find(kind) is { } known
            ? known.Reversible != Reversible.No
                || (!NoSmallStep.Contains(kind) && amount is { Strokes: null or <= MostStrokes, Millimetres: null or <= MostMillimetres })
            : OwnId.Is(kind.Value) && !OwnId.TakesCane(kind.Value);
}
