using ReedClinic.Domain.Drawings;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Tests.Letters;
using UglyToad.PdfPig;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>The printed letter, read back by PdfPig: a reader that isn't ours.</summary>
public sealed class LetterPrintTests
{
    private const int MostSentencesMore = 14;

    private static readonly DateTimeOffset Day = new(2026, 3, 9, 12, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(PaperSize.A4, 595, 842)]
    [InlineData(PaperSize.UsLetter, 612, 792)]
    public void Says_every_word_of_the_letter_in_its_order_on_the_paper_that_was_asked_for(PaperSize size, int width, int height)
    {
        var letter = Letter();

        using var pdf = PdfDocument.Open(LetterPrint.Pdf(letter, Day, size));

        Assert.InRange(pdf.NumberOfPages, 2, 4);
        Assert.Equal((width, height), ((int)Math.Round(pdf.GetPage(1).Width), (int)Math.Round(pdf.GetPage(1).Height)));
        var printed = Squeezed(string.Concat(pdf.GetPages().Select(page => string.Concat(page.Letters.Select(sign => sign.Value)))
            .Select((page, index) => page.Replace($"{letter.Code}page{index + 1}of{pdf.NumberOfPages}", "", StringComparison.Ordinal).Replace($"{letter.Code}page {index + 1} of {pdf.NumberOfPages}", "", StringComparison.Ordinal))));
        var from = 0;
        foreach (var paragraph in letter.Blocks.SelectMany(block => block.Paragraphs))
        {
            var at = printed.IndexOf(Squeezed(paragraph.Text), from, StringComparison.Ordinal);
            Assert.True(at >= 0, paragraph.Text);
            from = at;
        }
    }

    [Theory, InlineData(PaperSize.A4), InlineData(PaperSize.UsLetter)]
    public void A_letter_about_three_reeds_takes_four_pages_at_most_and_still_does_with_fourteen_sentences_more_on_each(PaperSize size)
    {
        var letter = PrintedLetter.Usual();
        for (var more = 0; more <= MostSentencesMore; more += 2)
        {
            var longer = letter with { Blocks = [.. letter.Blocks.Select(block => block.Kind == BlockKind.ReedStory ? block with { Paragraphs = [.. block.Paragraphs, .. Enumerable.Repeat(LetterParagraph.Plain("I looked at the opening once more, and it was as it had been before."), more)] } : block)] };

            using var pdf = PdfDocument.Open(LetterPrint.Pdf(longer, Day, size));

            Assert.True(pdf.NumberOfPages <= 4, $"{more} sentences more on each reed: {pdf.NumberOfPages} pages");
        }
    }

