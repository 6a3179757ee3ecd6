using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Bench.Advice;

namespace ReedClinic.Domain.Tests.Bench;

/// <summary>A reed is wetted before it is played, whoever plays it: that is no work on it (common practice, with no source).</summary>
public sealed class MadeReadyTests
{
    private readonly Writer writer = new();

    [Fact]
    public void A_reed_that_was_soaked_first_is_still_as_it_arrived_until_it_is_worked()
    {
        writer.Say(Soaked());
        Assert.Equal(ReedState.NotLookedAt, ReedStates.Of(writer.Log));
        writer.Say(Writer.Test(TestKind.Effort, 4));
        Assert.Equal(ReedState.Tested, ReedStates.Of(writer.Log));
        Assert.Equal([2], writer.Log.Passes.Select(pass => pass.Facts.Count));
        Assert.Empty(writer.Log.Passes[0].Adjustments);

        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Effort, 3));

        Assert.Equal([2, 2], writer.Log.Passes.Select(pass => pass.Facts.Count));
        var move = Assert.Single(writer.Log.Moves);
        Assert.Equal((4, 3), (move.Arrival?.Now.Step, move.Now?.Now.Step));
    }

    [Fact]
    public void Soaked_again_between_two_tries_it_is_in_the_same_pass_and_was_not_worked_since()
    {
        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Effort, 3));
        writer.Say(Value(Stopped.Of()));
        writer.Say(Soaked());
        writer.Say(Writer.Test(TestKind.Effort, 2));

        Assert.Equal([0, 5], writer.Log.Passes.Select(pass => pass.Facts.Count));
        Assert.True(writer.Log.IsStopped);
        Assert.Equal("thin-corners", Assert.Single(writer.Log.Work).Now.AdjustmentKind.Value);
    }

    [Fact]
    public void Soaked_for_something_that_was_found_it_is_work()
    {
        var wavy = writer.Say(Writer.Found("tip-wavy"));
        writer.Say(Soaked(wavy));
        writer.Say(Writer.Test(TestKind.Effort, 2));

        Assert.Equal([1, 2], writer.Log.Passes.Select(pass => pass.Facts.Count));
        Assert.Equal(ReedState.BeingWorked, ReedStates.Of(writer.Log));
    }

    [Fact]
    public void It_is_no_mark_on_the_drawing_and_no_step_of_the_crow()
    {
        writer.Say(Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Pitch("C -40"))));
        writer.Say(Soaked());
        writer.Say(Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Pitch("C -30"))));

        Assert.Empty(ReedMarks.Of(writer.Log));
        Assert.Null(ReedMarks.Of(Soaked()));
        Assert.Empty(Assert.Single(CrowStory.Of(writer.Log, CrowTarget.OnC(Tuning.Standard)).Steps).Work);
    }

    [Fact]
    public void The_next_move_after_it_is_to_try_the_reed_as_it_came()
    {
        var scene = new AdviceScene();
        Assert.Empty(scene.Batch.RecordArrival(scene.Reed.Id, new ReedArrival(Presence.Here, Fitness: Fitness.Fit), DateTimeOffset.UnixEpoch));
        scene.Say(Soaked());

        Assert.Equal(NextMove.Try, ComesNext.Of(scene.Writer.Log, scene.Reed));
    }

    private static Adjustment Soaked(EntryId? forFinding = null) =>
        Value(Adjustment.Of(new AdjustmentKindId("soak"), new Place(Zone.WholeReed), new Amount(Words: "three minutes"), forFinding));

    private static T Value<T>(Domain.Outcomes.Outcome<T> made) => Writer.Value(made);

    private static SaidPitch Pitch(string text) => Value(SaidPitch.Read(text, Tuning.Standard));
}
