using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Domain.Tests.Bench.Advice.AdviceScene;

namespace ReedClinic.Domain.Tests.Bench.Advice;

public sealed class RecordAdviceTests
{
    [Theory]
    [InlineData(Permission.AdviseOnly, "soak", false)]
    [InlineData(Permission.AdviseOnly, "clean-inside", true)]
    [InlineData(Permission.SafeChangesOnly, "soak", false)]
    [InlineData(Permission.SafeChangesOnly, "clip", true)]
    [InlineData(Permission.TakeRisks, "clip", false)]
    public void What_goes_further_than_the_student_asked_for_is_said_first(Permission permission, string kind, bool due)
    {
        var scene = new AdviceScene(permission);

        var lines = scene.Due(Plan(kind, AdjustmentCatalogue.Find(new AdjustmentKindId(kind))!.Zone));

        Assert.Equal(due, lines.Select(line => line.Kind).Take(1).Contains(AdviceKind.Permission));
    }

    [Fact]
    public void What_was_agreed_since_is_acted_upon_and_does_not_come_back()
    {
        var scene = new AdviceScene(Permission.SafeChangesOnly);
        Assert.Null(scene.Due(AdviceKind.Permission, TipSides));
        Assert.NotNull(scene.Due(AdviceKind.Permission, Clip(0.4m)));

        var done = scene.Do(Clip(0.4m), Agreement.With(null));

        Assert.Null(scene.Due(AdviceKind.Permission, Clip(0.4m) with { Recorded = done }));
        Assert.Null(scene.Due(AdviceKind.Permission, Clip(0.4m)));
    }

    /// <summary>Common practice: scraping and clipping by hairs take turns, by the latest crow; cane that is clipped is gone.</summary>
    [Theory]
    [InlineData(Permission.SafeChangesOnly, "C -40", true)]
    [InlineData(Permission.SafeChangesOnly, "C +40", false)]
    [InlineData(Permission.TakeRisks, "C -40", false)]
    [InlineData(Permission.AdviseOnly, "C -40", false)]
    public void A_small_clip_where_safe_changes_were_asked_for_is_told_of_once_with_its_reason(Permission permission, string crow, bool due)
    {
        var scene = new AdviceScene(permission);
        scene.Crow(crow);
        Assert.Equal(due, scene.Due(AdviceKind.SafeClip, Hair) is { Reason.Length: > 0 });
        Assert.Null(scene.Due(AdviceKind.SafeClip, TipSides));

        scene.Do(Hair);

        Assert.Null(scene.Due(AdviceKind.SafeClip, Hair));
    }

    [Fact]
    public void What_would_be_advised_once_it_is_recorded_is_due_before_beside_what_was_allowed()
    {
        var scene = new AdviceScene(Permission.SafeChangesOnly);
        scene.Crow("C +40");

        Assert.Equal([AdviceKind.Permission, AdviceKind.ClipWhenSharp], scene.Due(Hair).Select(line => line.Kind).Take(2));

        var done = scene.Do(Hair, Agreement.With(null));

        Assert.Equal(AdviceKind.ClipWhenSharp, scene.Due(Hair with { Recorded = done })[0].Kind);
    }

    [Fact]
    public void Stopping_before_the_last_work_was_tried_is_said_in_one_line_and_a_test_ends_it()
    {
        var scene = new AdviceScene();
        scene.Crow("C");
        Assert.DoesNotContain(Stopping(scene), line => line.Kind == AdviceKind.StoppedUntried);
        scene.Do(TipSides);
        Assert.Null(scene.Due(AdviceKind.StoppedUntried));
        Assert.Equal(AdviceKind.StoppedUntried, Stopping(scene)[0].Kind);

        scene.Say(Writer.Value(Stopped.Of(null)));
        Assert.Equal("Not tried since the last work: one more test tells how it leaves.", scene.Due(AdviceKind.StoppedUntried)!.Line);

        scene.Crow("C -5");
        Assert.Null(scene.Due(AdviceKind.StoppedUntried));
    }

    private static IReadOnlyList<AdviceLine> Stopping(AdviceScene scene) => BenchAdvice.For(scene.Writer.Log, scene.Reed, scene.Batch, stops: true);

    [Fact]
    public void A_place_that_is_left_alone_is_named_with_its_reason_when_work_reaches_it()
    {
        var scene = new AdviceScene();
        var left = scene.Say(Writer.Value(LeaveAlone.Of(new Place(Zone.TipCorners, Blades.Upper, Sides.Left), "It is torn a little.")));

        var line = scene.Due(AdviceKind.LeaveAlone, Plan("thin-corners", Zone.TipCorners))!;

        Assert.Equal(("To be left alone: tip corners, upper blade, left.", "It is torn a little."), (line.Line, line.Reason));
        Assert.Contains(left.Value.ToString("N"), line.Id.Value, StringComparison.Ordinal);
        Assert.Equal(Evidence.OnRecord, line.Mark.Evidence);
    }

