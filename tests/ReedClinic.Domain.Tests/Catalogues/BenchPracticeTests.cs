using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Tests.Catalogues;

/// <summary>What practice at the bench knows better than the tables of faults and adjustments. All of it is common practice, without a source.</summary>
public sealed class BenchPracticeTests
{
    private static readonly Catalogue Shipped = Catalogue.Shipped;

    [Fact]
    public void A_clip_is_held_back_by_the_latest_crow_and_not_by_how_the_reed_arrived()
    {
        var clip = Adjustment("clip-hair");

        Assert.True(clip.IsHeldBack(Now("crow-high", "whole-sharp")));
        Assert.False(clip.IsHeldBack(Now("whole-sharp"))); // it came in sharp, and its crow has been brought down since
    }

    [Fact]
    public void A_low_crow_holds_scraping_back_unless_the_tip_is_thick_or_the_centre_closes_first()
    {
        Assert.True(Adjustment("open-windows").IsHeldBack(Now("crow-low")));
        Assert.False(Adjustment("thin-tip-sides").IsHeldBack(Now("crow-low", "tip-thick")));
        Assert.False(Adjustment("take-heart-sides").IsHeldBack(Now("crow-low", "centre-closes-first")));
        Assert.False(Adjustment("define-tip").IsHeldBack(Now("crow-low")));
    }

    [Fact]
    public void A_crow_may_fall_a_long_way_while_a_whole_thick_tip_comes_down()
    {
        Assert.Equal(new EffectRange(-2, -1), Effect("thin-whole-tip", EffectScale.Pitch));
        Assert.Contains("keep length in hand", Adjustment("thin-whole-tip").Caution, StringComparison.Ordinal);
    }

    [Fact]
    public void Effects_are_counted_for_a_pass_of_both_sides_and_both_blades() =>
        Assert.Contains("# pitch to stability: what one pass usually does (both sides, both blades)", ShippedFiles.Texts()["adjustments"], StringComparison.Ordinal);

    [Theory]
    [InlineData("thin-corners")]
    [InlineData("thin-tip-sides")]
    public void Thinning_only_corners_or_sides_of_the_tip_may_darken_and_steady(string id)
    {
        Assert.Equal(new EffectRange(-1, 0), Effect(id, EffectScale.Pitch));
        Assert.Equal(new EffectRange(-1, 1), Effect(id, EffectScale.Tone));
        Assert.Equal(new EffectRange(-1, 1), Effect(id, EffectScale.Steadiness));
        Assert.NotEqual(Effect("thin-whole-tip", EffectScale.Pitch), Effect(id, EffectScale.Pitch)); // the whole tip is another adjustment
    }

    [Fact]
    public void Setting_the_tip_off_can_add_resistance_and_cane_off_behind_the_heart_gives_depth()
    {
        Assert.Equal(new EffectRange(0, 1), Effect("define-tip", EffectScale.Effort));
        Assert.Equal(new EffectRange(-1, 1), Effect("free-heart-bottom", EffectScale.Effort));
        Assert.Equal(new EffectRange(-1, 1), Effect("free-heart-bottom", EffectScale.Steadiness));
        Assert.Equal(new EffectRange(1, 1), Effect("free-heart-bottom", EffectScale.Tone));
    }

    [Fact]
    public void A_thin_heart_is_helped_by_what_stands_around_it_and_never_touched()
    {
        var steps = Cause("heart-thin").Steps.Select(step => step.Value).ToList();

        Assert.Equal(["thin-tip-sides", "free-heart-bottom"], steps.Take(2));
        Assert.DoesNotContain("dust-heart", steps);
        Assert.Contains(new AdjustmentKindId("dust-heart"), Cause("heart-thin").NeverFirst);
    }

    [Theory]
    [InlineData("tip-thin")]
    [InlineData("tip-centre-thin")]
    public void A_tip_that_is_too_thin_forbids_its_centre_and_not_its_sides(string cause)
    {
        Assert.Contains(new AdjustmentKindId("thin-tip-centre"), Cause(cause).NeverFirst);
        Assert.DoesNotContain(new AdjustmentKindId("thin-tip-sides"), Cause(cause).NeverFirst);
        Assert.DoesNotContain(new AdjustmentKindId("thin-corners"), Cause(cause).NeverFirst);
    }

    [Fact]
    public void A_tip_evenly_thin_across_is_a_fault_of_its_own_and_is_worked_at_sides_and_corners_only()
    {
        Assert.Equal(["thin-tip-sides", "thin-corners"], Cause("tip-even-across").Steps.Select(step => step.Value));
        Assert.NotEqual(Cause("tip-corners-thick").Finding, Cause("tip-even-across").Finding);
    }

    [Fact]
    public void Blades_slipped_against_the_winding_are_not_set_back_first_and_those_slipped_too_far_are()
    {
        Assert.Equal("realign", Cause("slipped-too-far").Steps[0].Value);
        Assert.DoesNotContain(new AdjustmentKindId("realign"), Cause("slipped-against-winding").Steps);
        Assert.Contains(new AdjustmentKindId("realign"), Cause("slipped-against-winding").NeverFirst);
    }

    [Fact]
    public void A_peep_that_already_crows_points_to_a_tip_that_is_not_separate_enough() =>
        Assert.Equal(Belonging.Typical, Shipped.LinksOf(new SignId("peep-crows")).Single(link => link.Cause.Value == "tip-not-separate").Belonging);

    [Fact]
    public void Comparisons_are_signs_as_much_as_spots_are()
    {
        var shapes = Shipped.Signs.SelectMany(sign => sign.KnownBy).OfType<SignRoute.ByFinding>().Select(route => FindingCatalogue.Find(route.Finding)!.Shape).ToHashSet();

        Assert.Equal(Enum.GetValues<FindingShape>().Length, shapes.Count);
    }

    [Fact]
    public void A_lamp_sums_both_blades_and_a_dark_plaque_shows_one()
    {
        Assert.Contains("sum", Shipped.Find(new TestCardId("look-lamp"))!.How, StringComparison.Ordinal);
        Assert.Equal("look-plaque", Shipped.Find(new SignId("blades-uneven"))!.Test.Value);
    }

    [Theory]
    [InlineData(Aspect.Response)]
    [InlineData(Aspect.Intonation)]
    [InlineData(Aspect.Opening)]
    public void Response_intonation_and_opening_each_have_two_bad_ends_that_exclude_each_other(Aspect aspect)
    {
        var ends = Shipped.Signs.Where(sign => sign.KnownBy.OfType<SignRoute.ByComplaint>().Any(route => route.Aspect == aspect)).ToList();

        Assert.Equal(2, ends.Count);
        Assert.Equal(ends[1].Id, ends[0].Opposite);
    }

    [Fact]
    public void What_is_an_adjusters_own_choice_is_never_offered_unasked() =>
        Assert.All(["thin-tip-centre", "dust-heart", "thin-spine", "thin-rails", "narrow-edges", "retie"], id => Assert.True(Adjustment(id).ByChoice.Value));

    private static AdjustmentEntry Adjustment(string id) => Shipped.Find(new AdjustmentKindId(id))!;

    private static Cause Cause(string id) => Shipped.Find(new CauseId(id))!;

    private static EffectRange Effect(string id, EffectScale scale) => Adjustment(id).Effects[scale].Value;

    private static HashSet<SignId> Now(params string[] signs) => [.. signs.Select(sign => new SignId(sign))];
}
