using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What has been written has room at the bench, and the drawing stands still while something is typed.</summary>
public sealed class BenchRoomTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task Five_entries_of_a_dozen_are_in_sight_and_more_where_the_crows_way_is_folded_by_its_key()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "room-for-the-log", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.SayAsync("crow c-20");
        foreach (var number in Enumerable.Range(1, 11))
        {
            await hands.SayAsync($"remember that the shelf number {number} holds the pale case with the three long mandrels");
        }

        await hands.LeaveLineAsync();
        var open = await InSightAsync(page);
        Assert.InRange(open, 5, 12);
        await teacher.LookAsync("a dozen entries");

        var fold = page.Locator("[data-folds]");
        await hands.PressAsync("=");
        await Assertions.Expect(fold).ToHaveAttributeAsync("aria-expanded", "false");
        await Assertions.Expect(page.Locator(".crow-graph [role=img]")).ToBeHiddenAsync();
        await Assertions.Expect(page.Locator(".crow-graph figcaption")).ToBeVisibleAsync();
        Assert.InRange(await InSightAsync(page), open + 2, 12);
        await teacher.LookAsync("the crow’s way folded");

        // It stays so from reed to reed, and the same key unfolds it.
        hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await Assertions.Expect(fold).ToHaveAttributeAsync("aria-expanded", "false");
        await hands.PressAsync("=");
        await Assertions.Expect(fold).ToHaveAttributeAsync("aria-expanded", "true");
        await Assertions.Expect(page.Locator(".crow-graph [role=img]")).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData(900, 380)]
    [InlineData(800, 280)]
    public async Task The_drawing_has_its_column_with_what_its_signs_are_and_the_log_says_its_numbers(int height, int least)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"room-for-the-drawing-{height}", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, height);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.SayAsync("crow c-20");
        await hands.SayAsync("left corner of the upper blade is thick");
        await hands.SayAsync("thinned the corners of the tip three strokes");
        await hands.LeaveLineAsync();

        Assert.InRange((await page.Locator("#reed-map-drawing").BoundingBoxAsync())!.Height, least, height);
        var key = (await page.Locator(".mark-key").BoundingBoxAsync())!;
        var desk = (await page.Locator(".desk-of-bench").BoundingBoxAsync())!;
        Assert.InRange(key.Y + key.Height, 0, desk.Y);
        await Assertions.Expect(page.Locator(".mark-key")).ToContainTextAsync("Found");
        await Assertions.Expect(page.Locator(".mark-key")).ToContainTextAsync("Worked");

        // The number beside an entry is the one of its disc.
        var corner = page.Locator(".log-line", new() { HasText = "tip corners too thick" }).Last;
        var number = await corner.Locator(".number").EvaluateAsync<string>("one => one.lastChild.textContent");
        var listed = page.Locator(".mark-list li").Nth(int.Parse(number, System.Globalization.CultureInfo.InvariantCulture) - 1);
        await Assertions.Expect(listed).ToContainTextAsync("tip corners too thick");
        await teacher.LookAsync("the drawing in its column");
    }

    [Fact]
    public async Task The_strip_stays_one_row_and_without_a_network_no_key_leaves_the_reed_for_an_empty_page()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "stays-offline", 1280);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(1280, 900);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await page.EvaluateAsync("() => { for (const state of document.querySelectorAll('.reed-strip .state')) state.textContent = 'not looked at'; }");
        Assert.Equal(1, await page.EvaluateAsync<int>("() => new Set([...document.querySelectorAll('.reed-strip li')].map(one => Math.round(one.getBoundingClientRect().top))).size"));
        var address = page.Url;

        await page.Context.SetOfflineAsync(true);
        await hands.TypeAsync("c-5");
        await hands.PressAsync("Enter");
        await hands.LeaveLineAsync();
        await hands.PressAsync("n");
        await Assertions.Expect(hands.Answer("waiting")).ToContainTextAsync("this reed stays here");
        Assert.Equal(address, page.Url);
        await teacher.ShotAsync("no network");

        await page.Context.SetOfflineAsync(false);
        await Assertions.Expect(page.Locator(".log-line").Last).ToContainTextAsync("5 cents below C");
        await hands.PressAsync("k");
        await Assertions.Expect(page.Locator("#bench-keys")).ToHaveAttributeAsync("open", "");
        await hands.PressAsync("Escape");
        Assert.Equal(0, await page.EvaluateAsync<int>("Math.round(scrollY)"));
    }

    [Theory]
    [InlineData(390)]
    [InlineData(320)]
    public async Task While_something_is_typed_the_drawing_stands_in_the_middle_down_to_the_keys_and_doesnt_move(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"still-drawing-{width}", width);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(width, 844);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        var drawing = page.Locator(".line-drawing");

        await page.Locator("#bench-line").ClickAsync();
        await Assertions.Expect(page.Locator(".heard-hint")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".heard-hint")).ToContainTextAsync("Next:");
        var empty = (await drawing.BoundingBoxAsync())!;
        await hands.TypeAsync("corners too thick, rails thick, took two strokes off them");
        await page.Locator(".card").First.WaitForAsync();
        var typed = (await drawing.BoundingBoxAsync())!;

        Assert.Equal((empty.X, empty.Y, empty.Width, empty.Height), (typed.X, typed.Y, typed.Width, typed.Height));
        Assert.InRange(typed.X + (typed.Width / 2), (width / 2) - 2, (width / 2) + 2);
        var below = (await page.Locator(".pick-bar").BoundingBoxAsync())!.Y - (typed.Y + typed.Height);
        Assert.InRange(below, -1, 12);
        await teacher.LookAsync("typed on a phone");
    }

    [Theory]
    [InlineData(390)]
    [InlineData(320)]
    public async Task An_entry_on_a_phone_is_its_words_and_one_row_of_buttons(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"entries-{width}", width);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(width, 844);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.SayAsync("remember the lamp");
        var row = page.Locator(".log-line").Last;

        // Who said it has a row of its own only where it has no room beside the buttons.
        Assert.InRange((await row.BoundingBoxAsync())!.Height, 60, width < 384 ? 100 : 84);
        Assert.Empty(await OverlappingAsync(page));
        foreach (var button in await row.Locator("button").AllAsync())
        {
            Assert.True(await button.BoundingBoxAsync() is { Width: >= 44, Height: >= 44 });
        }

        await hands.LeaveLineAsync();
        await row.ScrollIntoViewIfNeededAsync();
        await teacher.FitsAsync();
        await teacher.LookAsync("entries");
    }

    // Entries in which the words of who said it and when reach under a button.
    private static Task<string[]> OverlappingAsync(IPage page) => page.EvaluateAsync<string[]>(
        """
        () => [...document.querySelectorAll('.log-line')].filter(row => {
          const words = document.createRange();
          words.selectNodeContents(row.querySelector(':scope > .by'));
          const said = [...words.getClientRects()];
          return [...row.querySelectorAll('.mends button')].map(button => button.getBoundingClientRect())
            .some(button => said.some(rect => rect.left < button.right - 1 && rect.right > button.left + 1 && rect.top < button.bottom - 1 && rect.bottom > button.top + 1));
        }).map(row => row.innerText)
        """);

    // Rows that stand in the log's own window whole.
    private static Task<int> InSightAsync(IPage page) => page.EvaluateAsync<int>(
        """
        () => {
          const log = document.querySelector('.log').getBoundingClientRect();
          return [...document.querySelectorAll('.log-line')].map(row => row.getBoundingClientRect()).filter(row => row.top >= log.top - 1 && row.bottom <= log.bottom + 1).length;
        }
        """);
}
