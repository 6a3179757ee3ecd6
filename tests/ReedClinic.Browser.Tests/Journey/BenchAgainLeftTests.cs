using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What is said “again” of work that was left out isn’t recorded without being asked about.</summary>
public sealed class BenchAgainLeftTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Theory]
    [InlineData("u", 0)]
    [InlineData("r", 2)]
    public async Task Clip_again_behind_a_clip_that_was_left_out_is_asked_about_and_what_follows_waits_behind_it(string key, int recorded)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"again-left-{key}");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await hands.SayAsync("c+40");
        var facts = await hands.FactsAsync();
        var clips = await teacher.Page.Locator(".log-line", new() { HasText = "clipped" }).CountAsync();
        await FillAsync(teacher, hands, "clip a hair");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("safe changes only");
        await FillAsync(teacher, hands, "clip again");
        await FillAsync(teacher, hands, "crow c+45");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("clip again · crow c+45");

        await hands.LeaveLineAsync();
        await hands.PressAsync("u");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("was left out");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("clip again");
        Assert.Equal(facts, await hands.FactsAsync());
        await teacher.LookAsync("again, of what was left out");

        await hands.AnswerableAsync();
        await hands.PressAsync(key);
        if (recorded > 0)
        {
            // It is work, and asked about as such.
            await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("safe changes only");
            await hands.AnswerableAsync();
            await hands.PickAsync("r", recorded);
            await BenchHeldTests.ClippedBeforeTheCrowAsync(teacher);
        }

        await Assertions.Expect(teacher.Page.Locator(".log-line").Last).ToContainTextAsync("45");
        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = "clipped" })).ToHaveCountAsync(clips + (recorded > 0 ? 1 : 0));
    }

    private static async Task FillAsync(Visitor teacher, BenchHands hands, string line)
    {
        await teacher.Page.Locator("#bench-line").FillAsync(line);
        await hands.PressAsync("Enter");
    }
}
