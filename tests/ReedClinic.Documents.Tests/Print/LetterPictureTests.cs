using System.Text.Json;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Recordings;
using static ReedClinic.Media.Pack;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>Pictures in letters: shown on a page and on paper, said in plain text; read back by programs that aren't ours.</summary>
public sealed class LetterPictureTests
{
    private const string Key = "abcdefghijkm";
    private const string Words = "Thick [left] & \"right\" corners <of> a tip";
    private const int PixelsOfSide = 40;

    private static readonly byte[] Grey = Png(PixelsOfSide, 20, depth: 8, colour: 0);

    [Fact]
    public async Task On_paper_it_is_a_figure_that_says_what_it_shows()
    {
        var letter = With(BlockKind.Lesson, $"Look at this.\n\n[picture {Key}: {Words}]\n\nAnd so on.");
        var pdf = LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4, pictures: Files(Grey));

        using var json = JsonDocument.Parse(await Outside.ReadAsync(pdf, "qpdf", "--json=2", "--json-key=qpdf", "{}"));
        var figures = json.RootElement.GetRawText().Split("\"/Alt\"").Count(part => part.Contains("Thick [left]", StringComparison.Ordinal));
        Assert.Equal(1, figures);
        Assert.Matches($@"(?m)^ *[0-9]+ +[0-9]+ +image +{PixelsOfSide} +20 +gray", await Outside.ReadAsync(pdf, "pdfimages", "-list", "{}"));
        Assert.Contains("No syntax or stream encoding errors found", await Outside.ReadAsync(pdf, "qpdf", "--check", "{}"), StringComparison.Ordinal);
        var said = await Outside.ReadAsync(pdf, "pdftotext", "-enc", "UTF-8", "{}", "-");
        Assert.DoesNotContain("picture", said, StringComparison.OrdinalIgnoreCase);
        Assert.Matches("(?s)Look at this.*And so on", said);
    }

    [Fact]
    public async Task In_a_list_it_stands_between_the_items()
    {
        var letter = With(BlockKind.Plan, $"First.\n[picture {Key}: {Words}]\nThen.");
        var pdf = LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4, pictures: Files(Grey));

        Assert.Contains("gray", await Outside.ReadAsync(pdf, "pdfimages", "-list", "{}"), StringComparison.Ordinal);
        Assert.Contains("No syntax or stream encoding errors found", await Outside.ReadAsync(pdf, "qpdf", "--check", "{}"), StringComparison.Ordinal);
        Assert.Matches("(?s)<li><figure class=\"letter-picture\"><img .*</figure></li>", string.Concat(LetterPage.Sections(letter).Select(section => section.Body)));
    }

    [Fact]
    public async Task Where_it_cant_be_had_its_words_stand_in_its_place()
    {
        var letter = With(BlockKind.Lesson, $"[picture {Key}: {Words}]");
        foreach (var files in new[] { null, Files([1, 2, 3]) })
        {
            var said = await Outside.ReadAsync(LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4, pictures: files), "pdftotext", "-enc", "UTF-8", "{}", "-");
            Assert.Contains("Picture: Thick [left] &", said, StringComparison.Ordinal);
        }

        Assert.Contains($"Picture: {Words}\n", LetterFile.Plain(letter, PrintedLetter.Day), StringComparison.Ordinal);
        Assert.Contains("<p>Picture: Thick [left] &amp; &quot;right&quot; corners &lt;of&gt; a tip</p>", LetterFile.Html(letter, PrintedLetter.Day), StringComparison.Ordinal);
        Assert.Contains("<img src=\"pictures/one.png\" alt=\"Thick [left] &amp; &quot;right&quot; corners &lt;of&gt; a tip\"", LetterFile.Html(letter, PrintedLetter.Day, pictures: new Dictionary<string, string> { [Key] = "pictures/one.png" }), StringComparison.Ordinal);
    }

    [Fact]
    public void On_a_page_it_leads_to_its_letter_alone_and_only_in_words_that_somebody_wrote()
    {
        var letter = With(BlockKind.Lesson, $"[picture {Key}: {Words}]");
        var composed = PrintedLetter.Usual() with { Blocks = [.. letter.Blocks.Select(block => block with { ComposedText = null })] };

        Assert.Contains($"<img src=\"/letters/{letter.Code}/pictures/{Key}\" alt=\"Thick [left] &amp; &quot;right&quot; corners &lt;of&gt; a tip\"", Html(letter), StringComparison.Ordinal);
        Assert.DoesNotContain("<img", Html(composed), StringComparison.Ordinal);
        foreach (var words in new[] { "[picture ../secret: x]", "[picture a\"b: x]", "[picture https://evil.example: x]", $"[picture {Key}]", $"[picture {Key}: ]" })
        {
            Assert.DoesNotContain("<img", Html(With(BlockKind.Lesson, words)), StringComparison.Ordinal);
        }
    }

    // ISO/IEC 15948, table 11.1: every colour type at 8 bits, which are taken; no other is.
    [Theory]
    [InlineData(0, 8)]
    [InlineData(2, 8)]
    [InlineData(3, 8)]
    [InlineData(4, 8)]
    [InlineData(6, 8)]
    public async Task Every_kind_of_png_is_printed(int colour, int depth)
    {
        var png = Png(PixelsOfSide, 20, depth, colour);
        Assert.IsType<MediaReading.Clean>(MediaFile.Read(png, RecordingKind.ArrivalPhoto));
        var pdf = LetterPrint.Pdf(With(BlockKind.Lesson, $"[picture {Key}: {Words}]"), PrintedLetter.Day, PaperSize.A4, pictures: Files(png));

        Assert.Matches($@"(?m)^ *[0-9]+ +[0-9]+ +image +{PixelsOfSide} +20 ", await Outside.ReadAsync(pdf, "pdfimages", "-list", "{}"));
        Assert.Contains("No syntax or stream encoding errors found", await Outside.ReadAsync(pdf, "qpdf", "--check", "{}"), StringComparison.Ordinal);
    }

    // Exif 2.32 (CIPA DC-008), 4.6.4, Orientation: where the picture's first row and first column are to be seen.
    [Theory]
    [InlineData(1, "top", "left")]
    [InlineData(2, "top", "right")]
    [InlineData(3, "bottom", "right")]
    [InlineData(4, "bottom", "left")]
    [InlineData(5, "left", "top")]
    [InlineData(6, "right", "top")]
    [InlineData(7, "right", "bottom")]
    [InlineData(8, "left", "bottom")]
    public async Task A_photograph_is_printed_the_right_way_up(int wayUp, string row, string column)
    {
        var jpeg = Assert.IsType<MediaReading.Clean>(MediaFile.Read(FourGreys(wayUp), RecordingKind.ArrivalPhoto)).Bytes;
        Assert.Equal(wayUp, MediaFile.WayUp(jpeg.Span));
        var sheet = Paper.Of(PaperSize.A4);
        var pdf = PdfWriter.Write([[new PlacedOpen(FlowRole.Figure, "Four greys", 100, 100, 64, 64), new PlacedPicture(new(jpeg, 16, 16, wayUp), 100, 100, 64, 64), new PlacedClose()]], sheet, "t", "a");

        // The picture is lightest at its first row and first column, then along the row, then down the column.
        var seen = await SeenAsync(pdf);
        string[] opposite = [row, Opposite(column)];
        Assert.InRange(seen([row, column]), 235, 255);
        Assert.InRange(seen(opposite), 175, 204);
        Assert.InRange(seen([Opposite(row), column]), 115, 140);
        Assert.InRange(seen([Opposite(row), Opposite(column)]), 50, 85);
    }

    private static async Task<Func<string[], double>> SeenAsync(byte[] pdf)
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            await Outside.ReadAsync(pdf, "pdftoppm", "-gray", "-r", "72", "{}", Path.Combine(folder.FullName, "page"));
            var page = GreyPicture.Plain(await File.ReadAllBytesAsync(Directory.GetFiles(folder.FullName).Single(), TestContext.Current.CancellationToken));
            var means = page.Means(4);
            var across = (page.Width + 3) / 4;
            return sides => means[((sides.Contains("top") ? 116 : 148) / 4 * across) + ((sides.Contains("left") ? 116 : 148) / 4)];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Opposite(string side) => side switch { "top" => "bottom", "bottom" => "top", "left" => "right", _ => "left" };

    private static LetterDraft With(BlockKind kind, string words)
    {
        var letter = PrintedLetter.Usual(1);
        var block = letter.Blocks.First(block => block.Kind == kind);
        return letter with { Blocks = [.. letter.Blocks.Select(other => other == block ? block.EditedTo(words, block) : other)] };
    }

    private static string Html(LetterDraft letter) => string.Concat(LetterPage.Sections(letter).Select(section => section.Body));

    private static Dictionary<string, ReadOnlyMemory<byte>> Files(byte[] file) => new() { [Key] = file };

    private static byte[] Png(int width, int height, int depth, int colour)
    {
        var samples = colour switch { 2 => 3, 4 => 2, 6 => 4, _ => 1 };
        var row = ((width * samples * depth) + 7) / 8;
        var rows = Enumerable.Range(0, height).SelectMany(y => Enumerable.Repeat((byte)(y % 2), row).Prepend((byte)0)).ToArray();
        var palette = colour == 3 ? Pack.Png("PLTE", [10, 20, 30, 200, 210, 220]) : [];
        return PictureFiles.Png(width, height, before: palette, pixels: Pack.Png("IDAT", PictureFiles.Deflated(rows)), depth: depth, colour: colour);
    }

    // Four squares of 248, 188, 128 and 68, by hand: ITU-T T.81, annexes B and F. Only the first coefficient of each differs from nothing.
    private static byte[] FourGreys(int wayUp) =>
    [
        0xFF, 0xD8,
        .. Segment(0xE0, [.. Text("JFIF\0"), 1, 2, 0, 0, 1, 0, 1, 0, 0]),
        .. PictureFiles.Exif(wayUp),
        .. Segment(0xDB, [0, .. Enumerable.Repeat((byte)8, 64)]),
        .. Segment(0xC0, [8, .. Big16(16), .. Big16(16), 1, 1, 0x11, 0]),
        .. Segment(0xC4, [0, 1, 1, .. new byte[14], 7, 6]),
        .. Segment(0xC4, [0x10, 1, .. new byte[15], 0]),
        .. Segment(0xDA, [1, 1, 0, 0, 63, 0]),
        0x78, 0x41, 0xA0, 0xD0, 0x6F,
        0xFF, 0xD9,
    ];
}
