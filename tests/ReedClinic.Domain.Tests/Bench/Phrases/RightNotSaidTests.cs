using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>“No, just right” praises and moves nothing to the right; a side is put right where the words name one.</summary>
public sealed class RightNotSaidTests
{
    [Theory]
    [InlineData("no, just right")]
    [InlineData("sorry, just right")]
    [InlineData("amend that, just right")]
    [InlineData("scratch that, just right")]
    [InlineData("no, only just right")]
    [InlineData("scratch that, right")]
    [InlineData("make that right")]
    [InlineData("make it right")]
    [InlineData("make that just right")]
    [InlineData("no, just right on the upper")]
    [InlineData("undo that, all right")]
    public void What_only_agrees_moves_nothing_to_the_right(string text) => Assert.Null(Of(text, "left corner too thick"));

    [Theory]
    [InlineData("no, just the right")]
    [InlineData("sorry, only the right side")]
    [InlineData("amend that, just the right corner")]
    [InlineData("scratch that, the right")]
    [InlineData("no, only just the right one")]
    [InlineData("make that the right")]
    [InlineData("no, only right, not left")]
    [InlineData("I meant right")]
    public void A_side_that_is_named_is_put_right(string text) => Assert.Equal(Sides.Right, Before.PlaceOf(Of(text, "left corner too thick")!)!.Value.Sides);

    [Theory]
    [InlineData("make that left")]
    [InlineData("scratch that, left")]
    [InlineData("no, just the left")]
    public void So_is_the_left(string text) => Assert.Equal(Sides.Left, Before.PlaceOf(Of(text, "right corner too thick")!)!.Value.Sides);

    [Fact]
    public void In_a_correction_right_alone_is_the_side()
    {
        var context = PhraseCorpus.Context(["left corner too thick"]);

        Assert.Equal(Sides.Right, Before.PlaceOf(EntryPutRight.Of("right", context.Log.Facts[^1].Now, context, alone: false)!)!.Value.Sides);
    }

    private static BenchEntry? Of(string text, string before)
    {
        var context = PhraseCorpus.Context([before]);
        return EntryPutRight.Of(text, context.Log.Facts[^1].Now, context, alone: true);
    }
}
