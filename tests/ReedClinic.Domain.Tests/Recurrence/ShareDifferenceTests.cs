using CsCheck;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class ShareDifferenceTests
{
    // Newcombe, R. G. (1998), Statistics in Medicine 17, 873-890, Table II, method 10, 95 %.
    [Theory]
    [InlineData(56, 70, 48, 80, 0.0524, 0.3339)]
    [InlineData(9, 10, 3, 10, 0.1705, 0.8090)]
    [InlineData(6, 7, 2, 7, 0.0582, 0.8062)]
    [InlineData(5, 56, 0, 29, -0.0381, 0.1926)]
    [InlineData(0, 10, 0, 20, -0.1611, 0.2775)]
    public void The_interval_is_that_of_the_published_table(int found, int looked, int foundBefore, int lookedBefore, double low, double high)
    {
        var difference = ShareDifference.Of(new WorthCount(found, looked), new WorthCount(foundBefore, lookedBefore))!.Value;

        Assert.Equal(((double)found / looked) - ((double)foundBefore / lookedBefore), difference.Middle, 12);
        Assert.Equal(low, difference.Low, 4);
        Assert.Equal(high, difference.High, 4);
    }

    [Fact]
    public void Turned_round_it_is_its_own_mirror_and_stays_between_minus_one_and_one() =>
        Gen.Select(Gen.Int[0, 20], Gen.Int[0, 20], Gen.Int[0, 20], Gen.Int[0, 20]).Where((a, b, c, d) => a + b > 0 && c + d > 0).Sample((a, b, c, d) =>
        {
            var (one, other) = (new WorthCount(a, a + b), new WorthCount(c, c + d));
            var (there, back) = (ShareDifference.Of(one, other)!.Value, ShareDifference.Of(other, one)!.Value);
            Assert.Equal(there.Low, -back.High, 12);
            Assert.Equal(there.High, -back.Low, 12);
            Assert.InRange(there.Low, -1 - 1e-12, there.Middle + 1e-12);
            Assert.InRange(there.High, there.Middle - 1e-12, 1 + 1e-12);
        });

    [Fact]
    public void Where_one_side_was_not_looked_at_there_is_no_difference()
    {
        Assert.Null(ShareDifference.Of(new WorthCount(0, 0), new WorthCount(1, 3)));
        Assert.Null(ShareDifference.Of(new WorthCount(1, 3), new WorthCount(0, 0)));
    }
}
