using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What was typed for an entry and not sent is there again after the page came anew: for that entry, or where it has gone, as words of the line.</summary>
public sealed class BenchUnsentTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task A_correction_half_typed_is_a_correction_of_its_entry_again_after_a_reload_and_what_stood_in_the_line_comes_back()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "unsent-correction");
        var (hands, line) = await OpenAsync(teacher, 1, "crow c+20", "remember the pale case");
        await line.FillAsync("half a phra");
        await MendAsync(teacher.Page, "20 cents above C");
        await Assertions.Expect(line).ToHaveValueAsync("crow c+20");
        await line.FillAsync("crow c+25, and st");
        await MendAsync(teacher.Page, "pale case");
        await Assertions.Expect(line).ToHaveValueAsync("remember the pale case");
        await line.FillAsync("remember the pale case and the thr");

        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();

        await Assertions.Expect(line).ToHaveValueAsync("remember the pale case and the thr");
        await Assertions.Expect(teacher.Page.Locator(".log-line.better")).ToContainTextAsync("pale case");
        await MendAsync(teacher.Page, "20 cents above C");
        await Assertions.Expect(line).ToHaveValueAsync("crow c+25, and st");
        await line.FillAsync("crow c+25");
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = "25 cents above C" })).ToContainTextAsync("earlier wording (1)");
        await Assertions.Expect(line).ToHaveValueAsync("half a phra");
    }

    [Fact]
    public async Task Words_for_an_entry_that_has_gone_meanwhile_stand_in_the_line_or_wait_beside_it()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "unsent-gone");
        var (hands, line) = await OpenAsync(teacher, 2, "remember the tall case", "crow c+5");
        await MendAsync(teacher.Page, "tall case");
        await Assertions.Expect(line).ToHaveValueAsync("remember the tall case");
        await line.FillAsync("remember the tall case by the do");
        await TakeBackElsewhereAsync(teacher, "tall case");

        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();
        await Assertions.Expect(line).ToHaveValueAsync("remember the tall case by the do");
        await Assertions.Expect(teacher.Page.Locator(".instead")).ToHaveCountAsync(0);
        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("were typed for has gone");

        // Something else stands in the line: they wait beside it until they are wanted.
        await MendAsync(teacher.Page, "5 cents above C");
        await Assertions.Expect(line).ToHaveValueAsync("crow c+5");
        await line.FillAsync("crow c+6, bu");
        await TakeBackElsewhereAsync(teacher, "5 cents above C");
        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();
        await Assertions.Expect(line).ToHaveValueAsync("remember the tall case by the do");
        await Assertions.Expect(teacher.Page.Locator("#line-answer .asked-of")).ToContainTextAsync("crow c+6, bu");
        await teacher.LookAsync("words whose entry has gone");
        await line.FillAsync("");
        await hands.LeaveLineAsync();
        await hands.PressAsync("r");
        await Assertions.Expect(line).ToHaveValueAsync("crow c+6, bu");
    }

    [Fact]
    public async Task A_correction_of_an_entry_that_was_changed_meanwhile_says_so()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "unsent-changed");
        var (hands, line) = await OpenAsync(teacher, 3, "remember the lamp");
        await MendAsync(teacher.Page, "the lamp");
        await Assertions.Expect(line).ToHaveValueAsync("remember the lamp");
        await line.FillAsync("remember the lamp and the plaq");
        var other = await ElsewhereAsync(teacher);
        await MendAsync(other, "the lamp");
        await Assertions.Expect(other.Locator("#bench-line")).ToHaveValueAsync("remember the lamp");
        await other.Locator("#bench-line").FillAsync("remember the long lamp");
        await other.Keyboard.PressAsync("Enter");
        await other.Locator("#line-answer.saved").WaitForAsync();
        await other.CloseAsync();

        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();

        await Assertions.Expect(teacher.Page.Locator(".log-line.better")).ToContainTextAsync("the long lamp");
        await Assertions.Expect(line).ToHaveValueAsync("remember the lamp and the plaq");
        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("was changed meanwhile");
    }

    private async Task<(BenchHands Hands, ILocator Line)> OpenAsync(Visitor teacher, int reed, params string[] said)
    {
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", reed);
        foreach (var words in said)
        {
            await hands.SayAsync(words);
        }

        return (hands, teacher.Page.Locator("#bench-line"));
    }

    // The same reed in another tab, as a colleague would have it.
    private static async Task<IPage> ElsewhereAsync(Visitor teacher)
    {
        var other = await teacher.Page.Context.NewPageAsync();
        await other.GotoAsync(teacher.Page.Url);
        await other.Locator("html[data-bench-ready]").WaitForAsync();
        return other;
    }

    private static async Task TakeBackElsewhereAsync(Visitor teacher, string entry)
    {
        var other = await ElsewhereAsync(teacher);
        await other.Locator(".log-line", new() { HasText = entry }).Last.Locator(".back").ClickAsync();
        await other.Locator(".log-line.taken-back", new() { HasText = entry }).WaitForAsync();
        await other.CloseAsync();
    }

    private static Task MendAsync(IPage page, string entry) => page.Locator(".log-line", new() { HasText = entry }).Last.Locator(".mend").ClickAsync();
}
