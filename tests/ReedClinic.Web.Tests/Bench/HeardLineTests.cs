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

    [Theory]
    [InlineData("zebra umbrella; clip a hair; she likes red thread", "zebra umbrella … she likes red thread")]
    [InlineData("she likes red thread; clip a hair; zebra umbrella", "she likes red thread … zebra umbrella")]
    public void Beside_a_remark_what_is_not_understood_is_part_of_it_and_no_second_one(string typed, string words)
    {
        var heard = Hear(typed);

        Assert.Null(heard.Kept);
        Assert.Equal(words, Assert.IsType<Note>(Assert.Single(heard.All, entry => entry is Note)).Words);
    }

    [Theory]
    [InlineData("opening half a mil")]
    [InlineData("leaks near the thread")]
    [InlineData("soaked three minutes")]
    [InlineData("clip half a hair")]
    [InlineData("opened with pliers, gently")]
    [InlineData("crow is a wild C")]
    public void One_thing_in_a_line_keeps_all_of_the_line(string typed)
    {
        var heard = Hear($"  {typed} ");

        Assert.Equal(typed, heard.Entries[0].Entry.Said);
    }

    [Fact]
    public void Each_of_several_things_keeps_its_own_words_and_what_lies_between_is_of_the_one_before()
    {
        var heard = Hear("well, clip half a hair; zebra umbrella; crow C -15 and wild, then leaks near the thread");

        var said = heard.Entries.Select(one => one.Entry.Said!).ToList();
        Assert.StartsWith("well, clip half a hair; zebra umbrella", said[0], StringComparison.Ordinal);
        Assert.Contains("near the thread", said[^1], StringComparison.Ordinal);
        Assert.DoesNotContain(said.SkipLast(1), words => words.EndsWith("then", StringComparison.Ordinal) || words.Contains("thread", StringComparison.Ordinal));
        Assert.Contains("wild", string.Concat(said), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_agreed_to_keeps_its_words_and_a_line_without_meaning_needs_none_beside_its_note()
    {
        Assert.Equal("clip half a hair", HeardLine.Agreed(Assert.Single(Hear("clip half a hair").Entries).Entry, agreed: true).Said);
        Assert.Null(Assert.Single(Hear("zebra umbrella").All).Said);
    }

    private static HeardLine Hear(string? typed) => HeardLine.Of(typed, BenchLog.Empty, Tuning.Standard);
}
