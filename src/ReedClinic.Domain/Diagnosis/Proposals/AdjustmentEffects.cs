using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>What one pass of an adjustment does on one scale.</summary>
/// <param name="Low">Rarely less than this, in steps of the scale: 1 is noticeable, 2 is large.</param>
/// <param name="Likely">What is expected.</param>
/// <param name="High">Rarely more than this.</param>
/// <param name="Mark">How it is known.</param>
/// <param name="Passes">On how many passes at this bench it rests; null for what is usually taught.</param>
public sealed record EffectEstimate(double Low, double Likely, double High, EvidenceMark Mark, int? Passes = null)
{
    /// <summary>So many cents of the crow are one step of the scale of pitch: this program’s own default, the same as its tolerance.</summary>
    public const double CentsAStep = CrowTarget.ToleranceCents;

    /// <summary>True when it may go either way.</summary>
    public bool IsTwoSigned => Low < 0 && High > 0;

    /// <summary>True when it can be counted with: three finite numbers in their order.</summary>
    public bool IsSound => double.IsFinite(Low) && double.IsFinite(High) && double.IsFinite(Likely) && Low <= Likely && Likely <= High;

    /// <summary>An effect on the crow that was measured in cents.</summary>
    /// <param name="low">Rarely less than this many cents; plus is up.</param>
    /// <param name="likely">What is expected.</param>
    /// <param name="high">Rarely more.</param>
    /// <param name="mark">How it is known.</param>
    /// <param name="passes">On how many passes it rests.</param>
    public static EffectEstimate OfCents(double low, double likely, double high, EvidenceMark mark, int passes) =>
        new(low / CentsAStep, likely / CentsAStep, high / CentsAStep, mark, passes);

    internal static EffectEstimate Usual(Marked<EffectRange> range) =>
        new(range.Value.Low, (range.Value.Low + range.Value.High) / 2.0, range.Value.High, range.Mark);
}

/// <summary>
/// What adjustments do: as the catalogue has it, until a studio’s own passes tell more. It never changes; <see cref="With"/> gives another one.
/// </summary>
public sealed record AdjustmentEffects
{
    private readonly Dictionary<(AdjustmentKindId, EffectScale), EffectEstimate> learned = [];

    private AdjustmentEffects()
    {
    }

    private AdjustmentEffects(Dictionary<(AdjustmentKindId, EffectScale), EffectEstimate> learned) => this.learned = learned;

    /// <summary>What is usually taught, and nothing learned.</summary>
    public static AdjustmentEffects Usual { get; } = new();

    /// <summary>The same with something that was learned here. What can’t be counted with is left out.</summary>
    /// <param name="kind">The adjustment.</param>
    /// <param name="scale">The scale.</param>
    /// <param name="estimate">What it does.</param>
    public AdjustmentEffects With(AdjustmentKindId kind, EffectScale scale, EffectEstimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        return kind.Value is null || !estimate.IsSound
            ? this
            : new AdjustmentEffects(new Dictionary<(AdjustmentKindId, EffectScale), EffectEstimate>(learned) { [(kind, scale)] = estimate });
    }

    /// <summary>What one pass does on one scale.</summary>
    /// <param name="adjustment">The adjustment.</param>
    /// <param name="scale">The scale.</param>
    public EffectEstimate Of(AdjustmentEntry adjustment, EffectScale scale)
    {
        ArgumentNullException.ThrowIfNull(adjustment);
        return learned.TryGetValue((adjustment.Id, scale), out var known) ? known : EffectEstimate.Usual(adjustment.Effects[scale]);
    }
}
