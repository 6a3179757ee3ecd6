using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What is asked before it is recorded stays until it is answered or taken back, whatever else there is to tell.</summary>
public sealed class BenchQuestionTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string HigherStill = "a clip takes it higher";

    [Fact]
    public async Task A_clip_and_a_crow_without_a_connection_stand_in_their_order_once_the_question_about_the_clip_is_answered()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "question-offline");
        var hands = await OpenAsync(teacher, 1, "c+40");
        var facts = await hands.FactsAsync();
        await CutAsync(teacher);
        await teacher.Page.Locator(".pick", new() { HasText = "clipped by a hair" }).ClickAsync();
        await hands.TypeAsync("c+35");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("waiting")).ToContainTextAsync("2 waiting");

        await BackAsync(teacher);

        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("Waiting behind this: c+35");
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync(HigherStill);
        Assert.Equal(facts, await hands.FactsAsync());
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync("clipped by a hair");
        await teacher.ShotAsync("a question and other news");

        await hands.TypeAsync("undo");
        await Assertions.Expect(teacher.Page.Locator(".takes-back .while-asked")).ToBeVisibleAsync();
        await Assertions.Expect(teacher.Page.Locator(".takes-back .unasked")).ToBeHiddenAsync();
        await teacher.Page.Locator("#bench-line").FillAsync("");
        await hands.LeaveLineAsync();
        await hands.PickAsync("r", 2);
        await BenchHeldTests.ClippedBeforeTheCrowAsync(teacher);
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("crow");
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task Neither_a_failed_way_nor_a_save_nor_a_second_question_takes_a_question_away_and_u_takes_back_one_at_a_time(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"question-news-{width}", width);
        var hands = await OpenAsync(teacher, 2, "c+40");
        await hands.LeaveLineAsync();
        await ImprovedAsync(teacher, hands);
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync("left as it came");
        await hands.PressAsync("Escape");

        await CutAsync(teacher);
        await hands.TypeAsync("remember the pale case");
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("1 waiting");
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync("left as it came");
        await BackAsync(teacher);
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("pale case");

        await hands.TypeAsync("clip a hair");
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("Still to be answered after this: 1.");
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync("left as it came");
        await teacher.ShotAsync("two questions");

        await hands.LeaveLineAsync();
        // Pressed twice in one go, the second was meant for what stood there before.
        await teacher.Page.EvaluateAsync("() => { for (const _ of [1, 2]) document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'u', bubbles: true, cancelable: true })); }");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("safe changes only");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("u wasn’t pressed");
        await teacher.ShotAsync("one is taken back");

        await teacher.Page.EvaluateAsync("() => new Promise(done => { const since = performance.now(); const wait = now => now - since > 700 ? done() : requestAnimationFrame(wait); requestAnimationFrame(wait); })");
        await hands.PressAsync("u");
        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("Not recorded: clip a hair. Press again to take back what was saved last");
        await NothingOlderGoesAndItIsAskedAgainAsync(teacher, hands);
    }

    [Fact]
    public async Task A_question_survives_a_reload_and_is_recorded_once()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "question-reload");
        var hands = await OpenAsync(teacher, 3, "c-5");
        await hands.LeaveLineAsync();
        var facts = await hands.FactsAsync();
        await ImprovedAsync(teacher, hands);
        await hands.Answer("before").WaitForAsync();

        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync("left as it came");
        await hands.PressAsync("y");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).Not.ToBeEmptyAsync();
        await teacher.LookAsync("a question after a reload");
        await hands.PickAsync("r");
        await hands.Answer("saved").WaitForAsync();

        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();
        await Assertions.Expect(teacher.Page.Locator("#line-answer")).ToBeEmptyAsync();
        Assert.Equal(facts + 1, await hands.FactsAsync());
    }

    [Fact]
    public async Task Words_that_are_refused_while_something_else_stands_in_the_line_wait_beside_it_and_come_back_by_one_key()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "question-words");
        var hands = await OpenAsync(teacher, 3, "c-4");
        await CutAsync(teacher);
        var many = string.Join("; ", Enumerable.Repeat("clip a hair", 40));
        await teacher.Page.Locator("#bench-line").FillAsync(many);
        await hands.PressAsync("Enter");
        await hands.Answer("waiting").WaitForAsync();
        await hands.TypeAsync("half");
        await BackAsync(teacher);
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("too much for one breath");

        await hands.LeaveLineAsync();
        await hands.PressAsync("r");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("Something else stands in the line");
        await teacher.Page.Locator("#bench-line").FillAsync("");
        await hands.LeaveLineAsync();
        await hands.PressAsync("r");
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync(many);
        await Assertions.Expect(teacher.Page.Locator("#line-answer")).ToBeEmptyAsync();
    }

    [Fact]
    public async Task A_press_that_the_studio_did_not_take_stays_and_is_sent_again_by_one_key()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "press-not-taken");
        var hands = await OpenAsync(teacher, 1, "c-3");
        await hands.LeaveLineAsync();
        var facts = await hands.FactsAsync();
        await teacher.Page.RouteAsync("**/bench/*/entries", route => route.FulfillAsync(new() { Status = 409, Body = "" }));
        await hands.PressAsync("1");
        await Assertions.Expect(hands.Answer("refused").Locator("[data-bench-name=agree]")).ToBeVisibleAsync();
        await teacher.LookAsync("a press that was not taken");

        // Whatever is said meanwhile, it stays until it is sent or left out.
        await hands.SayAsync("remember the fan");
        await Assertions.Expect(teacher.Page.Locator("#line-answer .asked-of")).ToContainTextAsync("thinned at the sides of the tip");
        await teacher.Page.UnrouteAllAsync();
        await hands.LeaveLineAsync();
        await hands.PickAsync("r");
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("thinned at the sides of the tip");
        await Assertions.Expect(teacher.Page.Locator(".log-line")).ToHaveCountAsync(facts + 2);
    }

    [Fact]
    public async Task The_second_half_of_a_doubled_u_takes_back_nothing_that_stands()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "doubled-u");
        var hands = await OpenAsync(teacher, 2, "c-2");
        await hands.SayAsync("remember the plaque");
        await hands.TypeAsync("scrape the heart 40 strokes");
        await hands.PressAsync("Enter");
        await teacher.Page.Locator("#line-answer .asked-keys").WaitForAsync();
        await teacher.Page.Locator("#bench-line").FillAsync("");
        await hands.LeaveLineAsync();

        await teacher.Page.EvaluateAsync("() => { for (const _ of [1, 2]) document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'u', bubbles: true, cancelable: true })); }");
        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("Press again to take back what was saved last");
        await hands.SayAsync("remember the mandrel");

        // What was sent before it would stand taken back by now.
        await Assertions.Expect(teacher.Page.Locator(".log-line.taken-back", new() { HasText = "plaque" })).ToHaveCountAsync(0);
    }

    private static async Task NothingOlderGoesAndItIsAskedAgainAsync(Visitor teacher, BenchHands hands)
    {
        await teacher.Page.EvaluateAsync("document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'u', bubbles: true, cancelable: true }))");

        // What was left out with its advice is told again.
        await ImprovedAsync(teacher, hands);
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync("left as it came");
        await Assertions.Expect(teacher.Page.Locator(".log-line.taken-back")).ToHaveCountAsync(0);
    }

    private async Task<BenchHands> OpenAsync(Visitor teacher, int reed, string crow)
    {
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", reed);
        await hands.SayAsync(crow);
        return hands;
    }

    private static async Task ImprovedAsync(Visitor teacher, BenchHands hands)
    {
        await hands.PressAsync("v");
        await teacher.Page.Locator("[data-bench-name=verdict][aria-pressed=true]").WaitForAsync();
        await hands.PressAsync("1");
    }

    private static async Task CutAsync(Visitor teacher) => await teacher.Page.RouteAsync("**/bench/*/*", route => route.AbortAsync());

    private static async Task BackAsync(Visitor teacher)
    {
        await teacher.Page.UnrouteAllAsync();
        await teacher.Page.EvaluateAsync("dispatchEvent(new Event('online'))"); // what a browser says when its network is back
    }
}
