using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The one quiet line of what isn’t checked or may be next, in a real tab: it takes no focus, moves nothing, and goes for good.</summary>
public sealed class QuietLineTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task It_is_off_until_it_is_wanted_one_key_shows_why_one_puts_it_away_and_the_focus_stays()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "quiet-line");
        var bench = await app.BenchOfAsync("Tomas Arden", 1, TestContext.Current.CancellationToken);
        await WantAsync(teacher, bench);
        var hands = new BenchHands(teacher);
        var words = teacher.Page.Locator(".reason-words");
        await words.WaitForAsync();
        await teacher.Page.Locator(".reed-strip a").First.FocusAsync();
        var (first, place) = (await words.TextContentAsync(), await PlaceAsync(teacher));
        Assert.EndsWith("true]", place, StringComparison.Ordinal);

        await hands.PressAsync("h");
        await teacher.Page.Locator("#reason-sheet li").First.WaitForAsync();
        Assert.Equal(place, await PlaceAsync(teacher));
        await teacher.LookAsync("why the quiet line says so");
        await hands.PressAsync("Escape");
        await Assertions.Expect(teacher.Page.Locator("#reason-sheet")).ToHaveCountAsync(0);

        await hands.PressAsync("q");
        await Assertions.Expect(words).Not.ToHaveTextAsync(first!);
        await words.WaitForAsync();
        Assert.Equal(place, await PlaceAsync(teacher));

        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();
        await words.WaitForAsync();
        await Assertions.Expect(words).Not.ToHaveTextAsync(first!);
        await teacher.GoToAsync($"{bench}/evidence");
        await teacher.LookAsync("what may be behind it");
    }

    // Nothing of it is there until it is chosen.
    private static async Task WantAsync(Visitor teacher, string bench)
    {
        await teacher.GoToAsync(bench);
        await teacher.LiveAsync();
        Assert.Equal(0, await teacher.Page.Locator(".reason-line").CountAsync());
        await teacher.GoToAsync("/account");
        await teacher.Page.Locator("#bench-reasoning input[value=on]").CheckAsync();
        await teacher.PressAsync(teacher.Page.Locator("#bench-reasoning button"), thenAt: "/account");
        await teacher.GoToAsync(bench);
        await new BenchHands(teacher).ReadyAsync();
    }

    // Where the line below lies, and what has the focus.
    private static Task<string> PlaceAsync(Visitor teacher) => teacher.Page.EvaluateAsync<string>(
        "JSON.stringify([document.querySelector('.say').getBoundingClientRect(), document.activeElement === document.querySelector('.reed-strip a')])");
}
