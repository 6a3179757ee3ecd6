using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Bench;
using ReedClinic.Domain.Tests.Bench.Advice;

namespace ReedClinic.Domain.Tests.Diagnosis.Proposals;

/// <summary>What practice at the bench knows better than the tables, in what is proposed. All of it is common practice, without a source.</summary>
public sealed class BenchOverTablesTests
{
    private static CentsRange Cents(double cents) => new(new Cents(cents), new Cents(cents));

    [Fact]
    public void A_reed_that_arrived_sharp_is_clipped_once_its_latest_crow_is_low()
    {
        var scene = new AdviceScene();
        scene.Crow("C#");
        scene.Found("tip-thick");
        Assert.Contains("sharp", Of(scene).WhyNot("clip-hair") ?? "sharp", StringComparison.Ordinal);
        Assert.DoesNotContain(Of(scene).Proposals, one => one.Adjustment == Cases.Kind("clip-hair") || one.Adjustment == Cases.Kind("clip"));

        scene.Do(AdviceScene.TipSides);
        scene.Crow("B");

        Assert.Contains("clip-hair", Of(scene).Deeds());
    }

    [Fact]
    public void What_a_student_said_of_the_pitch_does_not_outlive_the_work_and_the_crow_after_it()
    {
        var scene = Marked(new ReedScales { Intonation = new ScaleMark(2) });
        Assert.Contains(Reading(scene).Causes.Counted, one => one is { Sign.Value: "whole-sharp", Present: true });

        scene.Do(AdviceScene.TipSides);
        scene.Crow("B");

        Assert.DoesNotContain(Reading(scene).Causes.Counted, one => one.Sign.Value == "whole-sharp");
    }

