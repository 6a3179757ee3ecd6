using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;
using ReedClinic.KillDriver;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The studio can’t be reached: that is told quietly, the bench goes on, no key leads away from it, and it comes back by itself.</summary>
public sealed class BenchLostTests(OneBrowser browser)
{
    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task A_studio_that_is_gone_is_told_in_a_bar_and_the_bench_stays_usable_until_it_is_back(int width)
    {
        var ct = TestContext.Current.CancellationToken;
        using var folder = new TemporaryFolder();
        await StudioTemplates.CopyAsync(folder.Path, hasDemo: true);
        var settings = Settings(folder.Path, Ports.Free());
        RunningApp? app = await StartAsync(settings, ct);
        try
        {
            await using var teacher = await browser.VisitAsync(app.Address, $"bench-lost-{width}", width);
            await teacher.SignInAsync("edda@lanternquay.example", thenAt: "/(desk)?", DemoClinic.Password);
            var hands = await BenchHands.OpenAsync(teacher, "Tomas Arden", 1);
            List<string> asked = [];
            teacher.Page.Dialog += (_, dialog) => Answer(dialog, asked);
            var here = teacher.Page.Url;
            await teacher.Page.EvaluateAsync("() => { window.beforeTheKill = true; }");
            await app.DisposeAsync();
            app = null;
            await GoesOnAsync(teacher, hands);
            Assert.Equal(here, teacher.Page.Url);
            await hands.TypeAsync("half a thou");

            app = await StartAsync(settings, ct);
            await teacher.Page.WaitForFunctionAsync(
                "() => !window.beforeTheKill && document.querySelector('[data-circuit=up]') && document.documentElement.dataset.benchReady", null, new() { Timeout = 120_000 });
            await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = "the tall case" })).ToHaveCountAsync(1);
            await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync("half a thou");
            await Assertions.Expect(teacher.Page.Locator(".lost")).ToBeHiddenAsync();
            Assert.Empty(asked);
        }
        finally
        {
            await (app?.DisposeAsync() ?? ValueTask.CompletedTask);
        }
    }

    [Fact]
    public async Task What_was_typed_in_a_correction_and_in_the_fields_while_the_studio_was_gone_is_there_again_when_it_is_back()
    {
        var ct = TestContext.Current.CancellationToken;
        using var folder = new TemporaryFolder();
        await StudioTemplates.CopyAsync(folder.Path, hasDemo: true);
        var settings = Settings(folder.Path, Ports.Free());
        RunningApp? app = await StartAsync(settings, ct);
        try
        {
            await using var teacher = await browser.VisitAsync(app.Address, "bench-lost-typed");
            await teacher.SignInAsync("edda@lanternquay.example", thenAt: "/(desk)?", DemoClinic.Password);
            var hands = await BenchHands.OpenAsync(teacher, "Tomas Arden", 1);
            var (page, line) = (teacher.Page, teacher.Page.Locator("#bench-line"));
            await hands.SayAsync("remember the lamp");
            await teacher.OpenFieldsAsync();
            await page.Locator(".entry-kinds").GetByRole(AriaRole.Button, new() { Name = "Note", Exact = true }).ClickAsync();
            await page.Locator(".log-line").Last.Locator(".mend").ClickAsync();
            await Assertions.Expect(line).ToHaveValueAsync("remember the lamp");
            await page.EvaluateAsync("() => { window.beforeTheKill = true; }");
            await app.DisposeAsync();
            app = null;
            await Assertions.Expect(page.Locator(".lost")).ToContainTextAsync("No connection to the studio", new() { Timeout = 30_000 });
            await line.FillAsync("remember the lamp and the sto");
            await page.Locator("form.entry textarea").FillAsync("the case was wet ins");

            app = await StartAsync(settings, ct);
            await page.WaitForFunctionAsync("() => !window.beforeTheKill && document.documentElement.dataset.benchReady", null, new() { Timeout = 120_000 });
            await Assertions.Expect(page.Locator("form.entry textarea")).ToHaveValueAsync("the case was wet ins");
            await Assertions.Expect(page.Locator(".log-line.better")).ToContainTextAsync("the lamp");
            await Assertions.Expect(line).ToHaveValueAsync("remember the lamp and the sto");
        }
        finally
        {
            await (app?.DisposeAsync() ?? ValueTask.CompletedTask);
        }
    }

    private static void Answer(IDialog dialog, List<string> asked)
    {
        asked.Add(dialog.Type);
        _ = dialog.AcceptAsync();
    }

    private static async Task GoesOnAsync(Visitor teacher, BenchHands hands)
    {
        var page = teacher.Page;
        await Assertions.Expect(page.Locator(".lost")).ToContainTextAsync("No connection to the studio");
        // A hand reaches the line and the picks: nothing lies over them.
        await page.Locator("#bench-line").ClickAsync();
        await hands.TypeAsync("remember the tall case");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("waiting")).ToContainTextAsync("1 waiting");
        await hands.LeaveLineAsync();
        await hands.PressAsync("n");
        await Assertions.Expect(hands.Answer("waiting")).ToContainTextAsync("this reed stays here");
        await teacher.ShotAsync("the studio is gone");
    }

    private static Task<RunningApp> StartAsync(Dictionary<string, string> settings, CancellationToken ct) =>
        RunningApp.StartAsync(Path.GetDirectoryName(typeof(Program).Assembly.Location)!, settings, ct);

    private static Dictionary<string, string> Settings(string folder, int port) => new()
    {
        ["ASPNETCORE_URLS"] = $"http://127.0.0.1:{port}",
        ["ASPNETCORE_ENVIRONMENT"] = "Development",
        ["Demo__Seed"] = "true",
        ["Mail__Folder"] = folder,
        ["Media__Folder"] = Path.Combine(folder, "media"),
        ["ConnectionStrings__Clinic"] = $"Data Source={Path.Combine(folder, "clinic.db")}",
    };
}
