using System.Text.Json;
using System.Text.RegularExpressions;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Print;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>What the file says of itself to programs that aren't ours: its parts, its language, its faces, and that it is sound (ISO 32000-1, 14.7 to 14.9).</summary>
public sealed partial class LetterStructureTests
{
    private static readonly LetterDraft Letter = PrintedLetter.Usual();
    private static readonly byte[] Pdf = LetterPrint.Pdf(Letter, PrintedLetter.Day, PaperSize.A4);

    private static readonly string[] Kinds = ["H1", "H2", "P", "Sect", "L", "LI", "Lbl", "LBody", "Table", "TR", "TH", "TD", "Caption", "Figure"];
    private static readonly string[] Doing = ["/URI", "/JavaScript", "/JS", "/Launch", "/GoToR", "/GoToE", "/SubmitForm", "/ImportData", "/OpenAction", "/AA", "/EmbeddedFiles", "/RichMedia", "/Annots"];

    [Fact]
    public async Task It_is_tagged_and_has_a_title()
    {
        var said = await Outside.ReadAsync(Pdf, "pdfinfo", "{}");

        Assert.Matches("(?m)^Tagged: +yes$", said);
        Assert.Matches("(?m)^Title: +Letter about batch 7KP-W3MQ$", said);
        Assert.Matches("(?m)^Author: +The Harbour Bench$", said);
        Assert.Matches("(?m)^JavaScript: +no$", said);
    }

    [Fact]
    public async Task Every_word_of_the_letter_stands_in_a_part_of_its_structure_and_nothing_of_the_page_does()
    {
        var said = await Outside.ReadAsync(Pdf, "pdfinfo", "-enc", "UTF-8", "-struct-text", "{}");

        var parts = Part().Matches(said).Select(match => match.Groups["kind"].Value).ToList();
        Assert.All(Kinds, kind => Assert.Contains(kind, parts));
        var sections = Letter.Blocks.Count(block => block.Heading is not null) + Letter.Reeds.Count;
        Assert.Equal((1, sections), (parts.Count(part => part == "H1"), parts.Count(part => part == "H2")));
        Assert.Equal((Letter.Reeds.Count, Letter.Reeds.Sum(reed => 5)), (parts.Count(part => part == "Table"), parts.Count(part => part == "TR")));
        Assert.Equal((2 * Letter.Reeds.Count) + 2, parts.Count(part => part == "Figure"));
        Assert.Contains("it is just right and holds the pitch", said, StringComparison.Ordinal);
        Assert.Equal(LetterAsSaid.Of(Letter), LetterAsSaid.Bare(string.Concat(Said().Matches(said).Select(match => match.Groups["text"].Value))));
    }

    [Fact]
    public async Task Every_drawing_says_what_it_shows()
    {
        var figures = (await ObjectsAsync(Pdf)).Where(one => one.TryGetProperty("/S", out var kind) && kind.ValueEquals("/Figure")).ToList();

        Assert.Equal((2 * Letter.Reeds.Count) + 2, figures.Count);
        var words = figures.Select(figure => figure.GetProperty("/Alt").GetString()!).ToList();
        Assert.All(words, alt => Assert.True(alt.Length > 40, alt));
        Assert.Contains(words, alt => alt.Contains("corners of the tip too thick (seen on the plaque)", StringComparison.Ordinal));
        Assert.Contains(words, alt => alt.Contains("From 70 cents below C to C in three passes", StringComparison.Ordinal));
        Assert.Contains(words, alt => alt.Contains("begin in front of the line", StringComparison.Ordinal));
    }

    [Fact]
    public async Task It_says_its_language_and_asks_for_its_title_to_be_shown()
    {
        var catalogue = Assert.Single(await ObjectsAsync(Pdf), one => one.TryGetProperty("/Type", out var type) && type.ValueEquals("/Catalog"));

        Assert.Equal("u:en-GB", catalogue.GetProperty("/Lang").GetString());
        Assert.Contains(await ObjectsAsync(Pdf), one => one.TryGetProperty("/Marked", out var marked) && marked.GetBoolean());
        Assert.Contains(await ObjectsAsync(Pdf), one => one.TryGetProperty("/DisplayDocTitle", out var shown) && shown.GetBoolean());
    }

