using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What was said at the bench is said better where the hands are, with the log in sight; and what is asked is answered by one key.</summary>
public sealed class BenchCorrectTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task An_entry_comes_back_into_the_line_with_its_place_in_the_log_in_sight_and_is_corrected_or_left()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "correct", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        var (line, better) = (page.Locator("#bench-line"), page.Locator(".log-line.better"));
        await hands.SayAsync("crow c+10");
        await hands.SayAsync("umbrela");
        var facts = await hands.FactsAsync();

        // Left: what stood in the line before comes back.
        await page.Keyboard.TypeAsync("half a phra");
        await page.Locator(".log-line", new() { HasText = "10 cents above C" }).Last.Locator(".mend").ClickAsync();
        await Assertions.Expect(line).ToHaveValueAsync("crow c+10");
        await Assertions.Expect(line).ToBeFocusedAsync();
        await Assertions.Expect(better).ToContainTextAsync("being corrected");
        await Assertions.Expect(better).ToBeInViewportAsync();
        await Assertions.Expect(page.Locator(".instead")).ToContainTextAsync("Correcting entry");
        await teacher.LookAsync("correcting an entry");
        await LeftAsync(hands, line, better);

        // Corrected: by one key, in its own place, and what it was stays to be seen.
        await hands.LeaveLineAsync();
        await hands.PressAsync("-");
        await Assertions.Expect(line).ToHaveValueAsync("umbrela");
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync("clip a hair");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("Corrected: clipped by a hair");
        await Assertions.Expect(line).ToHaveValueAsync("");
        await Assertions.Expect(better).ToHaveCountAsync(0);
        var mended = page.Locator(".log-line", new() { HasText = "clipped by a hair" }).Last;
        await Assertions.Expect(mended).ToContainTextAsync("earlier wording (1)");
        Assert.Equal(facts, await hands.FactsAsync());
    }

    [Fact]
    public async Task What_has_no_words_for_the_line_opens_its_own_fields_with_the_log_in_sight()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "correct-fields", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        await hands.PressAsync("v");
        await hands.PressAsync("1");
        await Assertions.Expect(page.Locator("#line-answer")).ToContainTextAsync("Record it all the same");
        await hands.PickAsync("r");

        await hands.PressAsync("-");

        await Assertions.Expect(page.GetByRole(AriaRole.Radio, new() { Name = "improved", Exact = true })).ToBeFocusedAsync();
        await Assertions.Expect(page.Locator(".entry-kinds")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator(".log-line.better")).ToBeInViewportAsync();
        await teacher.LookAsync("correcting in fields");
        await hands.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#by-fields")).Not.ToHaveAttributeAsync("open", "");
        await Assertions.Expect(page.Locator(".log-line.better")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_was_typed_for_one_entry_is_there_again_after_another_was_taken_up()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "correct-two", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        var line = page.Locator("#bench-line");
        await hands.SayAsync("crow c+20");
        await hands.SayAsync("clip a hair");
        await hands.LeaveLineAsync();
        await hands.PressAsync("v");
        await hands.PickAsync("1");
        await hands.PressAsync("Escape");
        await line.FillAsync("half a phra");

        await MendAsync(page, "20 cents above C");
        await Assertions.Expect(line).ToHaveValueAsync("crow c+20");
        await line.FillAsync("crow C +25, steady");
        await MendAsync(page, "clipped by a hair");
        await Assertions.Expect(line).ToHaveValueAsync("clip a hair");
        await MendAsync(page, "20 cents above C");
        await Assertions.Expect(line).ToHaveValueAsync("crow C +25, steady");

        // What has no words for the line opens its fields: the line is what it was before.
        await MendAsync(page, "improved");
        await Assertions.Expect(line).ToHaveValueAsync("half a phra");
        await Assertions.Expect(page.Locator("form[data-reed] [name=Seen]")).ToHaveValueAsync("");
        var words = page.Locator("#by-fields form.entry textarea").First;
        await words.FillAsync("it speaks low now");
        await hands.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#by-fields")).Not.ToHaveAttributeAsync("open", "");
        await page.Locator("#by-fields > summary").ClickAsync();
        await Assertions.Expect(words).ToHaveValueAsync("it speaks low now");
    }

    // One Esc leaves both, the entry and the line: the next key is a key.
    private static async Task LeftAsync(BenchHands hands, ILocator line, ILocator better)
    {
        await hands.PressAsync("Escape");
        await Assertions.Expect(line).ToHaveValueAsync("half a phra");
        await Assertions.Expect(better).ToHaveCountAsync(0);
        await Assertions.Expect(line).Not.ToBeFocusedAsync();
        await hands.PressAsync("/");
        await Assertions.Expect(line).ToBeFocusedAsync();
        await line.FillAsync("");
    }

    private static Task MendAsync(IPage page, string entry) => page.Locator(".log-line", new() { HasText = entry }).Last.Locator(".mend").ClickAsync();

    [Fact]
    public async Task Whoever_stops_may_say_why_by_one_key_and_the_desk_does_not_move()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "stop-why", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        await hands.SayAsync("crow c");
        await hands.LeaveLineAsync();
        var before = await TopAsync(page, "#bench-line");

        await hands.PickAsync("s");
        await Assertions.Expect(page.Locator(".asked")).ToContainTextAsync("Why stop now?");
        Assert.InRange(await TopAsync(page, "#bench-line") - before, -40, 40);
        await teacher.LookAsync("why stop now");
        await hands.PressAsync("2");

        await Assertions.Expect(page.Locator(".log-line").Last).ToContainTextAsync("The tip is as thin as it may be.");
        await Assertions.Expect(page.Locator(".asked")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Enter_in_the_unchanged_line_says_that_it_was_agreed_to_and_a_held_key_does_not()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "agree-enter", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await hands.TypeAsync("thinned the corners of the upper blade left by three strokes, opened the windows by two strokes, clip 0.5 mm");
        await page.Locator(".card").Nth(2).WaitForAsync();
        Assert.True(await page.Locator(".heard").EvaluateAsync<bool>("heard => heard.scrollHeight <= heard.clientHeight + 1"));
        await teacher.LookAsync("a long line understood");
        await page.Keyboard.DownAsync("Enter");
        await page.Locator("#line-answer [data-bench-name=agree]").WaitForAsync();
        await page.EvaluateAsync("window.answered = performance.now()");
        await page.WaitForFunctionAsync("() => performance.now() - window.answered > 700");
        var facts = await hands.FactsAsync();
        await page.Keyboard.DownAsync("Enter");
        await page.Keyboard.UpAsync("Enter");
        await Assertions.Expect(page.Locator("#line-answer [data-bench-name=agree]")).ToHaveCountAsync(1);
        Assert.Equal(facts, await hands.FactsAsync());

        await hands.LeaveLineAsync();
        await hands.PickAsync("r", 3);

        await Assertions.Expect(page.Locator(".log-line", new() { HasText = "Agreed with the student since." }).Last).ToBeVisibleAsync();
        Assert.InRange(await page.EvaluateAsync<double>("document.querySelector('.memo .key').getBoundingClientRect().top - document.querySelector('#bench-line').getBoundingClientRect().top"), -12, 12);
    }

    [Theory]
    [InlineData(390)]
    [InlineData(320)]
    public async Task In_a_hand_the_keys_of_the_sound_stay_in_reach_and_a_tap_takes_up_what_was_written_last(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"correct-phone-{width}", width);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(width, 700);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await hands.SayAsync("crow c+15");
        await hands.LeaveLineAsync();
        await page.Mouse.MoveAsync(width / 2, 300);
        await page.Mouse.WheelAsync(0, 500);
        await page.WaitForFunctionAsync("() => scrollY > 300");

        foreach (var key in new[] { "retest", "tuner" })
        {
            Assert.Equal("44 seen", await page.Locator($"[data-press={key}]").First.EvaluateAsync<string>(
                "one => { const box = one.getBoundingClientRect(); const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2); return `${Math.min(44, box.height, box.width)} ${one.contains(top) ? 'seen' : 'covered'}`; }"));
        }

        await page.Locator(".newest button").ClickAsync();
        await Assertions.Expect(page.Locator("#bench-line")).ToHaveValueAsync("crow c+15");
        await Assertions.Expect(page.Locator(".instead strong")).ToBeInViewportAsync();
        await teacher.FitsAsync();
        await teacher.LookAsync("correcting in a hand");
        await page.Locator("[data-leave]").ClickAsync();
        await Assertions.Expect(page.Locator("#bench-line")).ToHaveValueAsync("");
    }

    private static Task<double> TopAsync(IPage page, string what) => page.Locator(what).First.EvaluateAsync<double>("one => one.getBoundingClientRect().top");
}
