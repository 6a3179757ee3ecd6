using CsCheck;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class FalseDiscoveryTests
{
    // Benjamini, Y. and Hochberg, Y. (1995), J. R. Statist. Soc. B 57, 289-300, the example of section 4: 15 comparisons, of which the
    // procedure rejects 4 at 0.05; the values as they are printed there.
    private static readonly double[] Example =
        [0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240, 0.4262, 0.5719, 0.6528, 0.7590, 1.0000];

    [Fact]
    public void Of_the_published_fifteen_four_are_claimed()
    {
        Assert.Equal(4, FalseDiscovery.Adjust(Example).Count(value => value <= FalseDiscovery.Allowed));
        Assert.Equal(9, FalseDiscovery.Adjust(Example).Count(value => value <= 0.1));
        Assert.Equal([0.0015, 0.0030, 0.0095, 0.035625], FalseDiscovery.Adjust(Example).Take(4).Select(value => Math.Round(value, 10)));
    }

    [Fact]
    public void The_order_in_which_they_come_changes_nothing() =>
        Gen.Shuffle(Example).Sample(shuffled =>
        {
            var inOrder = Example.Zip(FalseDiscovery.Adjust(Example)).ToDictionary();
            Assert.Equal(shuffled.Select(value => inOrder[value]), FalseDiscovery.Adjust(shuffled));
        });

    /// <summary>The definition of the step-up procedure, independent of adjusted values: the largest rank whose value is below its line, and all before it.</summary>
    [Fact]
    public void What_is_claimed_is_what_the_step_up_procedure_rejects() =>
        Gen.Select(Gen.Double[0, 1].Select(value => value * value * value).Array[1, 30], Gen.Double[0.01, 0.3]).Sample((values, rate) =>
        {
            var sorted = values.Order().ToList();
            var rejected = Enumerable.Range(1, sorted.Count).LastOrDefault(rank => sorted[rank - 1] <= rate * rank / sorted.Count);
            Assert.Equal(rejected, FalseDiscovery.Adjust(values).Count(value => value <= rate));
        });

    [Fact]
    public void Nothing_asked_gives_nothing_and_nonsense_is_refused()
    {
        Assert.Empty(FalseDiscovery.Adjust([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => FalseDiscovery.Adjust([0.2, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => FalseDiscovery.Adjust([1.1]));
    }
}
