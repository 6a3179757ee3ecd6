using CsCheck;
using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Tests.Setting;

public sealed class LineBreakerTests
{
    private static readonly Gen<string[]> Words = Gen.String[Gen.Char['a', 'z'], 1, 9].Array[1, 11];

    // The idea of weighing all lines of a paragraph together: D. E. Knuth and M. F. Plass, “Breaking paragraphs into lines”, Software:
    // Practice and Experience 11 (1981), 1119–1184. What is weighed is ours: the squared share of room at the end of every line but the
    // last, and 0.1 for a last line of less than 0.15 of its width. Here every way to break is tried, and none is better than the breaker's.
    [Fact]
    public void No_way_to_break_a_small_paragraph_is_better_than_the_one_that_was_found() =>
        Gen.Select(Words, Gen.Int[12, 34], Gen.Int[12, 34], Gen.Int[0, 3]).Sample((words, first, then, narrow) =>
        {
            int Width(int line) => line < narrow ? first : then;
            var set = LineBreaker.Break(string.Join(' ', words), FixedType.Body, new FixedType(), line => Width(line) * FixedType.Sign, 12 * FixedType.Sign);

            var best = Ways(words).Where(way => way.Select((line, index) => line.Length <= Width(index)).All(fits => fits)).Min(way => Cost(way, Width));
            Assert.InRange(Cost([.. set.Select(line => line.TrimEnd())], Width), best - 1e-9, best + 1e-9);
        }, iter: 3000);

    [Fact]
    public void No_line_is_wider_than_its_measure_and_no_letter_is_lost_even_of_words_that_are_wider() =>
        Gen.Select(Gen.String[Gen.Char["abc-–/ \n"], 1, 120], Gen.Int[3, 20]).Sample((text, width) =>
        {
            var set = LineBreaker.Break(text, FixedType.Body, new FixedType(), _ => width * FixedType.Sign, width * FixedType.Sign);

            Assert.All(set, line => Assert.InRange(line.TrimEnd().Length, 0, width));
            Assert.Equal(text.Replace(" ", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal), string.Concat(set).Replace(" ", "", StringComparison.Ordinal));
        }, iter: 3000);

    [Fact]
    public void Line_ends_that_were_typed_stay()
    {
        Assert.Equal(["one two ", " ", "three"], Broken("one two\n\nthree", 20));
        Assert.Equal(["one ", "two ", "three"], Broken("one two\nthree", 5));
    }

    [Fact]
    public void A_block_as_long_as_it_may_be_of_the_shortest_words_is_broken_at_its_best_too()
    {
        var set = Broken(string.Concat(Enumerable.Repeat("- ", 3000)).Trim(), 51);

        Assert.Equal(116, set.Count);
        Assert.All(set.SkipLast(1), line => Assert.Equal(51, line.TrimEnd().Length));
    }

    [Fact]
    public void Lines_one_after_another_are_the_text_again() =>
        Gen.Select(Words, Gen.Int[5, 40]).Sample((words, width) => Assert.Equal(string.Join(' ', words), string.Concat(Broken(string.Join(' ', words), width))));

    [Fact]
    public void A_word_that_is_wider_than_the_line_is_cut_to_it_between_letters_and_not_within_one()
    {
        Assert.Equal(["aaaa", "aaa ", "b"], Broken("aaaaaaa b", 4));
        Assert.Equal(["👩‍👩‍👧", "👩‍👩‍👧"], Broken("👩‍👩‍👧👩‍👩‍👧", 8));
    }

    [Fact]
    public void A_word_is_parted_behind_its_hyphen_and_a_range_of_numbers_is_not()
    {
        Assert.Equal(["a lime-", "coloured"], Broken("a lime-coloured", 9));
        Assert.Equal(["weeks ", "10–12"], Broken("weeks 10–12", 9));
    }

    private static IReadOnlyList<string> Broken(string text, int signs) =>
        LineBreaker.Break(text, FixedType.Body, new FixedType(), _ => signs * FixedType.Sign, signs * FixedType.Sign);

    private static IEnumerable<List<string>> Ways(string[] words) => Enumerable.Range(0, 1 << (words.Length - 1)).Select(way =>
    {
        List<string> lines = [words[0]];
        for (var i = 1; i < words.Length; i++)
        {
            if ((way >> (i - 1) & 1) == 1)
            {
                lines.Add(words[i]);
            }
            else
            {
                lines[^1] += " " + words[i];
            }
        }

        return lines;
    });

    private static double Cost(List<string> lines, Func<int, int> width) =>
        lines.SkipLast(1).Select((line, index) => Math.Pow((double)(width(index) - line.Length) / width(index), 2)).Sum()
        + (lines[^1].Length < 0.15 * width(lines.Count - 1) ? 0.1 : 0);
}
