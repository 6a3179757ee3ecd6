using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Pitch;

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

    /// <summary>Whether work keeps to what a student allowed who asked for safe changes only: the one rule of bench and letter.</summary>
    /// <param name="kind">The adjustment.</param>
    /// <param name="amount">How much.</param>
    /// <param name="crow">Where the latest crow stood before it; null when none was heard.</param>
    /// <returns>True for a small step, unless it is a clip while the crow is sharp already: what takes it further from its note is no safe change.</returns>
    public static bool IsWithin(AdjustmentKindId kind, Amount amount, CentsRange? crow) =>
        IsSmallStep(kind, amount) && !(WorkKinds.IsClip(kind) && crow is { } heard && AdviceMatter.StandOf(heard) == CrowStand.Sharp);

    /// <summary>Where the latest crow that was said stood, as the log read at the time: a wording of later changes nothing.</summary>
    /// <param name="log">The log.</param>
    /// <param name="target">What the crow is held against.</param>
    /// <param name="until">The place in the log before which it was said.</param>
    /// <returns>Null when no crow with a pitch was said before.</returns>
    public static CentsRange? CrowBefore(BenchLog log, CrowTarget target, int until = int.MaxValue)
    {
        ArgumentNullException.ThrowIfNull(log);
        return log.Facts
            .Select(fact => fact.Chain.LastOrDefault(entry => entry.Sequence < until))
            .OfType<Test>().LastOrDefault(test => test is { TestKind: TestKind.Crow, Pitch: not null, MeasuredFrom: null })?.Pitch!.Against(target);
    }
}
