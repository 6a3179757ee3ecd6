using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The list of a letter’s parts and the way back to it, read by axe on a phone and on a wide window.</summary>
public sealed class LetterPartsTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Theory]
    [InlineData(320)]
    [InlineData(1280)]
    public async Task From_the_list_to_a_part_and_back_to_it(int width)
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Student, $"letter-parts-{width}", width);
        await student.GoToAsync("/batches");
        var batch = await student.Page.Locator("main a[href^='/batches/']").First.GetAttributeAsync("href");
        await student.GoToAsync("/letters/" + batch!.Split('/')[2].Split('#', '?')[0]);
        var list = student.Page.Locator("nav.letter-parts");
        var part = list.GetByRole(AriaRole.Link, new() { Name = "Reed 2", Exact = true });
        if (!await part.IsVisibleAsync())
        {
            await list.Locator("summary").ClickAsync();
        }

        await student.LookAsync("the list of parts");
        await student.FitsAsync();
        await part.ClickAsync();
        await Assertions.Expect(student.Page.GetByRole(AriaRole.Heading, new() { Name = "Reed 2" }).First).ToBeInViewportAsync();
        await student.Page.Locator(".letter-up a").Nth(2).ClickAsync();
        await Assertions.Expect(list).ToBeInViewportAsync();
        await student.LookAsync("back at the list");
    }
}
