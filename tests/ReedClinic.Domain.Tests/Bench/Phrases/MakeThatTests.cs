using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>“Make that blow freely” is a wish, and “make that C” a value that was meant.</summary>
public sealed class MakeThatTests
{
    [Theory]
    [InlineData("make that match the right", "two strokes off the left corner")]
    [InlineData("make that the same on the right", "two strokes off the left corner")]
    [InlineData("make that clear", "tip too thick")]
    [InlineData("make that blow freely", "needs a push")]
    [InlineData("make it blow freely", "needs a push")]
    [InlineData("make that respond at once", "needs a push")]
    [InlineData("make that easier to blow", "crow C")]
    [InlineData("make that pop", "crow C")]
    [InlineData("make that peep", "crow C")]
    [InlineData("make that crow", "crow C")]
    [InlineData("make that start softly", "low notes late")]
    [InlineData("make that sharper", "crow is flat")]
    [InlineData("make that speak at once", "low D speaks late")]
    [InlineData("make that low D speak at once", "low D speaks late")]
    [InlineData("make that drop to C", "crow D")]
    [InlineData("make that come down to C", "crow D")]
    [InlineData("no, make that needs a push", "crow C")]
    [InlineData("make that two strokes off the heart", "tip too thick")]
    public void A_wish_changes_nothing(string text, string before)
    {
        var context = PhraseCorpus.Context([before]);

        Assert.Null(EntryPutRight.Of(text, context.Log.Facts[^1].Now, context, alone: true));
    }

    [Theory]
    [InlineData("make that blow freely", "needs a push")]
    [InlineData("make that match the right", "two strokes off the left corner")]
    [InlineData("make that respond at once", "needs a push")]
    [InlineData("make that speak at once", "low D speaks late")]
    [InlineData("make that drop to C", "crow D")]
    [InlineData("make that easier to blow", "crow C")]
    public void Nor_is_it_a_new_entry(string text, string before) => Assert.All(PhraseReader.Read(text, PhraseCorpus.Context([before])).Entries, read => Assert.Equal(EntryKind.Note, read.Kind));

    [Theory]
    [InlineData("make that needs a push", "blows freely")]
    [InlineData("make it C", "crow D")]
    [InlineData("make that a C", "crow D")]
    [InlineData("make that late", "low notes speak at once")]
    [InlineData("make that at once", "low notes late")]
    [InlineData("make that three strokes", "two strokes off the left corner")]
    [InlineData("make that half a millimetre", "clipped a hair")]
    [InlineData("make that more like three", "two strokes off the left corner")]
    [InlineData("no, make that the upper", "lower blade left corner too thick")]
    public void A_value_of_the_same_test_or_work_is_put_right(string text, string before)
    {
        var context = PhraseCorpus.Context([before]);

        Assert.NotNull(EntryPutRight.Of(text, context.Log.Facts[^1].Now, context, alone: true));
    }
}
