using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>Advice at the bench: set aside by one key, why if one likes, never told again, and gone once the reed was tried.</summary>
public sealed class BenchAsideTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Theory]
    [InlineData(1280, "thinned the spine", "The spine holds the opening")]
    [InlineData(390, "thinned the rails", "The rails are almost never worked")]
    public async Task Advice_is_set_aside_by_one_key_why_is_said_by_another_and_it_does_not_come_back(int width, string work, string line)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"aside-{width}", width);
        var (page, advice) = (teacher.Page, teacher.Page.Locator(".advice-words"));
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.SayAsync("crow c");
        await hands.SayAsync(work);
        await Assertions.Expect(advice).ToContainTextAsync(line);
        await hands.LeaveLineAsync();
        await hands.PressAsync("x");
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync($"Set aside, and not told again on this reed: {line}");
        await Assertions.Expect(advice).ToHaveCountAsync(0);
        await teacher.LookAsync("set aside");

        await hands.PressAsync("-");
        await Assertions.Expect(page.Locator("#bench-line")).ToBeFocusedAsync();
        await Assertions.Expect(page.Locator("#line-instead")).ToContainTextAsync("Why the advice was set aside");
        await page.Keyboard.TypeAsync("two strokes, clip a hair after");
        await teacher.LookAsync("why it is set aside");
        var facts = await hands.FactsAsync();
        await hands.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".advice")).ToContainTextAsync("Set aside: two strokes, clip a hair after");
        Assert.Equal(facts, await hands.FactsAsync());

        await page.ReloadAsync();
        await hands.ReadyAsync();
        await hands.SayAsync(work);
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("thinned at the");
        Assert.DoesNotContain(line, await page.Locator(".advice").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Advice_about_what_was_done_last_goes_once_the_reed_was_tried()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "aside-tried");
        var advice = teacher.Page.Locator(".advice-words");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        foreach (var work in new[] { "thinned the tip sides", "opened the windows", "blended the heart into the tip", "thinned the tip sides", "opened the windows", "thinned the tip sides" })
        {
            await hands.SayAsync(work);
        }

        await Assertions.Expect(advice).ToContainTextAsync("Worked three times over since the last test");
        await hands.SayAsync("crow c-10");
        await Assertions.Expect(advice).ToHaveCountAsync(0);
        await teacher.LookAsync("tried");
    }
}