    [Fact]
    public void The_numbers_of_a_reed_map_are_as_large_as_their_discs_hold_and_the_first_page_tells_what_the_letter_holds()
    {
        using var pdf = PdfDocument.Open(LetterPrint.Pdf(Letter(), Day, PaperSize.A4));

        var numbers = pdf.GetPages().SelectMany(page => page.Letters)
            .Where(sign => char.IsAsciiDigit(sign.Value[0]) && sign.PointSize < 8 && sign.FontName?.Contains("Sans 3 Semi", StringComparison.Ordinal) == true)
            .Select(sign => sign.PointSize).ToList();
        Assert.InRange(numbers.Max(), 6.9, 7.6);
        Assert.InRange(numbers.Min(), 6.49, 7.6); // where a drawing had to be made smaller, too
        var first = Squeezed(string.Concat(pdf.GetPage(1).Letters.Select(sign => sign.Value)));
        Assert.Contains(Squeezed("In this letter: What you do well · What you asked · Reed 1 · Reed 2 · What you asked about reed 2 · Reed 3 · What they had in common"), first, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_way_of_a_crow_explains_itself_and_tells_every_step_as_on_the_screen()
    {
        var letter = PrintedLetter.Usual();
        using var pdf = PdfDocument.Open(LetterPrint.Pdf(letter, Day, PaperSize.A4));

        var printed = Squeezed(string.Concat(pdf.GetPages().SelectMany(page => page.Letters).Select(sign => sign.Value)));

        Assert.Equal(letter.Reeds.Count, Times(printed, "within 30 cents of C at A 442 Hz"));
        Assert.Equal(1, Times(printed, "“A 442 Hz” is the A to tune to: 442 swings of the air in a second"));
        Assert.All(letter.Reeds.SelectMany(reed => CrowSketch.Steps(reed.Crow!, CrowShow.Letter)).Distinct().Select(step => char.ToUpperInvariant(step[0]) + step[1..] + "."), step => Assert.True(Times(printed, step) >= 1, step));
    }

    [Fact]
    public void What_was_asked_about_a_reed_stands_in_the_list_of_parts_and_under_a_heading_of_the_same_words()
    {
        var letter = PrintedLetter.Usual();
        letter = letter with { Blocks = [.. letter.Blocks.SelectMany(block => block.Key == "reed-2-now" ? [block, PrintedLetter.Block("reed-2-answers", BlockKind.ReedAnswers, "You asked how long to soak it. Three minutes.") with { Reed = block.Reed }] : new[] { block })] };
        using var pdf = PdfDocument.Open(LetterPrint.Pdf(letter, Day, PaperSize.A4));

        var printed = Squeezed(string.Concat(pdf.GetPages().SelectMany(page => page.Letters).Select(sign => sign.Value)));

        Assert.Contains(Squeezed("Reed 2 · What you asked about reed 2 · Reed 3"), printed, StringComparison.Ordinal);
        Assert.Contains(Squeezed("What you asked about reed 2You asked how long to soak it."), printed, StringComparison.Ordinal);
        Assert.Contains("What you asked about reed 2\n\nYou asked how long", LetterFile.Plain(letter, Day), StringComparison.Ordinal);
    }

    private static int Times(string printed, string words) => printed.Split(Squeezed(words)).Length - 1;

    [Fact]
    public void Letters_that_paper_cant_show_are_named_and_stand_as_squares()
    {
        var block = Letter().Blocks[0] with { Paragraphs = [LetterParagraph.Plain("Dear 王 Łucja and Ольга, here is ½ of a B♭ 😀 for שירה.")] };
        var letter = Letter() with { Blocks = [block] };

        Assert.Equal(["王", "😀", "שירה."], LetterPrint.NotPrinted(letter));
        using var pdf = PdfDocument.Open(LetterPrint.Pdf(letter, Day, PaperSize.A4));
        var words = string.Join(' ', pdf.GetPage(1).GetWords().Select(word => word.Text));
        Assert.Contains("Dear ▢ Łucja and Ольга, here is ½ of a B♭ ▢ for ▢▢▢▢.", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_corrected_letter_says_so_under_its_day_wherever_it_is_kept()
    {
        const string Said = "Corrected: it takes the place of the letter of 3 March 2026.";
        var before = new DateTimeOffset(2026, 3, 3, 9, 0, 0, TimeSpan.Zero);
        var among = new LetterAmong(before);
        using var pdf = PdfDocument.Open(LetterPrint.Pdf(Letter(), Day, PaperSize.A4, among));
        using var first = PdfDocument.Open(LetterPrint.Pdf(Letter(), Day, PaperSize.A4));

        Assert.Contains(Said, string.Join(' ', pdf.GetPage(1).GetWords().Take(40).Select(word => word.Text)), StringComparison.Ordinal);
        Assert.DoesNotContain("Corrected", string.Join(' ', first.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text)), StringComparison.Ordinal);
        Assert.Contains(Said, LetterFile.Plain(Letter(), Day, among), StringComparison.Ordinal);
        Assert.Contains($"<p>{Said}</p>", LetterFile.Html(Letter(), Day, among), StringComparison.Ordinal);
        Assert.DoesNotContain("Corrected", LetterFile.Plain(Letter(), Day) + LetterFile.Html(Letter(), Day), StringComparison.Ordinal);
    }

    [Fact]
    public void A_letter_and_its_correction_of_the_same_day_are_told_apart_by_the_hour()
    {
        var at = new DateTimeOffset(2026, 3, 4, 16, 40, 0, TimeSpan.FromHours(1));
        var before = new DateTimeOffset(2026, 3, 4, 8, 5, 0, TimeSpan.Zero);

        Assert.Equal(["Corrected at 16:40: it takes the place of the letter that was sent at 09:05 on the same day."], new LetterAmong(before).Lines(at));
        Assert.Equal(["Sent at 09:05, and replaced at 16:40 on the same day by a corrected letter."], new LetterAmong(ReplacedAt: at).Lines(before.ToOffset(at.Offset)));
        Assert.Equal("Corrected: it takes the place of the letter of 3 March 2026.", LetterPage.Corrected(before.AddDays(-1), at));
    }

    [Fact]
    public void A_letter_that_was_replaced_says_so_and_a_corrected_one_what_was_put_right_wherever_it_is_kept()
    {
        string[] said = ["Replaced on 5 March 2030 by a corrected letter.", $"Corrected on {LetterPage.Day(Day)}: It is reed 2 & not reed 3."];
        var among = new LetterAmong(null, "It is reed 2 & not reed 3.", new DateTimeOffset(2030, 3, 5, 9, 0, 0, TimeSpan.Zero));
        using var pdf = PdfDocument.Open(LetterPrint.Pdf(Letter(), Day, PaperSize.A4, among));
        var printed = string.Join(' ', pdf.GetPage(1).GetWords().Take(60).Select(word => word.Text));

        Assert.All(said, line => Assert.Contains(line, printed, StringComparison.Ordinal));
        Assert.All(said, line => Assert.Contains("\n" + line + "\n", LetterFile.Plain(Letter(), Day, among), StringComparison.Ordinal));
        Assert.All(said, line => Assert.Contains($"<p>{line.Replace("&", "&amp;", StringComparison.Ordinal)}</p>", LetterFile.Html(Letter(), Day, among), StringComparison.Ordinal));
    }

    [Fact]
    public void Text_that_is_none_is_set_all_the_same()
    {
        Assert.Equal("abc", PrintText.Of("a\uFFFEb\uFFFFc"));
        Assert.Equal("a▢c", PrintText.Of("a\uD800c"));
        Assert.Equal("abcd", PrintText.Of("a\u202Eb\u0000c\u00ADd"));
        Assert.Equal("é and ñ", PrintText.Of("e\u0301 and n\u0303"));
    }

    private static LetterDraft Letter() => LetterComposer.Compose(LetterScene.Usual(new Guid("018f0000-0000-7000-8000-000000000001")).Material);

    // Where lines break is the setter's business, and so are spaces that hold a number and its unit together.
    private static string Squeezed(string text) => string.Concat(PrintText.Of(text).Where(sign => !char.IsWhiteSpace(sign))).Replace('\'', '’');
}
