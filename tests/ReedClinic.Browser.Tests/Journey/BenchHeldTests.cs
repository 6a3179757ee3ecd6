using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What is said while work waits to be agreed to waits behind it.</summary>
public sealed class BenchHeldTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Theory]
    [InlineData("r", 2)]
    [InlineData("u", 1)]
    public async Task What_is_said_while_a_clip_waits_for_consent_waits_behind_it_also_over_a_reload_and_is_not_forgotten_at_another_reed(string key, int recorded)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"question-held-{key}");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await hands.SayAsync("c+40");
        var facts = await hands.FactsAsync();
        await hands.TypeAsync("clip a hair");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("safe changes only");
        await teacher.Page.Locator("#bench-line").FillAsync("crow c+35");
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("until it is answered: crow c+35");
        await FieldsWaitAsync(teacher);
        await teacher.LookAsync("a crow behind a clip that is held");

        await LookAtAnotherReedAsync(teacher, hands);
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("safe changes only");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("until it is answered: crow c+35");
        Assert.Equal(facts, await hands.FactsAsync());

        await hands.LeaveLineAsync();
        await hands.PickAsync(key, recorded);
        await Assertions.Expect(teacher.Page.Locator(".log-line").Last).ToContainTextAsync("crow");
        if (recorded == 2)
        {
            await ClippedBeforeTheCrowAsync(teacher);
        }

        await teacher.Page.ReloadAsync();
        await hands.ReadyAsync();
        Assert.Equal(facts + recorded, await hands.FactsAsync());
        await Assertions.Expect(teacher.Page.Locator("#line-answer")).ToBeEmptyAsync();
    }

    private async Task LookAtAnotherReedAsync(Visitor teacher, BenchHands hands)
    {
        var here = teacher.Page.Url;
        await teacher.GoToAsync(await app.BenchOfAsync("Tomas Arden", 3, TestContext.Current.CancellationToken));
        await hands.ReadyAsync();
        await Assertions.Expect(teacher.Page.Locator(".reed-strip [data-left-open]").Nth(1)).ToHaveAttributeAsync("title", new Regex("; "));
        await teacher.GoToAsync(new Uri(here).AbsolutePath);
        await hands.ReadyAsync();
    }

    // What is filled in would be saved at once, and so before the clip.
    private static async Task FieldsWaitAsync(Visitor teacher)
    {
        await teacher.OpenFieldsAsync();
        await teacher.Page.Locator(".entry-kinds").GetByRole(AriaRole.Button, new() { Name = "Note", Exact = true }).ClickAsync();
        await teacher.Field("Note").FillAsync("a pale case");
        await teacher.Button("Save").ClickAsync();
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("Answer that first");
        Assert.Equal("a pale case", await teacher.Field("Note").InputValueAsync());
        await teacher.Button("Clear").ClickAsync();
    }

    internal static async Task ClippedBeforeTheCrowAsync(Visitor teacher)
    {
        var said = (await teacher.Page.Locator(".log-line").AllInnerTextsAsync()).TakeLast(2).ToList();
        Assert.Contains("clipped", said[0], StringComparison.Ordinal);
        Assert.Contains("crow", said[1], StringComparison.Ordinal);
    }
}
