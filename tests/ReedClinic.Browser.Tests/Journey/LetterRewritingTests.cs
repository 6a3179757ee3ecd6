using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>Writing one part of a letter anew while words stand elsewhere that weren't kept yet.</summary>
public sealed class LetterRewritingTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task Words_that_were_not_kept_yet_survive_and_one_key_takes_it_back(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"letter-anew-{width}", width);
        await teacher.GoToAsync("/desk");
        var batch = await teacher.Page.Locator("a[href^='/batches/']").First.GetAttributeAsync("href");
        var path = $"/batches/{batch!.Split('/')[2]}/letter";
        await teacher.GoToAsync(path);
        await TypeAsync(teacher, "reed-1-story", $"My own words, {width}.");
        await teacher.Button("Keep these words").First.ClickAsync();
        await teacher.Page.GetByText("Your words are kept as a new version.").WaitForAsync();
        await TypeAsync(teacher, "reed-1-story", "Typed last, and not kept.");
        await TypeAsync(teacher, "closing", $"Good winds, {width}.");

        await teacher.Page.Locator("button[value='afresh:0:reed-1-story']").ClickAsync();

        var back = teacher.Button("Take that back");
        await Assertions.Expect(back).ToBeFocusedAsync();
        await Assertions.Expect(Field(teacher, "closing")).ToHaveValueAsync($"Good winds, {width}.");
        await Assertions.Expect(Field(teacher, "reed-1-story")).Not.ToHaveValueAsync("Typed last, and not kept.");
        await teacher.Page.Locator("[data-typing-ready]").WaitForAsync();
        await Assertions.Expect(teacher.Page.Locator("#letter-typed")).ToBeHiddenAsync();
        await teacher.LookAsync("a part written afresh");
        await teacher.FitsAsync();

        await back.PressAsync("Enter");
        await teacher.Page.GetByText("What stood here before is back.").WaitForAsync();
        await Assertions.Expect(Field(teacher, "reed-1-story")).ToHaveValueAsync("Typed last, and not kept.");
        await Assertions.Expect(Field(teacher, "closing")).ToHaveValueAsync($"Good winds, {width}.");

        await WriteAtOnceAsync(teacher, path, width);
    }

    private static async Task WriteAtOnceAsync(Visitor teacher, string path, int width)
    {
        await KeepElsewhereAsync(teacher, path, $"Said in another window, {width}.");
        await TypeAsync(teacher, "closing", $"Said here, {width}.");
        await teacher.Button("Keep these words").First.ClickAsync();
        await Assertions.Expect(teacher.Page.Locator("#f-Block-closing-error, #f-Block-reed-1-story-error").First).ToContainTextAsync("was changed while you were writing");
        await Assertions.Expect(Field(teacher, "closing")).ToHaveValueAsync($"Said here, {width}.");
        await teacher.LookAsync("two who write at once");
        await teacher.FitsAsync();
        await teacher.GoToAsync($"/letters/{path.Split('/')[2]}");
        await teacher.LookAsync("a letter without findings");
    }

    private static async Task KeepElsewhereAsync(Visitor teacher, string path, string words)
    {
        var other = await teacher.Page.Context.NewPageAsync();
        await other.GotoAsync(new Uri(new Uri(teacher.Page.Url), path).AbsoluteUri);
        await other.Locator("[data-typing-ready]").WaitForAsync();
        var closing = other.Locator("textarea[name='Block.closing']");
        await closing.EvaluateAsync("field => field.closest('details').open = true");
        await closing.FillAsync(words);
        await other.GetByRole(AriaRole.Button, new() { Name = "Keep these words" }).First.ClickAsync();
        await other.GetByText("Your words are kept as a new version.").WaitForAsync();
        await other.CloseAsync();
    }

    private static ILocator Field(Visitor teacher, string key) => teacher.Page.Locator($"textarea[name='Block.{key}']");

    private static async Task TypeAsync(Visitor teacher, string key, string words)
    {
        await teacher.Page.Locator("[data-typing-ready]").WaitForAsync();
        await Field(teacher, key).EvaluateAsync("field => field.closest('details').open = true");
        await Field(teacher, key).FillAsync(words);
    }
}