    [Fact]
    public async Task A_strict_reader_finds_nothing_wrong()
    {
        // qpdf ends with 3 when it only warns.
        var said = await Outside.ReadAsync(Pdf, "qpdf", "--check", "{}");

        Assert.Contains("No syntax or stream encoding errors found", said, StringComparison.Ordinal);
        Assert.DoesNotContain("WARNING", said, StringComparison.OrdinalIgnoreCase);

        // The check looks into pages only; whoever writes the file anew looks into every stream.
        Assert.StartsWith("%PDF", await Outside.ReadAsync(Pdf, "qpdf", "--qdf", "--object-streams=disable", "{}", "-"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_face_is_embedded_and_only_the_letters_that_are_needed()
    {
        var said = await Outside.ReadAsync(Pdf, "pdffonts", "{}");

        var faces = said.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2).ToList();
        Assert.InRange(faces.Count, 5, 7);
        Assert.All(faces, face => Assert.Matches("^[A-Z]{6}\\+.* yes +yes +yes +[0-9]+ +0 *$", face));
        Assert.InRange(Pdf.Length, 1, 400_000);
    }

    [Fact]
    public async Task It_leads_nowhere_and_does_nothing_by_itself()
    {
        foreach (var pdf in new[] { Pdf, LetterPrint.Pdf(Letter with { Studio = "https://example.org", Signature = "mailto:a@example.org" }, PrintedLetter.Day, PaperSize.A4) })
        {
            var names = (await ObjectsAsync(pdf)).Where(one => one.ValueKind == JsonValueKind.Object).SelectMany(one => one.EnumerateObject()).Select(one => one.Name);

            Assert.Empty(names.Intersect(Doing));
        }
    }

    // ISO 14289-1, 7.18.5: a link is in the structure as a Link with its annotation, which says where it leads.
    [Theory]
    [InlineData("https://lanternquay.example/corners?a=1&b='2'#tip", 1)]
    [InlineData("https://lanternquay.example/a-long-way/through-many-folders/with-long-names/that-hardly-fit/on-one-line-of-a-letter/and-go-on/to-the-next", 3)]
    public async Task A_link_that_somebody_wrote_can_be_pressed_and_says_where_it_leads(string address, int lines)
    {
        var block = Letter.Blocks.First(block => block.Kind == BlockKind.Lesson);
        var letter = Letter with { Blocks = [.. Letter.Blocks.Select(other => other == block ? block.EditedTo($"See this.\n\n{address}\n\nAnd {address} too.", block) : other)] };
        var pdf = LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4);

        var objects = await ObjectsAsync(pdf);
        var links = objects.Where(one => one.TryGetProperty("/Subtype", out var kind) && kind.ValueEquals("/Link")).ToList();
        Assert.Equal(lines, links.Count);
        Assert.All(links, link => Assert.Equal((("u:" + address), true), (link.GetProperty("/Contents").GetString(), link.TryGetProperty("/StructParent", out _))));
        Assert.Equal(lines, objects.Count(one => one.TryGetProperty("/URI", out var uri) && uri.ValueEquals("u:" + address)));
        Assert.Equal(lines, objects.Count(one => one.TryGetProperty("/S", out var kind) && kind.ValueEquals("/Link")));
        Assert.Contains("https://lanternquay.example/", await Outside.ReadAsync(pdf, "pdftotext", "-enc", "UTF-8", "{}", "-"), StringComparison.Ordinal);
        Assert.Contains(address, await Outside.ReadAsync(pdf, "pdfinfo", "-url", "{}"), StringComparison.Ordinal);
        Assert.Contains("No syntax or stream encoding errors found", await Outside.ReadAsync(pdf, "qpdf", "--check", "{}"), StringComparison.Ordinal);
        Assert.Contains(address + "\n", LetterFile.Plain(letter, PrintedLetter.Day), StringComparison.Ordinal);
        Assert.Equal(LetterAsSaid.Of(letter), LetterAsSaid.Bare(string.Concat(Said().Matches(await Outside.ReadAsync(pdf, "pdfinfo", "-enc", "UTF-8", "-struct-text", "{}")).Select(match => match.Groups["text"].Value))));
    }

    [Fact]
    public async Task An_address_that_nobody_wrote_alone_in_a_paragraph_leads_nowhere()
    {
        var block = Letter.Blocks.First(block => block.Kind == BlockKind.Lesson);
        var letter = Letter with { Blocks = [.. Letter.Blocks.Select(other => other == block ? block.EditedTo("http://example.org/\n\nhttps://a@example.org/\n\nhttps://example.org and more", block) : other)] };
        letter = letter with { Blocks = [.. letter.Blocks.Select(other => other.Kind == BlockKind.Closing ? other with { Paragraphs = [LetterParagraph.Plain("https://example.org/")] } : other)] };

        var names = (await ObjectsAsync(LetterPrint.Pdf(letter, PrintedLetter.Day, PaperSize.A4))).Where(one => one.ValueKind == JsonValueKind.Object).SelectMany(one => one.EnumerateObject()).Select(one => one.Name);
        Assert.Empty(names.Intersect(Doing));
    }

    // Every object of the file, and whatever stands in them.
    private static async Task<List<JsonElement>> ObjectsAsync(byte[] pdf)
    {
        using var json = JsonDocument.Parse(await Outside.ReadAsync(pdf, "qpdf", "--json=2", "--json-key=qpdf", "{}"));
        List<JsonElement> all = [];
        Take(json.RootElement.Clone(), all);
        return all;
    }

    private static void Take(JsonElement one, List<JsonElement> all)
    {
        switch (one.ValueKind)
        {
            case JsonValueKind.Object:
                all.Add(one);
                foreach (var part in one.EnumerateObject())
                {
                    Take(part.Value, all);
                }

                break;
            case JsonValueKind.Array:
                foreach (var part in one.EnumerateArray())
                {
                    Take(part, all);
                }

                break;
        }
    }

    [GeneratedRegex("(?m)^ *(?<kind>[A-Z][A-Za-z0-9]*)( \\([a-z]+\\))?:?$")]
    private static partial Regex Part();

    [GeneratedRegex("(?m)^ *\"(?<text>.*)\"$")]
    private static partial Regex Said();
}
