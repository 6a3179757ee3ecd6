using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Domain.Tests.Bench.Advice.AdviceScene;

namespace ReedClinic.Domain.Tests.Bench.Advice;

/// <summary>The places that most teachers warn of (common practice); where a text is cited, its mark is asked for.</summary>
public sealed class PlaceAdviceTests
{
    [Theory]
    [InlineData("dust-heart", Zone.HeartCentre, "heart", Evidence.Published)]
    [InlineData("thin-spine", Zone.Spine, "spine", Evidence.CommonPractice)]
    [InlineData("thin-rails", Zone.Rails, "rails", Evidence.CommonPractice)]
    public void Centre_of_the_heart_spine_and_rails_are_never_hurried(string kind, Zone zone, string name, Evidence evidence)
    {
        var line = new AdviceScene().Due(AdviceKind.NeverHurry, Plan(kind, zone))!;

        Assert.Equal(("never-hurry/" + name, evidence), (line.Id.Value, line.Mark.Evidence));
        Assert.Equal(evidence == Evidence.Published, line.Mark.Source is not null);
    }

    [Theory]
    [InlineData("thin-tip-sides", Zone.TipSides)]
    [InlineData("take-heart-sides", Zone.HeartSides)]
    [InlineData("open-windows", Zone.Windows)]
    [InlineData("clip-hair", Zone.TipEdge)]
    public void Ordinary_places_are_not_spoken_of(string kind, Zone zone) =>
        Assert.Null(new AdviceScene().Due(AdviceKind.NeverHurry, Plan(kind, zone)));

    [Fact]
    public void A_risk_that_was_named_for_the_place_is_acting_upon_it()
    {
        var scene = new AdviceScene();
        scene.Say(Writer.Value(Risk.Of("The opening may fall in.", Zone.Spine)));

        Assert.Null(scene.Due(AdviceKind.NeverHurry, Plan("thin-spine", Zone.Spine)));
        Assert.NotNull(scene.Due(AdviceKind.NeverHurry, Plan("thin-rails", Zone.Rails)));
    }

    [Theory]
    [InlineData("tip-centre-thin", "thin-tip-centre", Zone.TipCentre, true)]
    [InlineData("tip-centre-thin", "thin-whole-tip", Zone.TipSides, true)]
    [InlineData("tip-centre-thin", "thin-tip-sides", Zone.TipSides, false)]
    [InlineData("tip-centre-thin", "thin-corners", Zone.TipCorners, false)]
    [InlineData("tip-thin", "thin-tip-sides", Zone.TipSides, false)]
    [InlineData("tip-even-across", "thin-corners", Zone.TipCorners, false)]
    [InlineData("tip-even-across", "thin-tip-centre", Zone.TipCentre, true)]
    [InlineData("heart-thin", "dust-heart", Zone.HeartCentre, true)]
    [InlineData("heart-thin", "thin-tip-sides", Zone.TipSides, false)]
    [InlineData("heart-thin", "free-heart-bottom", Zone.HeartBottom, false)]
    public void A_thin_centre_is_left_while_edges_corners_and_what_lies_round_a_heart_may_be_worked(
        string found, string kind, Zone zone, bool due)
    {
        var scene = new AdviceScene();
        scene.Found(found);

        Assert.Equal(due, scene.Due(AdviceKind.ThinAlready, Plan(kind, zone)) is not null);
    }

    [Fact]
    public void A_thin_heart_can_be_helped_by_comparison_and_is_told_once_not_twice()
    {
        var scene = new AdviceScene();
        scene.Found("heart-thin");

        var lines = scene.Due(Plan("dust-heart", Zone.HeartCentre));

        Assert.Contains("thick by comparison", Assert.Single(lines).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_finding_that_has_gone_says_nothing_more()
    {
        var scene = new AdviceScene();
        var found = scene.Found("tip-centre-thin");
        scene.Say(Writer.Value(FindingEnded.Of(found, FindingEnding.Gone)));

        Assert.Null(scene.Due(AdviceKind.ThinAlready, Plan("thin-tip-centre", Zone.TipCentre)));
    }

    [Fact]
    public void Setting_the_overlap_is_not_offered_where_the_blades_lean_against_the_winding()
    {
        var scene = new AdviceScene();
        var realign = Plan("realign", Zone.SideEdges);
        Assert.Null(scene.Due(AdviceKind.AgainstWinding, realign));
        scene.Found("slipped-too-far");
        Assert.Null(scene.Due(AdviceKind.AgainstWinding, realign));

        scene.Found("slipped-against-winding");

        Assert.Equal(Evidence.CommonPractice, scene.Due(AdviceKind.AgainstWinding, realign)!.Mark.Evidence);
    }

    [Fact]
    public void No_piece_of_advice_ever_offers_to_set_the_overlap_or_to_work_heart_spine_or_rails()
    {
        var scene = new AdviceScene();
        scene.Found("slipped-against-winding");
        scene.Crow("C -80");
        scene.Effort(4);

        var told = AdjustmentCatalogue.All.SelectMany(kind => scene.Due(Plan(kind.Id.Value, kind.Zone)))
            .Where(line => line.Kind is not (AdviceKind.NeverHurry or AdviceKind.AgainstWinding)).Select(line => line.Line + line.Reason);

        Assert.All(told, words => Assert.DoesNotContain("overlap", words, StringComparison.Ordinal));
    }
}
