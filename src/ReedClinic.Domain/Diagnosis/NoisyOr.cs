namespace ReedClinic.Domain.Diagnosis;

/// <summary>Something observed: a sign that is there, or was looked for and isn't.</summary>
/// <param name="Present">True when it is there.</param>
/// <param name="Leak">How likely it is there with none of its causes, from 0 to 1.</param>
/// <param name="Strengths">For each cause, by its index, how likely it alone brings the sign about, from 0 to 1; only those above 0 need to stand here.</param>
public sealed record Observed(bool Present, double Leak, IReadOnlyList<(int Cause, double Strength)> Strengths);

/// <summary>
/// A network of two layers: causes that are independent before anything is known, and signs that any of them may bring about (noisy-OR
/// with a leak). A sign stays away only when none of its causes, and not the leak, brings it about:
/// P(no sign | causes) = (1 − leak) ∏ (1 − strength) over the causes that hold.
/// </summary>
/// <remarks>
/// <para>
/// Heckerman, D. (1989), “A tractable inference algorithm for diagnosing multiple diseases”, Proceedings of the Fifth Conference on
/// Uncertainty in Artificial Intelligence (Quickscore): what is absent multiplies into each cause by itself; what is present needs a sum
/// over all subsets of the present signs,
/// P(present, absent) = Σ over S ⊆ present of (−1)^|S| ∏ over causes [ (1 − p) + p ∏ over S ∪ absent (1 − strength) ].
/// </para>
/// <para>
/// Its terms have alternate signs and their sum can be a million million times smaller than they are, so doubles lose all digits. The same
/// number is worked out here without a subtraction: a table holds, for each set of present signs, how likely just these have been brought about by the causes
/// so far; each cause moves part of it to larger sets. That is the sum above after Möbius inversion, in as many steps (2^present for each
/// link), and since nothing is subtracted, each result is right to about 10⁻¹³ of itself. A pass backwards gives every cause’s posterior at once.
/// </para>
/// </remarks>
public sealed class NoisyOr
{
    /// <summary>The most present signs for which the sum is worked out: a table of 2^20 for each cause would be the machine’s memory.</summary>
    public const int MostPresent = 20;

    private readonly double[] priors;
    private readonly double[] logOdds;

    /// <summary>Makes a network.</summary>
    /// <param name="priors">How likely each cause is before anything is known, from 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A chance isn’t from 0 to 1.</exception>
    public NoisyOr(IReadOnlyList<double> priors)
    {
        ArgumentNullException.ThrowIfNull(priors);
        foreach (var prior in priors)
        {
            Check(prior);
        }

        this.priors = [.. priors];
        logOdds = new double[priors.Count];
    }

    private NoisyOr(double[] priors, double[] logOdds) => (this.priors, this.logOdds) = (priors, logOdds);

    /// <summary>The number of causes.</summary>
    public int Count => priors.Length;

    /// <summary>How likely a cause is before anything is known.</summary>
    /// <param name="cause">Its index.</param>
    public double Prior(int cause) => priors[cause];

    /// <summary>
    /// The same network with something that speaks for or against each cause by itself. Bounds on signs that are left out of the sum
    /// come in this way.
    /// </summary>
    internal NoisyOr Weighed(IReadOnlyList<double> more) => new(priors, [.. logOdds.Select((old, at) => old + more[at])]);

    /// <summary>How likely each cause is, and how likely all of the evidence is, given what was observed.</summary>
    /// <param name="evidence">What was observed. At most <see cref="MostPresent"/> signs are present.</param>
    /// <returns>The posteriors; priors and <see cref="Posterior.Impossible"/> when the network can’t bring the evidence about.</returns>
    /// <exception cref="ArgumentException">Too many signs are present, or a chance isn’t from 0 to 1.</exception>
    public Posterior Infer(IReadOnlyList<Observed> evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        foreach (var one in evidence)
        {
            Check(one.Leak);
            foreach (var (cause, strength) in one.Strengths)
            {
                ArgumentOutOfRangeException.ThrowIfNegative(cause);
                ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(cause, Count);
                Check(strength);
            }
        }

        var present = evidence.Where(one => one.Present).ToList();
        if (present.Count > MostPresent)
        {
            throw new ArgumentException($"At most {MostPresent} signs can be present.", nameof(evidence));
        }

        var (chances, log) = Absorb(evidence.Where(one => !one.Present));
        return double.IsNegativeInfinity(log) ? Posterior.CannotBe(priors) : new PresentSigns(chances, present).Infer(log, priors);
    }

    /// <summary>What is absent, and what was weighed in, multiplies into each cause by itself.</summary>
    private (double[] Chances, double LogEvidence) Absorb(IEnumerable<Observed> absent)
    {
        var stay = new double[Count];
        Array.Fill(stay, 1.0);
        var log = 0.0;
        foreach (var one in absent)
        {
            log += Math.Log(1 - one.Leak);
            foreach (var (cause, strength) in one.Strengths)
            {
                stay[cause] *= 1 - strength;
            }
        }

        var chances = new double[Count];
        for (var cause = 0; cause < Count; cause++)
        {
            // Divided by the larger of the two weights, so that a large weight doesn’t run over.
            var scale = Math.Max(0, logOdds[cause]);
            var on = priors[cause] * stay[cause] * Math.Exp(logOdds[cause] - scale);
            var off = (1 - priors[cause]) * Math.Exp(-scale);
            log += Math.Log(on + off) + scale;
            chances[cause] = on + off > 0 ? on / (on + off) : 0;
        }

        return (chances, log);
    }

    private static void Check(double chance)
    {
        if (chance is not (>= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(chance), chance, "A chance is from 0 to 1.");
        }
    }
}

/// <summary>What follows from the evidence.</summary>
/// <param name="Chances">How likely each cause is, by its index, from 0 to 1.</param>
/// <param name="LogEvidence">The natural logarithm of how likely the evidence is.</param>
/// <param name="Impossible">True when the network can’t bring the evidence about; the chances are then the priors.</param>
public sealed record Posterior(IReadOnlyList<double> Chances, double LogEvidence, bool Impossible = false)
{
    internal static Posterior CannotBe(IReadOnlyList<double> priors) => new([.. priors], double.NegativeInfinity, Impossible: true);
}
