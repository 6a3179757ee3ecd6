using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>A reason is asked for once a verdict is given: its letters, typed at once, end nothing.</summary>
public sealed class BenchWhyTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task A_reason_typed_at_once_neither_stops_nor_puts_aside_and_both_can_be_done_once_it_is_skipped()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "why-typed");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await hands.LeaveLineAsync();
        await hands.PressAsync("v");
        await teacher.Page.Locator(".pick", new() { HasText = "as good as this cane gets" }).WaitForAsync();
        await hands.PickAsync("4");
        await teacher.Page.Locator(".asked").WaitForAsync();
        var facts = await hands.FactsAsync();

        foreach (var letter in (string[])["s", "p"])
        {
            await hands.PressAsync(letter);
            await Microsoft.Playwright.Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("a reason is asked for");
        }

        await teacher.ShotAsync("a reason comes first");
        await hands.PressAsync("Escape");
        await Microsoft.Playwright.Assertions.Expect(teacher.Page.Locator(".asked")).ToHaveCountAsync(0);
        Assert.Equal(facts, await hands.FactsAsync());
        await hands.PickAsync("p");
    }

    [Fact]
    public async Task Behind_a_stop_a_reed_can_be_put_aside_at_once()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "why-stopped");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        await hands.LeaveLineAsync();
        await hands.PickAsync("s");
        await teacher.Page.Locator(".asked").WaitForAsync();

        await hands.PickAsync("p");
    }
}
