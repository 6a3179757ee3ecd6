using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The line in a real tab: what is refused, what waits, what two windows show, and what the keys leave alone.</summary>
public sealed class BenchLineTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task Taking_back_after_a_refusal_clears_the_refusal_and_nothing_older()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "line-refused");
        var hands = await OpenAsync(teacher, reed: 3);
        await hands.SayAsync("c+10");
        var facts = await hands.FactsAsync();
        await hands.TypeAsync("clip a hair");
        await hands.PressAsync("Enter");
        await hands.Answer("refused").WaitForAsync();
        await Assertions.Expect(teacher.Field("Say what you hear, see or do")).ToHaveValueAsync("clip a hair");

        await hands.LeaveLineAsync();
        await hands.PressAsync("u");
        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("Press again to take back what was saved last: crow");
        Assert.Equal(facts, await hands.FactsAsync());
        await Assertions.Expect(teacher.Page.Locator(".log-line.taken-back")).ToHaveCountAsync(0);

        // A second press at once would be the same one, doubled.
        await teacher.Page.EvaluateAsync("() => new Promise(done => { const since = performance.now(); const wait = now => now - since > 700 ? done() : requestAnimationFrame(wait); requestAnimationFrame(wait); })");
        await hands.PressAsync("u");
        await Assertions.Expect(teacher.Page.Locator(".log-line.taken-back")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task What_is_agreed_since_is_said_by_one_key_and_the_words_leave_the_line()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "line-agreed", width: 390);
        var hands = await OpenAsync(teacher, reed: 3);
        var facts = await hands.FactsAsync();
        await hands.TypeAsync("thin the corners");
        await hands.PressAsync("Enter");
        await hands.Answer("refused").WaitForAsync();
        await teacher.LookAsync("refused on a phone");
        await hands.LeaveLineAsync();

        await hands.PickAsync("r");

        await Assertions.Expect(teacher.Field("Say what you hear, see or do")).ToHaveValueAsync("");
        await Assertions.Expect(teacher.Page.Locator(".log-line").Last).ToContainTextAsync("Agreed with the student since.");
        Assert.Equal(facts + 1, await hands.FactsAsync());
        Assert.Equal("", await teacher.Page.EvaluateAsync<string>(KeysOutOfReach));

        // One tap to all of them.
        await teacher.Page.Locator(".all-keys").ClickAsync();
        await teacher.Page.Locator("[data-bench-name=verdict]:visible").WaitForAsync();
        Assert.Equal("", await teacher.Page.EvaluateAsync<string>(KeysOutOfReach));
        await teacher.LookAsync("all keys on a phone");
    }

    [Fact]
    public async Task What_was_done_without_being_agreed_is_recorded_so_by_a_key_of_its_own()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "line-unagreed", width: 320);
        var hands = await OpenAsync(teacher, reed: 3);
        await hands.TypeAsync("thin the corners");
        await hands.PressAsync("Enter");
        await hands.Answer("refused").WaitForAsync();
        await Assertions.Expect(teacher.Page.Locator("#line-answer .asked-keys button")).ToHaveCountAsync(3);
        await teacher.LookAsync("three answers on a small phone");
        await hands.LeaveLineAsync();

        await hands.PickAsync("0");

        await Assertions.Expect(teacher.Page.Locator(".log-line").Last).ToContainTextAsync("Done without being agreed.");
    }

    // Of the keys of the pad: those that aren't wholly in the window, are smaller than a thumb, or lie under another.
    private const string KeysOutOfReach = """
        [...document.querySelectorAll('.pick-bar .key, .memo .key')].filter(key => key.getClientRects().length > 0).filter(key => {
          const box = key.getBoundingClientRect();
          const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
          return box.left < 0 || box.right > innerWidth || box.bottom > innerHeight || box.width < 44 || box.height < 44 || !key.contains(top);
        }).map(key => key.dataset.benchName).join(' ')
        """;

    [Fact]
    public async Task What_is_said_without_a_connection_waits_in_the_tab_over_a_reload_and_comes_through_once()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "line-offline");
        var hands = await OpenAsync(teacher, reed: 1);
        var facts = await hands.FactsAsync();
        await teacher.Page.RouteAsync("**/bench/*/line", route => route.AbortAsync());

        foreach (var words in new[] { "remember the blue case", "remember the second knot" })
        {
            await hands.TypeAsync(words);
            await hands.PressAsync("Enter");
        }

        await Assertions.Expect(hands.Answer("waiting")).ToContainTextAsync("2 waiting");
        await hands.TypeAsync("half a thou");
        await teacher.ShotAsync("waiting");
        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();
        await Assertions.Expect(teacher.Field("Say what you hear, see or do")).ToHaveValueAsync("half a thou");
        Assert.Equal(facts, await hands.FactsAsync());

        await teacher.Page.UnrouteAllAsync();
        await teacher.Page.EvaluateAsync("dispatchEvent(new Event('online'))"); // what a browser says when its network is back
        await Assertions.Expect(teacher.Page.Locator(".log-line")).ToHaveCountAsync(facts + 2);
        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();
        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = "remember the blue case" })).ToHaveCountAsync(1);
        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = "remember the second knot" })).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task An_answer_that_was_lost_on_its_way_doubles_nothing()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "line-lost-answer");
        var hands = await OpenAsync(teacher, reed: 1);
        var facts = await hands.FactsAsync();
        var lost = 0;
        await teacher.Page.RouteAsync("**/bench/*/line", async route =>
        {
            await route.FetchAsync();
            await (Interlocked.Increment(ref lost) == 1 ? route.AbortAsync() : route.ContinueAsync());
        });

        await hands.TypeAsync("remember the grey cloth");
        await hands.PressAsync("Enter");

        await hands.Answer("saved").WaitForAsync();
        Assert.True(lost > 1);
        await teacher.Page.UnrouteAllAsync(new() { Behavior = UnrouteBehavior.Wait });
        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();
        Assert.Equal(facts + 1, await hands.FactsAsync());
    }

    [Fact]
    public async Task Two_windows_on_a_reed_show_the_same_log_and_keys_can_be_changed_or_turned_off()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "line-two");
        var hands = await OpenAsync(teacher, reed: 1);
        var other = await teacher.Page.Context.NewPageAsync();
        await other.GotoAsync(teacher.Page.Url);
        await other.Locator("[data-circuit=up]").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await hands.SayAsync("remember the pale thread");
        await other.Locator(".log-line", new() { HasText = "remember the pale thread" }).WaitForAsync();
        await other.CloseAsync();

        await hands.LeaveLineAsync();
        await hands.PressAsync("k");
        await Assertions.Expect(teacher.Page.Locator("#bench-keys")).ToHaveAttributeAsync("open", "");
        await teacher.LookAsync("the keys");
        await teacher.Field("same again").FocusAsync();
        await hands.PressAsync("1");
        await Assertions.Expect(teacher.Page.Locator("#bench-keys [role=alert]:not(:empty)")).ToHaveTextAsync("1 is taken: pick 1.");
        await hands.PressAsync("F8");
        await hands.PressAsync("Escape");
        await hands.PickAsync("1");
        await hands.PickAsync("F8");

        await hands.PressAsync("k");
        await teacher.Page.Locator("#bench-keys [name=off]").CheckAsync();
        await hands.PressAsync("Escape");
        await Assertions.Expect(teacher.Page.Locator(".pick kbd").First).ToBeHiddenAsync();
        var facts = await hands.FactsAsync();
        await hands.PressAsync("1");
        await hands.PressAsync("F8");
        // What is said goes out in order: once the press of the pointer stands in the log, the keys before it would too.
        await teacher.Page.Locator(".pick").Nth(2).ClickAsync();
        await Assertions.Expect(teacher.Page.Locator(".log-line").Last).ToContainTextAsync("clipped by a hair");
        Assert.Equal(facts + 1, await hands.FactsAsync());
    }

    private Task<BenchHands> OpenAsync(Visitor teacher, int reed) => BenchHands.OpenAsync(teacher, app, "Tomas Arden", reed);
}
