using CsCheck;
using ReedClinic.Domain.Effects;

namespace ReedClinic.Domain.Tests.Effects;

public sealed class PooledRegressionTests
{
    /// <summary>Students are eliminated one at a time; solving for everything at once has to give the same.</summary>
    [Fact]
    public void Eliminating_students_gives_what_solving_for_everything_at_once_gives() =>
        Gen.Int[1, 1_000_000].Sample(
            seed =>
            {
                var random = new Random(seed);
                var (students, kinds) = (random.Next(1, 5), random.Next(1, 4));
                List<RegressionRow> rows =
                [
                    .. Enumerable.Range(0, random.Next(1, 25)).Select(_ =>
                    {
                        var done = Enumerable.Range(0, kinds).Select(_ => (double)random.Next(0, 3)).ToArray();
                        return new RegressionRow(done, random.Next(0, students), done, (random.NextDouble() * 60) - 30);
                    }),
                ];
                var prior = new RegressionPrior(
                    [.. Enumerable.Repeat(-5.0, kinds)], [.. Enumerable.Repeat(0.01, kinds)], [.. Enumerable.Repeat(Enumerable.Repeat(0.04, kinds).ToArray(), students)], 4, 12, 3);
                var (apart, together) = (PooledRegression.Fit(rows, prior), PooledRegression.Fit([.. rows.Select(row => Widened(row, students))], Widened(prior, students)));

                Same(together.Scale, apart.Scale);
                Same(together.Freedom, apart.Freedom);
                Same(together.LogEvidence, apart.LogEvidence);
                for (var kind = 0; kind < kinds; kind++)
                {
                    Same(together.Middle[kind], apart.Middle[kind]);
                    Same(together.Spread[kind][kind], apart.Spread[kind][kind]);
                }
            },
            iter: 200);

    // Both go round until they move by less than a millionth of what they say: so near they have to be.
    private static void Same(double expected, double found) => Assert.Equal(expected, found, 1e-6 * Math.Max(1, Math.Abs(expected)));

    /// <summary>The condition for the peak of the posterior, written down by itself: what the priors pull is what the residuals push.</summary>
    [Fact]
    public void Where_it_ends_the_slope_of_the_posterior_is_nought()
    {
        var random = new Random(1989);
        List<RegressionRow> rows = [.. Enumerable.Range(0, 40).Select(_ => Row(random, 20))];
        var fit = PooledRegression.Fit(rows, Alone);
        for (var kind = 0; kind < 2; kind++)
        {
            var push = rows.Sum(row =>
            {
                var off = row.Value - (row.Common[0] * fit.Middle[0]) - (row.Common[1] * fit.Middle[1]);
                return 5 * off * row.Common[kind] / ((4 * fit.Scale * fit.Scale) + (off * off));
            });
            Assert.Equal(0.0025 * fit.Middle[kind], push, 1e-5);
        }
    }

    [Fact]
    public void A_pitch_that_was_mistyped_by_a_tritone_moves_next_to_nothing()
    {
        var random = new Random(1990);
        List<RegressionRow> rows = [.. Enumerable.Range(0, 30).Select(_ => Row(random, 6))];
        List<RegressionRow> mistyped = [.. rows.Select((row, at) => at % 10 == 3 ? row with { Value = row.Value + 600 } : row)];
        double Moved(double tails) => Math.Abs(
            PooledRegression.Fit(mistyped, Alone with { Tails = tails }).Middle[1] - PooledRegression.Fit(rows, Alone with { Tails = tails }).Middle[1]);

        Assert.InRange(Moved(4), 0, 3);
        Assert.InRange(Moved(double.PositiveInfinity), 6, 1000);
    }

    [Fact]
    public void With_nothing_seen_the_prior_stands()
    {
        var fit = PooledRegression.Fit([], Alone with { Mean = [-7, 11] });

        Assert.Equal([-7.0, 11.0], fit.Middle);
        Assert.Equal(20, Math.Sqrt(fit.Spread[0][0]), 9);
        Assert.Equal(12, fit.Scale, 9);
    }

    private static RegressionPrior Alone { get; } = new([0, 0], [0.0025, 0.0025], [], 4, 12, 3);

    private static RegressionRow Row(Random random, double scatter)
    {
        double[] done = [random.Next(0, 2), 1];
        return new RegressionRow(done, -1, [], (-15 * done[0]) + (10 * done[1]) + (scatter * ((random.NextDouble() * 2) - 1)));
    }

    private static RegressionRow Widened(RegressionRow row, int students) => new(
        [.. row.Common, .. Enumerable.Range(0, students).SelectMany(student => row.Own.Select(value => student == row.Group ? value : 0))], -1, [], row.Value);

    private static RegressionPrior Widened(RegressionPrior prior, int students) => prior with
    {
        Mean = [.. prior.Mean, .. new double[students * prior.Mean.Length]],
        Precision = [.. prior.Precision, .. prior.OwnPrecision.SelectMany(precision => precision)],
        OwnPrecision = [],
    };
}
