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

    [Fact]
    public async Task A_press_that_is_doubled_puts_one_line_away_and_a_click_keeps_the_focus_in_its_place()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Owner, "quiet-line-twice");
        await WantAsync(teacher, await app.BenchOfAsync("Tomas Arden", 2, TestContext.Current.CancellationToken));
        var (hands, words, away) = (new BenchHands(teacher), teacher.Page.Locator(".reason-words"), teacher.Page.Locator("[data-bench-name=reasoning-aside]"));
        await away.WaitForAsync();
        var first = await words.TextContentAsync();
        List<string> sent = [];
        teacher.Page.Request += (_, request) =>
        {
            if (request.PostData?.Contains("AdviceSetAside", StringComparison.Ordinal) == true)
            {
                sent.Add(request.PostData);
            }
        };

        // Both presses of one moment, as an unsteady finger makes them.
        await away.EvaluateAsync("button => { button.click(); button.click(); }");
        await hands.Answer("saved").WaitForAsync();
        await Assertions.Expect(words).Not.ToHaveTextAsync(first!);
        await away.WaitForAsync();
        Assert.Single(sent);

        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();
        await away.WaitForAsync();
        first = await words.TextContentAsync();
        await away.ClickAsync();
        await Assertions.Expect(words).Not.ToHaveTextAsync(first!);
        await Assertions.Expect(teacher.Page.Locator(".reason-line")).ToBeFocusedAsync();
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