    [Fact]
    public void An_arrival_that_is_put_right_after_the_work_stays_the_arrival()
    {
        var scene = new AdviceScene();
        var crow = scene.Crow("C#");
        var effort = scene.Effort(4);
        scene.Do(AdviceScene.TipSides);
        scene.Crow("C");
        scene.Effort(2);
        var before = Told(scene);

        scene.Writer.Say(Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Writer.Value(SaidPitch.Read("C# +10", Tuning.Standard)))), supersedes: crow);
        scene.Writer.Say(Writer.Test(TestKind.Effort, 3), supersedes: effort);

        Assert.Equal(before, Told(scene));
        Assert.DoesNotContain("whole-sharp True", before);

        static string[] Told(AdviceScene scene) => [.. Reading(scene).Causes.Counted.Select(one => $"{one.Sign.Value} {one.Present}").Order(StringComparer.Ordinal)];
    }

    [Fact]
    public void A_low_reed_is_scraped_where_its_tip_is_thick_and_a_clip_can_follow()
    {
        var now = Cases.With("tip-thick", "starts-late", "tongue-thuds", "crow-low") with { Crow = Cents(-70), Floor = new LengthFloor(66, EvidenceMark.OwnDefault) };

        Assert.Contains("thin-tip-sides", Cases.Next(now with { Length = Long(71) }).Deeds());
        Assert.Contains("no length is left for the clip", Cases.Next(now with { Length = Long(66.1m) }).WhyNot("thin-tip-sides"), StringComparison.Ordinal);
        Assert.Contains("flat", Cases.Next(Cases.With("starts-late", "tongue-thuds", "feels-hard", "crow-low", "step-abrupt") with { Crow = Cents(-70) }).WhyNot("blend"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fall_of_more_than_a_semitone_is_ordinary_while_it_can_be_won_back_and_is_warned_of_when_not()
    {
        var now = Cases.With("tip-thick", "crow-low") with { Crow = Cents(-150), Floor = new LengthFloor(66, EvidenceMark.OwnDefault) };
        bool Warns(decimal length) => Cases.Next(now with { Length = Long(length) }).Remarks.Any(remark => remark.Contains("win back", StringComparison.Ordinal));

        Assert.False(Warns(71));
        Assert.True(Warns(66.5m));
    }

    [Fact]
    public void Where_resistance_has_gone_with_the_work_nothing_more_is_thinned()
    {
        var now = Cases.With("tip-corners-thick", "starts-fuzzy", "soft-fails", "feels-easy");

        Assert.Contains("blow against", Cases.Next(now with { Work = [Done("thin-corners", 1)] }).WhyNot("thin-corners"), StringComparison.Ordinal);
        Assert.DoesNotContain("blow against", Cases.Next(now).WhyNot("thin-corners") ?? "", StringComparison.Ordinal);
    }

    [Fact]
    public void Work_is_counted_by_passes_and_not_by_entries()
    {
        var once = Cases.With("tip-corners-thick", "starts-fuzzy", "soft-fails") with { Work = [Done("thin-corners", 1), Done("thin-corners", 1), Done("thin-tip-sides", 1)] };
        var twice = once with { Work = [Done("thin-corners", 1), Done("thin-corners", 2)] };

        Assert.Equal(1, once.PassesOf(Cases.Kind("thin-corners")));
        Assert.Equal(1, once.Passes);
        Assert.True(Cases.Next(once).Of("thin-corners")!.Gain > Cases.Next(twice).Of("thin-corners")!.Gain);
    }

    [Fact]
    public void Sides_and_corners_of_a_tip_may_darken_and_steady_so_they_are_no_harm_to_a_bright_reed()
    {
        var now = Cases.With("tip-corners-thick", "starts-fuzzy", "sounds-bright");
        var worth = new Worth(now, new ScaleStands(now));
        double Harm(string id) => worth.Of(Cases.Shipped.Find(Cases.Kind(id))!).Moves.Single(move => move.Scale == EffectScale.Tone).Harm;

        Assert.True(Harm("thin-corners") < Harm("thin-whole-tip"));
    }

    [Fact]
    public void Setting_the_tip_off_can_give_resistance_and_behind_the_heart_depth_and_steadiness()
    {
        var now = Cases.With("feels-easy", "swell-wild", "sounds-thin");
        var worth = new Worth(now, new ScaleStands(now));
        double Help(string id, EffectScale scale) => worth.Of(Cases.Shipped.Find(Cases.Kind(id))!).Moves.Single(move => move.Scale == scale).Help;

        Assert.True(Help("define-tip", EffectScale.Effort) > 0);
        Assert.True(Help("free-heart-bottom", EffectScale.Tone) > 0);
        Assert.True(Help("free-heart-bottom", EffectScale.Steadiness) > 0);
    }

    [Fact]
    public void A_thin_heart_becomes_thick_by_comparison_within_limits_and_is_never_touched()
    {
        var now = Cases.Now(Cases.Present("heart-thin"), Cases.Present("sounds-hollow"), Cases.Absent("crow-low"), Cases.Absent("stays-with-instrument"), Cases.Absent("goes-with-player"));
        var next = Cases.Next(now);
        var sides = next.Of("thin-tip-sides")!;

        Assert.Equal(Zone.HeartCentre, sides.ForTheSakeOf);
        Assert.Contains("so that the centre of the heart becomes thick by comparison", sides.Words.Do, StringComparison.Ordinal);
        Assert.Contains("Never the centre of the heart itself.", sides.Words.NotTouch);
        Assert.Contains("within limits", sides.Words.Expect, StringComparison.Ordinal);
        Assert.DoesNotContain(next.Deeds(), deed => deed is "dust-heart" or "take-heart-sides");
        Assert.Contains("limits", Cases.Next(now with { Work = [Done("thin-tip-sides", 1), Done("thin-tip-sides", 2)] }).WhyNot("thin-tip-sides"), StringComparison.Ordinal);
    }

    [Fact]
    public void Thick_by_comparison_can_be_wished_for_without_a_fault()
    {
        var now = Cases.Now(Cases.Absent("crow-low"), Cases.Present("sounds-bright"));

        Assert.Equal(Zone.HeartCentre, Cases.Next(now with { ByComparison = Zone.HeartCentre }).Of("thin-tip-sides")?.ForTheSakeOf);
        Assert.Null(Cases.Next(now).Of("thin-tip-sides"));
    }

    [Theory]
    [InlineData("tip-thin")]
    [InlineData("tip-centre-thin")]
    [InlineData("tip-even-across")]
    public void A_thin_tip_keeps_the_knife_from_its_centre_and_not_from_its_sides(string sign)
    {
        HeldBack? Bar(string id) => Bars.Of(Cases.With(sign), Cases.Shipped.Find(Cases.Kind(id))!);

        Assert.Contains("centre", Bar("thin-whole-tip")!.Reason, StringComparison.Ordinal);
        Assert.Null(Bar("thin-tip-sides"));
        Assert.Null(Bar("thin-corners"));
    }

    [Fact]
    public void A_tip_thin_right_across_is_worked_at_its_sides_and_corners_only()
    {
        var next = Cases.Next(Cases.Now(Cases.Present("tip-even-across"), Cases.Present("sounds-bright"), Cases.Present("no-cushion"), Cases.Absent("step-abrupt"), Cases.Absent("feels-easy"), Cases.Absent("tires-holding")));

        Assert.Equal(["thin-corners", "thin-tip-sides"], next.Deeds().Where(deed => deed!.StartsWith("thin", StringComparison.Ordinal)).Order());
    }

    [Fact]
    public void Blades_against_the_winding_are_not_set_back_and_those_that_slipped_too_far_are()
    {
        var far = Cases.Now(Cases.Present("slipped-too-far"), Cases.Present("sides-chatter"), Cases.Absent("slipped-against-winding"), Cases.Absent("overlap-creeps-back"));

        Assert.Equal("realign", Cases.Next(far).FirstDeed!.Adjustment!.Value.Value);
        Assert.Contains("creep back", Cases.Next(far with { AgainstWinding = true }).WhyNot("realign"), StringComparison.Ordinal);
        Assert.DoesNotContain("realign", Cases.Next("slipped-against-winding", "no-vacuum").Deeds());
    }

    [Fact]
    public void A_peep_that_crows_already_leads_to_setting_the_tip_off() =>
        Assert.Equal("define-tip", Cases.Next("peep-crows", "crow-octaves-at-once", "tip-not-separate", "crow-vague").Deeds().First());

    [Fact]
    public void A_comparison_says_where_it_is_thick_and_a_suspicion_counts_for_less()
    {
        var scene = new AdviceScene();
        scene.Say(Writer.Value(Finding.Of(
            new FindingKindId("left-right-uneven"), FindingCharacter.Fault, new Place(Zone.Windows, Blades.Lower, Sides.Left), FindingShape.Comparison,
            Relation.ThinnerThan, new Place(Zone.Windows, Blades.Lower, Sides.Right))));

        Assert.Equal(new Place(Zone.Windows, Blades.Lower, Sides.Right), Assert.Single(Reading(scene).ThickParts).Place);
        Sighting unsure = Cases.Present("bumps") with { Sure = false };
        Assert.True(Worth(Cases.Now(Cases.Present("bumps"))) > Worth(Cases.Now(unsure)));
        static double Worth(ReedNow now) => new Worth(now, new ScaleStands(now)).Of(Cases.Shipped.Find(Cases.Kind("smooth-bumps"))!).Hope;
    }

    [Fact]
    public void Which_blade_is_the_stronger_is_looked_for_on_a_dark_plaque()
    {
        var start = LessonStart.Of(Cases.Shipped, new CauseId("blades-uneven"))!;

        Assert.Equal("look-plaque", start.Test.Id.Value);
    }

    [Theory]
    [InlineData("opening-wide", "close-press", "open-squeeze")]
    [InlineData("opening-narrow", "open-squeeze", "close-press")]
    public void Each_bad_end_has_its_own_way_back(string sign, string right, string wrong)
    {
        var now = Cases.With(sign);
        var worth = new Worth(now, new ScaleStands(now));
        double Help(string id) => worth.Of(Cases.Shipped.Find(Cases.Kind(id))!).Moves.Single(move => move.Scale == EffectScale.Opening).Help;

        Assert.True(Help(right) > 0);
        Assert.Equal(0, Help(wrong));
    }

    [Fact]
    public void What_was_not_looked_for_is_neither_right_nor_wrong()
    {
        var now = Cases.With("starts-late");
        var stands = new ScaleStands(now);

        Assert.False(stands.IsKnown(EffectScale.Opening));
        Assert.Equal(0, stands.Right);
        Assert.Equal(0.5, new ScaleStands(Cases.Now(Cases.Present("starts-late"), Cases.Absent("opening-wide"))).Right);
    }

    [Fact]
    public void A_finding_that_has_gone_is_not_there_any_more()
    {
        var scene = new AdviceScene();
        var corners = scene.Found("tip-corners-thick");
        Assert.Contains(Reading(scene).Causes.Counted, one => one is { Sign.Value: "tip-corners-thick", Present: true });

        scene.Say(Writer.Value(FindingEnded.Of(corners, FindingEnding.Gone)));

        Assert.Contains(Reading(scene).Causes.Counted, one => one is { Sign.Value: "tip-corners-thick", Present: false });
    }

    private static LengthLeft Long(decimal millimetres) => new(millimetres, default, 1, IsGuessed: false);

    private static WorkDone Done(string kind, int pass) => new(Cases.Kind(kind), new Place(Zone.TipSides), pass);

    private static ReedNow Reading(AdviceScene scene) => ReedReading.Of(Cases.Shipped, scene.Writer.Log, scene.Reed, scene.Batch);

    private static NextSteps Of(AdviceScene scene) => Cases.Next(Reading(scene));

    private static AdviceScene Marked(ReedScales scales) => new(scales: scales);
}
