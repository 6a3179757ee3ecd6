using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;
using UglyToad.PdfPig;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The slip of a few reeds, printed by the browser's own command.</summary>
public sealed class SlipOnPaperTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private static readonly string[] Formats = ["A4", "Letter"];

    [Fact]
    public async Task The_slip_of_three_reeds_is_one_page_on_both_papers()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Student, "slip-on-paper", 1280);
        await student.GoToAsync("/batches");
        var batches = await student.Page.EvaluateAsync<string[]>("() => [...new Set([...document.querySelectorAll(\"a[href^='/batches/']\")].map(one => one.getAttribute('href')))].filter(one => /-[^/]*$/.test(one) && !one.includes('over-time'))");
        var printed = 0;
        foreach (var batch in batches)
        {
            await student.GoToAsync(batch + "/slip");
            if (await student.Page.Locator(".tags li").CountAsync() != 3)
            {
                continue;
            }

            foreach (var format in Formats)
            {
                using var pdf = PdfDocument.Open(await student.Page.PdfAsync(new PagePdfOptions { Format = format }));
                Assert.True(pdf.NumberOfPages == 1, $"{batch} on {format}: {pdf.NumberOfPages} pages");
                printed++;
            }
        }

        Assert.True(printed > 0, "The demo's student has no batch of three.");
    }
}
