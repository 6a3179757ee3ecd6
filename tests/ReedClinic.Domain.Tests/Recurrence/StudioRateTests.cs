using MathNet.Numerics.Distributions;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class StudioRateTests
{
    // Newcombe, R. G. (1998), Statistics in Medicine 17, 857-872, Table I, method 5 (exact): its ends are quantiles of beta
    // distributions, the lower of Beta(found, rest + 1), the upper of Beta(found + 1, rest).
    [Theory]
    [InlineData(81, 263, 0.2527, 0.3676)]
    [InlineData(15, 148, 0.0578, 0.1617)]
    [InlineData(1, 29, 0.0009, 0.1776)]
    public void The_ends_of_a_share_are_the_published_beta_quantiles(int found, int looked, double low, double high)
    {
        Assert.Equal(low, new StudioRate(found, looked - found + 1, 9).ShareOf(default).Low, 4);
        Assert.Equal(high, new StudioRate(found + 1, looked - found, 9).ShareOf(default).High, 4);
    }

    /// <summary>
    /// The identity of the incomplete beta function with binomial sums (any handbook, such as Abramowitz and Stegun 26.5.24): for whole
    /// numbers, the chance of a share above x is the chance of fewer than a successes in a + b − 1 trials.
    /// </summary>
    [Fact]
    public void The_probability_above_the_studio_is_the_binomial_sum_of_the_handbook()
    {
        var rate = new StudioRate(2, 3, 9);

        Assert.Equal(Binomial.CDF(0.4, 10, 5), rate.ProbabilityAbove(new WorthCount(4, 6)), 12);
    }

    [Fact]
    public void The_fit_finds_back_what_many_students_were_drawn_from()
    {
        var random = new Random(1956);
        var rate = StudioRate.Fit(Enumerable.Range(0, 2000).Select(_ => Student(random, 2, 6, 12)))!;

        Assert.Equal(0.25, rate.Mean, 0.02);
        Assert.Equal(8, rate.A + rate.B, 1.5);
        Assert.Equal(2000, rate.Students);
    }

    [Fact]
    public void Grouping_students_with_the_same_count_changes_nothing()
    {
        var random = new Random(1957);
        var students = Enumerable.Range(0, 60).Select(_ => Student(random, 2, 2, 5)).ToList();

        Assert.Equal(
            StudioRate.Fit(students)!.Mean,
            StudioRate.Fit(students.GroupBy(one => one.Count).Select(group => new StudentsWith(group.Key, group.Count())))!.Mean,
            9);
    }

    /// <summary>Of students of whom “80 to 95 %” was said, as many really lie above. Seeded.</summary>
    [Fact]
    public void Of_what_is_called_likely_as_much_is_true()
    {
        var random = new Random(1958);
        List<(double Said, bool True)> all = [];
        for (var studio = 0; studio < Drawn.Rounds(150); studio++)
        {
            var (a, b) = (0.5 + (3 * random.NextDouble()), 0.5 + (5 * random.NextDouble()));
            var rate = StudioRate.Fit(Enumerable.Range(0, 25).Select(_ => Student(random, a, b, random.Next(3, 15))))!;
            for (var student = 0; student < 20; student++)
            {
                var own = Beta.Sample(random, a, b);
                var looked = random.Next(1, 15);
                all.Add((rate.ProbabilityAbove(new WorthCount(Binomial.Sample(random, own, looked), looked)), own > a / (a + b)));
            }
        }

        foreach (var (low, high) in (IEnumerable<(double, double)>)[(0, 0.2), (0.2, 0.4), (0.4, 0.6), (0.6, 0.8), (0.8, 0.95), (0.95, 1.01)])
        {
            var these = all.Where(one => one.Said >= low && one.Said < high).ToList();
            var (said, came) = (these.Average(one => one.Said), these.Average(one => one.True ? 1.0 : 0));
            Drawn.Print($"{low} to {high}: {these.Count} students, said {said:0.000}, true {came:0.000}");
            Assert.Equal(said, came, 0.06);
        }
    }

    [Fact]
    public void With_one_student_or_with_nobody_looked_at_there_is_nothing_to_compare_with()
    {
        Assert.Null(StudioRate.Fit([]));
        Assert.Null(StudioRate.Fit([new StudentsWith(new WorthCount(2, 3))]));
        Assert.Null(StudioRate.Fit([new StudentsWith(new WorthCount(0, 0), 50)]));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    public void A_studio_in_which_nobody_or_everybody_has_it_gives_numbers_all_the_same(double found)
    {
        var rate = StudioRate.Fit([new StudentsWith(new WorthCount(found, 4), 1000)])!;

        Assert.InRange(rate.Mean, found == 0 ? 0 : 0.99, found == 0 ? 0.01 : 1);
        Assert.All(
            (WorthCount[])[new(0, 0), new(0, 12), new(12, 12), new(1, 2)], count => Assert.InRange(rate.ProbabilityAbove(count), 0, 1));
    }

    private static StudentsWith Student(Random random, double a, double b, int looked) =>
        new(new WorthCount(Binomial.Sample(random, Beta.Sample(random, a, b), looked), looked));
}
