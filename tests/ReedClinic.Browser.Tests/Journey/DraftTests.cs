using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What a page that saves by itself says: that it couldn't, and what the words typed call for.</summary>
public sealed class DraftTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task Whoever_was_signed_out_while_typing_is_told_that_it_is_not_saved()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Sender, "signed-out-while-typing");
        await student.GoToAsync("/intake");
        await student.PressAsync(student.Page.Locator("main form button"), "/intake/[^/]+/[^/]+");
        await student.GoToAsync($"/intake/{new Uri(student.Page.Url).Segments[2]}country");
        await student.Field("Country").FillAsync("Portugal");
        await student.Page.GetByText("Saved at").WaitForAsync();

        await student.Page.Context.ClearCookiesAsync();
        await student.Field("Country").FillAsync("Norway");

        await student.Page.GetByText("You were signed out, so this isn’t saved any more.").WaitForAsync();
        await Assertions.Expect(student.Page.GetByText("Saved at")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_calls_for_a_caution_has_it_under_the_field_while_one_types_and_no_more_once_it_is_taken_out()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Sender, "cautioned-while-typing");
        await student.GoToAsync("/intake");
        await student.PressAsync(student.Page.Locator("main form button"), "/intake/[^/]+/[^/]+");
        await student.GoToAsync($"/intake/{new Uri(student.Page.Url).Segments[2]}questions");
        var cautions = student.Page.Locator("[data-cautions=Questions] p");

        await student.Field("Your questions, one a line").FillAsync("Can I scrape it before I send it?");
        await Assertions.Expect(cautions).ToContainTextAsync("Please send it as it is");
        await student.Field("Your questions, one a line").FillAsync("Is it too old?");

        await Assertions.Expect(cautions).ToHaveCountAsync(0);
    }
}
