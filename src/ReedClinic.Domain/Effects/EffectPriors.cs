using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Effects;

/// <summary>What is thought of an adjustment before anything was measured here.</summary>
/// <param name="Middle">The middle.</param>
/// <param name="Spread">The standard deviation.</param>
/// <param name="Mark">How it is known.</param>
public sealed record EffectPrior(double Middle, double Spread, EvidenceMark Mark);

/// <summary>
/// Priors out of the catalogue. It knows directions in ordinal steps and no cents: no published figure for cents per pass is known to
/// us. What a step is in cents, and every spread, is this program’s own default.
/// </summary>
public static class EffectPriors
{
    /// <summary>What “noticeable” is taken for, in cents. Our own default.</summary>
    public const double NoticeableCents = 15;

    /// <summary>What “noticeable” is taken for on the scale of the words (log-odds). Our own default.</summary>
    public const double NoticeableLean = 1;

    /// <summary>The length of the free blade: a reed of 70 mm on a staple of 47 mm (common practice).</summary>
    public const double FreeBladeMillimetres = 23;

    /// <summary>
    /// How far a clip can raise the reed’s own note at most, by the theory of a bar held at one end: its frequency goes with
    /// 1 / length², so 1200·log₂((L / (L − d))²) cents. The crow lies below that: a reed is arched, tapered and loaded with air.
    /// </summary>
    /// <param name="millimetres">What is clipped off; from 0 to below the length.</param>
    /// <param name="length">The free blade in millimetres.</param>
    /// <returns>Cents, never below 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">More is clipped than is there.</exception>
    public static double ClipBound(double millimetres, double length = FreeBladeMillimetres)
    {
        if (!(millimetres >= 0 && millimetres < length))
        {
            throw new ArgumentOutOfRangeException(nameof(millimetres), millimetres, "From 0 to below the length of the blade.");
        }

        return 2400 * Math.Log2(length / (length - millimetres));
    }

    /// <summary>What one usual pass is thought to do to the crow, in cents.</summary>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="kind">The adjustment.</param>
    /// <returns>The prior; a wide one around nothing for what the catalogue doesn’t know.</returns>
    public static EffectPrior Cents(Catalogue catalogue, AdjustmentKindId kind) => kind.Value switch
    {
        "clip-hair" => HalfTheBound((double)ReedLengths.UsualHair),
        "clip" => HalfTheBound((double)ReedLengths.UsualClip),
        _ => Ordinal(catalogue, kind, EffectScale.Pitch, NoticeableCents),
    };

    /// <summary>Which way one usual pass is thought to move the words of a test, as log-odds.</summary>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="kind">The adjustment.</param>
    /// <param name="scale">The scale.</param>
    /// <returns>The prior.</returns>
    public static EffectPrior Lean(Catalogue catalogue, AdjustmentKindId kind, EffectScale scale) => Ordinal(catalogue, kind, scale, NoticeableLean);

    // From nothing to the whole bound lies within one spread on either side.
    private static EffectPrior HalfTheBound(double millimetres) =>
        new(ClipBound(millimetres) / 2, ClipBound(millimetres) / 2, new EvidenceMark(Evidence.Calculated, "a bar held at one end: frequency goes with 1 / length²"));

    private static EffectPrior Ordinal(Catalogue catalogue, AdjustmentKindId kind, EffectScale scale, double unit)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        return catalogue.Find(kind)?.Effects.GetValueOrDefault(scale) is { Mark: not null } range
            ? new EffectPrior(
                unit * (range.Value.Low + range.Value.High) / 2, unit * (1 + ((range.Value.High - range.Value.Low) / 2.0)), range.Mark)
            : new EffectPrior(0, 2 * unit, EvidenceMark.OwnDefault);
    }
}
