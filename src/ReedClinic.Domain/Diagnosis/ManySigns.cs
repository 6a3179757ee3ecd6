namespace ReedClinic.Domain.Diagnosis;

/// <summary>How likely each cause is, as far as it can be said: each lies between two bounds.</summary>
/// <param name="Chances">The estimate, by index.</param>
/// <param name="Low">Not less likely than this.</param>
/// <param name="High">Not more likely than this.</param>
/// <param name="LogLow">Lower bound of the natural logarithm of the evidence.</param>
/// <param name="LogHigh">Upper bound of it.</param>
/// <param name="Exact">True when nothing was estimated: the bounds are the chances.</param>
/// <param name="Impossible">True when the network can’t bring the evidence about.</param>
public sealed record BoundedPosterior(
    IReadOnlyList<double> Chances, IReadOnlyList<double> Low, IReadOnlyList<double> High, double LogLow, double LogHigh, bool Exact, bool Impossible);

/// <summary>
/// Posteriors whatever the number of present signs: exact up to <see cref="ExactPresent"/>. Beyond, those that tell most are summed exactly
/// and each of the others is replaced by a bound that falls apart into causes.
/// </summary>
/// <remarks>
/// Jaakkola, T. S. and Jordan, M. I. (1999), “Variational probabilistic inference and the QMR-DT network”, Journal of Artificial Intelligence
/// Research 10, 291–322. With x = −ln(1 − leak) − Σ ln(1 − strength) over the causes that hold, a present sign has the chance 1 − e^(−x).
/// From above: 1 − e^(−x) ≤ exp(λx − f(λ)), f(λ) = −λ ln λ + (λ + 1) ln(λ + 1) = λ ln(1 + 1/λ) + ln(λ + 1), for any λ &gt; 0. From below, for any shares q of the
/// causes: ln(1 − e^(−x)) ≥ Σ q [cause holds ? ln(1 − e^(−θ₀ − θ/q)) : ln(1 − e^(−θ₀))]. Both add to the log odds of each cause. The estimate
/// is the posterior of the upper bound with the best λ found; a cause’s chance is bounded by P(cause, evidence) from below over the same plus
/// P(no cause, evidence) from above, and the other way round.
/// </remarks>
public static class ManySigns
{
    /// <summary>Up to so many present signs the posteriors are exact.</summary>
    public const int ExactPresent = 14;

    private const int Rounds = 8;
    private const double Nearly = 1 - 1e-9;

    /// <summary>The posteriors.</summary>
    /// <param name="network">The network.</param>
    /// <param name="evidence">What was observed.</param>
    /// <returns>Estimates and bounds.</returns>
    public static BoundedPosterior Infer(NoisyOr network, IReadOnlyList<Observed> evidence)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(evidence);
        if (evidence.Count(one => one.Present) <= ExactPresent)
        {
            var exact = network.Infer(evidence);
            return new BoundedPosterior(exact.Chances, exact.Chances, exact.Chances, exact.LogEvidence, exact.LogEvidence, Exact: true, exact.Impossible);
        }

        // A sign that none of its causes and no leak can bring about can’t be present at all; bounds would only hide that.
        if (evidence.Any(one => one.Present && !(one.Leak > 0) && one.Strengths.All(link => !(link.Strength * network.Prior(link.Cause) > 0))))
        {
            var priors = Enumerable.Range(0, network.Count).Select(network.Prior).ToArray();
            return new BoundedPosterior(priors, priors, priors, double.NegativeInfinity, double.NegativeInfinity, Exact: true, Impossible: true);
        }

