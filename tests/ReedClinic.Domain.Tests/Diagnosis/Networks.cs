using System.Numerics;
using CsCheck;
using ReedClinic.Domain.Diagnosis;

namespace ReedClinic.Domain.Tests.Diagnosis;

/// <summary>A network and evidence in it, with all chances as whole parts of 2^Bits, so that they are exact in doubles and in whole numbers.</summary>
internal sealed record DyadicCase(int Bits, int[] Priors, (bool Present, int Leak, int[] Strengths)[] Signs)
{
    internal NoisyOr Network => new([.. Priors.Select(Part)]);

    internal IReadOnlyList<Observed> Evidence =>
        [.. Signs.Select(sign => new Observed(sign.Present, Part(sign.Leak), [.. sign.Strengths.Select((strength, cause) => (cause, Part(strength))).Where(link => link.Item2 > 0)]))];

    internal double Part(int part) => part / (double)(1 << Bits);

    internal static Gen<DyadicCase> Any(int causes, int present, int absent, bool ends) =>
        from bits in Gen.Const(10)
        from priors in Gen.Int[ends ? 0 : 1, ends ? 1 << bits : 300].Array[causes]
        from strengths in Gen.Frequency((1, Gen.Const(0)), (2, Gen.Int[ends ? 0 : 1, ends ? 1 << bits : 1000])).Array[causes].Array[present + absent]
        from leaks in Gen.Int[ends ? 0 : 1, ends ? 1 << bits : 60].Array[present + absent]
        select new DyadicCase(bits, priors, [.. strengths.Select((own, at) => (at < present, leaks[at], own))]);

    /// <summary>Every joint state of the causes, one by one: P(state) P(evidence | state).</summary>
    internal (double Evidence, double[] With) Enumerate()
    {
        var (all, with) = (0.0, new double[Priors.Length]);
        for (var state = 0; state < 1 << Priors.Length; state++)
        {
            var chance = Priors.Select((prior, cause) => (state >> cause & 1) == 1 ? Part(prior) : 1 - Part(prior)).Aggregate(1.0, (product, one) => product * one);
            foreach (var (present, leak, strengths) in Signs)
            {
                var none = strengths.Where((_, cause) => (state >> cause & 1) == 1).Aggregate(1 - Part(leak), (product, strength) => product * (1 - Part(strength)));
                chance *= present ? 1 - none : none;
            }

            all += chance;
            for (var cause = 0; cause < with.Length; cause++)
            {
                with[cause] += (state >> cause & 1) == 1 ? chance : 0;
            }
        }

        return (all, with);
    }

    /// <summary>
    /// Heckerman (1989), “A tractable inference algorithm for diagnosing multiple diseases”, the sum of Quickscore, letter for letter, in whole
    /// numbers: Σ over S ⊆ present of (−1)^|S| ∏ over causes [ (1 − p) + p ∏ over S ∪ absent (1 − strength) ] times the leaks that stay away.
    /// With a cause named, only the second term of its bracket: the cause holds.
    /// </summary>
    internal (BigInteger Sum, int Scale) Quickscore(int? holds = null)
    {
        BigInteger one = 1 << Bits;
        var present = Signs.Where(sign => sign.Present).ToArray();
        var absent = Signs.Where(sign => !sign.Present).ToArray();
        BigInteger Stays(int subset, Func<(bool Present, int Leak, int[] Strengths), BigInteger> stay) => present
            .Select((sign, at) => (subset >> at & 1) == 1 ? stay(sign) : one).Concat(absent.Select(stay)).Aggregate(BigInteger.One, (product, factor) => product * factor);

        BigInteger sum = 0;
        for (var subset = 0; subset < 1 << present.Length; subset++)
        {
            var term = Stays(subset, sign => one - sign.Leak);
            for (var cause = 0; cause < Priors.Length; cause++)
            {
                var on = Priors[cause] * Stays(subset, sign => one - sign.Strengths[cause]);
                term *= holds == cause ? on : on + ((one - Priors[cause]) << (Bits * Signs.Length));
            }

            sum += BitOperations.PopCount((uint)subset) % 2 == 0 ? term : -term;
        }

        return (sum, Bits * (Signs.Length + (Priors.Length * (Signs.Length + 1))));
    }

    /// <summary>The same sum in doubles, as it stands.</summary>
    internal double QuickscoreInDoubles()
    {
        var present = Signs.Where(sign => sign.Present).ToArray();
        var absent = Signs.Where(sign => !sign.Present).ToArray();
        var sum = 0.0;
        for (var subset = 0; subset < 1 << present.Length; subset++)
        {
            var stays = present.Where((_, at) => (subset >> at & 1) == 1).Concat(absent).ToArray();
            var term = stays.Aggregate(1.0, (product, sign) => product * (1 - Part(sign.Leak)));
            for (var cause = 0; cause < Priors.Length; cause++)
            {
                term *= 1 - Part(Priors[cause]) + (Part(Priors[cause]) * stays.Aggregate(1.0, (product, sign) => product * (1 - Part(sign.Strengths[cause]))));
            }

            sum += BitOperations.PopCount((uint)subset) % 2 == 0 ? term : -term;
        }

        return sum;
    }

    /// <summary>One whole number over another, right to the last digits of a double.</summary>
    internal static double Ratio(BigInteger over, BigInteger under) => (double)((over << 80) / under) / Math.Pow(2, 80);
}
