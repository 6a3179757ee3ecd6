using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>Words that take back, sent while what they mean is still on its way, mean that and nothing older.</summary>
public sealed class BenchOnItsWayTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Undo_takes_back_what_is_on_its_way_and_leaves_what_stood_before(bool isHeard)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"on-its-way-{isHeard}");
        var older = $"the tall case {isHeard}";
        var (hands, way) = await SaidAsync(teacher, 2, older, $"remember the lamp {isHeard}", isHeard);

        way.SetResult();

        await Assertions.Expect(teacher.Page.Locator(".log-line.taken-back", new() { HasText = $"the lamp {isHeard}" })).ToHaveCountAsync(1);
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("the lamp");
        await Assertions.Expect(Standing(teacher, older)).ToHaveCountAsync(1);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Undo_leaves_out_what_was_on_its_way_and_is_asked_about(bool isHeard)
    {
        const string clip = "clip half a millimetre";
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"on-its-way-asked-{isHeard}");
        var older = $"the tall case {isHeard}";
        var (hands, way) = await SaidAsync(teacher, 3, older, clip, isHeard);

        way.SetResult();

        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync($"Not recorded: {clip}");
        await Assertions.Expect(teacher.Page.Locator(".log-line.taken-back")).ToHaveCountAsync(0);
        await Assertions.Expect(Standing(teacher, older)).ToHaveCountAsync(1);
    }

    private static ILocator Standing(Visitor teacher, string older) => teacher.Page.Locator(".log-line:not(.taken-back)", new() { HasText = older });

    // One thing stands, the next is on its way, and it is taken back by words: with their card in sight, or before it came.
    private async Task<(BenchHands Hands, TaskCompletionSource Way)> SaidAsync(Visitor teacher, int reed, string older, string text, bool isHeard)
    {
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", reed);
        var way = new TaskCompletionSource();
        var page = teacher.Page;
        await hands.SayAsync($"remember {older}");
        var asked = page.WaitForRequestAsync("**/bench/*/line");
        await page.RouteAsync("**/bench/*/line", async route =>
        {
            await way.Task;
            await route.ContinueAsync();
        });
        await hands.TypeAsync(text);
        await hands.PressAsync("Enter");
        await asked;
        if (!isHeard)
        {
            await page.EvaluateAsync("() => addEventListener('input', event => event.stopImmediatePropagation(), true)");
        }

        await hands.TypeAsync("undo");
        await Assertions.Expect(page.Locator(".card.takes-back")).ToHaveCountAsync(isHeard ? 1 : 0);
        await hands.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#bench-line")).ToHaveValueAsync("");
        return (hands, way);
    }
}
