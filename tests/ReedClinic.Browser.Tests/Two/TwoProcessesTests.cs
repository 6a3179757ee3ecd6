using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Journey;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Two;

/// <summary>
/// Two processes of one studio behind a proxy: what is said at one shows at the other, and whoever was at one that is killed
/// goes on at the other with what they had typed. <c>tests/two.sh</c> does it at full count and writes down the figures.
/// </summary>
public sealed class TwoProcessesTests(OneBrowser browser, TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string LogGivenBy = "REEDCLINIC_TWO_LOG";
    private const string HalfTyped = "remember the half of it";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_said_at_one_shows_at_the_other_and_who_was_at_a_killed_one_goes_on_at_the_other()
    {
        await using var two = await TwoProcesses.StartAsync(await databases.FreshAsync(ClinicEngine.Postgres), Ct);
        await using var near = await browser.VisitAsync(two.Site, "two-near", anyCertificate: true);
        await two.StartAsync(1, Ct);
        await using var far = await browser.VisitAsync(two.Site, "two-far", anyCertificate: true);
        await SignInAsync(near, "edda@lanternquay.example");
        await SignInAsync(far, "maren@lanternquay.example");
        await two.PutAsync(near, 0);
        await two.PutAsync(far, 1);
        var (hands, watching) = (await BenchHands.OpenAsync(near, "Tomas Arden", 1), await BenchHands.OpenAsync(far, "Tomas Arden", 1));
        Assert.True((await two.WhereAsync(near), await two.WhereAsync(far)) == (0, 1), two.ProxySaid);

        List<string> said = [];
        await ShowsAsync(near, far, hands, said, Count("REEDCLINIC_TWO_ENTRIES", 3));
        await GoesOnAsync(two, near, hands, said, Count("REEDCLINIC_TWO_KILLS", 1));

        await AllSentAsync(near);
        foreach (var (visitor, at) in new[] { (near, hands), (far, watching) })
        {
            await visitor.Page.ReloadAsync();
            await at.ReadyAsync();
            var titles = await visitor.Page.Locator(".log-line .title").AllInnerTextsAsync();
            Assert.All(said, words => Assert.Single(titles, title => title.Contains(words, StringComparison.Ordinal)));
        }

        await TellAsync($"said at the bench: {said.Count}, each there once, at both processes");
    }

    private static async Task SignInAsync(Visitor visitor, string email)
    {
        visitor.Looks = false; // other tests look at these pages
        await visitor.SignInAsync(email, thenAt: "/(desk)?", DemoClinic.Password);
    }

    // From the press in one window to the words in the other, on the one clock of the machine.
    private static async Task ShowsAsync(Visitor near, Visitor far, BenchHands hands, List<string> said, int count)
    {
        List<double> times = [];
        for (var number = 1; number <= count; number++)
        {
            var words = $"remember knot {number} from here";
            await far.Page.EvaluateAsync(
                """
                words => {
                  window.shown = new Promise(done => {
                    const look = () => { if (document.querySelector(".bench").textContent.includes(words)) { seen.disconnect(); done(Date.now()); } };
                    const seen = new MutationObserver(look);
                    seen.observe(document.querySelector(".bench"), { childList: true, subtree: true, characterData: true });
                  });
                  window.shown.catch(() => {});
                }
                """,
                words);
            await near.Page.EvaluateAsync("() => addEventListener('keydown', press => { if (press.key === 'Enter') window.pressed = Date.now(); }, { capture: true })");
            await hands.SayAsync(words);
            said.Add(words);
            times.Add(await far.Page.EvaluateAsync<double>("window.shown") - await near.Page.EvaluateAsync<double>("window.pressed"));
        }

        await TellAsync(Invariant($"shown at the other process after: the first {times[0]:0} ms, most {times.Max():0} ms, half of {times.Count} within {times.Order().ElementAt(times.Count / 2):0} ms; {times.Count(time => time > 1_000)} took more than 1,000 ms"));
    }

    private static async Task GoesOnAsync(TwoProcesses two, Visitor near, BenchHands hands, List<string> said, int kills)
    {
        List<double> away = [];
        for (var kill = 1; kill <= kills; kill++)
        {
            var (killed, words) = (await two.WhereAsync(near), $"remember knot {kill} before the kill");
            await hands.SayAsync(words);
            said.Add(words);
            await hands.TypeAsync(HalfTyped);
            await near.Page.EvaluateAsync("() => { window.beforeTheKill = true; }");
            var since = Stopwatch.StartNew();
            await two.KillAsync(killed);
            await AgainAsync(near);
            away.Add(since.Elapsed.TotalSeconds);

            await Assertions.Expect(near.Page.Locator("#bench-line")).ToHaveValueAsync(HalfTyped);
            Assert.Equal(1 - killed, await two.WhereAsync(near));
            await near.Page.Locator("#bench-line").FillAsync("");
            words = $"remember knot {kill} after the kill";
            await hands.SayAsync(words);
            said.Add(words);
            await two.StartAsync(killed, Ct);
        }

        await TellAsync(Invariant($"kills: {kills}; at work again at the other process after: most {away.Max():0.0} s, half within {away.Order().ElementAt(away.Count / 2):0.0} s; the line that was typed stood there each time"));
    }

    // The page has come anew by itself, since its circuit went with the process.
    private static async Task AgainAsync(Visitor near) => await near.Page.WaitForFunctionAsync(
        "() => !window.beforeTheKill && document.querySelector('[data-circuit=up]') && document.documentElement.dataset.benchReady",
        null,
        new PageWaitForFunctionOptions { Timeout = 120_000 });

    private static async Task AllSentAsync(Visitor near) => await near.Page.WaitForFunctionAsync(
        "() => Object.keys(sessionStorage).filter(key => key.endsWith('-waiting')).every(key => JSON.parse(sessionStorage[key]).length === 0)",
        null,
        new PageWaitForFunctionOptions { Timeout = 120_000 });

    private static int Count(string variable, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out var asked) ? asked : otherwise;

    private static string Invariant(FormattableString words) => FormattableString.Invariant(words);

    private static async Task TellAsync(string line)
    {
        TestContext.Current.SendDiagnosticMessage(line);
        if (Environment.GetEnvironmentVariable(LogGivenBy) is { Length: > 0 } log)
        {
            await File.AppendAllTextAsync(log, line + '\n', Ct);
        }
    }
}
