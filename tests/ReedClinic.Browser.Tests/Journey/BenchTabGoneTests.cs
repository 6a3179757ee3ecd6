using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What was asked about and waited in a tab that is gone is taken up by the next one on the same device.</summary>
public sealed class BenchTabGoneTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task What_a_tab_left_open_is_taken_up_by_the_next()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "tab-gone");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await hands.SayAsync("c+40");
        var facts = await hands.FactsAsync();
        await hands.TypeAsync("clip a hair");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("safe changes only");
        await teacher.Page.Locator("#bench-line").FillAsync("crow c+35");
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("until it is answered: crow c+35");
        var here = teacher.Page.Url;
        var next = await teacher.Page.Context.NewPageAsync();

        await teacher.Page.CloseAsync();
        await next.GotoAsync(here);

        await Assertions.Expect(next.Locator("#line-answer.refused")).ToContainTextAsync("safe changes only");
        await Assertions.Expect(next.Locator(".told-beside")).ToContainTextAsync("Still to be answered after this: 1.");
        await Assertions.Expect(next.Locator(".log-line")).ToHaveCountAsync(facts);
        await next.Locator("#line-answer [data-bench-name=agree]").ClickAsync();
        await Assertions.Expect(next.Locator("#line-answer")).ToContainTextAsync("a tab that was closed");
        await Assertions.Expect(next.Locator(".log-line")).ToHaveCountAsync(facts + 1);
        await next.EvaluateAsync("() => new Promise(done => { const since = performance.now(); const wait = now => now - since > 700 ? done() : requestAnimationFrame(wait); requestAnimationFrame(wait); })");
        await next.Locator("#line-answer [data-bench-name=agree]").ClickAsync();
        await Assertions.Expect(next.Locator(".log-line")).ToHaveCountAsync(facts + 2);
        await Assertions.Expect(next.Locator(".log-line").Last).ToContainTextAsync("crow");
        await next.WaitForFunctionAsync("() => !Object.keys(localStorage).some(key => key.includes('@'))");
    }

    [Fact]
    public async Task What_waits_in_a_tab_that_is_open_stays_in_it()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "tab-open");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        await hands.SayAsync("c+40");
        await hands.TypeAsync("clip a hair");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("advice only");
        var next = await teacher.Page.Context.NewPageAsync();

        await next.GotoAsync(teacher.Page.Url);
        await next.WaitForFunctionAsync("() => sessionStorage.getItem('reedclinic-bench-tab') !== null");

        await next.WaitForFunctionAsync("() => Object.keys(localStorage).filter(key => key.includes('-questions@')).length === 1");
        await Assertions.Expect(next.Locator("#line-answer")).ToBeEmptyAsync();
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("advice only");
    }

    [Fact]
    public async Task What_another_tab_took_up_meanwhile_isnt_asked_again_in_the_first()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "tab-away");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.SayAsync("c-40");
        await hands.LeaveLineAsync();
        await hands.PressAsync("v");
        await teacher.Page.Locator(".pick", new() { HasText = "improved" }).WaitForAsync();
        await hands.PressAsync("1");
        await teacher.Page.Locator("#line-answer [data-bench-name=agree]").WaitForAsync();
        var here = teacher.Page.Url;
        var next = await teacher.Page.Context.NewPageAsync();

        await teacher.GoToAsync("/desk");
        await next.GotoAsync(here);
        await next.Locator("#line-answer [data-bench-name=undo]").ClickAsync();
        await Assertions.Expect(next.Locator("#line-answer")).ToContainTextAsync("Not recorded");
        await teacher.GoToAsync(new Uri(here).AbsolutePath);
        await hands.ReadyAsync();

        await Assertions.Expect(teacher.Page.Locator("#line-answer .asked-keys")).ToHaveCountAsync(0);
    }
}
