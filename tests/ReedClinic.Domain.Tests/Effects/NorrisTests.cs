using ReedClinic.Domain.Effects;

namespace ReedClinic.Domain.Tests.Effects;

/// <summary>
/// NIST/ITL Statistical Reference Datasets, Norris.dat (linear least squares, observed data of the calibration of ozone monitors):
/// www.itl.nist.gov/div898/strd/lls/data/Norris.shtml. Data and certified values as that file has them.
/// </summary>
public sealed class NorrisTests
{
    private static readonly double[] Y =
    [
        0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
        557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
    ];

    private static readonly double[] X =
    [
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6,
        556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
    ];

    [Fact]
    public void With_a_flat_prior_and_a_normal_scatter_the_certified_values_come_out_to_nine_digits_and_more()
    {
        var fit = PooledRegression.Fit(
            [.. X.Zip(Y, (x, y) => new RegressionRow([1, x], -1, [], y))],
            new RegressionPrior([0, 0], [0, 0], [], double.PositiveInfinity, 1, 0));

        Certified(-0.262323073774029, fit.Middle[0]);
        Certified(1.00211681802045, fit.Middle[1]);
        Certified(0.232818234301152, Math.Sqrt(fit.Spread[0][0]));
        Certified(0.000429796848199937, Math.Sqrt(fit.Spread[1][1]));
        Certified(0.884796396144373, fit.Scale);
        Certified(26.6173985294224, fit.Scale * fit.Scale * fit.Freedom);
        Assert.Equal(34, fit.Freedom, 9);
    }

    private static void Certified(double value, double computed) => Assert.InRange(computed / value, 1 - 5e-11, 1 + 5e-11);
}
