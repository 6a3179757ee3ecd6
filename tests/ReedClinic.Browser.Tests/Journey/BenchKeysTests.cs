using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The bench without a mouse: wet fingers and a keyboard, or a pedal that sends keys.</summary>
public sealed class BenchKeysTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task A_finding_is_written_and_taken_back_by_the_keyboard_alone()
    {
        await using var teacher = await browser.VisitAsync(app.Home, "bench-keys");
        await teacher.SignInAsync("edda@lanternquay.example", thenAt: "/(desk)?", DemoClinic.Password);
        await teacher.GoToAsync("/desk");
        await teacher.LookAsync("desk of the demo");
        await teacher.TabToAsync(teacher.Link("Tomas Arden"));
        await teacher.PressKeyAsync("Enter", thenAt: "/batches/[^/]+");
        await teacher.LookAsync("batch of the demo");
        await teacher.TabToAsync(teacher.Link("Bench: reed 1"));
        await teacher.PressKeyAsync("Enter", thenAt: "/bench/[^/]+");
        await teacher.LiveAsync();
        await teacher.Page.Locator("html[data-bench-ready]").WaitForAsync();
        await teacher.Page.Keyboard.PressAsync("w");

        await teacher.TabToAsync(teacher.Button("Found"));
        await teacher.Page.Keyboard.PressAsync("Enter");
        await teacher.TabToAsync(teacher.Field("What it is"));
        await teacher.Page.Keyboard.TypeAsync("windows uneven");
        await teacher.TabToAsync(teacher.Page.GetByRole(AriaRole.Checkbox, new() { Name = "light", Exact = true }));
        await teacher.Page.Keyboard.PressAsync("Space");
        await teacher.LookAsync("a finding, typed");
        await teacher.TabToAsync(teacher.Button("Save"));
        await teacher.Page.Keyboard.PressAsync("Enter");
        var line = teacher.Page.Locator(".log-line", new() { HasText = "windows uneven" });
        await line.WaitForAsync();

        await teacher.TabToAsync(teacher.Button("Take back my last entry"));
        await teacher.Page.Keyboard.PressAsync("Enter");
        await teacher.Page.Locator(".log-line.taken-back", new() { HasText = "windows uneven" }).WaitForAsync();
        await teacher.LookAsync("taken back");
    }

    [Fact]
    public async Task Keys_pressed_faster_than_the_page_follows_are_meant_for_what_comes()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "fast-keys");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        var log = teacher.Page.Locator(".log-line");
        var facts = await hands.FactsAsync();

        // All within one turn of the page's own loop: no server can have answered between them.
        await PressAtOnceAsync(teacher, "t", "1", "2");
        await Assertions.Expect(log).ToHaveCountAsync(facts + 1);
        Assert.StartsWith("test", await log.Last.InnerTextAsync(), StringComparison.Ordinal);
        await Assertions.Expect(teacher.Page.Locator("[data-bench-name=try]")).ToHaveAttributeAsync("aria-pressed", "false");

        // A press that asks for no other list doesn’t end the waiting of one that does.
        await PressAtOnceAsync(teacher, "1", "t", "1", "1");
        await Assertions.Expect(log).ToHaveCountAsync(facts + 3);
        Assert.StartsWith("test", await log.Last.InnerTextAsync(), StringComparison.Ordinal);
        await Assertions.Expect(teacher.Page.Locator("[data-bench-name=try]")).ToHaveAttributeAsync("aria-pressed", "false");

        // What is taken back is what was said just now, and what is said again too.
        await PressAtOnceAsync(teacher, "2", "u");
        await Assertions.Expect(log.Last).ToHaveClassAsync(new System.Text.RegularExpressions.Regex("taken-back"));
        await Assertions.Expect(log).ToHaveCountAsync(facts + 4);

        // Stopping and the verdict ask why, whichever list is open: the number is the answer, and neither work nor a test.
        facts = await hands.FactsAsync();
        await hands.PressAsync("t");
        await Assertions.Expect(teacher.Page.Locator("[data-bench-name=try]")).ToHaveAttributeAsync("aria-pressed", "true");
        await PressAtOnceAsync(teacher, "s", "2");
        await Assertions.Expect(log.Last).ToContainTextAsync("The tip is as thin as it may be.");
        await PressAtOnceAsync(teacher, "v", "1", "3");
        await Assertions.Expect(log).ToHaveCountAsync(facts + 2);
        await Assertions.Expect(log.Last).ToContainTextAsync("improved");
        await teacher.LookAsync("fast keys");
    }

    [Fact]
    public async Task The_key_of_a_list_opens_it_and_never_closes_it_and_a_saved_test_ends_its_list()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "list-keys", 1280);
        var page = teacher.Page;
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        var (tests, verdicts, work) = (page.Locator("[data-bench-name=try]"), page.Locator("[data-bench-name=verdict]"), page.Locator(".log-line.kind-adjustment"));
        await hands.SayAsync("remember the shelf");
        await hands.LeaveLineAsync();
        var done = await work.CountAsync();

        // Tests, one by one: each key is waited for, as a hand would that looks.
        foreach (var key in new[] { "t", "t" })
        {
            await hands.PressAsync(key);
            await Assertions.Expect(tests).ToHaveAttributeAsync("aria-pressed", "true");
        }

        await hands.PressAsync("2");
        await page.Locator(".pick-how").WaitForAsync();
        await hands.PickAsync("1");
        await Assertions.Expect(page.Locator(".log-line").Last).ToHaveClassAsync(new System.Text.RegularExpressions.Regex("kind-test"));
        await Assertions.Expect(tests).ToHaveAttributeAsync("aria-pressed", "false");
        await hands.PressAsync("t");
        await Assertions.Expect(tests).ToHaveAttributeAsync("aria-pressed", "true");
        await hands.PressAsync("Escape");
        await Assertions.Expect(tests).ToHaveAttributeAsync("aria-pressed", "false");

        // The verdict: what is said in between doesn’t change what its key opens.
        await hands.PressAsync("v");
        await Assertions.Expect(verdicts).ToHaveAttributeAsync("aria-pressed", "true");
        await hands.PressAsync("u");
        await Assertions.Expect(page.Locator(".log-line.taken-back")).ToHaveCountAsync(1);
        await hands.PressAsync("v");
        await teacher.LookAsync("the verdicts, asked for twice");
        await hands.PressAsync("1");
        await Assertions.Expect(page.Locator("#line-answer")).ToContainTextAsync("improved");
        await Assertions.Expect(work).ToHaveCountAsync(done);
    }

    [Fact]
    public async Task Same_again_goes_by_the_blade_and_the_side_that_were_set_since_and_leaves_them_set()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "same-again", 1280);
        var page = teacher.Page;
        var hands = await BenchHands.OpenAsync(teacher, app, "Ines Calder", 2);
        await hands.PickAsync("1");
        await Assertions.Expect(page.Locator(".log-line").Last).Not.ToContainTextAsync("upper blade");
        await hands.PressAsync("o");
        await hands.PressAsync("i");
        await Assertions.Expect(page.Locator("[data-bench-name=side]")).ToContainTextAsync("left");

        await hands.PickAsync(".");

        await Assertions.Expect(page.Locator(".log-line").Last).ToContainTextAsync("upper blade, left");
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("upper blade, left");
        await Assertions.Expect(page.Locator("[data-bench-name=blade]")).ToContainTextAsync("upper blade");
        await Assertions.Expect(page.Locator("[data-bench-name=side]")).ToContainTextAsync("left");
    }

    [Fact]
    public async Task A_key_for_a_list_that_does_not_come_is_not_pressed_on_the_old_one_and_that_is_told()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "away-keys");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        var facts = await hands.FactsAsync();
        await teacher.Page.EvaluateAsync("() => document.querySelector('[data-bench-name=try]').addEventListener('click', (event) => event.stopImmediatePropagation())");
        await PressAtOnceAsync(teacher, "t", "1");
        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("1 wasn’t pressed");
        Assert.Equal(facts, await hands.FactsAsync());

        // After that the keys are what they were.
        await hands.PickAsync("1");
        await teacher.LookAsync("a key that was not pressed");
    }

    private static async Task PressAtOnceAsync(Visitor teacher, params string[] keys) => await teacher.Page.EvaluateAsync(
        "keys => { for (const key of keys) document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true })); }", keys);

    [Fact]
    public async Task A_key_alone_in_the_line_is_pressed_by_enter_and_anything_longer_is_words()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "lone-key");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await hands.SayAsync("c+10");
        await hands.SayAsync("remember the tall case");
        var (line, told, takenBack) = (teacher.Page.Locator("#bench-line"), teacher.Page.Locator("#line-key"), teacher.Page.Locator(".log-line.taken-back"));
        var (facts, before) = (await hands.FactsAsync(), await takenBack.CountAsync());

        // Straight after Enter the hands are still in the line.
        await Assertions.Expect(line).ToBeFocusedAsync();
        await teacher.Page.Keyboard.TypeAsync("u");
        await Assertions.Expect(told).ToHaveTextAsync("u is a key: Take back. Enter presses it. Write on, and it is a word.");
        await Assertions.Expect(teacher.Page.Locator("[data-would-press]")).ToHaveAttributeAsync("data-bench-name", "undo");
        await teacher.LookAsync("a key alone in the line");
        await teacher.Page.Keyboard.TypeAsync("pper blade is fine");
        await Assertions.Expect(told).ToHaveTextAsync("");
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".log-line")).ToHaveCountAsync(facts + 1);
        await Assertions.Expect(takenBack).ToHaveCountAsync(before);
        await teacher.Page.Keyboard.TypeAsync("u");
        await hands.PressAsync("Enter");
        await Assertions.Expect(takenBack).ToHaveCountAsync(before + 1);
        await Assertions.Expect(line).ToHaveValueAsync("");
        await Assertions.Expect(line).ToBeFocusedAsync();
        await teacher.Page.Keyboard.TypeAsync("/");
        await hands.PressAsync("Enter");
        await Assertions.Expect(line).ToHaveValueAsync("");

        // A note's letter stays a pitch.
        await hands.SayAsync("c");
        await Assertions.Expect(teacher.Page.Locator(".log-line")).ToHaveCountAsync(facts + 2);
    }

    [Fact]
    public async Task Without_single_keys_every_letter_in_the_line_is_a_word()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "letters-are-words");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        var (facts, takenBack) = (await hands.FactsAsync(), await teacher.Page.Locator(".log-line.taken-back").CountAsync());
        await teacher.Page.EvaluateAsync("document.querySelector('#bench-keys').open = true");
        await teacher.Page.Locator("#bench-keys [name=off]").CheckAsync();
        await teacher.Page.Locator("#bench-line").FocusAsync();
        await hands.SayAsync("u");
        await Assertions.Expect(teacher.Page.Locator(".log-line").Last).ToContainTextAsync("note u");
        await Assertions.Expect(teacher.Page.Locator(".log-line")).ToHaveCountAsync(facts + 1);
        await Assertions.Expect(teacher.Page.Locator(".log-line.taken-back")).ToHaveCountAsync(takenBack);
    }

    [Fact]
    public async Task A_key_sent_from_the_line_that_has_to_wait_leaves_the_hands_in_the_line()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "waiting-key");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        var takenBack = teacher.Page.Locator(".log-line.taken-back");
        var before = await takenBack.CountAsync();

        // It is saved and drawn, and its answer is still on the way: until then nothing is taken back.
        var through = new TaskCompletionSource();
        await teacher.Page.RouteAsync("**/bench/*/line", async route =>
        {
            var response = await route.FetchAsync();
            await through.Task;
            await route.FulfillAsync(new() { Response = response });
        });
        await hands.SayAsync("remember the low shelf");
        await teacher.Page.Keyboard.TypeAsync("u");
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync("");
        await Assertions.Expect(takenBack).ToHaveCountAsync(before);

        through.SetResult();
        await Assertions.Expect(takenBack).ToHaveCountAsync(before + 1);
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToBeFocusedAsync();
    }

    [Fact]
    public async Task A_place_is_chosen_on_the_map_by_the_keyboard()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "map-keys");
        await teacher.GoToAsync(await app.BenchOfAsync("Tomas Arden", 2, TestContext.Current.CancellationToken));
        await teacher.LiveAsync();
        await teacher.OpenFieldsAsync();
        await teacher.TabToAsync(teacher.Button("Leave alone"));
        await teacher.Page.Keyboard.PressAsync("Enter");
        await teacher.Heading("Which part is not to be touched?").WaitForAsync();

        // One stop of Tab for each blade; the arrows walk from zone to zone.
        await teacher.TabToAsync(teacher.Page.Locator(".pressable[data-reed-zone=TipEdge]").First);
        var walked = new List<string?>();
        for (var step = 0; step < 4; step++)
        {
            await teacher.Page.Keyboard.PressAsync("ArrowDown");
            walked.Add(await teacher.Page.EvaluateAsync<string?>("document.activeElement.dataset.reedZone"));
        }

        Assert.Equal(walked.Count, walked.Distinct().Count());
        await teacher.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(teacher.Field("Part of the reed")).ToHaveValueAsync(walked[^1]!);
        await teacher.LookAsync("a zone, chosen on the map");
    }
}
