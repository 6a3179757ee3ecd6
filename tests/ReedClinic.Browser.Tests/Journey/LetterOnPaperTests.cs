using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The page of a sent letter, printed by the browser's own command and read on windows of three widths.</summary>
public sealed class LetterOnPaperTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    // css/letter.css: the page's margins, in points of 1/72 inch.
    private const double Above = 12 * 72 / 25.4;
    private const double Beside = 15 * 72 / 25.4;
    private const double Overhang = 1.5;
    private const double LeastPixels = 12;
    private const double LeastOfAHeading = 11.5;
    private const double MostInADrawing = 8.3;

    private const string Drawings = """
        () => [...document.querySelectorAll('.letter svg.sketch')].filter(one => one.getBoundingClientRect().width > 0)
          .flatMap(one => [...one.querySelectorAll('text')].map(words => parseFloat(getComputedStyle(words).fontSize) * one.getScreenCTM().a))
        """;

    private const string Sideways = """
        () => [...document.querySelectorAll('.letter *')].filter(one => one.scrollWidth > one.clientWidth + 1 && ['auto', 'scroll'].includes(getComputedStyle(one).overflowX)).map(one => one.className)
        """;

    // What print shows of the letter: not what only a screen reader hears, nor what lies outside a drawing.
    private const string Said = """
        () => [...document.querySelectorAll('.letter *')].flatMap(one => [...one.childNodes])
          .filter(node => node.nodeType === 3 && node.data.trim())
          .filter(node => {
            const [one, drawing] = [node.parentElement, node.parentElement.closest('svg')];
            const [at, all] = [one.getBoundingClientRect(), drawing?.getBoundingClientRect()];
            return !['title', 'desc'].includes(one.tagName.toLowerCase()) && one.checkVisibility() && !one.closest('.crow-steps:not(.below-wide)')
              && (!drawing || (at.right > all.left && at.left < all.right && at.bottom > all.top && at.top < all.bottom));
          })
          .flatMap(node => node.data.trim().split(/\s+/))
        """;

    private static readonly string[] Formats = ["A4", "Letter"];
    private static readonly bool[] Grounds = [false, true];
    private static readonly int[] Widths = [320, 390, 1280];

    [Fact]
    public async Task It_prints_whole_and_once_on_both_papers_and_every_drawing_is_read_at_every_width()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Student, "letter-on-paper");
        var letters = 0;
        await student.GoToAsync("/batches");
        foreach (var batch in await HrefsAsync(student, "a[href^='/batches/']"))
        {
            await student.GoToAsync(batch);
            if ((await HrefsAsync(student, "a[href^='/letters/']")).FirstOrDefault() is { } letter)
            {
                await student.GoToAsync(letter);
                await ReadAsync(student);
                await PrintAsync(student);
                letters++;
            }
        }

        Assert.True(letters > 1, $"{letters} letters");
    }

    [Fact]
    public async Task A_browser_whose_style_sheets_can_not_open_what_is_folded_prints_all_of_it_from_a_narrow_window()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Student, "letter-in-an-older-browser");
        await student.Page.AddInitScriptAsync("const asked = CSS.supports.bind(CSS); CSS.supports = (...what) => !String(what[0]).includes('details-content') && asked(...what);");
        await student.Page.RouteAsync("**/css/letter*.css", async route =>
        {
            var answer = await route.FetchAsync();
            await route.FulfillAsync(new RouteFulfillOptions { Response = answer, Body = (await answer.TextAsync()).Replace("::details-content", "::no-such-part", StringComparison.Ordinal) });
        });
        await student.GoToAsync("/batches");
        foreach (var batch in await HrefsAsync(student, "a[href^='/batches/']"))
        {
            await student.GoToAsync(batch);
            if ((await HrefsAsync(student, "a[href^='/letters/']")).FirstOrDefault() is { } letter)
            {
                await student.Page.SetViewportSizeAsync(390, 844);
                await student.GoToAsync(letter);
                var open = await student.Page.Locator(".letter-fold[open]").CountAsync(); // each reed's drawing
                Assert.True(open > 2 && await student.Page.Locator(".letter-fold:not([open])").CountAsync() > 2);
                // On paper that is narrower than the width at which everything stands open, only the print itself can open it.
                using var pdf = PdfDocument.Open(await student.Page.PdfAsync(new PagePdfOptions { Width = "105mm", Height = "148mm" }));
                Assert.Contains("Whenitcame", string.Concat(pdf.GetPages().SelectMany(page => page.Letters).Select(sign => sign.Value)).Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
                Assert.Equal(open, await student.Page.Locator(".letter-fold[open]").CountAsync());
                await student.Page.SetViewportSizeAsync(1280, 844);
                await Assertions.Expect(student.Page.Locator(".letter-fold:not([open])")).ToHaveCountAsync(0);
                return;
            }
        }

        Assert.Fail("The demo's student has no letter.");
    }

    private static async Task ReadAsync(Visitor student)
    {
        foreach (var width in Widths)
        {
            await student.Page.SetViewportSizeAsync(width, 844);
            var sizes = await student.Page.EvaluateAsync<double[]>(Drawings);
            Assert.True(sizes.Length > 20, $"{sizes.Length} words on drawings");
            Assert.True(sizes.Min() >= LeastPixels, $"at {width}: {sizes.Min():0.0} px");
            Assert.Empty(await student.Page.EvaluateAsync<string[]>(Sideways));
            await student.FitsAsync();
            await student.LookAsync($"letter at {width}");
        }
    }

    private static async Task PrintAsync(Visitor student)
    {
        await student.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        var said = await student.Page.EvaluateAsync<string[]>(Said);
        Assert.True(said.Length > 300, $"{said.Length} words");
        var stroke = await student.Page.EvaluateAsync<string>("() => [...document.querySelectorAll('.letter-stroke p:not(.no-print)')].at(-1)?.textContent ?? ''");
        foreach (var (format, hasGrounds) in from format in Formats from hasGrounds in Grounds select (format, hasGrounds))
        {
            using var pdf = PdfDocument.Open(await student.Page.PdfAsync(new PagePdfOptions { Format = format, PrintBackground = hasGrounds }));

            Assert.InRange(pdf.NumberOfPages, 2, 4);
            Assert.All(pdf.GetPages(), page => Assert.All(page.GetWords().Where(word => word.Text.Trim().Length > 0 && !IsFoot(word)), word => Within(page, word)));
            Assert.All(pdf.GetPages(), page => Assert.Contains(page.GetWords(), word => IsFoot(word) && word.Text.StartsWith($"{page.Number}", StringComparison.Ordinal)));
            Assert.All(pdf.GetPages(), page => Assert.Single(page.GetWords(), word => IsFoot(word) && IsCode(word)));
            Together(pdf, string.Concat(stroke.Where(char.IsLetter)));
            Assert.Equal(Letters(said), Letters(pdf.GetPages().SelectMany(page => page.GetWords()).Where(word => !IsFoot(word)).Select(word => word.Text)));
        }

        await student.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Screen });
    }

    // Each reed, and the lesson, begins on the page of its drawing; so does the stroke, and what is said of it ends there. Headings are large, words in drawings small.
    private static void Together(PdfDocument pdf, string stroke)
    {
        foreach (var page in pdf.GetPages())
        {
            var large = page.GetWords().Where(word => word.Letters[0].PointSize > LeastOfAHeading).Select(word => word.Text).ToList();
            var small = page.GetWords().Where(word => word.Letters[0].PointSize < MostInADrawing).Select(word => word.Text).ToList();
            Assert.Equal(large.Count(word => word is "Reed" or "common"), small.Count(word => word is "opening"));
            Assert.Equal(large.Contains("stroke"), small.Contains("plaque"));
            Assert.True(!small.Contains("plaque") || string.Concat(page.Letters.SelectMany(sign => sign.Value.Normalize(System.Text.NormalizationForm.FormKC)).Where(char.IsLetter)).Contains(stroke, StringComparison.Ordinal), $"the stroke ends behind page {page.Number}");
        }
    }

    // The page's number stands in the margin, and the batch's code on the other side of it.
    private static bool IsFoot(Word word) => word.BoundingBox.Top < Above && (word.Text is "Batch" || IsCode(word) || word.Text.All(sign => char.IsAsciiDigit(sign) || sign is '/' or ' '));

    private static bool IsCode(Word word) => word.Text.Length == 8 && word.Text[3] == '-' && word.Text.All(sign => char.IsAsciiLetterUpper(sign) || char.IsAsciiDigit(sign) || sign is '-');

    private static void Within(Page page, Word word)
    {
        var box = word.BoundingBox;
        Assert.True(
            box.Left >= Beside - Overhang && box.Right <= page.Width - Beside + Overhang && box.Bottom >= Above - Overhang && box.Top <= page.Height - Above + Overhang,
            $"{word.Text} on page {page.Number} at {box}");
    }

    // How often each letter stands there: numbers and dots that a list adds before its words are none.
    private static string Letters(IEnumerable<string> words) => string.Join(' ', string.Concat(words).Normalize(System.Text.NormalizationForm.FormKC)
        .Where(char.IsLetter).CountBy(sign => sign).OrderBy(sign => sign.Key).Select(sign => $"{sign.Key}{sign.Value}"));

    private static async Task<List<string>> HrefsAsync(Visitor student, string selector)
    {
        List<string> all = [];
        foreach (var link in await student.Page.Locator(selector).AllAsync())
        {
            all.Add((await link.GetAttributeAsync("href"))!);
        }

        return all;
    }
}
