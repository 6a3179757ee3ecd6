using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What is said behind “forget that” of another reed, of another day, of what has to be, or of what is given up stands for nothing of it.</summary>
public sealed class NotInsteadTests
{
    [Theory]
    [InlineData("forget that, last reed needs a push", "crow C")]
    [InlineData("undo that, the other reed blows freely", "crow C")]
    [InlineData("undo that, I was thinking of reed two, needs a push", "crow C")]
    [InlineData("scratch that, clipped a hair yesterday", "crow C")]
    [InlineData("scratch that, clipped a hair last week", "crow C")]
    [InlineData("change that, it has to be B", "crow C")]
    [InlineData("amend that, it must be B", "crow C")]
    [InlineData("undo that, two strokes", "clipped a hair")]
    [InlineData("no, two strokes", "clipped a hair")]
    [InlineData("scratch that, two strokes off it", "left corner too thick")]
    [InlineData("undo that, two strokes off it", "tip too thick")]
    public void What_is_said_of_something_else_stands_for_nothing(string text, string before) => Assert.Null(Of(text, before));

    [Theory]
    [InlineData("forget that, needs a push", "crow C")]
    [InlineData("undo that, this reed needs a push", "crow C")]
    [InlineData("scratch that, clipped a hair", "crow C")]
    [InlineData("change that, it is B", "crow C")]
    [InlineData("undo that, 0.1 mm", "clipped 0.2 mm")]
    [InlineData("scratch that, two strokes off the left corner", "left corner too thick")]
    [InlineData("make that three off it", "two strokes off the left corner")]
    public void What_is_said_of_this_reed_now_stands_instead(string text, string before) => Assert.NotNull(Of(text, before));

    private static BenchEntry? Of(string text, string before)
    {
        var context = PhraseCorpus.Context([before]);
        return EntryPutRight.Of(text, context.Log.Facts[^1].Now, context, alone: true);
    }
}
