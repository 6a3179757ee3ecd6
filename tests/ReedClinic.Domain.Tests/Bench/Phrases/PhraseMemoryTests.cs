using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>The bench line reads while it is being typed. How long that takes is measured apart, since a busy machine is slow; what it takes in memory is the same on each.</summary>
public sealed class PhraseMemoryTests(ITestOutputHelper output)
{
    // One phrase in seven of every hand: near a thousand, which is enough for a mean.
    private const int Every = 7;

    [Fact]
    public void A_phrase_is_read_with_little_memory()
    {
        var phrases = PhraseCorpus.All.Where((_, index) => index % Every == 0).Select(labelled => (labelled.Phrase, Context: PhraseCorpus.Context(labelled.Before))).ToList();
        PhraseReader.Read(phrases[0].Phrase, phrases[0].Context);

        var taken = phrases.Select(phrase => Taken(phrase.Phrase, phrase.Context)).Order().ToList();

        output.WriteLine($"{taken.Average() / 1024:0} KiB a phrase, 99 of 100 within {taken[taken.Count * 99 / 100] / 1024}, the most {taken[^1] / 1024}");
        Assert.InRange(taken.Average(), 1, 300 * 1024);
    }

    private static long Taken(string phrase, PhraseContext context)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        PhraseReader.Read(phrase, context);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
