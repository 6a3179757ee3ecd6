using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>A reason is asked for once a verdict is given: typed at once, its letters are words and no keys.</summary>
public sealed class BenchWhyTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string Reason = "opens up now, but the heart is all there is left";

    [Fact]
    public async Task Why_it_stops_typed_at_once_stands_in_the_line()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "why-stopped");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.LeaveLineAsync();
        await hands.PickAsync("s");
        await teacher.Page.Locator(".asked[data-reason]").WaitForAsync();

        await teacher.Page.Keyboard.TypeAsync(Reason);

        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync(Reason);
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = "the heart is all there is left" })).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task A_reason_typed_at_once_becomes_the_verdicts_and_presses_nothing()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "why-typed");
        var hands = await VerdictAsync(teacher, 2);
        await teacher.Page.Locator(".asked[data-reason]").WaitForAsync();
        var (facts, reed) = (await hands.FactsAsync(), teacher.Page.Url);

        await teacher.Page.Keyboard.TypeAsync(Reason);

        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync(Reason);
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToBeFocusedAsync();
        Assert.Equal((facts, reed), (await hands.FactsAsync(), teacher.Page.Url));
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = "as good as this cane gets" }).Filter(new() { HasText = Reason })).ToHaveCountAsync(1);
        Assert.Equal(facts, await hands.FactsAsync());
        await teacher.ShotAsync("a reason typed at once");
    }

    [Fact]
    public async Task A_letter_alone_is_a_key_as_ever()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "why-key");
        var hands = await VerdictAsync(teacher, 3);
        await teacher.Page.Locator(".asked[data-reason]").WaitForAsync();

        await hands.PickAsync("p");
        await hands.PressAsync("n");
        await Assertions.Expect(teacher.Page.Locator("h1")).ToContainTextAsync("Reed 4");
    }

    [Fact]
    public async Task Words_typed_while_a_verdict_is_asked_about_stand_in_the_line_and_press_nothing()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "why-asked");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        await hands.LeaveLineAsync();
        await hands.PressAsync("v");
        await teacher.Page.Locator(".pick", new() { HasText = "improved" }).WaitForAsync();
        await hands.PressAsync("1");
        await teacher.Page.Locator("#line-answer [data-bench-name=agree]").WaitForAsync();
        var facts = await hands.FactsAsync();

        await teacher.Page.Keyboard.TypeAsync("the corners were missing");

        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync("the corners were missing");
        await Assertions.Expect(teacher.Page.Locator("#line-answer [data-bench-name=agree]")).ToBeVisibleAsync();
        Assert.Equal(facts, await hands.FactsAsync());
    }

    private async Task<BenchHands> VerdictAsync(Visitor teacher, int reed)
    {
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", reed);
        await hands.LeaveLineAsync();
        await hands.PressAsync("v");
        await teacher.Page.Locator(".pick", new() { HasText = "as good as this cane gets" }).WaitForAsync();
        await hands.PickAsync("4");
        return hands;
    }
}
