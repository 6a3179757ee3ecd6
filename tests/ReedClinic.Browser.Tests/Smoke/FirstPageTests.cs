using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Smoke;

public sealed class FirstPageTests(OneBrowser browser, SqliteClinic app) : IClassFixture<SqliteClinic>
{
    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task The_first_page_says_what_this_is_and_fits_the_window(int width)
    {
        await using var visitor = await browser.VisitAsync(app.Home, $"first-page-{width}", width);

        await visitor.GoToAsync("/");
        await visitor.Heading("Reed lessons by post").WaitForAsync();
        await visitor.FitsAsync();
        await visitor.LookAsync("home");
    }

    [Fact]
    public async Task A_page_that_is_not_there_is_answered_kindly()
    {
        await using var visitor = await browser.VisitAsync(app.Home, "not-found");

        var response = await visitor.Page.GotoAsync("/no-such-page");

        Assert.Equal(404, response?.Status);
        await visitor.LookAsync("not found");
    }

    [Fact]
    public async Task Axe_sees_a_picture_without_words_and_grey_on_grey()
    {
        await using var visitor = await browser.VisitAsync(app.Home, "axe-itself");
        await visitor.Page.SetContentAsync("<html lang=en><title>x</title><main><h1>x</h1><img src=x.png><p style='color:#aaa;background:#bbb'>faint</p></main></html>");

        var violations = await Axe.ReadAsync(visitor.Page);

        Assert.Contains(violations, violation => violation.Contains("image-alt", StringComparison.Ordinal));
        Assert.Contains(violations, violation => violation.Contains("color-contrast", StringComparison.Ordinal));
    }
}
