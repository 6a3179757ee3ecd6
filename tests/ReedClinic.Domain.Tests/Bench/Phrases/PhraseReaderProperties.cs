using CsCheck;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What holds for every phrase, whatever is in it.</summary>
public sealed class PhraseReaderProperties
{
    private static readonly PhraseContext Nothing = new(BenchLog.Empty, Tuning.Standard);

    private static readonly string[] Words =
    [
        .. PhraseCorpus.All.SelectMany(labelled => labelled.Phrase.Split(' ')).Distinct(),
        "½", "0,2", "-12", "♭", "B♭", "C6", "…", "—", "?", ";", ".", ",", "\n", "’", "don’t", "no,", "sorry,", "two tenths", "99999999999999999999", "1/0", "👍", "\u200b", "\ud800", "İ", "ß", "\0",
    ];

    private static readonly Gen<string> OfWords = Gen.Int[0, Words.Length - 1].Select(index => Words[index]).Array[0, 60].Select(words => string.Join(' ', words));

    private static readonly Gen<string> OfAnything = Gen.Char.Array[0, 300].Select(characters => new string(characters));

    [Fact]
    public void Whatever_is_typed_is_read_and_no_visible_character_is_lost() =>
        Gen.OneOf(OfWords, OfAnything, Gen.Select(OfWords, OfAnything, (one, other) => one + other)).Sample(
            text =>
            {
                var reading = PhraseReader.Read(text, Nothing);
                var kept = new bool[text.Length];
                foreach (var span in reading.Entries.Select(entry => entry.Span).Concat(reading.LeftOver))
                {
                    Assert.InRange(span.Start, 0, text.Length);
                    Assert.InRange(span.Length, 0, text.Length - span.Start);
                    Array.Fill(kept, true, span.Start, span.Length);
                }

                Assert.All(text.Select((c, index) => (c, index)), at => Assert.True(kept[at.index] || char.IsWhiteSpace(at.c)));
            },
            iter: 3000);

    [Fact]
    public void Whatever_is_read_makes_an_entry_or_says_why_not() =>
        OfWords.Sample(
            text => Assert.All(PhraseReader.Read(text, Nothing).Entries, entry => Assert.True(entry.ToEntry(Nothing) is Outcome<BenchEntry>.Done or Outcome<BenchEntry>.Refused)),
            iter: 2000);

    [Theory]
    [InlineData("way. oh narrower improved, Spine: soup")]
    public void What_is_looked_at_again_at_the_end_is_looked_at_where_it_was_said(string text) => Assert.NotEmpty(PhraseReader.Read(text, Nothing).Entries);

    [Fact]
    public void Two_thousand_characters_of_anything_are_read_and_a_longer_text_keeps_its_end()
    {
        foreach (var piece in (string[])["the ", "a", "clip a hair ", "left, no, the right ", "and ", "1", "of the ", "((((", "no sorry ", "C B A "])
        {
            var text = string.Concat(Enumerable.Repeat(piece, 2000 / piece.Length + 40));
            var reading = PhraseReader.Read(text, Nothing);

            Assert.Equal(text.TrimEnd().Length, reading.Entries.Select(entry => entry.Span).Concat(reading.LeftOver).Max(span => span.Start + span.Length));
        }
    }

    [Fact]
    public void Every_labelled_phrase_makes_entries_that_the_log_takes() =>
        Assert.All(PhraseCorpus.All, labelled =>
        {
            var context = PhraseCorpus.Context(labelled.Before);
            Assert.All(
                PhraseReader.Read(labelled.Phrase, context).Entries,
                entry => Assert.IsType<Outcome<BenchEntry>.Done>(entry.ToEntry(context)));
        });
}
