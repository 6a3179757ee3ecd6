using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Tests.Bench;

/// <summary>What is only said about a crow stands in the log, and where the crow stands is what was measured.</summary>
public sealed class CrowRemarkTests
{
    private readonly Writer writer = new();

    [Fact]
    public void A_remark_on_the_crow_takes_no_measured_crows_place()
    {
        writer.Say(Crow("C -60"));
        writer.Say(Writer.Work());
        writer.Say(Crow("C -20"));
        writer.Say(Remark("it crows well enough for now"));

        Assert.Equal(-20, Assert.Single(writer.Log.Moves).Now!.Now.Pitch!.Cents.Value);
    }

    [Fact]
    public void Where_nothing_was_measured_since_the_remark_is_what_there_is()
    {
        writer.Say(Crow("C -60"));
        writer.Say(Writer.Work());
        writer.Say(Remark("it crows well enough for now"));

        Assert.Equal("it crows well enough for now", Assert.Single(writer.Log.Moves).Now!.Now.Words);
    }

    [Theory]
    [InlineData("won’t crow")]
    [InlineData("no crow at all now")]
    public void A_crow_that_is_gone_is_not_told_by_what_was_measured_before(string words)
    {
        writer.Say(Crow("C -60"));
        writer.Say(Writer.Work());
        writer.Say(Crow("C -20"));
        writer.Say(Remark(words));

        Assert.Equal(words, Assert.Single(writer.Log.Moves).Now!.Now.Words);
    }

    [Fact]
    public void A_remark_after_more_work_is_what_there_is()
    {
        writer.Say(Crow("C -60"));
        writer.Say(Writer.Work());
        writer.Say(Crow("C -20"));
        writer.Say(Writer.Work());
        writer.Say(Remark("crows nicely"));

        Assert.Equal("crows nicely", Assert.Single(writer.Log.Moves).Now!.Now.Words);
    }

    private static Domain.Bench.Test Crow(string pitch) => Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Writer.Value(SaidPitch.Read(pitch, Tuning.Standard))));

    private static Domain.Bench.Test Remark(string words) => Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, words: words));
}