    [Theory]
    [InlineData("thin-corners", Zone.TipCorners, Blades.Lower, Sides.Both, false)]
    [InlineData("thin-corners", Zone.TipCorners, Blades.Both, Sides.Right, false)]
    [InlineData("take-heart-sides", Zone.HeartSides, Blades.Both, Sides.Both, false)]
    [InlineData("soak", Zone.WholeReed, Blades.Both, Sides.Both, false)]
    [InlineData("even-up", Zone.WholeReed, Blades.Both, Sides.Both, true)]
    [InlineData("thin-whole-tip", Zone.TipSides, Blades.Both, Sides.Both, true)]
    [InlineData("clip", Zone.TipEdge, Blades.Both, Sides.Both, true)]
    public void Only_work_that_reaches_the_place_is_spoken_of(string kind, Zone zone, Blades blades, Sides sides, bool due)
    {
        var scene = new AdviceScene();
        scene.Say(Writer.Value(LeaveAlone.Of(new Place(Zone.TipCorners, Blades.Upper, Sides.Left), "torn")));

        var line = scene.Due(AdviceKind.LeaveAlone, new PlannedWork(new AdjustmentKindId(kind), new Place(zone, blades, sides)));

        Assert.Equal(due, line is not null);
    }

    [Fact]
    public void A_mark_that_was_taken_back_is_not_spoken_of()
    {
        var scene = new AdviceScene();
        var left = scene.Say(Writer.Value(LeaveAlone.Of(new Place(Zone.Spine), "good")));
        Assert.NotNull(scene.Due(AdviceKind.LeaveAlone, Plan("thin-spine", Zone.Spine)));

        scene.Writer.Undo(left);

        Assert.Null(scene.Due(AdviceKind.LeaveAlone, Plan("thin-spine", Zone.Spine)));
    }

    [Fact]
    public void Three_rounds_of_work_without_a_test_ask_for_one_and_a_test_ends_it()
    {
        var scene = new AdviceScene();
        scene.Crow("C");
        scene.Do(TipSides);
        scene.Do(TipSides);
        Assert.Null(scene.Due(AdviceKind.Untested));
        scene.Do(TipSides);

        var first = scene.Due(AdviceKind.Untested)!;
        scene.Crow("C -10");

        Assert.Null(scene.Due(AdviceKind.Untested));
        for (var round = 0; round < 3; round++)
        {
            scene.Do(TipSides);
        }

        Assert.NotEqual(first.Id, scene.Due(AdviceKind.Untested)!.Id);
    }

    [Fact]
    public void Both_blades_both_sides_and_two_zones_are_one_round()
    {
        var scene = new AdviceScene();
        foreach (var zone in new[] { Zone.TipSides, Zone.TipCorners })
        {
            foreach (var blade in new[] { Blades.Upper, Blades.Lower })
            {
                foreach (var side in new[] { Sides.Left, Sides.Right })
                {
                    scene.Do(new PlannedWork(new AdjustmentKindId(zone == Zone.TipSides ? "thin-tip-sides" : "thin-corners"), new Place(zone, blade, side)));
                }
            }
        }

        Assert.Null(scene.Due(AdviceKind.Untested));
        scene.Do(TipSides);
        Assert.Null(scene.Due(AdviceKind.Untested));
        scene.Do(TipSides);
        Assert.NotNull(scene.Due(AdviceKind.Untested));
    }

    [Fact]
    public void Fifteen_strokes_in_one_place_without_a_test_ask_for_one()
    {
        var scene = new AdviceScene();
        scene.Do(Plan("thin-tip-sides", Zone.TipSides, new Amount(Strokes: 8)));
        Assert.Null(scene.Due(AdviceKind.Untested));
        scene.Do(Plan("thin-tip-sides", Zone.TipSides, new Amount(Strokes: 7)));

        Assert.StartsWith("Fifteen strokes", scene.Due(AdviceKind.Untested)!.Line, StringComparison.Ordinal);
    }

    [Fact]
    public void What_takes_no_cane_is_no_round()
    {
        var scene = new AdviceScene();
        for (var round = 0; round < 4; round++)
        {
            scene.Do(Plan("soak", Zone.WholeReed));
        }

        Assert.Null(scene.Due(AdviceKind.Untested));
    }
}
