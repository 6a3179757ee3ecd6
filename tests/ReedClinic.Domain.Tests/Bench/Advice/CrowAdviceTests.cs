using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Domain.Tests.Bench.Advice.AdviceScene;

namespace ReedClinic.Domain.Tests.Bench.Advice;

public sealed class CrowAdviceTests
{
    // A clip raises pitch and resistance, scraping lowers both: oboeinsight.com, adjustments and fixes.
    [Theory]
    [InlineData("C +40", true)]
    [InlineData("C#", true)]
    [InlineData("sharp C", true)]
    [InlineData("between C and C#", true)]
    [InlineData("C +10", false)]
    [InlineData("C", false)]
    [InlineData("flat C", false)]
    [InlineData("B", false)]
    public void A_clip_is_spoken_of_when_the_latest_crow_is_sharp(string pitch, bool due)
    {
        var scene = new AdviceScene();
        scene.Crow(pitch);

        Assert.Equal(due, scene.Due(AdviceKind.ClipWhenSharp, Hair) is not null);
        Assert.Null(scene.Due(AdviceKind.ClipWhenSharp, TipSides));
    }

    [Fact]
    public void A_reed_that_arrived_sharp_may_be_clipped_once_its_latest_crow_has_fallen()
    {
        var scene = new AdviceScene();
        scene.Crow("C# +20");
        scene.Do(TipSides);
        scene.Crow("C -60");

        Assert.Null(scene.Due(AdviceKind.ClipWhenSharp, Hair));
    }

    [Fact]
    public void The_line_says_where_the_crow_stands_and_the_reason_has_its_source()
    {
        var scene = new AdviceScene();
        scene.Crow("C +40");

        var line = scene.Due(AdviceKind.ClipWhenSharp, Hair)!;

        Assert.Equal("The latest crow stands 40 cents above C: a clip takes it higher.", line.Line);
        Assert.Equal((Evidence.Published, "oboeinsight.com, adjustments and fixes"), (line.Mark.Evidence, line.Mark.Source));
    }

    [Theory]
    [InlineData("B", 1, "thin-tip-sides", Zone.TipSides, true)]
    [InlineData("B", 0, "open-windows", Zone.Windows, true)]
    [InlineData("flat C", 1, "blend", Zone.Transition, true)]
    [InlineData("B", 2, "blend", Zone.Transition, false)]
    [InlineData("B", 3, "blend", Zone.Transition, false)]
    [InlineData("C -20", 0, "blend", Zone.Transition, false)]
    [InlineData("B", 1, "clip-hair", Zone.TipEdge, false)]
    [InlineData("B", 1, "soak", Zone.WholeReed, false)]
    [InlineData("B", 1, "even-up", Zone.WholeReed, false)]
    public void Scraping_is_spoken_of_when_the_latest_crow_is_flat_and_the_reed_easy(
        string pitch, int effort, string kind, Zone zone, bool due)
    {
        var scene = new AdviceScene();
        scene.Crow(pitch);
        scene.Effort(effort);

        Assert.Equal(due, scene.Due(AdviceKind.ScrapeWhenFlatAndEasy, Plan(kind, zone)) is not null);
    }

    [Fact]
    public void The_latest_effort_counts_and_not_the_first()
    {
        var scene = new AdviceScene();
        scene.Effort(0);
        scene.Crow("B");
        scene.Effort(3);

        Assert.Null(scene.Due(AdviceKind.ScrapeWhenFlatAndEasy, TipSides));
    }

    [Fact]
    public void Scraping_a_flat_easy_reed_is_right_where_the_tip_is_thick_and_a_clip_can_follow()
    {
        var scene = new AdviceScene();
        scene.Crow("B");
        scene.Effort(1);
        scene.Length(70m);
        scene.Found("tip-thick");
        Assert.Null(scene.Due(AdviceKind.ScrapeWhenFlatAndEasy, TipSides));

        scene.Length(66.1m);

        Assert.NotNull(scene.Due(AdviceKind.ScrapeWhenFlatAndEasy, TipSides));
    }

    [Fact]
    public void Edges_and_corners_of_a_tip_whose_centre_is_thin_may_be_worked()
    {
        var scene = new AdviceScene();
        scene.Crow("B");
        scene.Effort(1);
        scene.Found("tip-centre-thin");

        Assert.Null(scene.Due(AdviceKind.ScrapeWhenFlatAndEasy, Plan("thin-corners", Zone.TipCorners)));
        Assert.NotNull(scene.Due(AdviceKind.ScrapeWhenFlatAndEasy, Plan("thin-whole-tip", Zone.TipSides)));
    }

    [Fact]
    public void A_scrape_made_while_the_reed_was_still_hard_does_not_silence_what_holds_since_it_is_easy()
    {
        var scene = new AdviceScene();
        scene.Crow("B");
        scene.Effort(4);
        scene.Do(TipSides);
        scene.Effort(1);

        Assert.NotNull(scene.Due(AdviceKind.ScrapeWhenFlatAndEasy, TipSides));
    }

    // “A reed that is already easy and sharp has usually had too much cane removed”: oboeinsight.com, adjustments and fixes.
    [Theory]
    [InlineData("C# ", 1, true)]
    [InlineData("C#", 3, false)]
    [InlineData("C", 1, false)]
    public void Easy_and_sharp_at_once_expects_no_rescue_from_the_knife(string pitch, int effort, bool due)
    {
        var scene = new AdviceScene();
        scene.Crow(pitch);
        scene.Effort(effort);

        Assert.Equal(due, scene.Due(AdviceKind.EasyAndSharp, TipSides) is not null);
    }

    [Fact]
    public void Flat_and_hard_asks_for_the_closing_first()
    {
        var scene = new AdviceScene();
        scene.Crow("B");
        scene.Effort(4);
        Assert.NotNull(scene.Due(AdviceKind.ClosingFirst, TipSides));

        scene.Say(Writer.Test(TestKind.ClosingOrder, 0));

        Assert.Null(scene.Due(AdviceKind.ClosingFirst, TipSides));
    }

    [Fact]
    public void Resistance_that_went_with_the_work_is_told_even_when_nothing_is_planned()
    {
        var scene = new AdviceScene();
        scene.Effort(2);
        scene.Do(TipSides);
        scene.Effort(0);

        Assert.NotNull(scene.Due(AdviceKind.ResistanceGone));
        Assert.NotNull(scene.Due(AdviceKind.ResistanceGone, TipSides));
        Assert.Null(scene.Due(AdviceKind.ResistanceGone, Hair));
    }

    [Fact]
    public void A_reed_that_came_far_too_easy_has_not_lost_its_resistance_here()
    {
        var scene = new AdviceScene();
        scene.Effort(0);
        scene.Do(TipSides);
        scene.Effort(0);

        Assert.Null(scene.Due(AdviceKind.ResistanceGone));
    }
}
