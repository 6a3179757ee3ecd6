using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Diagnosis.Proposals;

/// <summary>The seven rules that outrank every table. Where one was published the text stands beside it; the rest is common practice.</summary>
public sealed class TradeRulesTests
{
    /// <summary>Player causes: Colwell, Hewitt &amp; Fonder, 5th ed., p. 226; instrument causes: Lewis, “Taming the Oboe”, The Instrumentalist, March 2010.</summary>
    [Fact]
    public void Player_instrument_wetness_and_leaks_are_looked_at_before_cane_is_touched()
    {
        var next = Cases.Next(Cases.With("tip-corners-thick", "starts-fuzzy", "soft-fails") with { Checks = default });

        Assert.Equal(["ready-puff", "seal-draw", "another-reed", "another-player"], next.Tests().Take(4));
        Assert.True(next.Proposals.ToList().FindLastIndex(one => one.Kind == ProposalKind.Look) < next.Proposals.ToList().FindIndex(one => one.IsCane()));
        Assert.Contains("thin-corners", next.Deeds());
        Assert.Empty(Cases.Next("tip-corners-thick", "starts-fuzzy", "soft-fails").Tests().Intersect(["ready-puff", "seal-draw"]));
    }

    [Theory]
    [InlineData("no-vacuum", "leaks")]
    [InlineData("dry", "dry")]
    [InlineData("stays-with-instrument", "instrument")]
    [InlineData("goes-with-player", "player")]
    public void While_one_of_them_is_to_blame_no_cane_is_proposed(string sign, string word)
    {
        var next = Cases.Next("tip-corners-thick", "starts-fuzzy", "soft-fails", sign);

        Assert.DoesNotContain(next.Proposals, one => one.IsCane());
        Assert.Contains(word, next.WhyNot("thin-corners"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_can_be_undone_comes_before_cane_and_the_clip_last_over_all_cases()
    {
        var random = new Random(1861);
        foreach (var cause in Cases.Shipped.Causes)
        {
            var now = Cases.Now(Cases.Spoilt(cause, random));
            var next = Cases.Next(now);
            var kinds = next.Proposals.Where(one => one.Kind is not ProposalKind.Retire).Select(one => one.Kind).ToList();

            Assert.Equal(kinds.OrderBy(kind => kind), kinds);
            var cane = next.Proposals.Where(one => one.IsCane()).Select(one => one.Adjustment!.Value.Value is "clip" or "clip-hair" or "square-tip").ToList();
            Assert.True(now.CrowIsLow || cane.SequenceEqual(cane.Order()), cause.Id.Value);
        }
    }

    /// <summary>Published: oboeinsight.com, adjustments and fixes.</summary>
    [Fact]
    public void One_change_on_all_four_quadrants_a_few_strokes_then_a_test()
    {
        var work = Cases.Next("tip-corners-thick", "starts-fuzzy", "soft-fails").Of("thin-corners")!;

        Assert.Equal(new Place(Zone.TipCorners), work.Place);
        Assert.Equal("1 to 3 strokes a corner at most, the same on both sides of both blades; then try it again.", work.Words.HowLittle);
    }

    [Fact]
    public void After_cane_was_taken_a_test_comes_before_more()
    {
        var next = Cases.Next(Cases.With("tip-corners-thick", "starts-fuzzy") with { Untested = true, Work = [new WorkDone(Cases.Kind("thin-corners"), new Place(Zone.TipCorners), 1)] });

        Assert.Equal("crow-soft", next.Tests().First());
        Assert.DoesNotContain(next.Proposals, one => one.IsCane());
    }

    /// <summary>Published in spirit: woodwind.org forum, message 12801.</summary>
    [Fact]
    public void Of_a_measured_unevenness_only_the_thick_part_is_worked()
    {
        var thick = new Place(Zone.Windows, Blades.Upper, Sides.Left);
        var now = Cases.With("left-right-uneven", "windows-uneven", "tone-split") with { ThickParts = [new ThickPart(new SignId("windows-uneven"), thick)] };
        var work = Cases.Next(now).Of("even-up")!;

        Assert.Equal(thick, work.Place);
        Assert.Contains("windows, upper blade, left", work.Words.Do, StringComparison.Ordinal);
        Assert.Contains("from the thick part only", work.Words.HowLittle, StringComparison.Ordinal);
    }

    /// <summary>Published for the heart: oboeinsight.com, reed definitions.</summary>
    [Fact]
    public void Cane_can_be_taken_and_not_put_back_and_each_proposal_of_it_says_so()
    {
        var cane = Cases.Shipped.Causes.SelectMany(cause => Cases.Next([.. Cases.Own(cause).Select(sign => sign.Value)]).Proposals).Where(one => one.IsCane() && one.Adjustment!.Value.Value != "change-staple").ToList();

        Assert.NotEmpty(cane);
        Assert.All(cane, one => Assert.Contains("Cane can’t be put back.", one.Words.MayCost, StringComparison.Ordinal));
        var gone = Cases.Shipped.Defaults.Next("gone-cost").Value;
        Assert.All(cane, one => Assert.True(one.Harm >= gone));
    }

    /// <summary>Response first: “Principles of Reedmaking”, Bandworld magazine; the order of the rest is common practice.</summary>
    [Fact]
    public void Response_counts_before_pitch_and_steadiness_and_these_before_tone()
    {
        double Weight(string scale) => Cases.Shipped.Defaults.Next(scale + "-weight").Value;

        Assert.True(Weight("response") > Weight("pitch"));
        Assert.True(Weight("pitch") > Weight("tone"));
        Assert.True(Weight("steadiness") > Weight("tone"));
        var next = Cases.Next("sounds-bright", "tip-corners-thick", "starts-fuzzy", "soft-fails", "step-abrupt");
        Assert.True(next.Of("thin-corners")!.Value > next.Of("take-heart-sides")!.Value);
    }

    /// <summary>Published: Colwell, Hewitt &amp; Fonder, 5th ed., oboe chapter.</summary>
    [Fact]
    public void A_new_reed_that_is_merely_hard_is_waited_for()
    {
        var now = Cases.With("feels-hard", "tires-lip", "soft-fails");
        var fresh = Cases.Next(now with { MinutesPlayed = 20 });

        Assert.DoesNotContain(fresh.Proposals, one => one.IsCane());
        Assert.Contains("wait", fresh.Deeds());
        Assert.Contains("play it in", fresh.WhyNot("thin-corners"), StringComparison.Ordinal);
        Assert.Contains(Cases.Next(now with { MinutesPlayed = 300 }).Proposals, one => one.IsCane());
        Assert.Contains(Cases.Next(Cases.With("feels-hard", "soft-fails", "tip-thick") with { MinutesPlayed = 20 }).Proposals, one => one.IsCane()); // not merely hard
    }

    /// <summary>Published: oboeinsight.com, adjustments and fixes.</summary>
    [Fact]
    public void A_reed_that_is_easy_and_sharp_is_opened_and_not_scraped_and_no_rescue_is_promised()
    {
        var next = Cases.Next("whole-sharp", "feels-easy", "crow-high", "sounds-thin", "swell-sags");

        Assert.DoesNotContain(next.Proposals, one => one.IsCane());
        Assert.NotNull(next.WhyNot("thin-tip-sides"));
        Assert.Contains(next.Remarks, remark => remark.Contains("no rescue", StringComparison.Ordinal));
        Assert.Contains("draw-air", next.Deeds());
    }
}
