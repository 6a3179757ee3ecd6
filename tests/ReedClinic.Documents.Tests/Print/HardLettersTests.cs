using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Letters;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using PdfLetter = UglyToad.PdfPig.Content.Letter;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>Whatever a letter says, on both papers it lies within the margins and in whole pieces. Read back by PdfPig and looked at by Poppler.</summary>
public sealed class HardLettersTests
{
    // A slanted f leans out of its place.
    private const double Overhang = 3;
    private const double HeadSize = 12.5;

    public static TheoryData<string, PaperSize> All => [.. from name in HardLetters.Names from size in Enum.GetValues<PaperSize>() select (name, size)];

    public static TheoryData<string> Names => [.. HardLetters.Names];

    [Theory, MemberData(nameof(All))]
    public void Every_word_stands_within_the_margins(string name, PaperSize size)
    {
        var paper = Paper.Of(size);
        using var pdf = Printed(HardLetters.Of(name), size);

        Assert.All(pdf.GetPages().SelectMany(page => page.GetWords().Where(word => !string.IsNullOrWhiteSpace(word.Text))), word =>
        {
            var box = word.BoundingBox;
            Assert.True(box.Left >= paper.Left - Overhang && box.Right <= paper.Width - paper.Right + Overhang && box.Top <= paper.Height - paper.Top + Overhang, $"{word.Text} at {box}");
            Assert.True(box.Bottom >= paper.Bottom - Overhang || IsFoot(word, paper), $"{word.Text} at {box}");
        });
    }

    [Theory, MemberData(nameof(All))]
    public async Task No_ink_lies_in_the_margins(string name, PaperSize size)
    {
        const double Dot = 60 / 72.0;
        var paper = Paper.Of(size);

        var pictures = await GoldenPicture.PicturesAsync(LetterPrint.Pdf(HardLetters.Of(name), PrintedLetter.Day, size));

        Assert.All(pictures, page =>
        {
            Assert.False(page.HasInk(0, 0, (int)(paper.Left * Dot) - 1, page.Height), "left");
            Assert.False(page.HasInk((int)Math.Ceiling((paper.Width - paper.Right) * Dot) + 1, 0, page.Width, page.Height), "right");
            Assert.False(page.HasInk(0, 0, page.Width, (int)(paper.Top * Dot) - 1), "above");
            Assert.False(page.HasInk(0, (int)Math.Ceiling(paper.Foot * Dot) + 1, page.Width, (int)((paper.Height - (paper.Bottom * 0.75)) * Dot)), "between the text and the page’s number");
        });
    }

    [Theory, MemberData(nameof(All))]
    public void No_heading_is_the_last_on_its_page(string name, PaperSize size)
    {
        var paper = Paper.Of(size);
        using var pdf = Printed(HardLetters.Of(name), size);

        Assert.All(pdf.GetPages(), page =>
        {
            var text = page.Letters.Where(sign => sign.StartBaseLine.Y > paper.Bottom - Overhang && sign.StartBaseLine.X < paper.Left + 90).ToList();
            var heads = text.Where(IsHead).ToList();
            Assert.True(heads.Count == 0 || text.Any(sign => !IsHead(sign) && sign.StartBaseLine.Y < heads.Min(head => head.StartBaseLine.Y)), $"page {page.Number}");
        });
    }

