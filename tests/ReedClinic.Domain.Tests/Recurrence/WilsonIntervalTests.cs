using CsCheck;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class WilsonIntervalTests
{
    // Newcombe, R. G. (1998), Statistics in Medicine 17, 857-872, Table I, method 3 (Wilson score, no continuity
    // correction), 95 %.
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void The_interval_is_that_of_the_published_table(int found, int looked, double low, double high)
    {
        var interval = WilsonInterval.Of(found, looked);

        Assert.Equal(low, interval.Low, 4);
        Assert.Equal(high, interval.High, 4);
    }

    [Fact]
    public void Its_ends_are_where_the_score_test_just_fails_to_reject() =>
        Gen.Select(Gen.Int[1, 200], Gen.Double[0, 1]).Sample(
            (looked, part) =>
            {
                var found = (int)Math.Round(part * looked);
                var interval = WilsonInterval.Of(found, looked);

                // The defining equation, independent of the closed form: (p - q)^2 = z^2 q (1 - q) / n at both ends q,
                // with z = 1.959964 (the 97.5 % point of the normal distribution, any table).
                foreach (var end in new[] { interval.Low, interval.High }.Where(end => end is > 0 and < 1))
                {
                    var share = (double)found / looked;
                    Assert.Equal(
                        (share - end) * (share - end), 1.959964 * 1.959964 * end * (1 - end) / looked, 6);
                }

                Assert.InRange((double)found / looked, interval.Low, interval.High);
                Assert.InRange(interval.Low, 0, 1);
                Assert.InRange(interval.High, 0, 1);
            });

    [Fact]
    public void What_is_not_there_mirrors_what_is() =>
        Gen.Select(Gen.Int[0, 60], Gen.Int[0, 60]).Where((found, not) => found + not > 0).Sample((found, not) =>
        {
            var there = WilsonInterval.Of(found, found + not);
            var missing = WilsonInterval.Of(not, found + not);
            Assert.Equal(there.Low, 1 - missing.High, 12);
            Assert.Equal(there.High, 1 - missing.Low, 12);
        });

    [Fact]
    public void Nothing_looked_at_says_nothing_at_all() =>
        Assert.Equal(new WilsonInterval(0, 1), WilsonInterval.Of(0, 0));

    [Fact]
    public void All_or_none_reach_the_end_exactly()
    {
        Assert.Equal(0, WilsonInterval.Of(0, 3).Low);
        Assert.Equal(1, WilsonInterval.Of(3, 3).High);
    }

    [Theory]
    [InlineData(-1, 3, 0.95)]
    [InlineData(4, 3, 0.95)]
    [InlineData(1, 3, 0)]
    [InlineData(1, 3, 1)]
    [InlineData(1, 3, double.NaN)]
    public void Impossible_counts_and_confidences_are_refused(int found, int looked, double confidence) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => WilsonInterval.Of(found, looked, confidence));
}
