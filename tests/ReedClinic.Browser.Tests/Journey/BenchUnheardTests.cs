using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What is typed in the fields while the way to the studio is broken is saved whole once it holds again, on the page that stayed open.</summary>
public sealed class BenchUnheardTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string Over = "a word of before, ";

    private const string Whole = "the case was wet inside";

    // The page’s own sockets, to break them; what they bring can be dropped, and what they are to take.
    private const string Sockets = """
        {
          const Real = WebSocket;
          window.sockets = [];
          window.WebSocket = class extends Real {
            constructor(...all) { super(...all); window.sockets.push(this); this.addEventListener('message', event => window.deaf && event.stopImmediatePropagation()); }
            send(...all) { if (!window.dumb) super.send(...all); }
          };
        }
        """;

    private const string Cut = "() => sockets.forEach(one => one.close())";

    [Fact]
    public async Task What_was_typed_in_the_fields_while_the_way_was_broken_is_saved_whole_once_it_holds_again()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "unheard-told");
        var words = await NoteAsync(teacher, 1);
        await BreakAsync(teacher.Page);
        // The answer to the first words is still on its way when the page hears again.
        await teacher.Page.EvaluateAsync("() => { window.deaf = true; }");
        await words.FillAsync("the case");
        await teacher.Page.EvaluateAsync(Cut);
        await LostAsync(teacher.Page);
        await words.FillAsync(Whole);
        await teacher.Page.EvaluateAsync("() => { window.deaf = false; }");
        await BackAndSavedAsync(teacher);
    }

    [Fact]
    public async Task What_was_typed_before_the_page_knew_that_the_way_was_broken_is_saved_too()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "unheard-untold");
        var words = await NoteAsync(teacher, 2);
        await words.FillAsync("the case");
        await BreakAsync(teacher.Page);
        await teacher.Page.EvaluateAsync("() => { window.dumb = true; }");
        await words.FillAsync(Whole);
        await teacher.Page.EvaluateAsync(Cut);
        await LostAsync(teacher.Page);
        await teacher.Page.EvaluateAsync("() => { window.dumb = false; }");
        await BackAndSavedAsync(teacher);
    }

    [Fact]
    public async Task What_was_typed_before_the_fields_that_were_asked_for_had_come_goes_with_them()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "unheard-other");
        await OpenAsync(teacher, 3);
        await BreakAsync(teacher.Page);
        await teacher.Page.EvaluateAsync("() => { window.deaf = true; }");
        await NoteButton(teacher).ClickAsync();
        await teacher.Page.EvaluateAsync(Cut);
        await LostAsync(teacher.Page);
        await Assertions.Expect(Kind(teacher)).ToHaveValueAsync("Test");
        await teacher.Page.Locator("form.entry textarea").FillAsync(Whole);
        await teacher.Page.EvaluateAsync("() => { window.deaf = false; }");
        await BackAndSavedAsync(teacher);
    }

    [Theory]
    [InlineData("saved")]
    [InlineData("left")]
    public async Task What_was_saved_or_left_before_the_way_was_broken_stands_in_no_other_fields(string how)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "unheard-over-" + how);
        var words = await NoteAsync(teacher, 1);
        await words.FillAsync(Over + how);
        if (how == "saved")
        {
            await teacher.Button("Save").ClickAsync();
            await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = Over + how })).ToHaveCountAsync(1);
        }

        await KindButton(teacher, "Found").ClickAsync();
        await Assertions.Expect(Kind(teacher)).ToHaveValueAsync("Finding");
        await BreakAsync(teacher.Page);
        await teacher.Page.EvaluateAsync(Cut);
        await LostAsync(teacher.Page);
        await teacher.Page.UnrouteAllAsync();
        await Assertions.Expect(teacher.Page.Locator("html[data-lost]")).ToHaveCountAsync(0);
        Assert.Equal("", await words.InputValueAsync());
    }

    private async Task OpenAsync(Visitor teacher, int reed)
    {
        await teacher.Page.AddInitScriptAsync(Sockets);
        await BenchHands.OpenAsync(teacher, app, "Tomas Arden", reed);
        await teacher.OpenFieldsAsync();
    }

    private async Task<ILocator> NoteAsync(Visitor teacher, int reed)
    {
        await OpenAsync(teacher, reed);
        await NoteButton(teacher).ClickAsync();
        await Assertions.Expect(Kind(teacher)).ToHaveValueAsync("Note");
        return teacher.Page.Locator("form.entry textarea");
    }

    private static ILocator NoteButton(Visitor teacher) => KindButton(teacher, "Note");

    private static ILocator KindButton(Visitor teacher, string kind) => teacher.Page.Locator(".entry-kinds").GetByRole(AriaRole.Button, new() { Name = kind, Exact = true });

    private static ILocator Kind(Visitor teacher) => teacher.Page.Locator("form.entry input[name=Kind]");

    // No new way is found as long as this stands.
    private static Task<IAsyncDisposable> BreakAsync(IPage page) => page.RouteAsync(url => url.Contains("/_blazor", StringComparison.Ordinal), route => route.AbortAsync());

    private static Task LostAsync(IPage page) => Assertions.Expect(page.Locator(".lost")).ToContainTextAsync("No connection to the studio");

    private static async Task BackAndSavedAsync(Visitor teacher)
    {
        var page = teacher.Page;
        await page.EvaluateAsync("() => { window.stayed = true; }");
        await page.UnrouteAllAsync();
        await Assertions.Expect(page.Locator("html[data-lost]")).ToHaveCountAsync(0);
        await Assertions.Expect(Kind(teacher)).ToHaveValueAsync("Note");
        await Assertions.Expect(page.Locator("form.entry textarea")).ToHaveValueAsync(Whole);
        await teacher.Button("Save").ClickAsync();
        await Assertions.Expect(page.Locator(".log-line", new() { HasText = Whole })).ToHaveCountAsync(1);
        Assert.True(await page.EvaluateAsync<bool>("() => window.stayed === true"));
    }
}
