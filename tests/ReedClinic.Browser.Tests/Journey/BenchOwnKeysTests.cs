using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The table of keys: another key, a pedal’s, and none at all. WCAG 2.2, success criterion 2.1.4 asks for a way to turn single keys off or to change them.</summary>
public sealed class BenchOwnKeysTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task A_key_that_is_taken_is_told_beside_its_field_a_pedals_key_works_and_backspace_brings_the_usual_one_back()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "own-keys");
        var page = teacher.Page;
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.PressAsync("k");
        var (field, problem) = (page.Locator("#key-undo"), page.Locator("#key-undo-problem"));
        await teacher.TabToAsync(field);

        await hands.PressAsync("t");
        await Assertions.Expect(problem).ToHaveTextAsync("t is taken: tests or work.");
        await Assertions.Expect(field).ToHaveValueAsync("u");
        var (said, typed) = ((await problem.BoundingBoxAsync())!, (await field.BoundingBoxAsync())!);
        Assert.True(said.Y + said.Height > typed.Y && said.Y < typed.Y + typed.Height, $"{said.Y} is not beside {typed.Y}");
        await teacher.LookAsync("a key that is taken");

        // Enter ends nothing here, and is no key; the space bar has a name.
        await hands.PressAsync("Enter");
        await Assertions.Expect(field).ToHaveValueAsync("u");
        await hands.PressAsync("Space");
        await Assertions.Expect(field).ToHaveValueAsync("Space");
        await Assertions.Expect(problem).ToBeEmptyAsync();
        await hands.PressAsync("Backspace");
        await Assertions.Expect(field).ToHaveValueAsync("u");

        // A pedal sends such a key; a keyboard on the glass only writes.
        await PedalAsync(page, "F13");
        await Assertions.Expect(field).ToHaveValueAsync("F13");
        await page.Locator("#key-park").EvaluateAsync(
            "field => { field.focus(); field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Unidentified', bubbles: true, cancelable: true })); document.execCommand('insertText', false, 'ö'); }");
        await Assertions.Expect(page.Locator("#key-park")).ToHaveValueAsync("ö");
        await Assertions.Expect(page.Locator("[data-bench-name=park] kbd")).ToHaveTextAsync("ö");
        await hands.PressAsync("Escape");
        await TakenBackByAPedalAsync(teacher, hands);
    }

    private static async Task TakenBackByAPedalAsync(Visitor teacher, BenchHands hands)
    {
        await hands.SayAsync("remember the tall case");
        await hands.LeaveLineAsync();
        await PedalAsync(teacher.Page, "F13");
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("Taken back");
        await Assertions.Expect(teacher.Page.Locator(".log-line.taken-back")).ToHaveCountAsync(1);
        await teacher.LookAsync("taken back by a pedal");
    }

    [Fact]
    public async Task Without_single_keys_nothing_shows_an_empty_key_and_the_line_is_a_link_away()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "no-single-keys");
        var page = teacher.Page;
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.PressAsync("k");
        await hands.PressAsync("Space");
        await hands.PressAsync("Escape");
        await Assertions.Expect(page.Locator(".say [data-bench-name=line]")).ToBeHiddenAsync();
        var facts = await hands.FactsAsync();
        await hands.PressAsync("1");
        await teacher.LookAsync("without single keys");

        await page.ReloadAsync();
        await hands.ReadyAsync();
        var way = page.Locator(".bench-head .skip");
        await teacher.TabToAsync(way);
        await Assertions.Expect(way).ToBeInViewportAsync();
        await teacher.ShotAsync("the way to the line");
        await hands.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#bench-line")).ToBeFocusedAsync();
        Assert.Equal(facts, await hands.FactsAsync());
    }

    private static async Task PedalAsync(IPage page, string key)
    {
        var pedal = await page.Context.NewCDPSessionAsync(page);
        foreach (var type in new[] { "keyDown", "keyUp" })
        {
            await pedal.SendAsync("Input.dispatchKeyEvent", new() { ["type"] = type, ["key"] = key, ["code"] = key, ["windowsVirtualKeyCode"] = 124 });
        }

        await pedal.DetachAsync();
    }
}
