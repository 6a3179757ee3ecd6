using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What the studio refuses comes back with its reason, whatever becomes of the answer on the way and of the page after it.</summary>
public sealed class BenchReasonTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string Reason = "too much for one breath";

    private static readonly string TooMuch = string.Join(", ", Enumerable.Range(1, 40).Select(cents => $"crow c+{cents}"));

    [Fact]
    public async Task A_refusal_whose_words_were_cut_off_is_asked_for_again_and_its_reason_outlasts_the_page()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "reason-cut");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        var (page, line, cut) = (teacher.Page, teacher.Page.Locator("#bench-line"), 0);
        await page.RouteAsync("**/bench/*/line", route => cut++ < 2
            ? route.FulfillAsync(new() { Status = 422, ContentType = "application/json", Body = "[{\"field\":\"Te" })
            : route.ContinueAsync());
        await line.FillAsync(TooMuch);
        await hands.PressAsync("Enter");

        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync(Reason);
        await Assertions.Expect(line).ToHaveValueAsync(TooMuch);
        Assert.Equal(3, cut);

        await page.ReloadAsync();
        await hands.ReadyAsync();
        await Assertions.Expect(line).ToHaveValueAsync(TooMuch);
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync(Reason);
        await line.FillAsync("");
        await hands.SayAsync("remember the tall case");
        await page.ReloadAsync();
        await hands.ReadyAsync();
        await Assertions.Expect(page.Locator("#line-answer")).ToBeEmptyAsync();
    }

    [Theory]
    [InlineData(404, "isn’t there for you any more")]
    [InlineData(400, "Load the page again")]
    [InlineData(500, "broke over it each time")]
    public async Task An_answer_without_words_is_told_with_its_reason_too(int status, string reason)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"reason-{status}");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await teacher.Page.RouteAsync("**/bench/*/line", route => route.FulfillAsync(new() { Status = status }));
        await hands.TypeAsync("remember the lamp");
        await hands.PressAsync("Enter");

        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("This wasn’t saved.");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync(reason);
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync("remember the lamp");
    }
}
