using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Effects;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Tests.Effects;

public sealed class EffectPriorsTests
{
    // A uniform bar held at one end: f = (1.8751² / 2π)·√(E / 12ρ)·t / L² (Euler and Bernoulli’s bar; any handbook of vibrations, such
    // as R. D. Blevins, Formulas for Natural Frequency and Mode Shape; the root from memory). Only 1 / L² is left in a ratio.
    [Theory]
    [InlineData(23, 0.1)]
    [InlineData(23, 0.5)]
    [InlineData(24, 0.3)]
    [InlineData(25, 1.0)]
    public void The_bound_of_a_clip_is_that_of_a_bar_held_at_one_end(double length, double clipped)
    {
        double Frequency(double metres) => 1.8751 * 1.8751 / (2 * Math.PI) * Math.Sqrt(6e9 / (12 * 500)) * 0.0003 / (metres * metres);

        Assert.Equal(
            1200 * Math.Log2(Frequency((length - clipped) / 1000) / Frequency(length / 1000)), EffectPriors.ClipBound(clipped, length), 9);
    }

    // Worked by hand from the same formula, to a tenth of a cent.
    [Theory]
    [InlineData(23, 0.1, 15.1)]
    [InlineData(23, 0.5, 76.1)]
    [InlineData(24, 0.2, 29.0)]
    [InlineData(25, 1.0, 141.3)]
    public void The_bound_in_cents(double length, double clipped, double cents) =>
        Assert.Equal(cents, EffectPriors.ClipBound(clipped, length), 0.05);

    [Theory]
    [InlineData(-0.1)]
    [InlineData(23)]
    [InlineData(double.NaN)]
    public void A_clip_of_more_than_there_is_has_no_bound(double clipped) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EffectPriors.ClipBound(clipped));

    [Fact]
    public void Every_prior_has_the_direction_of_the_catalogue_and_its_mark()
    {
        foreach (var entry in Catalogue.Shipped.Adjustments)
        {
            var (range, prior) = (entry.Effects[EffectScale.Pitch], EffectPriors.Cents(Catalogue.Shipped, entry.Id));
            Assert.Equal(Math.Sign(range.Value.Low + range.Value.High), Math.Sign(prior.Middle));
            Assert.True(prior.Spread > 0);
            if (!entry.Id.Value.StartsWith("clip", StringComparison.Ordinal))
            {
                Assert.Equal(range.Mark, prior.Mark);
            }
        }
    }

    [Fact]
    public void A_clip_is_thought_to_do_between_nothing_and_its_bound()
    {
        var prior = EffectPriors.Cents(Catalogue.Shipped, new("clip"));

        Assert.Equal(0, prior.Middle - prior.Spread, 9);
        Assert.Equal(EffectPriors.ClipBound(0.4), prior.Middle + prior.Spread, 9);
        Assert.Equal(Evidence.Calculated, prior.Mark.Evidence);
    }

    [Fact]
    public void Of_what_the_catalogue_does_not_know_nothing_is_thought_and_widely()
    {
        var prior = EffectPriors.Cents(Catalogue.Shipped, AdjustmentKindId.SomethingElse);

        Assert.Equal(0, prior.Middle);
        Assert.Equal(30, prior.Spread);
    }
}
