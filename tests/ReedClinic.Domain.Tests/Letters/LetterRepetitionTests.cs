using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Tests.Letters.Drafts;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>Twenty letters about twenty invented batches don't read as if one machine had written them.</summary>
public sealed class LetterRepetitionTests
{
    [Fact]
    public void No_sentence_stands_in_more_than_two_of_twenty_letters() => Assert.Empty(InMoreThan(2, 1));

    [Theory]
    [InlineData(101)]
    [InlineData(201)]
    [InlineData(301)]
    [InlineData(401)]
    public void Of_any_other_twenty_letters_no_sentence_stands_in_a_third(int from) => Assert.Empty(InMoreThan(6, from));

    [Fact]
    public void The_invented_batches_differ()
    {
        var batches = Enumerable.Range(1, 20).Select(seed => InventedBatch.Of(seed).Scene).ToList();

        Assert.Equal([1, 2, 3, 4, 5], batches.Select(scene => scene.Batch.Reeds.Count).Distinct().Order());
        Assert.Equal(20, batches.Select(scene => scene.Student).Distinct().Count());
        Assert.InRange(batches.Select(scene => scene.Thread.LessonKind).Distinct().Count(), 8, 20);
        Assert.InRange(batches.Sum(scene => scene.Batch.Mismatches.Count), 4, 20);
    }

    private static IEnumerable<string> InMoreThan(int letters, int from) => Enumerable.Range(from, 20)
        .Select(seed => InventedBatch.Of(seed))
        .SelectMany(batch => SaidSentences.Of(LetterComposer.Compose(batch.Scene.Material), batch.Typed).Distinct())
        .Where(sentence => !SaidCautions.Hold(sentence))
        .CountBy(sentence => sentence)
        .Where(pair => pair.Value > letters)
        .OrderByDescending(pair => pair.Value)
        .Select(pair => $"{pair.Value} × {pair.Key}");
}
