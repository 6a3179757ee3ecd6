using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>“It was only the right side” puts the side right, and how much puts no squeeze the other way.</summary>
public sealed class OnlyThatPutRightTests
{
    [Theory]
    [InlineData("amend that: it was only the right side", "scraped the windows both sides", Sides.Right)]
    [InlineData("no, only the left", "scraped the windows both sides", Sides.Left)]
    [InlineData("sorry, just the right side", "scraped the windows both sides", Sides.Right)]
    public void Only_one_side_is_put_right(string text, string before, Sides sides) => Assert.Equal((Zone.Windows, sides), Assert.IsType<Adjustment>(Of(text, before)) is var work ? (work.Zone, work.Sides) : default);

    [Theory]
    [InlineData("make that a good squeeze", "pinched it shut a touch")]
    [InlineData("make that a firm squeeze", "pressed the faces to close it")]
    [InlineData("amend that, squeezed a lot", "pinched it shut a touch")]
    [InlineData("amend that, a firm squeeze", "pressed the faces to close it")]
    public void A_squeeze_is_not_turned_round_by_how_much(string text, string before) => Assert.Equal("close-press", Assert.IsType<Adjustment>(Of(text, before)).AdjustmentKind.Value);

    [Theory]
    [InlineData("amend that, squeezed the sides to open it", "open-squeeze")]
    [InlineData("scratch that, pressed the faces to close it", "close-press")]
    public void A_squeeze_whose_way_is_said_goes_that_way(string text, string kind) => Assert.Equal(kind, Assert.IsType<Adjustment>(Of(text, "pressed the faces to close it")).AdjustmentKind.Value);

    private static BenchEntry? Of(string text, string before)
    {
        var context = PhraseCorpus.Context([before]);
        return EntryPutRight.Of(text, context.Log.Facts[^1].Now, context, alone: true);
    }
}
