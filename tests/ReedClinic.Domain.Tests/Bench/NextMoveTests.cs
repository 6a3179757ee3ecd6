using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Tests.Bench.Advice;

namespace ReedClinic.Domain.Tests.Bench;

/// <summary>What comes next on a reed: common practice, with no source.</summary>
public sealed class NextMoveTests
{
    [Fact]
    public void Each_entry_leads_to_what_comes_after_it()
    {
        var scene = Fit(new());
        Assert.Equal(NextMove.Try, Next(scene));

        scene.Crow("C -40");
        Assert.Equal(NextMove.GoOnOrStop, Next(scene));
        var found = scene.Found("tip-thick");
        Assert.Equal(NextMove.SmallStep, Next(scene));
        scene.Do(AdviceScene.TipSides);
        Assert.Equal(NextMove.TryAgain, Next(scene));
        scene.Crow("C -10");
        scene.Say(Writer.Value(FindingEnded.Of(found, FindingEnding.Gone)));
        Assert.Equal(NextMove.GoOnOrStop, Next(scene));

        scene.Say(Writer.Value(Parked.Of()));
        Assert.Equal(NextMove.Aside, Next(scene));
        scene.Crow("C -8");
        scene.Say(Writer.Value(Stopped.Of()));
        Assert.Equal(NextMove.Verdict, Next(scene));
        scene.Say(Writer.Value(Verdict.Of(VerdictKind.Improved)));
        Assert.Equal(NextMove.Done, Next(scene));
        scene.Do(AdviceScene.TipSides);
        Assert.Equal(NextMove.TryAgain, Next(scene));
    }

    [Fact]
    public void Where_advice_only_is_wanted_no_step_on_the_cane_comes_next()
    {
        var scene = Fit(new(Permission.AdviseOnly));
        scene.Crow("C -40");
        scene.Found("tip-thick");

        Assert.Equal(NextMove.AdviceOnly, Next(scene));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(Fitness.Mould)]
    [InlineData(Fitness.DryFirst)]
    public void Nobody_is_told_to_try_a_reed_that_is_not_said_to_be_fit(Fitness? fitness)
    {
        var scene = new AdviceScene();
        if (fitness is { } said)
        {
            Assert.Empty(scene.Batch.RecordArrival(scene.Reed.Id, new ReedArrival(Presence.Here, Fitness: said), DateTimeOffset.UnixEpoch));
        }

        Assert.Equal(NextMove.OffTheBench, Next(scene));
    }

    [Fact]
    public void What_was_left_on_purpose_asks_for_no_step()
    {
        var scene = Fit(new());
        scene.Crow("C -40");
        var found = scene.Found("tip-thick");
        scene.Say(Writer.Value(FindingEnded.Of(found, FindingEnding.LeftOnPurpose)));

        Assert.Equal(NextMove.GoOnOrStop, Next(scene));
    }

    private static AdviceScene Fit(AdviceScene scene)
    {
        Assert.Empty(scene.Batch.RecordArrival(scene.Reed.Id, new ReedArrival(Presence.Here, Fitness: Fitness.Fit), DateTimeOffset.UnixEpoch));
        return scene;
    }

    private static NextMove Next(AdviceScene scene) => ComesNext.Of(scene.Writer.Log, scene.Reed);
}
