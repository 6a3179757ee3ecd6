using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The bench in a hand: what is said, what was understood of it and what was written last are in sight above the keyboard on the glass.</summary>
public sealed class BenchPhoneTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    /// <summary>What a keyboard on the glass leaves of a window, in CSS pixels.</summary>
    private const int LeftByKeyboard = 420;

    [Theory]
    [InlineData(390, 844)]
    [InlineData(320, 844)]
    [InlineData(320, 700)]
    public async Task While_something_is_typed_on_a_phone_it_is_seen_with_what_was_understood_and_nothing_moves_under_the_finger(int width, int height)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"bench-phone-{width}-{height}", width);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(width, height);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await page.Mouse.WheelAsync(0, 300);
        await page.WaitForFunctionAsync("() => scrollY === 300");
        var before = await PlacesAsync(page, "#bench-line", ".newest", "[data-bench-name=undo]", "[data-bench-name=try]", ".all-keys", ".pick");

        await page.Locator("#bench-line").ClickAsync();
        await page.Keyboard.TypeAsync("l");
        await page.Locator(".card").First.WaitForAsync();

        Assert.Equal(before, await PlacesAsync(page, "#bench-line", ".newest", "[data-bench-name=undo]", "[data-bench-name=try]", ".all-keys", ".pick"));
        Assert.Equal(300, await page.EvaluateAsync<int>("scrollY"));
        Assert.Equal("", await OutOfSightAsync(page, "[data-bench-name=undo]", "[data-bench-name=try]", ".all-keys"));

        await page.SetViewportSizeAsync(width, LeftByKeyboard);
        await page.Keyboard.TypeAsync("eft corner thick");
        await page.Locator(".card", new() { HasText = "tip corners too thick" }).WaitForAsync();
        Assert.Equal("", await OutOfSightAsync(page, "#bench-line", ".newest", ".line-drawing", ".card", ".say button[type=submit]"));
        Assert.Equal("#bench-line .newest .line-drawing .card", await InReadingOrderAsync(page));
        Assert.Equal(before.Split('\n')[0], await PlacesAsync(page, "#bench-line"));
        await teacher.FitsAsync();
        await teacher.LookAsync("typing above the keyboard");

        await hands.PressAsync("Enter");
        await hands.Answer("saved").WaitForAsync();
        await Assertions.Expect(page.Locator(".newest")).ToContainTextAsync("tip corners too thick");
        Assert.Equal("", await OutOfSightAsync(page, "#bench-line", ".newest", ".line-drawing", "#line-answer.saved"));
        Assert.Equal(before.Split('\n')[0], await PlacesAsync(page, "#bench-line"));
    }

    [Theory]
    [InlineData(390, 844)]
    [InlineData(320, 844)]
    public async Task The_keys_leave_most_of_a_phone_to_the_reed_until_one_tap_opens_them_all(int width, int height)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"bench-folded-{width}", width);
        var page = teacher.Page;
        await page.SetViewportSizeAsync(width, height);
        await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);

        Assert.InRange(await TopAsync(page, ".pick-bar"), height - 150, height);
        Assert.Equal("", await OutOfSightAsync(page, "#bench-line", ".newest", "[data-bench-name=try]", ".pick"));
        Assert.InRange(await TopAsync(page, ".bench-reed .reed-drawing"), 0, height - 300);
        await teacher.LookAsync("keys folded");

        await page.Locator(".all-keys").ClickAsync();
        await page.Locator("[data-bench-name=verdict]:visible").WaitForAsync();
        Assert.Equal("", await OutOfSightAsync(page, "[data-bench-name=side]", "[data-bench-name=verdict]", "[data-bench-name=pick-4]"));
        await teacher.FitsAsync();
        await teacher.LookAsync("all keys");
    }

    private static Task<double> TopAsync(IPage page, string what) =>
        page.EvaluateAsync<double>("what => document.querySelector(what).getBoundingClientRect().top", what);

    [Theory]
    [InlineData(390, 844)]
    [InlineData(1280, 900)]
    public async Task Every_stop_of_the_tab_key_has_its_ring_and_lies_under_nothing(int width, int height)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"bench-stops-{width}", width);
        await teacher.Page.SetViewportSizeAsync(width, height);
        await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        List<string> hidden = [];
        string first = "", here = "";
        for (var stops = 0; here != first || stops < 2; stops++)
        {
            Assert.InRange(stops, 0, 200);
            await teacher.Page.Keyboard.PressAsync("Tab");
            var told = await teacher.Page.EvaluateAsync<string[]>(StopOfTab);
            here = told[0];
            first = stops == 0 ? here : first;
            if (told[1].Length > 0)
            {
                hidden.Add($"{here}: {told[1]}");
            }
        }

        Assert.True(hidden.Count == 0, string.Join('\n', hidden));
    }

    // What has the focus (numbered when it has it first), and what is wrong with how it is seen; the page itself is no stop.
    private const string StopOfTab = """
        () => {
          const here = document.activeElement;
          here.dataset.stop ??= String((window.stopsOfTab = (window.stopsOfTab ?? 0) + 1));
          const name = `${here.dataset.stop} ${here.tagName} ${(here.id || here.dataset.benchName || here.textContent.trim().slice(0, 24))}`;
          if (here === document.body) return [name, ''];
          const box = here.getBoundingClientRect();
          const points = [[.5, .5], [.1, .1], [.9, .1], [.1, .9], [.9, .9]].map(([x, y]) => [box.x + box.width * x, box.y + box.height * y]);
          const seen = points.some(([x, y]) => { const top = document.elementFromPoint(x, y); return top && (here.contains(top) || (here.closest('svg') ?? here) === top.closest('svg')); });
          const style = getComputedStyle(here);
          const ring = style.outlineStyle === 'solid' || here.matches('.pressable') || getComputedStyle(here.nextElementSibling ?? here).outlineStyle === 'solid';
          return [name, [seen ? '' : 'covered', ring ? '' : 'no ring'].filter(Boolean).join(', ')];
        }
        """;

    // Where things lie in the window, one a line.
    private static Task<string> PlacesAsync(IPage page, params string[] what) => page.EvaluateAsync<string>(
        "what => what.map(one => { const box = document.querySelector(one).getBoundingClientRect(); return `${one} ${box.x} ${box.y} ${box.width} ${box.height}`; }).join('\\n')",
        what);

    // What isn't wholly in the window, or lies under something else.
    private static Task<string> OutOfSightAsync(IPage page, params string[] what) => page.EvaluateAsync<string>(
        """
        what => what.filter(one => {
          const seen = document.querySelector(one);
          const box = seen?.getBoundingClientRect();
          if (!box || box.width < 24 || box.height < 16) return true;
          const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
          const [left, right] = ['paddingLeft', 'paddingRight'].map(side => parseFloat(getComputedStyle(seen)[side]));
          return box.left + left < 0 || box.top < 0 || box.right - right > innerWidth || box.bottom > innerHeight || !(seen === top || seen.contains(top));
        }).join(' ')
        """,
        what);

    // From the top down, and in one row from the left.
    private static Task<string> InReadingOrderAsync(IPage page) => page.EvaluateAsync<string>(
        """
        ['.card', '.line-drawing', '.newest', '#bench-line'].map(one => [one, document.querySelector(one).getBoundingClientRect()])
          .sort(([, one], [, other]) => Math.abs(one.top - other.top) > 12 ? one.top - other.top : one.left - other.left).map(([one]) => one).join(' ')
        """);
}
