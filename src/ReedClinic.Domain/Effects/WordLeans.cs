using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Effects;

/// <summary>
/// Which way each adjustment moves the words of a test, from all adjustments of a pass together. Words are in order and no more: how far
/// one is from the next isn’t used, only whether it went up, down or stayed.
/// </summary>
/// <remarks>
/// The proportional odds model of P. McCullagh (1980), "Regression models for ordinal data", Journal of the Royal Statistical Society B
/// 42, 109–142, for three ordered outcomes with thresholds at −c and +c, so that nothing done moves nothing. Normal priors, the
/// posterior by Newton’s method and its curvature (Laplace), for several c that are weighed by their evidence.
/// </remarks>
internal static class WordLeans
{
    private static readonly double[] Thresholds = [0.15, 0.3, 0.5, 0.75, 1, 1.3, 1.7, 2.2, 3];

    /// <summary>Learns the lean of every adjustment in use on one scale.</summary>
    public static IEnumerable<LearnedLean> Learn(IReadOnlyList<WordMoved> moves, Catalogue catalogue, EffectScale scale)
    {
        List<AdjustmentKindId> kinds =
        [
            .. catalogue.Adjustments.Select(entry => entry.Id).Union(moves.SelectMany(move => move.Work.Done.Keys))
                .OrderBy(kind => kind.Value, StringComparer.Ordinal),
        ];
        var used = kinds.Where(kind => moves.Any(move => move.Work.Done.ContainsKey(kind))).ToList();
        EffectPrior[] priors = [.. used.Select(kind => EffectPriors.Lean(catalogue, kind, scale))];
        double[][] rows = [.. moves.Select(move => used.Select(kind => move.Work.Done.GetValueOrDefault(kind)).ToArray())];
        List<(double Threshold, Model Model)> models =
            [.. Thresholds.Select(threshold => (threshold, Fit(rows, [.. moves.Select(move => move.Way)], priors, threshold)))];
        return kinds.Select(kind =>
        {
            var at = used.IndexOf(kind);
            var prior = EffectPriors.Lean(catalogue, kind, scale);
            return Lean(
                kind,
                scale,
                at < 0 ? 0 : rows.Count(row => row[at] > 0),
                [.. models.Select(one => at < 0
                    ? (one.Threshold, one.Model.LogEvidence, prior.Middle, prior.Spread)
                    : (one.Threshold, one.Model.LogEvidence, one.Model.Middle[at], Math.Sqrt(one.Model.Spread[at][at])))]);
        });
    }

    private static LearnedLean Lean(
        AdjustmentKindId kind, EffectScale scale, int passes, List<(double Threshold, double LogWeight, double Middle, double Spread)> models)
    {
        var after = new Mixture([.. models.Select(one => (one.LogWeight, one.Middle, one.Spread, double.PositiveInfinity))]);
        var most = models.Max(one => one.LogWeight);
        double Share(Func<double, double, double> chance) =>
            models.Sum(one => Math.Exp(one.LogWeight - most) * chance(one.Threshold, one.Middle)) / models.Sum(one => Math.Exp(one.LogWeight - most));
        var (up, down) = (Share((threshold, lean) => Logistic(lean - threshold)), Share((threshold, lean) => Logistic(-lean - threshold)));
        return new LearnedLean(
            kind,
            scale,
            passes,
            after.Middle,
            after.Quantile((1 - LearnedEffect.Confidence) / 2),
            after.Quantile((1 + LearnedEffect.Confidence) / 2),
            up,
            1 - up - down,
            down);
    }

    /// <summary>The posterior for one threshold. It has one peak: the logarithm of each chance is concave in the lean.</summary>
    internal static Model Fit(double[][] rows, int[] ways, IReadOnlyList<EffectPrior> priors, double threshold)
    {
        var middle = priors.Select(prior => prior.Middle).ToArray();
        var (slope, bend) = Bent(rows, ways, priors, threshold, middle);
        for (var round = 0; round < 100 && slope.Any(value => Math.Abs(value) > 1e-9); round++)
        {
            var step = bend.Solve(slope);
            var shorter = Math.Min(1, 2 / step.Max(Math.Abs));
            for (var at = 0; at < step.Length; at++)
            {
                middle[at] += step[at] * shorter;
            }

            (slope, bend) = Bent(rows, ways, priors, threshold, middle);
        }

        var log = rows.Zip(ways).Sum(pair => Ends(Dot(pair.First, middle), pair.Second, threshold) is var (upper, lower) ? Math.Log(Math.Max(upper - lower, 1e-300)) : 0)
            - priors.Select((prior, at) => ((middle[at] - prior.Middle) / prior.Spread) is var off ? (off * off / 2) + Math.Log(prior.Spread) : 0).Sum();
        return new Model(middle, bend.Inverse(), log - (bend.LogDeterminant / 2));
    }

    // How the logarithm of the posterior slopes and bends at a point.
    private static (double[] Slope, PositiveSystem Bend) Bent(
        double[][] rows, int[] ways, IReadOnlyList<EffectPrior> priors, double threshold, double[] middle)
    {
        var slope = priors.Select((prior, at) => (prior.Middle - middle[at]) / (prior.Spread * prior.Spread)).ToArray();
        var bend = new double[middle.Length, middle.Length];
        for (var at = 0; at < middle.Length; at++)
        {
            bend[at, at] = 1 / (priors[at].Spread * priors[at].Spread);
        }

        foreach (var (row, way) in rows.Zip(ways))
        {
            var (upper, lower) = Ends(Dot(row, middle), way, threshold);
            AddTo(slope, bend, row, upper + lower - 1, (upper * (1 - upper)) + (lower * (1 - lower)));
        }

        return (slope, new PositiveSystem(bend));
    }

    // The two ends of an outcome on the logistic curve.
    private static (double Upper, double Lower) Ends(double lean, int way, double threshold) => (
        way > 0 ? 1 : Logistic((way < 0 ? -threshold : threshold) - lean),
        way < 0 ? 0 : Logistic((way > 0 ? threshold : -threshold) - lean));

    private static void AddTo(double[] slope, double[,] bend, double[] row, double first, double second)
    {
        for (var at = 0; at < row.Length; at++)
        {
            slope[at] += row[at] * first;
            for (var other = 0; row[at] is not 0 && other < row.Length; other++)
            {
                bend[at, other] += row[at] * row[other] * second;
            }
        }
    }

    private static double Dot(double[] one, double[] other) => one.Zip(other, (left, right) => left * right).Sum();

    private static double Logistic(double value) => 1 / (1 + Math.Exp(-value));

    /// <summary>What is thought for one threshold.</summary>
    internal sealed record Model(double[] Middle, double[][] Spread, double LogEvidence);
}
