using System.Diagnostics;
using System.Globalization;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>The bench line reads while it is being typed.</summary>
public sealed class PhraseSpeedTests(ITestOutputHelper output)
{
    private const int Rounds = 10;

    // One phrase in seven of every hand: a thousand, which is enough for a mean.
    private const int Every = 7;

    [Fact]
    public void A_phrase_is_read_in_a_millisecond()
    {
        var phrases = PhraseCorpus.All.Where((_, index) => index % Every == 0).Select(labelled => (labelled.Phrase, Context: PhraseCorpus.Context(labelled.Before))).ToList();
        Read(phrases);
        var best = Enumerable.Range(0, 3).Min(_ => Read(phrases));

        var each = phrases.Select(phrase => Enumerable.Range(0, Rounds).Min(_ => Read([phrase]))).Order().ToList();

        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{best / phrases.Count:0} µs a phrase, the best of three rounds over {phrases.Count}; each at its best of {Rounds}: mean {each.Average():0} µs, 99 of 100 within {each[each.Count * 99 / 100]:0} µs, the longest {each[^1]:0} µs"));

        // A phrase at its best of some reads is shorter than what a busy machine takes away at once; a whole round isn't.
        Assert.InRange(each.Average(), 0, 1000);
    }

    private static double Read(List<(string Phrase, PhraseContext Context)> phrases)
    {
        var clock = Stopwatch.StartNew();
        foreach (var (phrase, context) in phrases)
        {
            PhraseReader.Read(phrase, context);
        }

        return clock.Elapsed.TotalMicroseconds;
    }
}
