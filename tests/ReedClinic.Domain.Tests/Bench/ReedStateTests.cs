using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Tests.Bench;

public sealed class ReedStateTests
{
    private readonly Writer writer = new();

    private ReedState State => ReedStates.Of(writer.Log);

    [Fact]
    public void A_reed_goes_from_not_looked_at_to_its_verdict()
    {
        Assert.Equal(ReedState.NotLookedAt, State);
        writer.Say(Writer.Note("It smells of mint."));
        Assert.Equal(ReedState.NotLookedAt, State);
        writer.Say(Writer.Test(TestKind.Crow, 0));
        Assert.Equal(ReedState.Tested, State);
        writer.Say(Writer.Work());
        Assert.Equal(ReedState.BeingWorked, State);
        writer.Say(Writer.Test(TestKind.Crow, 0));
        Assert.Equal(ReedState.BeingWorked, State);
        writer.Say(Writer.Value(Parked.Of()));
        Assert.Equal(ReedState.Parked, State);
        writer.Say(Writer.Value(Stopped.Of()));
        Assert.Equal(ReedState.Stopped, State);
        writer.Say(Writer.Value(Verdict.Of(VerdictKind.Improved)));
        Assert.Equal(ReedState.HasVerdict, State);
    }

    [Fact]
    public void Trying_it_again_on_another_day_leaves_the_verdict_and_work_takes_it_up_again()
    {
        writer.Say(Writer.Work());
        writer.Say(Writer.Value(Verdict.Of(VerdictKind.Improved)));
        writer.Say(Writer.Test(TestKind.Crow, 0));
        Assert.Equal(ReedState.HasVerdict, State);

        var again = writer.Say(Writer.Work());
        Assert.Equal(ReedState.BeingWorked, State);

        writer.Undo(again);
        Assert.Equal(ReedState.HasVerdict, State);
    }

    [Fact]
    public void A_reed_returned_unplayed_has_its_verdict_without_any_work()
    {
        writer.Say(Writer.Value(Verdict.Of(VerdictKind.ReturnedUnplayed)));

        Assert.Equal(ReedState.HasVerdict, State);
    }

    [Fact]
    public void Something_found_or_looked_for_is_looked_at_and_put_aside_comes_before_the_verdict()
    {
        writer.Say(Writer.Found());
        Assert.Equal(ReedState.Tested, State);
        writer.Say(Writer.Value(Verdict.Of(VerdictKind.Improved)));
        writer.Say(Writer.Value(Parked.Of()));
        Assert.Equal(ReedState.Parked, State);
    }

    [Fact]
    public void Every_state_has_its_own_words() =>
        Assert.Equal(6, Enum.GetValues<ReedState>().Select(state => state.Name()).Distinct().Count());
}
