using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What was said at the bench is taken back wherever in the log it stands, and each answer names what became of it.</summary>
public sealed class BenchTakeBackTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task An_entry_further_back_is_taken_back_by_its_own_button_or_key_and_brought_back()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "take-back", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.SayAsync("the tall case is empty");
        await hands.SayAsync("crow c+10");
        await hands.SayAsync("remember the mandrel");
        await hands.LeaveLineAsync();
        var (row, gone) = (page.Locator(".log-line", new() { HasText = "the tall case is empty" }).Last, page.Locator(".log-line.taken-back", new() { HasText = "the tall case is empty" }));
        var back = row.Locator(".back");
        var size = await back.BoundingBoxAsync();
        Assert.True(size is { Width: >= 44, Height: >= 44 });
        await Assertions.Expect(back).ToHaveAccessibleNameAsync("Take back: the tall case is empty");
        await teacher.LookAsync("each entry with its own way back");

        await back.ClickAsync();
        await Assertions.Expect(hands.Answer("saved")).ToHaveTextAsync("Taken back: the tall case is empty");
        await Assertions.Expect(gone).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator(".log-line.taken-back", new() { HasText = "mandrel" })).ToHaveCountAsync(0);

        // The key that takes back brings back what went out of turn, instead of taking back more.
        await hands.PressAsync("u");
        await Assertions.Expect(hands.Answer("saved")).ToHaveTextAsync("It stands again: the tall case is empty");
        await Assertions.Expect(gone).ToHaveCountAsync(0);

        // By keys alone: where the focus is in the entry, which is one stop of the Tab key and says its key there.
        await IsOneStopAsync(hands, row, back);
        await hands.PressAsync("Delete");
        await Assertions.Expect(gone).ToHaveCountAsync(1);
        await back.FocusAsync();
        await hands.PressAsync("Delete");
        await Assertions.Expect(gone).ToHaveCountAsync(0);
        await Assertions.Expect(back).ToBeFocusedAsync();
    }

    private static async Task IsOneStopAsync(BenchHands hands, ILocator row, ILocator back)
    {
        Assert.Equal(1, await row.EvaluateAsync<int>("row => [...row.querySelectorAll('button')].filter(one => one.tabIndex >= 0).length"));
        await row.Locator(".mend").FocusAsync();
        await hands.PressAsync("ArrowRight");
        await Assertions.Expect(back).ToBeFocusedAsync();
        await Assertions.Expect(back.Locator("kbd")).ToBeVisibleAsync();
        await hands.PressAsync("ArrowLeft");
        await Assertions.Expect(row.Locator(".mend")).ToBeFocusedAsync();
        await Assertions.Expect(back.Locator("kbd")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_correction_that_is_left_says_that_nothing_was_changed_and_taking_back_names_what_goes()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "left-as-it-is", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await hands.SayAsync("the case smells of cedar");
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("cedar");
        await hands.LeaveLineAsync();
        await hands.PressAsync("-");
        await Assertions.Expect(page.Locator("#bench-line")).ToHaveValueAsync("the case smells of cedar");

        await page.Locator("#bench-line").FillAsync("");
        await hands.PressAsync("Enter");

        await Assertions.Expect(page.Locator("#line-answer")).ToHaveTextAsync("Nothing was changed: the case smells of cedar");
        await Assertions.Expect(hands.Answer("saved")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator(".log-line.better")).ToHaveCountAsync(0);
        await teacher.LookAsync("nothing was changed");
        await hands.LeaveLineAsync();
        await hands.PressAsync("u");
        await Assertions.Expect(hands.Answer("saved")).ToHaveTextAsync("Taken back: the case smells of cedar");
    }

    [Fact]
    public async Task The_newest_entry_is_in_sight_again_after_Esc_and_after_something_new_was_said()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "log-follows", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        foreach (var number in Enumerable.Range(1, 16))
        {
            await hands.SayAsync($"remember shelf number {number}");
        }

        await Assertions.Expect(page.Locator(".log-line").Last).ToBeInViewportAsync();
        await page.Locator(".log-line", new() { HasText = "remember shelf number 1" }).First.Locator(".mend").ClickAsync();
        await Assertions.Expect(page.Locator("#bench-line")).ToHaveValueAsync("remember shelf number 1"); // marked first, then taken up
        await Assertions.Expect(page.Locator(".log-line.better")).ToBeInViewportAsync();
        await Assertions.Expect(page.Locator(".log-line").Last).Not.ToBeInViewportAsync();
        await hands.PressAsync("Escape");
        await Assertions.Expect(page.Locator(".log-line").Last).ToBeInViewportAsync();

        await page.Locator(".log-line", new() { HasText = "remember shelf number 1" }).First.Locator(".mend").ClickAsync();
        await Assertions.Expect(page.Locator("#bench-line")).ToHaveValueAsync("remember shelf number 1");
        await Assertions.Expect(page.Locator(".log-line.better")).ToBeInViewportAsync();
        await page.Locator("#bench-line").FillAsync("remember the shelf by the door");
        await hands.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".log-line", new() { HasText = "the shelf by the door" })).ToBeInViewportAsync();
        await hands.SayAsync("remember the lamp");
        await Assertions.Expect(page.Locator(".log-line").Last).ToContainTextAsync("the lamp");
        await Assertions.Expect(page.Locator(".log-line").Last).ToBeInViewportAsync();
    }

    [Fact]
    public async Task A_late_answer_leaves_the_entry_in_sight_that_is_being_corrected()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "late-answer", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        foreach (var number in Enumerable.Range(1, 14))
        {
            await hands.SayAsync($"remember drawer number {number}");
        }

        // It is saved and drawn, and its answer is still on the way.
        var through = new TaskCompletionSource();
        await page.RouteAsync("**/bench/*/line", async route =>
        {
            var response = await route.FetchAsync();
            await through.Task;
            await route.FulfillAsync(new() { Response = response });
        });
        await hands.SayAsync("remember the drawer below");
        await page.Locator(".log-line", new() { HasText = "remember drawer number 1" }).First.Locator(".mend").ClickAsync();
        var better = page.Locator(".log-line.better");
        await Assertions.Expect(page.Locator("#bench-line")).ToHaveValueAsync("remember drawer number 1");

        through.SetResult();
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("the drawer below");
        await page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
        Assert.True(await better.EvaluateAsync<bool>("one => new Promise(done => new IntersectionObserver(([seen]) => done(seen.isIntersecting)).observe(one))"));

        // Said better it is mended in its place; what is said next is followed again.
        await page.Locator("#bench-line").FillAsync("remember the drawer by the stove");
        await hands.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".log-line", new() { HasText = "the drawer by the stove" })).ToBeInViewportAsync();
        await hands.SayAsync("remember the drawer above");
        await Assertions.Expect(page.Locator(".log-line").Last).ToBeInViewportAsync();
        await teacher.LookAsync("followed again");
    }
}
