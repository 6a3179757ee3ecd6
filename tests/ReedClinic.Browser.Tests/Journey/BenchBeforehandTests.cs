using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What is told before it is recorded: shown once with its reason, recorded by the next press, and never told again on the reed.</summary>
public sealed class BenchBeforehandTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Theory]
    [InlineData(1280, 2, "c-40", "Safe changes only")]
    [InlineData(390, 1, "c+40", "a clip takes it higher")]
    public async Task The_advice_about_a_clip_stands_in_its_card_and_the_second_Enter_records_it(int width, int reed, string crow, string advice)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"clip-before-{width}", width);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", reed);
        await hands.SayAsync(crow);
        var facts = await hands.FactsAsync();

        await hands.TypeAsync("clip a hair");
        await Assertions.Expect(teacher.Page.Locator(".card .beside")).ToContainTextAsync(advice);
        await teacher.LookAsync("advice in the card");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync(advice);
        Assert.NotEqual("", await teacher.Page.Locator("#line-answer .reason").InnerTextAsync());
        Assert.Equal(facts, await hands.FactsAsync());
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync("clip a hair");
        await teacher.LookAsync("told before it is recorded");

        // The press that was doubled is the same press: the next one is waited for.
        await teacher.Page.EvaluateAsync("() => new Promise(done => { const since = performance.now(); const wait = now => now - since > 700 ? done() : requestAnimationFrame(wait); requestAnimationFrame(wait); })");
        await hands.PickAsync("Enter");
        Assert.Contains("clipped", await teacher.Page.Locator(".log-line").Last.InnerTextAsync(), StringComparison.Ordinal);
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync("");

        // Taken back and said again, it isn’t told a second time.
        await hands.LeaveLineAsync();
        await hands.PressAsync("u");
        await Assertions.Expect(teacher.Page.Locator(".log-line.taken-back")).Not.ToHaveCountAsync(0);
        await hands.SayAsync("clip a hair");
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("clipped");
    }

    [Fact]
    public async Task Improved_on_a_reed_to_which_nothing_was_done_and_the_same_verdict_twice_are_told_before()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "verdict-before");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        var facts = await hands.FactsAsync();

        await VerdictAsync(teacher, hands);
        await hands.Answer("before").WaitForAsync();
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync("left as it came");
        await teacher.LookAsync("improved without work");
        Assert.Equal(facts, await hands.FactsAsync());

        await hands.PickAsync("r");
        await Assertions.Expect(teacher.Page.Locator(".log-line").Last).ToContainTextAsync("improved");
        await hands.PressAsync("Escape");

        facts = await hands.FactsAsync();
        await VerdictAsync(teacher, hands);
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync("stands already");
        Assert.Equal(facts, await hands.FactsAsync());
    }

    [Fact]
    public async Task A_key_that_has_nothing_to_press_says_why()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "silent-keys");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);

        await hands.PressAsync("y");
        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("no advice stands here");
        hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.PressAsync(",");
        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("first reed");
        await teacher.LookAsync("a key that says why");
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(320)]
    public async Task A_question_that_was_left_on_one_reed_is_told_on_the_strip_of_the_others_until_it_is_answered(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"left-open-{width}", width);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        var asked = teacher.Page.Locator("#line-answer .asked-keys");
        await hands.SayAsync("c+40");
        await hands.TypeAsync("clip half a millimetre");
        await hands.PressAsync("Enter");
        await asked.WaitForAsync();
        var here = teacher.Page.Locator(".reed-strip li:nth-child(2) a");
        await Assertions.Expect(here.Locator(".left-open")).ToBeEmptyAsync();

        hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        await Assertions.Expect(here).ToHaveAccessibleNameAsync(new Regex("^2 .*, 1 question open$"));
        await Assertions.Expect(here.Locator(".left-open > [aria-hidden]")).ToBeVisibleAsync();
        await Assertions.Expect(teacher.Page.Locator(".left-open:not(:empty)")).ToHaveCountAsync(1);
        await teacher.LookAsync("a question is open on another reed");

        hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await asked.WaitForAsync();
        await hands.LeaveLineAsync();
        await hands.PressAsync("u");
        await Assertions.Expect(asked).ToHaveCountAsync(0);
        await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        await Assertions.Expect(teacher.Page.Locator(".reed-strip .state").First).ToBeVisibleAsync();
        await Assertions.Expect(teacher.Page.Locator(".left-open:not(:empty)")).ToHaveCountAsync(0);
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task Every_reed_of_the_batch_is_seen_whole_in_the_strip(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"strip-{width}", width);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);

        // The longest words of a state on each of them.
        var cut = await teacher.Page.EvaluateAsync<string>(
            """
            () => {
              const chips = [...document.querySelectorAll('.reed-strip li a')];
              for (const chip of chips) chip.querySelector('.state').textContent = 'not looked at';
              const strip = document.querySelector('.reed-strip').getBoundingClientRect();
              const list = document.querySelector('.reed-strip ol').getBoundingClientRect();
              return chips.filter(chip => { const box = chip.getBoundingClientRect(); return box.right > Math.min(strip.right, list.right) + 1 || box.bottom > strip.bottom + 1 || box.left < list.left - 1; }).map(chip => chip.textContent).join('|');
            }
            """);

        Assert.Equal("", cut);
        Assert.Equal(0, hands.Keys);
        await teacher.LookAsync("strip");
    }

    private static async Task VerdictAsync(Visitor teacher, BenchHands hands)
    {
        await hands.PressAsync("v");
        await teacher.Page.Locator("[data-bench-name=verdict][aria-pressed=true]").WaitForAsync();
        await hands.PressAsync("1");
    }
}
