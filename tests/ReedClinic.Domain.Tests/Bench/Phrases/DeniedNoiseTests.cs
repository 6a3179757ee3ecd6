using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>A noise that isn’t made is no bad answer, and a reed that is put aside wasn’t left to settle.</summary>
public sealed class DeniedNoiseTests
{
    [Theory]
    [InlineData("low D doesn't growl")]
    [InlineData("low notes don't growl any more")]
    [InlineData("low C no longer growls")]
    [InlineData("the low D never squeaks")]
    [InlineData("low B flat stopped growling")]
    [InlineData("low notes without growling")]
    public void A_noise_that_isnt_made_is_no_bad_answer(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Slots.Step is "will not speak" or "late" or "speaks with care");

    [Theory]
    [InlineData("low D won't speak", "will not speak")]
    [InlineData("low D is late", "late")]
    public void A_bad_answer_is_one(string phrase, string step) => Assert.Equal(step, Assert.Single(Read(phrase)).Slots.Step);

    [Theory]
    [InlineData("put aside")]
    [InlineData("put it aside")]
    [InlineData("set it aside for now")]
    [InlineData("put this one aside")]
    public void A_reed_that_is_put_aside_wasnt_left_to_settle(string phrase) => Assert.DoesNotContain(Read(phrase), read => read.Kind == EntryKind.Adjustment);

    [Theory]
    [InlineData("left it to settle")]
    [InlineData("left it to rest overnight")]
    public void A_reed_that_was_left_to_settle_was(string phrase) => Assert.Equal(EntryKind.Adjustment, Assert.Single(Read(phrase)).Kind);

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
