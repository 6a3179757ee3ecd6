using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Letters;
using UglyToad.PdfPig;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>The printed letter says what the letter on the screen says, word for word and once, in the same order; read back by Poppler and by PdfPig.</summary>
public sealed class LetterWordsTests
{
    private static readonly Dictionary<string, Func<LetterDraft>> Letters = new()
    {
        ["usual"] = () => PrintedLetter.Usual(),
        ["as it is composed"] = () => LetterComposer.Compose(LetterScene.Usual(new Guid("018f0000-0000-7000-8000-000000000001")).Material),
        ["one reed"] = () => PrintedLetter.Usual(1),
        ["twelve reeds"] = () => PrintedLetter.Usual(12),
        ["twelve marks"] = () => PrintedLetter.Marked(ScrapeStyle.ShortScrape, Instrument.CorAnglais, [.. Enumerable.Range(0, 12).Select(number => new ReedMark(new Place((Zone)(number + 1)), (MarkKind)(number % 5), "some words about it", "seen twice", number))]),
        ["no findings"] = () => PrintedLetter.Usual() is var letter ? letter with
        {
            LessonKind = null,
            LessonMarks = [],
            Reeds = [.. letter.Reeds.Select(reed => reed with { Marks = [], Crow = null })],
            Blocks = [.. letter.Blocks.Where(block => block.Kind is not (BlockKind.Lesson or BlockKind.Stroke)).Select(block => block with { Rows = [] })],
        } : throw new InvalidOperationException(),
        ["very long words"] = () => Saying("Donaudampfschifffahrtsgesellschaft", new string('m', 400), string.Join('-', Enumerable.Repeat("lime", 60)), $"https://example.org/{new string('x', 200)}"),
        ["emoji"] = () => Saying("Dear 😀👩‍👩‍👧, thank you 👍🏽!", "😀😀😀"),
        ["right to left"] = () => Saying("Dear שירה and ليلى,", "\u202Bשירה\u202C, your reed", "Ольга, Łucja, Őrs, Nguyễn Thế"),
        ["much"] = () => Saying(string.Join(' ', Enumerable.Repeat("reed", LetterBlock.LongestText / 5)), new string('W', LetterBlock.LongestText), string.Concat(Enumerable.Repeat("ab\n", LetterBlock.LongestText / 3))),
        ["only spaces"] = () => Saying(" ", "\u00A0\u2003 ", "\n\n", "x"),
        // Control characters are left out: HTML reads some of them as other signs, and paper has none.
        ["hostile"] = () => Saying(HostileTexts.All.Select(text => string.Concat(text.Text.Where(sign => sign == '\n' || !char.IsControl(sign))))),
        ["hostile everywhere"] = () => Everywhere("<script>alert('x')</script> & \"quoted\" \\( ) %PDF endobj"),
    };

    public static TheoryData<string> Names => [.. Letters.Keys];

    [Theory, MemberData(nameof(Names))]
    public async Task Poppler_reads_the_letter_of_the_screen(string name)
    {
        var letter = Letters[name]();
        var pdf = LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4);

        var read = await Outside.ReadAsync(pdf, "pdftotext", "-raw", "-enc", "UTF-8", "{}", "-");

        Same(letter, read.TrimEnd('\f').Split('\f'));
    }

    [Theory, MemberData(nameof(Names))]
    public void PdfPig_reads_the_letter_of_the_screen(string name)
    {
        var letter = Letters[name]();

        using var pdf = PdfDocument.Open(LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.UsLetter));

        Same(letter, [.. pdf.GetPages().Select(page => string.Concat(page.Letters.Select(sign => sign.Value)))]);
    }

    // What belongs to the page stands at its end, and the head of a table that goes on at its beginning.
    private static void Same(LetterDraft letter, string[] pages)
    {
        var read = string.Concat(pages.Select((page, index) =>
        {
            var foot = LetterAsSaid.Bare(PrintText.Of($"{letter.Code}page {index + 1} of {pages.Length}"));
            const string Head = "TestWhenitcameNow";
            var bare = LetterAsSaid.Bare(page);
            Assert.EndsWith(foot, bare, StringComparison.Ordinal);
            return bare[(bare.StartsWith(Head, StringComparison.Ordinal) ? Head.Length : 0)..^foot.Length];
        }));

        Assert.Equal(LetterAsSaid.Of(letter), read);
    }

    private static LetterDraft Saying(params IEnumerable<string> texts)
    {
        var letter = PrintedLetter.Usual(1);
        List<string> all = [.. texts];
        return letter with { Blocks = [PrintedLetter.Block("greeting", BlockKind.Greeting, all), PrintedLetter.Block("plan", BlockKind.Plan, all) with { Heading = "For the next reed", IsList = true }, .. letter.Blocks.Skip(1)] };
    }

    private static LetterDraft Everywhere(string text)
    {
        var letter = PrintedLetter.Usual(2);
        return letter with
        {
            Studio = text,
            Code = text,
            Signature = text,
            LessonMarks = [.. letter.LessonMarks.Select(mark => mark with { Words = text, Detail = text })],
            Reeds = [.. letter.Reeds.Select(reed => reed with { HowToRecognise = text, Marks = [.. reed.Marks.Select(mark => mark with { Words = text, Detail = text })] })],
            Blocks =
            [
                .. letter.Blocks.Select(block => block with
                {
                    Heading = text,
                    Paragraphs = [LetterParagraph.Plain(text)],
                    Rows = [.. block.Rows.Select(row => row with { Test = text, Before = text, Now = text })],
                }),
            ],
        };
    }
}
