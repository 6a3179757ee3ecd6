using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Letters.Drafts;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter can be read by somebody who is fourteen, and says no more than it knows.</summary>
public sealed partial class LetterReadingTests
{
    /// <summary>How a word of the trade is met, and how one sees that it is explained.</summary>
    private static readonly (string Word, Regex Met, Regex Explained)[] TradeWords =
    [
        ("tip", new(@"\btips?\b"), new(@"\btips? \(the thin|“tip”")),
        ("heart", new(@"\bheart\b"), new(@"\bheart \(the thick(er)? |“heart”")),
        ("back", new(@"\bthe back\b(?! of)"), new(@"\bback \(the |“back”")),
        ("spine", new(@"\bspine\b"), new(@"\bspine \(the |“spine”")),
        ("rails", new(@"\brails?\b"), new(@"\brails? \(the narrow|“rails”")),
        ("windows", new(@"\bwindows?\b"), new(@"\bwindows? \(the |“windows”")),
        ("bark", new(@"\bbark\b"), new(@"\bbark \(the |“bark”")),
        ("staple", new(@"\bstaple\b"), new(@"\bstaple \(the |“staple”")),
        ("plaque", new(@"\bplaque\b"), new(@"\bplaque \(the |“plaque”")),
        ("crow", new(@"\bcrow\b", RegexOptions.IgnoreCase), new(@"\bcrow( it)? \((the|blow)|“crow”", RegexOptions.IgnoreCase)),
        ("opening", new(@"\bopening\b"), new(@"\bopening \(the gap|“opening”")),
        ("cent", new(@"\bcents?\b(?! is a hundredth)(?!”)"), new(@"\bcents? \(a cent is a hundredth of a semitone|“cent”")),
        ("pass", new(@"\b(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|each|every|single) pass(es)?\b"), new(@"\bpass(es)? \(a |“pass”")),
        ("overlap", new(@"\boverlap\b"), new(@"\boverlap \((how|by|one)|“overlap”")),
    ];

    private static readonly IReadOnlyList<(InventedBatch Batch, LetterDraft Letter)> Twenty =
        [.. Enumerable.Range(1, 20).Select(seed => InventedBatch.Of(seed)).Select(batch => (batch, LetterComposer.Compose(batch.Scene.Material)))];

    [Fact]
    public void Sentences_are_short_on_the_whole_and_none_is_very_long()
    {
        var lengths = Twenty.SelectMany(draft => SaidSentences.Of(draft.Letter, draft.Batch.Typed)).Select(SaidSentences.Words).ToList();

        Assert.InRange(lengths.Average(), 8, 18);
        Assert.InRange(lengths.Max(), 10, 40);
    }

    [Fact]
    public void Each_word_of_the_trade_is_explained_once_in_the_sentence_where_it_is_met_or_right_after_it() =>
        Assert.All(Twenty, draft =>
        {
            var sentences = draft.Letter.Blocks.Where(block => block.Kind is not (BlockKind.Cautions or BlockKind.Closing))
                .SelectMany(block => block.Paragraphs).SelectMany(paragraph => paragraph.Sentences)
                .Select(sentence => draft.Batch.Typed.Aggregate(sentence.Text, (text, typed) => text.Replace(typed, "…", StringComparison.OrdinalIgnoreCase)))
                .ToList();
            foreach (var (word, met, explained) in TradeWords)
            {
                var first = sentences.FindIndex(met.IsMatch);
                if (first >= 0)
                {
                    Assert.True(sentences.Take(first + 3).Any(explained.IsMatch), $"{word}: {sentences[first]}");
                }

                Assert.InRange(sentences.Sum(explained.Count), first < 0 ? 0 : 1, 1);
            }
        });

    [Fact]
    public void No_sentence_comes_twice_in_one_letter() => Assert.All(Twenty, draft =>
        Assert.Empty(SaidSentences.Of(draft.Letter, draft.Batch.Typed)
            .Where(sentence => SaidSentences.Words(sentence) > 4)
            .CountBy(sentence => sentence)
            .Where(pair => pair.Value > 1)
            .Select(pair => pair.Key)));

    [Fact]
    public void Whatever_a_letter_says_of_a_reed_out_of_its_log_names_the_entries() => Assert.All(Twenty, draft =>
    {
        var unlogged = LetterComposer.Compose(draft.Batch.Scene.Material with { Logs = new Dictionary<ReedId, BenchLog>() });
        var known = unlogged.Blocks.SelectMany(Told).Select(sentence => InBrackets().Replace(sentence.Text, "")).ToHashSet();
        Assert.All(
            draft.Letter.Blocks.Where(block => block.Reed is not null).SelectMany(Told).Where(sentence => sentence.From.Count == 0),
            sentence => Assert.True(known.Contains(InBrackets().Replace(sentence.Text, "")) || IsExplanation().IsMatch(sentence.Text), sentence.Text));
    });

    [Fact]
    public void Apostrophes_are_those_of_a_printed_page() => Assert.All(Twenty, draft => Assert.DoesNotContain(
        draft.Letter.Blocks.SelectMany(Told),
        sentence => sentence.Text.Contains('\'', StringComparison.Ordinal) && !draft.Batch.Typed.Any(typed => sentence.Text.Contains(typed, StringComparison.OrdinalIgnoreCase))));

    private static IEnumerable<LetterSentence> Told(LetterBlock block) => block.Paragraphs.SelectMany(paragraph => paragraph.Sentences);

    [GeneratedRegex(@" \([^)]*\)")]
    private static partial Regex InBrackets();

    [GeneratedRegex(@"“[a-z ]+”")]
    private static partial Regex IsExplanation();
}