    [Theory, InlineData(PaperSize.A4), InlineData(PaperSize.UsLetter)]
    public void No_row_of_any_table_is_parted(PaperSize size)
    {
        var letter = PrintedLetter.Usual(12);
        string Cell(Domain.Reeds.ReedId reed, int row, int words) => string.Join(' ', Enumerable.Repeat($"n{letter.Reeds.First(known => known.Id == reed).Number}r{row}", words));
        letter = letter with
        {
            Blocks = [.. letter.Blocks.Select(block => block with { Rows = [.. block.Rows.Select((row, index) => row with { Test = Cell(block.Reed!.Value, index, 1), Before = Cell(block.Reed!.Value, index, 30), Now = Cell(block.Reed!.Value, index, 3) })] })],
        };
        using var pdf = Printed(letter, size);

        var pages = pdf.GetPages().SelectMany(page => page.GetWords().Select(word => (word.Text, page.Number))).ToList();
        foreach (var row in from reed in letter.Reeds from row in Enumerable.Range(0, 4) select $"n{reed.Number}r{row}")
        {
            Assert.Equal(34, pages.Count(word => word.Text == row));
            Assert.Single(pages.Where(word => word.Text == row).Select(word => word.Number).Distinct());
        }
    }

    [Fact]
    public void Whatever_paper_shows_as_a_square_the_teacher_is_told_of()
    {
        var letter = PrintedLetter.Usual(1);
        var crow = letter.Reeds[0].Crow!;
        letter = letter with
        {
            Studio = "王studio",
            Signature = "王signature",
            LessonMarks = [letter.LessonMarks[0] with { Words = "王lesson", Detail = "王where" }],
            Reeds =
            [
                letter.Reeds[0] with
                {
                    HowToRecognise = "王tag",
                    Marks = [letter.Reeds[0].Marks[0] with { Words = "王mark", Detail = "王seen" }],
                    Crow = crow with { Sentence = "王crow", Moves = [crow.Moves[0] with { Work = ["王work"], Sentence = "王done" }, .. crow.Moves.Skip(1)] },
                },
            ],
            Blocks = [.. letter.Blocks.Select(block => block with { Heading = block.Heading is null ? null : "王head", Paragraphs = [LetterParagraph.Plain("王words")], Rows = [.. block.Rows.Select(row => row with { Test = "王test", Before = "王before", Now = "王now" })] })],
        };

        using var pdf = Printed(letter, PaperSize.A4);
        Assert.Contains(pdf.GetPages().SelectMany(page => page.GetWords()), word => word.Text.Contains("▢work", StringComparison.Ordinal));
        string[] typed = ["studio", "tag", "mark", "seen", "lesson", "where", "head", "words", "test", "before", "now", "crow", "work", "done", "signature"];
        Assert.Equal(typed.Select(word => "王" + word).Order(StringComparer.Ordinal), LetterPrint.NotPrinted(letter).Order(StringComparer.Ordinal));
    }

    [Theory, MemberData(nameof(Names))]
    public void As_plain_text_and_as_a_page_every_paragraph_is_whole(string name)
    {
        var letter = HardLetters.Of(name);

        var plain = Whole(LetterFile.Plain(letter, PrintedLetter.Day));
        var page = Whole(new AngleSharp.Html.Parser.HtmlParser().ParseDocument(LetterFile.Html(letter, PrintedLetter.Day)).Body!.TextContent);

        Assert.All(letter.Blocks.Where(block => !block.IsEmpty).SelectMany(block => block.Paragraphs), paragraph =>
        {
            Assert.Contains(Whole(paragraph.Text), plain, StringComparison.Ordinal);
            Assert.Contains(Whole(paragraph.Text), page, StringComparison.Ordinal);
        });

        // Half a sign is written as U+FFFD, here as in every file.
        static string Whole(string text) => LetterAsSaid.Bare(string.Concat(text.EnumerateRunes().Select(rune => rune.ToString())));
    }

    private static PdfDocument Printed(LetterDraft letter, PaperSize size) => PdfDocument.Open(LetterPrint.Pdf(letter, PrintedLetter.Day, size));

    private static bool IsFoot(Word word, Paper paper) => word.BoundingBox.Top < paper.Bottom * 0.75;

    private static bool IsHead(PdfLetter sign) => Math.Abs(sign.PointSize - HeadSize) < 0.1 && sign.FontName?.Contains("SemiBold", StringComparison.Ordinal) == true;
}
