using System.Globalization;
using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;
using ReedClinic.KillDriver;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The program is killed under an open bench, again and again: what was said in the tab stands once, and nothing else does.</summary>
public sealed class BenchKillTests(OneBrowser browser)
{
    private const string RoundsGivenBy = "REEDCLINIC_BENCH_ROUNDS";
    private const string LogGivenBy = "REEDCLINIC_FAULT_LOG";
    private const int QuickRounds = 2;
    private const string Line = "**/bench/*/line";

    private readonly Random _chance = new(20261125);

    [Fact]
    public async Task Nothing_that_was_said_is_lost_or_doubled_when_the_program_is_killed_or_the_connection_breaks()
    {
        var ct = TestContext.Current.CancellationToken;
        var rounds = int.TryParse(Environment.GetEnvironmentVariable(RoundsGivenBy), CultureInfo.InvariantCulture, out var given) ? given : QuickRounds;
        using var folder = new TemporaryFolder();
        await StudioTemplates.CopyAsync(folder.Path, hasDemo: true);
        var settings = Settings(folder.Path, Ports.Free());
        var app = await StartAsync(settings, ct);
        try
        {
            await using var teacher = await browser.VisitAsync(app.Address, "bench-kills");
            await teacher.SignInAsync("edda@lanternquay.example", thenAt: "/(desk)?", DemoClinic.Password);
            var hands = await BenchHands.OpenAsync(teacher, "Tomas Arden", 1);
            List<string> said = [];
            for (var round = 1; round <= rounds; round++)
            {
                app = await KillAsync(app, settings, teacher, hands, said, round, ct);
                await CutOffAsync(teacher, hands, said, round);
            }

            await teacher.Page.ReloadAsync();
            await hands.ReadyAsync();
            var found = await teacher.Page.Locator(".log-line .title").AllInnerTextsAsync();
            var counted = said.Select(words => found.Count(title => title.Contains(words, StringComparison.Ordinal))).ToList();
            await TellAsync($"summary bench kills={rounds} reconnects={rounds} said={said.Count} lost={counted.Count(count => count == 0)} doubled={counted.Count(count => count > 1)}", ct);
            Assert.True(counted.TrueForAll(count => count == 1), string.Join('\n', ["Said:", .. said, "Stands:", .. found]));
            Assert.Equal(said.Count, found.Count(title => title.Contains("remember knot", StringComparison.Ordinal)));
        }
        finally
        {
            await app.DisposeAsync();
        }
    }

    // Every second time the program is killed when it has saved what was said and hasn't answered; otherwise at some moment.
    private async Task<RunningApp> KillAsync(
        RunningApp app, Dictionary<string, string> settings, Visitor teacher, BenchHands hands, List<string> said, int round, CancellationToken ct)
    {
        await teacher.Page.EvaluateAsync("() => { window.beforeTheKill = true; }");
        var (saved, dead) = (new TaskCompletionSource(), new TaskCompletionSource());
        await teacher.Page.RouteAsync(Line, route => HoldAsync(route, saved, dead.Task));
        await SayAsync(hands, said, $"remember knot {round} before the kill");
        await (round % 2 == 1 ? saved.Task.WaitAsync(ct) : Task.Delay(_chance.Next(60), ct));
        await app.DisposeAsync();
        dead.SetResult();
        await SayAsync(hands, said, $"remember knot {round} at dusk");
        var again = await StartAsync(settings, ct);
        await AgainAsync(teacher);
        await teacher.Page.UnrouteAllAsync(new() { Behavior = UnrouteBehavior.IgnoreErrors });
        await teacher.Page.EvaluateAsync("dispatchEvent(new Event('online'))");
        await AllSentAsync(teacher);
        return again;
    }

    // The first post reaches the program, and its answer nobody; later ones get nowhere, until the page has come anew.
    private static async Task HoldAsync(IRoute route, TaskCompletionSource saved, Task dead)
    {
        if (!dead.IsCompleted)
        {
            try
            {
                await route.FetchAsync();
            }
            catch (PlaywrightException)
            {
                // Killed in the middle of it.
            }

            saved.TrySetResult();
            await dead;
        }

        await route.AbortAsync();
    }

    private static async Task CutOffAsync(Visitor teacher, BenchHands hands, List<string> said, int round)
    {
        await teacher.Page.Context.SetOfflineAsync(true);
        await SayAsync(hands, said, $"remember knot {round} at noon");
        await teacher.Page.Context.SetOfflineAsync(false);
        await AllSentAsync(teacher);
    }

    private static async Task SayAsync(BenchHands hands, List<string> said, string words)
    {
        await hands.TypeAsync(words);
        await hands.PressAsync("Enter");
        said.Add(words);
    }

    // Nothing waits in the tab any more.
    private static async Task AllSentAsync(Visitor teacher) => await teacher.Page.WaitForFunctionAsync(
        "() => Object.keys(sessionStorage).filter(key => key.endsWith('-waiting')).every(key => JSON.parse(sessionStorage[key]).length === 0)",
        null,
        new PageWaitForFunctionOptions { Timeout = 120_000 });

    // The page has come anew by itself, since its circuit went with the program.
    private static async Task AgainAsync(Visitor teacher) => await teacher.Page.WaitForFunctionAsync(
        "() => !window.beforeTheKill && document.querySelector('[data-circuit=up]') && document.documentElement.dataset.benchReady",
        null,
        new PageWaitForFunctionOptions { Timeout = 120_000 });

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

    private static async Task TellAsync(string line, CancellationToken ct)
    {
        TestContext.Current.SendDiagnosticMessage(line);
        if (Environment.GetEnvironmentVariable(LogGivenBy) is { Length: > 0 } log)
        {
            await File.AppendAllTextAsync(log, line + '\n', ct);
        }
    }
}
