using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Pitch;
using ReedClinic.Web.Features.Bench.Line;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>What a line comes to before it is sent: nothing is invented, and no word is lost.</summary>
public sealed class HeardLineTests
{
    [Theory]
    [InlineData("c-15", "C", -15)]
    [InlineData("c -15", "C", -15)]
    [InlineData("C +5", "C", 5)]
    [InlineData("b", "B", 0)]
    [InlineData("bb+10", "B♭", 10)]
    [InlineData("c#", "C♯", 0)]
    public void A_pitch_typed_after_a_stroke_is_the_crow_with_all_its_cents(string typed, string note, double cents)
    {
        var crow = Assert.IsType<Domain.Bench.Test>(Assert.Single(Hear(typed).Entries).Entry);

        Assert.Equal((TestKind.Crow, note, cents), (crow.TestKind, crow.Pitch!.PitchClass.Name, crow.Pitch.Cents.Value));
    }

    [Fact]
    public void What_is_not_understood_is_kept_beside_what_is()
    {
        var heard = Hear("clip a hair; zebra umbrella");

        Assert.IsType<Adjustment>(Assert.Single(heard.Entries).Entry);
        Assert.Contains("zebra umbrella", heard.Kept, StringComparison.Ordinal);
        Assert.Equal(2, heard.All.Count);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData(null)]
    public void Nothing_typed_is_nothing_heard(string? typed) => Assert.Empty(Hear(typed).All);

    [Theory]
    [InlineData("so um okay clip a hair")]
    [InlineData("clip a hair, okay")]
    public void Words_in_passing_leave_no_note(string typed)
    {
        var heard = Hear(typed);

        Assert.Null(heard.Kept);
        Assert.Equal("clip-hair", Assert.IsType<Adjustment>(Assert.Single(heard.Entries).Entry).AdjustmentKind.Value);
    }

    private static HeardLine Hear(string? typed) => HeardLine.Of(typed, BenchLog.Empty, Tuning.Standard);
}
