using System.Numerics;
using CsCheck;
using ReedClinic.Domain.Diagnosis;

namespace ReedClinic.Domain.Tests.Diagnosis;

public sealed class NoisyOrTests
{
    private static readonly int[] AskedFor = [0, 11];

    [Fact]
    public void On_small_networks_the_posteriors_are_those_of_enumerating_every_state() =>
        Gen.Select(Gen.Int[1, 8], Gen.Int[0, 6], Gen.Int[0, 4]).SelectMany(sizes => DyadicCase.Any(sizes.Item1, sizes.Item2, sizes.Item3, ends: true)).Sample(
            given =>
            {
                var (evidence, with) = given.Enumerate();
                var found = given.Network.Infer(given.Evidence);

                Assert.Equal(evidence is 0, found.Impossible);
                Assert.All(found.Chances, chance => Assert.InRange(chance, 0, 1 + 1e-12));
                if (evidence > 0)
                {
                    Assert.Equal(1, Math.Exp(found.LogEvidence) / evidence, 1e-9);
                    Assert.All(found.Chances.Zip(with), pair => Assert.Equal(pair.Second / evidence, pair.First, 1e-9));
                }
            },
            iter: 2000);

    /// <summary>Heckerman’s equation in whole numbers is the outside check; two causes of a network that is another one each time are asked for.</summary>
    [Fact]
    public void With_fourteen_present_signs_the_posteriors_are_those_of_exact_fractions() =>
        DyadicCase.Any(causes: 12, present: 14, absent: 3, ends: false).Sample(
            given =>
            {
                var (sum, scale) = given.Quickscore();
                var found = given.Network.Infer(given.Evidence);

                var lost = Math.Exp(found.LogEvidence - BigInteger.Log(sum) + (scale * Math.Log(2))) - 1;
                Assert.InRange(lost, -1e-10, 1e-10);
                foreach (var cause in AskedFor)
                {
                    var right = DyadicCase.Ratio(given.Quickscore(cause).Sum, sum);
                    Assert.InRange(found.Chances[cause] - right, -1e-12 * Math.Max(right, 1e-3), 1e-12 * Math.Max(right, 1e-3));
                }
            },
            iter: 1, threads: 1);

    /// <summary>Why the sum isn’t worked out as it stands: rare signs that no cause explains together.</summary>
    [Fact]
    public void The_equation_in_doubles_as_it_stands_loses_every_digit_and_ours_keeps_twelve()
    {
        var signs = Enumerable.Range(0, 14).Select(at => (true, 2, Enumerable.Range(0, 14).Select(cause => cause == at ? 700 : 0).ToArray())).ToArray();
        var given = new DyadicCase(10, [.. Enumerable.Repeat(3, 14)], signs);
        var (sum, scale) = given.Quickscore();
        var right = Math.Exp(BigInteger.Log(sum) - (scale * Math.Log(2)));

        Assert.True(Math.Abs((given.QuickscoreInDoubles() / right) - 1) > 1, "The plain sum was right.");
        Assert.Equal(1, Math.Exp(given.Network.Infer(given.Evidence).LogEvidence) / right, 1e-12);
    }

    [Fact]
    public void One_cause_and_one_sign_are_as_by_hand()
    {
        // Odds: prior 0.1 / 0.9; the sign is (1 − 0.95 · 0.2) / 0.05 = 16.2 times as likely with the cause as without.
        var found = new NoisyOr([0.1]).Infer([new Observed(true, 0.05, [(0, 0.8)])]);

        Assert.Equal(1.8, found.Chances[0] / (1 - found.Chances[0]), 1e-12);
        Assert.Equal(0.1 * 0.2 / ((0.1 * 0.2) + 0.9), new NoisyOr([0.1]).Infer([new Observed(false, 0.05, [(0, 0.8)])]).Chances[0], 1e-12);
    }

    [Fact]
    public void A_second_cause_that_explains_a_sign_takes_weight_from_the_first()
    {
        Observed shared = new(true, 0.01, [(0, 0.8), (1, 0.8)]), own = new(true, 0.01, [(1, 0.9)]);
        var network = new NoisyOr([0.05, 0.05]);

        Assert.True(network.Infer([shared, own]).Chances[0] < network.Infer([shared]).Chances[0] / 3);
    }

    [Fact]
    public void What_was_not_looked_for_changes_nothing()
    {
        var network = new NoisyOr([0.05, 0.2]);
        Observed seen = new(true, 0.02, [(0, 0.7)]), absent = new(false, 0.02, [(0, 0.7)]);

        Assert.Equal(0.05, network.Infer([]).Chances[0], 1e-15);
        Assert.True(network.Infer([seen]).Chances[0] > 0.5 && network.Infer([absent]).Chances[0] < 0.02);
        Assert.Equal(0.2, network.Infer([seen, absent]).Chances[1], 1e-15);
    }

    [Fact]
    public void Bounds_beyond_fourteen_hold_what_the_exact_sum_gives()
    {
        var (cases, apart, worst) = (0, 0.0, 0.0);
        Gen.Int[15, 17].SelectMany(present => DyadicCase.Any(causes: 20, present, absent: 3, ends: false)).Sample(
            given =>
            {
                var (exact, bounded) = (given.Network.Infer(given.Evidence), ManySigns.Infer(given.Network, given.Evidence));

                Assert.False(bounded.Exact);
                Assert.InRange(exact.LogEvidence, bounded.LogLow - 1e-9, bounded.LogHigh + 1e-9);
                for (var cause = 0; cause < exact.Chances.Count; cause++)
                {
                    Assert.InRange(exact.Chances[cause], bounded.Low[cause] - 1e-9, bounded.High[cause] + 1e-9);
                    Assert.InRange(bounded.Chances[cause], bounded.Low[cause] - 1e-9, bounded.High[cause] + 1e-9);
                }

                cases++;
                apart += exact.Chances.Zip(bounded.Chances, (one, other) => Math.Abs(one - other)).Average();
                worst = Math.Max(worst, exact.Chances.Zip(bounded.Chances, (one, other) => Math.Abs(one - other)).Max());
            },
            iter: 40, threads: 1, seed: "0000KB3WZ8b2");
        TestContext.Current.TestOutputHelper?.WriteLine($"{cases} networks; estimates are off by {apart / cases:0.0000} on average, {worst:0.000} at worst");
        Assert.InRange(apart / cases, 0, 0.03);
    }

    [Fact]
    public void A_chance_that_is_none_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new NoisyOr([double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NoisyOr([0.5]).Infer([new Observed(true, 1.5, [])]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NoisyOr([0.5]).Infer([new Observed(true, 0.5, [(1, 0.5)])]));
        Assert.Throws<ArgumentException>(() => new NoisyOr([0.5]).Infer([.. Enumerable.Repeat(new Observed(true, 0.5, []), 21)]));
    }
}
