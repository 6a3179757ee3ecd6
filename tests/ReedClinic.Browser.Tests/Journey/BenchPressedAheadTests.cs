using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>Hands that are quicker than the page: what they pressed and typed is done in its order, and none of it is lost.</summary>
public sealed class BenchPressedAheadTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string Reason = "opens up now, but the heart is all there is left";

    [Fact]
    public async Task A_verdict_its_reason_and_the_way_on_pressed_before_the_page_has_followed_are_all_done_in_their_order()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "why-at-once");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        var reed = teacher.Page.Url;

        // All within one turn of the page's own loop: the list of verdicts isn't there yet when its number is pressed.
        await PressAtOnceAsync(teacher, "v", "4", "t", "o", "o", " ", "s", "o", "f", "t", "Enter", "Escape", "n");

        await Assertions.Expect(teacher.Page).Not.ToHaveURLAsync(reed);
        await teacher.GoToAsync(reed);
        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = "as good as this cane gets" }).Filter(new() { HasText = "too soft" })).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Esc_takes_no_verdict_away_that_was_pressed_before_its_list_came()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "why-left");
        await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);

        await PressAtOnceAsync(teacher, "v", "4", "Escape");

        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = "as good as this cane gets" })).ToHaveCountAsync(1);
        await Assertions.Expect(teacher.Page.Locator(".asked[data-reason]")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_is_typed_on_while_a_reason_is_on_its_way_stays_in_the_line()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "why-typed-on");
        var hands = await VerdictAsync(teacher, 3);
        await teacher.Page.Locator(".asked[data-reason]").WaitForAsync();
        await teacher.Page.Keyboard.TypeAsync(Reason);
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync(Reason);
        var through = new TaskCompletionSource();
        await teacher.Page.RouteAsync("**/bench/*/line", async route =>
        {
            await through.Task;
            await route.ContinueAsync();
        });

        await hands.PressAsync("Enter");
        await teacher.Page.Keyboard.TypeAsync(" crow again C");
        through.SetResult();

        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = "as good as this cane gets" }).Filter(new() { HasText = Reason })).ToHaveCountAsync(1);
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync("crow again C");
    }

    [Fact]
    public async Task What_is_shown_of_words_that_stood_there_before_pales_until_the_new_ones_are_heard()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "heard-behind");
        var hands = await BenchHands.OpenAsync(teacher, app, "Ines Calder", 2);
        var (heard, card) = (teacher.Page.Locator("#line-heard"), teacher.Page.Locator("#line-heard .card"));
        await hands.TypeAsync("windows uneven");
        await Assertions.Expect(card).ToContainTextAsync("windows");
        await Assertions.Expect(heard).Not.ToHaveAttributeAsync("data-behind", "");

        // Looked at in the same turn in which the letters come: no answer can be there.
        var pale = await teacher.Page.EvaluateAsync<bool>(
            "() => { const line = document.getElementById('bench-line'); line.value = 'crow C'; line.dispatchEvent(new Event('input', { bubbles: true })); return document.getElementById('line-heard').hasAttribute('data-behind'); }");

        Assert.True(pale);
        await Assertions.Expect(card).ToContainTextAsync("crow");
        await Assertions.Expect(heard).Not.ToHaveAttributeAsync("data-behind", "");
    }

    [Fact]
    public async Task Words_that_wait_in_a_question_are_not_put_before_what_is_typed_after_a_correction()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "not-glued");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        var line = teacher.Page.Locator("#bench-line");
        await hands.SayAsync("c+40");
        await hands.TypeAsync("clip a hair");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("safe changes only");
        await hands.PressAsync("Escape");
        await hands.PressAsync("-");
        await teacher.Page.Locator(".say.corrects").WaitForAsync();
        await line.FillAsync("c+45");

        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".say.corrects")).ToHaveCountAsync(0);
        await teacher.Page.Keyboard.TypeAsync("back is heavy, lower");

        await Assertions.Expect(line).ToHaveValueAsync("back is heavy, lower");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("safe changes only");
    }

    private static async Task PressAtOnceAsync(Visitor teacher, params string[] keys) => await teacher.Page.EvaluateAsync(
        "keys => { for (const key of keys) document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true })); }", keys);

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