        var order = evidence.Where(one => one.Present).OrderByDescending(Tells).ToList();
        List<Observed> summed = [.. evidence.Where(one => !one.Present), .. order.Take(ExactPresent)];
        return Bound(network, summed, [.. order.Skip(ExactPresent).Select(one => new Bounded(one, network.Count))]);
    }

    /// <summary>How much a present sign tells: how many times as likely its closest cause makes it.</summary>
    private static double Tells(Observed sign) => sign.Strengths.Select(link => link.Strength).DefaultIfEmpty().Max() / Math.Max(sign.Leak, 1e-6);

    private static BoundedPosterior Bound(NoisyOr network, List<Observed> summed, List<Bounded> rest)
    {
        var chances = Enumerable.Range(0, network.Count).Select(network.Prior).ToArray();
        var (upper, best) = (default(Posterior), double.PositiveInfinity);
        for (var round = 0; round < Rounds; round++)
        {
            var found = Above(network, summed, rest, chances);
            chances = [.. found.Chances];
            if (found.LogEvidence < best)
            {
                (upper, best) = (found, found.LogEvidence);
            }
        }

        var lower = Below(network, summed, rest, [.. upper!.Chances]);
        var low = new double[network.Count];
        var high = new double[network.Count];
        for (var cause = 0; cause < network.Count; cause++)
        {
            var gap = Math.Exp(best - lower.LogEvidence); // upper evidence over lower evidence, at least 1
            var (on, off) = (upper.Chances[cause], 1 - upper.Chances[cause]);
            var (onLeast, offLeast) = (lower.Chances[cause], 1 - lower.Chances[cause]);
            low[cause] = Share(onLeast, off * gap);
            high[cause] = 1 - Share(offLeast, on * gap);
        }

        return new BoundedPosterior(upper.Chances, low, high, lower.LogEvidence, best, Exact: false, upper.Impossible);
    }

    private static double Share(double part, double other) => double.IsFinite(other) && part + other > 0 ? part / (part + other) : 0;

    private static Posterior Above(NoisyOr network, List<Observed> summed, List<Bounded> rest, double[] chances)
    {
        var more = new double[network.Count];
        var constant = 0.0;
        foreach (var sign in rest)
        {
            // The slope at the x that is expected: the best λ once the chances no longer change.
            var lambda = 1 / Math.Max(Math.Exp(Math.Min(sign.Expected(chances), 600)) - 1, 1e-6);
            constant += (lambda * sign.LeakTheta) - (lambda * Math.Log(1 + (1 / lambda))) - Math.Log(lambda + 1); // λθ₀ − f(λ)
            foreach (var (cause, theta) in sign.Thetas)
            {
                more[cause] += lambda * theta;
            }
        }

        var posterior = network.Weighed(more).Infer(summed);
        return posterior with { LogEvidence = posterior.LogEvidence + constant };
    }

    private static Posterior Below(NoisyOr network, List<Observed> summed, List<Bounded> rest, double[] chances)
    {
        var more = new double[network.Count];
        var constant = 0.0;
        foreach (var sign in rest)
        {
            var floor = LogPresent(Math.Max(sign.LeakTheta, 1e-12));
            constant += sign.LeakTheta > 0 ? floor : double.NegativeInfinity;
            var all = sign.Expected(chances) - sign.LeakTheta;
            foreach (var (cause, theta) in sign.Thetas)
            {
                var share = chances[cause] * theta / all;
                more[cause] += share > 1e-12 ? share * (LogPresent(sign.LeakTheta + (theta / share)) - floor) : 0;
            }
        }

        var posterior = network.Weighed(more).Infer(summed);
        return posterior with { LogEvidence = posterior.LogEvidence + constant };
    }

    private static double LogPresent(double x)
    {
        var chance = 1 - Math.Exp(-x);
        return Math.Log(chance > 1e-9 ? chance : x);
    }

    private sealed class Bounded
    {
        internal Bounded(Observed sign, int causes)
        {
            LeakTheta = -Math.Log(1 - Math.Min(sign.Leak, Nearly));
            var stay = new double[causes];
            foreach (var (cause, strength) in sign.Strengths)
            {
                stay[cause] -= Math.Log(1 - Math.Min(strength, Nearly));
            }

            Thetas = [.. stay.Select((theta, cause) => (cause, theta)).Where(one => one.theta > 0)];
        }

        internal double LeakTheta { get; }

        internal (int Cause, double Theta)[] Thetas { get; }

        internal double Expected(double[] chances) => LeakTheta + Thetas.Sum(one => chances[one.Cause] * one.Theta);
    }
}
