using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>What one adjustment does on one scale of this reed.</summary>
/// <param name="Scale">The scale.</param>
/// <param name="Estimate">What it does.</param>
/// <param name="Help">How much of that is wished for.</param>
/// <param name="Harm">How much of it isn’t.</param>
internal sealed record Moved(EffectScale Scale, EffectEstimate Estimate, double Help, double Harm);

/// <summary>What an adjustment is worth on this reed.</summary>
/// <param name="Entry">The adjustment.</param>
/// <param name="Hope">What is hoped for by way of the likely causes, from 0 to 1.</param>
/// <param name="Moves">What it does on each scale.</param>
/// <param name="Price">What it costs apart from its side effects.</param>
/// <param name="For">The causes it is a step of, the one that gives most hope first.</param>
internal sealed record Weighed(AdjustmentEntry Entry, double Hope, IReadOnlyList<Moved> Moves, double Price, IReadOnlyList<LikelyCause> For)
{
    /// <summary>What a remedy moves to the good counts as far as there is hope that it is the remedy.</summary>
    internal double Gain => Hope * (1 + Moves.Sum(move => move.Help));

    internal double Harm => Price + Moves.Sum(move => move.Harm);

    internal double Value => Gain - Harm;
}

/// <summary>
/// Weighs adjustments: the hope that it meets a likely cause, and what it does on six scales where the reed stands now, less side effects,
/// risk, and that cane is gone. The weights are this program’s own defaults (defaults.tsv, “next”).
/// </summary>
internal sealed class Worth(ReedNow now, ScaleStands stands)
{
    // Low, likely and high of a range, as the corners of a triangle are weighed.
    private static readonly (Func<EffectEstimate, double> Point, double Share)[] Points =
        [(one => one.Low, 0.25), (one => one.Likely, 0.5), (one => one.High, 0.25)];

    internal double Weight(string word) => now.Catalogue.Defaults.Next(word).Value;

    internal double WeightOf(EffectScale scale) => Weight($"{scale.ToString().ToLowerInvariant()}-weight");

    /// <summary>What it is worth to leave the reed as it is: more, the more of it is right, and the more was done to it already.</summary>
    internal double OfStopping =>
        Weight("stop-least") + (Weight("stop-right") * stands.Right) + (Weight("stop-worked") * Math.Min(5, now.Passes));

    /// <summary>How far the evidence has lifted a cause above how often it is met anyway, from 0 to 1.</summary>
    internal static double Lift(LikelyCause one) => Math.Clamp((one.Chance - one.Cause.Prior.Value) / (1 - one.Cause.Prior.Value), 0, 1);

    internal Weighed Of(AdjustmentEntry entry)
    {
        var done = now.PassesOf(entry.Id);
        var hopes = now.Causes.Causes.Select(one => (one, Hope: Lift(one) * Cure(one.Cause, entry.Id))).Where(pair => pair.Hope > 0)
            .OrderByDescending(pair => pair.Hope).ToList();
        var hope = 1 - hopes.Aggregate(1 - (Proportion.Serves(now, entry.Id) ? Weight("later-step") : 0), (left, pair) => left * (1 - pair.Hope));
        var against = now.Causes.Causes.Where(one => one.Cause.NeverFirst.Contains(entry.Id)).Select(Lift).DefaultIfEmpty().Max();
        var moves = Enum.GetValues<EffectScale>().Select(scale => Move(entry, scale)).ToList();
        var price = (Weight("risk-cost") * entry.Risk.Value / 5) + (Weight("against-cost") * against) + entry.Undo switch
        {
            Reversible.No => Weight("gone-cost"),
            Reversible.Partly => Weight("partly-cost"),
            _ => 0,
        };
        price += entry.Undo == Reversible.No && LowersBeyondReach(moves) ? Weight("not-won-back") : 0;
        return new Weighed(entry, hope * Math.Pow(Weight("again-share"), done), moves, price, [.. hopes.Where(pair => pair.Hope >= hopes[0].Hope / 5).Select(pair => pair.one)]);
    }

    /// <summary>The hope in a step: the first that isn’t done yet gives most, each later one less.</summary>
    private double Cure(Cause cause, AdjustmentKindId kind)
    {
        var at = 0;
        foreach (var step in cause.Steps.Where(step => now.Catalogue.Find(step) is { Retired: false }))
        {
            if (step == kind)
            {
                return Math.Pow(Weight("later-step"), at);
            }

            at += now.PassesOf(step) > 0 ? 0 : 1;
        }

        return 0;
    }

    private Moved Move(AdjustmentEntry entry, EffectScale scale)
    {
        var estimate = now.Effects.Of(entry, scale);
        var (off, help, harm) = (stands.Off(scale), 0.0, 0.0);
        foreach (var (point, share) in Points)
        {
            var change = ScaleStands.Loss(scale, off + point(estimate)) - ScaleStands.Loss(scale, off);
            help += share * Math.Max(0, -change);
            harm += share * Math.Max(0, change);
        }

        var weight = WeightOf(scale);
        return new Moved(scale, estimate, weight * help, weight * harm * (stands.IsKnown(scale) ? 1 : Weight("untried-share")));
    }

    /// <summary>A low crow that would fall further with no length left to win it back.</summary>
    private bool LowersBeyondReach(List<Moved> moves) =>
        now.CrowIsLow && !now.RoomFor(ReedLengths.UsualHair) && moves.Exists(move => move is { Scale: EffectScale.Pitch, Estimate.Likely: < 0 });
}
