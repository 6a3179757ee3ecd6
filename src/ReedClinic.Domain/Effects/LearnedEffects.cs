using System.Globalization;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Effects;

/// <summary>What one usual pass of an adjustment does to the crow here.</summary>
/// <param name="Kind">The adjustment.</param>
/// <param name="Name">Its plain name.</param>
/// <param name="Passes">Between how many pairs of measured crows it was done. It is always told.</param>
/// <param name="Students">On how many students’ reeds.</param>
/// <param name="Middle">In cents; plus is sharper.</param>
/// <param name="Low">The lower end of the middle 90 %.</param>
/// <param name="High">The upper end.</param>
/// <param name="Sharper">How likely it raises the crow.</param>
/// <param name="Before">What was thought before anything was measured.</param>
public sealed record LearnedEffect(
    AdjustmentKindId Kind, string Name, int Passes, int Students, double Middle, double Low, double High, double Sharper, EffectPrior Before)
{
    /// <summary>With fewer measured passes than this the usual teaching says more than they do. Our own default.</summary>
    public const int FewestPasses = 5;

    /// <summary>How sure the interval is.</summary>
    public const double Confidence = 0.9;

    /// <summary>True when there is too little to say more than is usually taught.</summary>
    public bool IsTooLittle => Passes < FewestPasses;

    /// <summary>The same in a plain sentence.</summary>
    public string Sentence => (Passes, Low > 0 || High < 0) switch
    {
        (0, _) => $"Nobody has measured here yet what it does to the crow to {Name}: only what is usually taught is known.",
        ( < FewestPasses, _) =>
            $"To {Name} was measured {(Passes == 1 ? "once" : $"only {EvidenceSentence.Number(Passes)} times")} here: too little to say more than is usually taught.",
        (_, true) => $"To {Name} was measured {EvidenceSentence.Number(Passes)} times here: the crow went about {Cents(Middle)} {Way(Middle)}, and most likely between {Number(Nearer)} and {Cents(Farther)}.",
        _ => $"To {Name} was measured {EvidenceSentence.Number(Passes)} times here: the crow may go either way, from {Cents(Low)} {Way(Low)} to {Cents(High)} {Way(High)}.",
    };

    private double Nearer => Math.Min(Math.Abs(Low), Math.Abs(High));

    private double Farther => Math.Max(Math.Abs(Low), Math.Abs(High));

    private static string Way(double cents) => cents < 0 ? "lower" : "higher";

    private static string Cents(double cents) => Number(cents) is "1" ? "1 cent" : $"{Number(cents)} cents";

    private static string Number(double cents) => Math.Abs(cents).ToString("0", CultureInfo.InvariantCulture);
}

/// <summary>Which way one usual pass of an adjustment moves the words of a test here.</summary>
/// <param name="Kind">The adjustment.</param>
/// <param name="Scale">What the words are about.</param>
/// <param name="Passes">Between how many pairs of tries it was done. It is always told.</param>
/// <param name="Middle">The lean, as log-odds; plus is up the scale.</param>
/// <param name="Low">The lower end of the middle 90 %.</param>
/// <param name="High">The upper end.</param>
/// <param name="Up">How likely the word moves up after one usual pass of this alone.</param>
/// <param name="Same">How likely it stays.</param>
/// <param name="Down">How likely it moves down.</param>
public sealed record LearnedLean(
    AdjustmentKindId Kind, EffectScale Scale, int Passes, double Middle, double Low, double High, double Up, double Same, double Down)
{
    /// <summary>True when there is too little to say more than is usually taught.</summary>
    public bool IsTooLittle => Passes < LearnedEffect.FewestPasses;
}

/// <summary>
/// What adjustments do here, for whoever proposes the next one. Nothing measured gives what is usually taught, with no passes behind it.
/// </summary>
/// <param name="Crow">On the crow, in cents.</param>
/// <param name="Words">On the tests that are told in words.</param>
public sealed record LearnedEffects(
    IReadOnlyDictionary<AdjustmentKindId, LearnedEffect> Crow, IReadOnlyDictionary<(AdjustmentKindId Kind, EffectScale Scale), LearnedLean> Words)
{
    /// <summary>
    /// The same for whoever proposes what to do next: what was measured often enough, in cents of the crow. Of all else the usual teaching
    /// stands, and of the words of tests always: log-odds are no steps of a scale.
    /// </summary>
    /// <returns>The effects.</returns>
    public AdjustmentEffects ForProposals() => Crow.Values.Where(effect => !effect.IsTooLittle).Aggregate(
        AdjustmentEffects.Usual,
        (known, effect) => known.With(
            effect.Kind,
            EffectScale.Pitch,
            EffectEstimate.OfCents(effect.Low, effect.Middle, effect.High, new EvidenceMark(Evidence.OnRecord), effect.Passes)));

    /// <summary>Learns from what the passes show.</summary>
    /// <param name="reading">The moves of all reeds that may be learned from.</param>
    /// <param name="catalogue">What is usually taught.</param>
    /// <param name="whose">For whose reed it is asked; null for any student’s and any teacher’s.</param>
    /// <returns>What adjustments do, for each in the catalogue that is in use.</returns>
    public static LearnedEffects Learn(PassReading reading, Catalogue catalogue, Whose? whose = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(catalogue);
        return new LearnedEffects(
            CrowEffects.Learn(reading.Crow, catalogue, whose).ToDictionary(effect => effect.Kind),
            Enum.GetValues<EffectScale>()
                .SelectMany(scale => WordLeans.Learn([.. reading.Words.Where(move => move.Scale == scale)], catalogue, scale))
                .ToDictionary(lean => (lean.Kind, lean.Scale)));
    }
}
