using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed class BatchLikenessTests
{
    // Kish, L. (1965), Survey Sampling, chapter 5: clusters of b with intraclass correlation roh are worth n / (1 + (b - 1) roh).
    [Fact]
    public void Alike_reeds_are_worth_as_many_fewer_as_the_design_effect_says()
    {
        var worth = new BatchLikeness(0.25, 0.5).Worth([new BatchCount(3, 5), new BatchCount(1, 5)]);

        Assert.Equal(5, worth.Looked, 12);
        Assert.Equal(2, worth.Found, 12);
    }

    [Fact]
    public void Reeds_of_batches_of_one_are_worth_themselves_and_nothing_looked_at_is_worth_nothing()
    {
        Assert.Equal(new WorthCount(1, 2), BatchLikeness.Default.Worth([new BatchCount(1, 1), new BatchCount(0, 1)]));
        Assert.Equal(new WorthCount(0, 0), BatchLikeness.Default.Worth([]));
        Assert.Equal(new WorthCount(0, 0), BatchLikeness.Default.Worth([new BatchCount(0, 0)]));
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.4)]
    public void It_is_learned_from_many_students_whose_own_shares_differ(double likeness)
    {
        var random = new Random(1965);
        var learned = BatchLikeness.Learn(Enumerable.Range(0, 800).Select(_ => Drawn.Batches(random, 0.1 + (0.8 * random.NextDouble()), likeness)));

        Assert.Equal(likeness, learned.Usual, 0.04);
        Assert.InRange(learned.Most, 0.5, 0.5);
    }

    [Fact]
    public void With_nothing_to_learn_from_the_default_stands()
    {
        Assert.Equal(BatchLikeness.Default, BatchLikeness.Learn([]));
        Assert.Equal(BatchLikeness.Default, BatchLikeness.Learn([[new BatchCount(2, 3)], [], [new BatchCount(0, 0), new BatchCount(1, 1)]]));
    }

    /// <summary>Counted as if each reed were made by itself the interval claims too much; counted by batches it keeps its promise. Seeded.</summary>
    [Fact]
    public void Counted_by_batches_the_interval_holds_the_students_own_share()
    {
        var random = new Random(1966);
        var (byReeds, byBatches, rounds) = (0, 0, 4000);
        for (var round = 0; round < rounds; round++)
        {
            var share = 0.1 + (0.8 * random.NextDouble());
            List<BatchCount> batches = [.. Enumerable.Range(0, 5).Select(_ => Drawn.Batch(random, 4, share, BatchLikeness.Default.Usual))];
            var worth = BatchLikeness.Default.Worth(batches);
            var (plain, held) = (
                WilsonInterval.Of(batches.Sum(batch => batch.Found), batches.Sum(batch => batch.Looked)), WilsonInterval.Of(worth.Found, worth.Looked));
            byReeds += share >= plain.Low && share <= plain.High ? 1 : 0;
            byBatches += share >= held.Low && share <= held.High ? 1 : 0;
        }

        Drawn.Print($"held by {byReeds / (double)rounds:0.000} of intervals by reeds, {byBatches / (double)rounds:0.000} by batches");
        Assert.InRange(byReeds / (double)rounds, 0, 0.9);
        Assert.InRange(byBatches / (double)rounds, 0.93, 0.98);
    }

    [Theory]
    [InlineData(-0.1, 0.5)]
    [InlineData(0.5, 0.4)]
    [InlineData(0.5, 1)]
    [InlineData(double.NaN, 0.5)]
    [InlineData(0.2, double.NaN)]
    public void Impossible_likenesses_are_refused(double usual, double most) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new BatchLikeness(usual, most));
}
