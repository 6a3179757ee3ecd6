using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>Words that are asked about come back into the line without standing in the way of the next ones.</summary>
public sealed class BenchRefusedTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string Clip = "clip half a millimetre";

    [Fact]
    public async Task What_is_said_after_a_question_takes_the_place_of_the_words_in_the_line_and_the_question_keeps_them()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "refused-typed-over");
        var (hands, line, facts) = await AskedAsync(teacher, 2);
        await teacher.LookAsync("asked about, and ready for the next words");

        await teacher.Page.Keyboard.TypeAsync("remember the tall case");
        await Assertions.Expect(line).ToHaveValueAsync("remember the tall case");
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("until it is answered: remember the tall case");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync(Clip);

        // The answer’s key, in the line: no Esc comes first.
        await teacher.Page.Keyboard.TypeAsync("r");
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".log-line")).ToHaveCountAsync(facts + 2);
        await Assertions.Expect(line).ToHaveValueAsync("");
    }

    [Fact]
    public async Task What_is_left_out_leaves_the_line_too_from_the_line_and_beside_it()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "refused-left-out");
        var (hands, line, facts) = await AskedAsync(teacher, 2);
        await teacher.Page.Keyboard.TypeAsync("u");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("Not recorded: " + Clip);
        await Assertions.Expect(line).ToHaveValueAsync("");

        (hands, line, _) = await AskedAsync(teacher, 2);
        await hands.LeaveLineAsync();
        await hands.PressAsync("u");
        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("Not recorded: " + Clip);
        await Assertions.Expect(line).ToHaveValueAsync("");
        Assert.Equal(facts + 1, await hands.FactsAsync());
    }

    [Theory]
    [InlineData("take that back", true)]
    [InlineData("undo", false)]
    public async Task Words_that_take_back_while_something_is_asked_drop_the_question_and_nothing_that_stands(string words, bool isHeard)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"refused-taken-back-{isHeard}");
        var (hands, line, facts) = await AskedAsync(teacher, 3);
        // What was heard stands in a card; who is quicker than that is answered by the studio.
        var page = teacher.Page;
        if (!isHeard)
        {
            await page.EvaluateAsync("() => addEventListener('input', event => event.stopImmediatePropagation(), true)");
        }

        await page.Keyboard.TypeAsync(words);
        await Assertions.Expect(page.Locator(".card.takes-back")).ToHaveCountAsync(isHeard ? 1 : 0);
        await hands.PressAsync("Enter");

        await Assertions.Expect(hands.Answer("cleared")).ToContainTextAsync("Not recorded: " + Clip);
        await Assertions.Expect(line).ToHaveValueAsync("");
        await Assertions.Expect(page.Locator(".log-line.taken-back")).ToHaveCountAsync(0);
        Assert.Equal(facts, await hands.FactsAsync());
    }

    [Fact]
    public async Task A_note_that_is_begun_by_its_letter_is_not_glued_to_the_words_that_are_asked_about()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "refused-note");
        var (hands, line, _) = await AskedAsync(teacher, 3);
        await hands.LeaveLineAsync();
        await teacher.Page.Keyboard.TypeAsync("c+35");
        await Assertions.Expect(line).ToHaveValueAsync("c+35");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync(Clip);
    }

    [Fact]
    public async Task Refused_words_wait_beside_the_line_when_a_note_is_begun_by_its_letter_while_another_question_is_open()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "refused-two");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        var line = teacher.Page.Locator("#bench-line");
        await hands.SayAsync("c-5");
        await hands.LeaveLineAsync();
        await hands.PressAsync("v");
        await teacher.Page.Locator("[data-bench-name=verdict][aria-pressed=true]").WaitForAsync();
        await hands.PressAsync("1");
        await hands.Answer("before").WaitForAsync();
        var many = string.Join("; ", Enumerable.Repeat("clip a hair", 40));
        await line.FillAsync(many);
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("too much for one breath");
        await Assertions.Expect(line).ToHaveValueAsync(many);
        await hands.LeaveLineAsync();

        await teacher.Page.Keyboard.TypeAsync("c+35");
        await Assertions.Expect(line).ToHaveValueAsync("c+35");
        await Assertions.Expect(hands.Answer("before")).ToContainTextAsync("left as it came");
        await line.FillAsync("");
        await hands.LeaveLineAsync();
        await hands.AnswerableAsync();
        await hands.PressAsync("u");
        await Assertions.Expect(teacher.Page.Locator("#line-answer .asked-of")).ToContainTextAsync("clip a hair; clip a hair");
        await hands.AnswerableAsync();
        await hands.PressAsync("r");
        await Assertions.Expect(line).ToHaveValueAsync(many);
    }

    [Fact]
    public async Task Refused_words_that_came_back_after_a_reload_are_not_glued_to_the_next_note_either()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "refused-reloaded");
        var (page, many) = (teacher.Page, string.Join("; ", Enumerable.Repeat("clip a hair", 40)));
        var (hands, line) = (await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3), page.Locator("#bench-line"));
        await line.FillAsync(many);
        await hands.PressAsync("Enter");
        await hands.Answer("refused").WaitForAsync();
        page.Dialog += (_, asked) => _ = asked.AcceptAsync();
        await page.ReloadAsync();
        await page.Locator("html[data-bench-ready]").WaitForAsync();
        await Assertions.Expect(line).ToHaveValueAsync(many);

        await hands.LeaveLineAsync();
        await page.Keyboard.TypeAsync("c+35");
        await Assertions.Expect(line).ToHaveValueAsync("c+35");
        await Assertions.Expect(page.Locator("#line-answer .asked-of")).ToContainTextAsync("clip a hair; clip a hair");
        await Assertions.Expect(page.Locator("#line-answer")).ToContainTextAsync("too much for one breath");
    }

    [Fact]
    public async Task What_waits_until_somebody_signs_in_again_is_not_told_as_refused_and_nothing_older_is_taken_back_for_it()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "refused-signed-out");
        var (page, hands) = (teacher.Page, await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3));
        await hands.SayAsync("the case is green");
        await page.RouteAsync("**/line", route => route.FulfillAsync(new() { Status = 401 }));
        await page.Locator("#bench-line").FillAsync("the lamp is low");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("signed out");

        await page.Locator("[data-bench-name=undo]").ClickAsync();
        await Assertions.Expect(page.Locator("#line-answer")).Not.ToContainTextAsync("wasn’t saved");
        await page.UnrouteAllAsync();
        await Assertions.Expect(page.Locator(".log-line", new() { HasText = "the lamp is low" })).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator(".log-line", new() { HasText = "the case is green" })).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator(".log-line.taken-back")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Same_again_behind_a_question_does_nothing_older_again_and_says_why()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "again-asked");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.SayAsync("dusted the tip");
        await hands.SayAsync("crow c+40");
        await hands.LeaveLineAsync();
        var facts = await hands.FactsAsync();
        await teacher.Page.Locator(".pick", new() { HasText = "clipped by a hair" }).ClickAsync();
        await hands.Answer("before").WaitForAsync();
        await hands.PressAsync(".");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("what was done last is asked about here");
        Assert.Equal(facts, await hands.FactsAsync());
        await hands.PickAsync("r");
        await Assertions.Expect(teacher.Page.Locator(".log-line").Last).ToContainTextAsync("clipped");
    }

    [Fact]
    public async Task What_is_said_of_one_side_is_drawn_on_that_side_alone()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "one-side");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        await hands.SayAsync("leave the left side alone");
        var drawn = teacher.Page.Locator("#reed-map-drawing .blade-line.leavealone");
        await Assertions.Expect(drawn).ToHaveCountAsync(2);
        foreach (var line in await drawn.AllAsync())
        {
            await Assertions.Expect(line).ToHaveAttributeAsync("clip-path", new System.Text.RegularExpressions.Regex("-Left\\)$"));
        }

        await teacher.LookAsync("the left side is left alone");
    }

    // A clip beyond what the student allowed, asked about, with the hands still in the line.
    private async Task<(BenchHands Hands, ILocator Line, int Facts)> AskedAsync(Visitor teacher, int reed)
    {
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", reed);
        await hands.SayAsync("c+40");
        var facts = await hands.FactsAsync();
        await hands.PressAsync("/");
        await hands.TypeAsync(Clip);
        await hands.PressAsync("Enter");
        await hands.Answer("refused").WaitForAsync();
        var line = teacher.Page.Locator("#bench-line");
        await Assertions.Expect(line).ToHaveValueAsync(Clip);
        await Assertions.Expect(line).ToBeFocusedAsync();
        return (hands, line, facts);
    }
}
