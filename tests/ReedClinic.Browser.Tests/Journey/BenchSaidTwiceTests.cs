using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The same line said twice is two works and no consent.</summary>
public sealed class BenchSaidTwiceTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Theory]
    [InlineData("thinned the tip corners", "crow C, 10 flat")]
    [InlineData("clipped a hair", "crow C, 60 sharp")]
    public async Task A_line_that_is_said_again_waits_behind_the_question_and_agrees_to_nothing(string work, string crow)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"said-twice-{work.Length}");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 3);
        var facts = await hands.FactsAsync();
        await FillAsync(teacher, hands, work);
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("advice only");
        await FillAsync(teacher, hands, crow);
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync($"answered: {crow}");
        await hands.AnswerableAsync();
        await FillAsync(teacher, hands, work);

        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync($"answered: {crow} · {work}");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("advice only");
        Assert.Equal(facts, await hands.FactsAsync());

        await hands.LeaveLineAsync();
        await hands.PressAsync("u");
        await Assertions.Expect(teacher.Page.Locator(".log-line").Last).ToContainTextAsync("crow");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("advice only");
        Assert.Equal(facts + 1, await hands.FactsAsync());
        await hands.AnswerableAsync();
        await hands.PressAsync("u");
        await Assertions.Expect(teacher.Page.Locator("#line-answer .asked-keys")).ToHaveCountAsync(0);
    }

    private static async Task FillAsync(Visitor teacher, BenchHands hands, string line)
    {
        await teacher.Page.Locator("#bench-line").FillAsync(line);
        await hands.PressAsync("Enter");
    }
}
