using System.Globalization;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class BatchTrendTests
{
    // R. A. Fisher, The Design of Experiments (1935), chapter II: eight cups, four of each kind. Three of four rightly told: 17/70 or
    // better; all four: 1/70. It is the distribution of the counts of two batches of reeds that aren’t alike, once their total is known.
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.8)]
    public void For_two_batches_that_are_not_alike_the_chances_are_those_of_Fishers_tea_tasting(double share)
    {
        var cups = new CountsOverBatches([4, 4]);
        var ways = Enumerable.Range(0, 5).Select(late => cups.Chance(4, late, share, 0)).ToList();

        Assert.Equal(17 / 70.0, (ways[3] + ways[4]) / ways.Sum(), 12);
        Assert.Equal(1 / 70.0, ways[4] / ways.Sum(), 12);
    }

    [Fact]
    public void Two_reeds_of_one_batch_are_as_alike_as_was_said()
    {
        var chances = BetaBinomial.Chances(2, 0.4, 0.3);

        Assert.Equal(1, chances.Sum(), 12);
        Assert.Equal(0.4, chances[2] + (chances[1] / 2), 12);
        Assert.Equal((0.3 * 0.4 * 0.6) + (0.4 * 0.4), chances[2], 12);
    }

    [Theory]
    [InlineData("6/6 6/6 0/6", TrendKind.Gone)]
    [InlineData("3/3 3/3 0/3 0/3", TrendKind.Gone)]
    [InlineData("6/6 6/6 5/6 1/6 1/6", TrendKind.Fading)]
    [InlineData("0/4 0/4 4/4 4/4", TrendKind.New)]
    [InlineData("1/6 1/6 5/6 6/6 6/6", TrendKind.Growing)]
    [InlineData("3/4 4/4 2/3 4/4", TrendKind.Persisting)]
    [InlineData("3/3 0/3", TrendKind.Unclear)]
    [InlineData("0/3 3/3", TrendKind.Unclear)]
    [InlineData("0/3 0/5 0/2", TrendKind.NeverSeen)]
    [InlineData("3/3", TrendKind.TooLittle)]
    [InlineData("0/0 3/3 0/0", TrendKind.TooLittle)]
    [InlineData("0/0", TrendKind.TooLittle)]
    [InlineData("", TrendKind.TooLittle)]
    public void What_has_become_of_it_is_told_by_the_batches_in_which_somebody_looked(string batches, TrendKind kind) =>
        Assert.Equal(kind, Trend(batches).Kind());

    [Fact]
    public void Batches_in_which_nobody_looked_change_nothing() =>
        Assert.Equal(Trend("4/4 4/4 0/4").PValue, Trend("4/4 0/0 4/4 0/0 0/0 0/4 0/0").PValue);

    [Fact]
    public void What_looked_sure_alone_is_not_claimed_among_many() =>
        Assert.Equal(TrendKind.Unclear, Trend("6/6 6/6 0/6").Kind(adjusted: 0.3));

    [Fact]
    public void Turned_round_in_time_a_change_is_as_sure()
    {
        var (there, back) = (Trend("5/6 4/4 1/5 0/6"), Trend("0/6 1/5 4/4 5/6"));

        Assert.Equal(there.PValue!.Value, back.PValue!.Value, 9);
        Assert.True(there.IsDownward);
        Assert.False(back.IsDownward);
    }

    /// <summary>Nothing changes: two to eight batches of one to twelve reeds, shares from rare to nearly always, reeds of a batch alike to different degrees. Seeded.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    [InlineData(0.3)]
    [InlineData(0.5)]
    public void Where_nothing_changes_a_change_is_claimed_in_at_most_five_of_a_hundred(double likeness)
    {
        var random = new Random(1954 + (int)(likeness * 100));
        double[] shares = [0.1, 0.3, 0.5, 0.7, 0.9];
        var rounds = Drawn.Rounds(300);
        var claims = Enumerable.Range(0, rounds).Count(round => Claims(Drawn.Batches(random, shares[round % shares.Length], likeness)));
        Drawn.Print($"likeness {likeness}: {claims} of {rounds} claimed");

        Assert.InRange(claims / (double)rounds, 0, BatchTrend.FalseAlarms);
    }

    /// <summary>The same without drawing: the chance of a claim, summed over every outcome of small rows of batches.</summary>
    [Theory]
    [InlineData("3 3")]
    [InlineData("2 5 3")]
    [InlineData("3 3 3 3")]
    [InlineData("1 4 2 3")]
    public void Summed_over_every_outcome_the_chance_of_a_false_claim_stays_within_five_of_a_hundred(string row)
    {
        int[] sizes = [.. row.Split(' ').Select(Number)];
        var outcomes = sizes.Aggregate(
            (IEnumerable<int[]>)[[]], (some, size) => some.SelectMany(_ => Enumerable.Range(0, size + 1), (before, found) => (int[])[.. before, found])).ToList();
        var claimed = outcomes.Where(found => Claims(found.Zip(sizes, (one, size) => new BatchCount(one, size)))).ToList();

        foreach (var (share, likeness) in from share in (double[])[0.07, 0.22, 0.5, 0.66, 0.88] from likeness in (double[])[0, 0.2, 0.4, 0.5] select (share, likeness))
        {
            var chances = sizes.Select(size => BetaBinomial.Chances(size, share, likeness)).ToList();
            Assert.InRange(claimed.Sum(found => found.Select((one, at) => chances[at][one]).Aggregate(1.0, (product, chance) => product * chance)), 0, BatchTrend.FalseAlarms);
        }
    }

    /// <summary>A test that never claims anything holds its promise too: what really goes has to be seen.</summary>
    [Fact]
    public void What_really_goes_is_seen_to_go()
    {
        var random = new Random(1955);
        var seen = Enumerable.Range(0, 60).Count(_ => Claims(
        [
            .. Enumerable.Range(0, 4).Select(_ => Drawn.Batch(random, 5, 0.9, 0.2)),
            .. Enumerable.Range(0, 2).Select(_ => Drawn.Batch(random, 5, 0.05, 0.2)),
        ]));
        Drawn.Print($"{seen} of 60 seen to go");

        Assert.InRange(seen, 40, 60);
    }

    private static bool Claims(IEnumerable<BatchCount> batches) =>
        BatchTrend.Of(batches, BatchLikeness.Default).Kind() is TrendKind.Gone or TrendKind.Fading or TrendKind.New or TrendKind.Growing;

    private static BatchTrend Trend(string batches) => BatchTrend.Of(
        batches.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(batch => batch.Split('/')).Select(parts => new BatchCount(Number(parts[0]), Number(parts[1]))),
        BatchLikeness.Default);

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
