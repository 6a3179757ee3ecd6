using System.Globalization;
using ReedClinic.Browser.Tests.Journey;
using ReedClinic.Browser.Tests.Running;
using ReedClinic.Circuits;
using ReedClinic.Domain.Reeds;
using ReedClinic.KillDriver;

namespace ReedClinic.Browser.Tests.Load;

/// <summary>
/// How long a press at the bench takes while other benches are open: a few in the quick suite, as many as the environment says
/// in <c>tests/load.sh</c>, with and without them by turns.
/// </summary>
public sealed class BenchLoadTests(OneBrowser browser, PostgresServer postgres)
{
    private const string TabsGivenBy = "REEDCLINIC_LOAD_TABS";
    private const string EntriesGivenBy = "REEDCLINIC_LOAD_ENTRIES";
    private const string EngineGivenBy = "REEDCLINIC_LOAD_ENGINE";
    private const string LimitGivenBy = "REEDCLINIC_LOAD_LIMIT";
    private const string LogGivenBy = "REEDCLINIC_LOAD_LOG";
    private const int EntriesInABlock = 26;
    private const int PagesOfATeacher = 9;

    private static readonly string[] Lines = ["b-40", "peep is sharp", "c-30", "hard to blow", "c-25", "low notes speak", "c-20", "left corner thick", "c-15", "windows uneven", "c-10"];

    private readonly Random _chance = new(20261126);
    private readonly Dictionary<(bool IsFull, string Way), LoadFigures> _figures = [];
    private readonly Dictionary<bool, (TimeSpan Worked, TimeSpan Took)> _work = new() { [true] = default, [false] = default };

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    private static bool IsLong => Environment.GetEnvironmentVariable(TabsGivenBy) is { Length: > 0 };

    [Fact]
    public async Task Everything_that_is_said_at_one_bench_is_drawn_while_others_are_at_work()
    {
        var (tabs, entries) = (Given(TabsGivenBy, 1), Given(EntriesGivenBy, 2));
        var blocks = Math.Max(1, (entries + EntriesInABlock - 1) / EntriesInABlock);
        using var folder = new TemporaryFolder();
        var settings = await SettingsAsync(folder.Path);
        var teachers = await LoadScene.FillAsync(settings, Places(tabs).Prepend((blocks * 2) + 1).Prepend((blocks * 2) + 1), Ct);
        await using var app = await RunningApp.StartAsync(IsLong ? await PublishedApp.FolderAsync() : Path.GetDirectoryName(typeof(Program).Assembly.Location)!, settings, Ct);
        using var alone = await OtherTab.SignInAsync(app.Address, teachers[0].Email, Ct);
        var others = await SignInAsync(app, teachers.Skip(2));
        await using var visitor = await browser.VisitAsync(app.Address, "bench-load");
        visitor.Looks = false;
        await visitor.SignInAsync(teachers[1].Email, thenAt: "/(desk)?", LoadScene.Password);
        for (var turn = 0; turn <= blocks * 2; turn++)
        {
            await using var open = await OtherTabs.OpenAsync(turn % 2 == 1 ? others : [], _chance, Ct);
            await BlockAsync(app, visitor, teachers[1].Reeds[turn], open, Math.Min(entries, EntriesInABlock));
            await WithoutBrowserAsync(alone, teachers[0].Reeds[turn], open, Math.Min(entries, EntriesInABlock));
            if (turn == 0)
            {
                // The first block only warms the program up.
                _figures.Clear();
                _work[false] = default;
            }
        }

        await TellAsync(settings["Database__Engine"], tabs);
        var (line, pick) = (Figures(true, "by the line"), Figures(true, "by the pick list"));
        Assert.Equal(blocks * Math.Min(entries, EntriesInABlock), line.Count + pick.Count);
        Assert.True(Given(LimitGivenBy, int.MaxValue) >= Math.Max(line.Most, pick.Most), $"line {line}, pick list {pick}");
    }

    // Lines and picks by turns, at a hand's pace, on a reed of its own each time.
    private async Task BlockAsync(RunningApp app, Visitor visitor, ReedId reed, OtherTabs open, int entries)
    {
        await visitor.GoToAsync($"/bench/{reed.Value}");
        var hands = new BenchHands(visitor) { Pace = IsLong ? 60 : 0 };
        await hands.ReadyAsync();
        var (worked, since) = (app.Worked, TimeProvider.System.GetTimestamp());
        for (var entry = 0; entry < entries; entry++)
        {
            if (entry % 2 == 0)
            {
                Figures(open.Count > 0, "by the line").Add(await hands.SayAsync(Lines[entry / 2 % Lines.Length]));
            }
            else
            {
                await hands.LeaveLineAsync();
                Figures(open.Count > 0, "by the pick list").Add(await hands.PickAsync($"{(entry / 2 % 4) + 1}"));
            }
        }

        var before = _work[open.Count > 0];
        _work[open.Count > 0] = (before.Worked + app.Worked - worked, before.Took + TimeProvider.System.GetElapsedTime(since));
    }

    // The same without Chromium: what the server and the wire take.
    private async Task WithoutBrowserAsync(CookieClient teacher, ReedId reed, OtherTabs open, int entries)
    {
        await using var tab = await OtherTab.OpenAsync(teacher, reed, Ct);
        for (var entry = 0; entry < entries; entry++)
        {
            var times = await tab.SayAsync(Lines[entry % Lines.Length], Ct);
            Figures(open.Count > 0, "without a browser, recorded").Add(times.Recorded);
            Figures(open.Count > 0, "without a browser, sent to the screen").Add(times.Sent);
        }
    }

    private LoadFigures Figures(bool isFull, string way)
    {
        if (!_figures.TryGetValue((isFull, way), out var figures))
        {
            _figures[(isFull, way)] = figures = new LoadFigures();
        }

        return figures;
    }

    private static async Task<List<(CookieClient Teacher, ReedId Reed)>> SignInAsync(RunningApp app, IEnumerable<LoadTeacher> teachers)
    {
        List<(CookieClient, ReedId)> places = [];
        foreach (var teacher in teachers)
        {
            var client = await OtherTab.SignInAsync(app.Address, teacher.Email, Ct);
            places.AddRange(teacher.Reeds.Select(reed => (client, reed)));
        }

        return places;
    }

    private static IEnumerable<int> Places(int tabs)
    {
        for (var left = tabs; left > 0; left -= PagesOfATeacher)
        {
            yield return Math.Min(left, PagesOfATeacher);
        }
    }

    private async Task<Dictionary<string, string>> SettingsAsync(string folder)
    {
        var engine = Environment.GetEnvironmentVariable(EngineGivenBy) is { Length: > 0 } given ? given : "sqlite";
        var connection = $"Data Source={Path.Combine(folder, "clinic.db")}"; // a copy of the demo
        if (engine == "postgres")
        {
            var name = $"load_{Environment.ProcessId}";
            await postgres.ExecuteAsync($"CREATE DATABASE \"{name}\"", Ct);
            connection = await postgres.ConnectionAsync(name, Ct);
        }
        else
        {
            await StudioTemplates.CopyAsync(folder, hasDemo: true);
        }

        return new()
        {
            ["ASPNETCORE_ENVIRONMENT"] = "Development",
            ["Demo__Seed"] = "true",
            ["Mail__Folder"] = folder,
            ["Media__Folder"] = Path.Combine(folder, "media"),
            ["Database__Engine"] = engine,
            ["ConnectionStrings__Clinic"] = connection,
        };
    }

    private async Task TellAsync(string engine, int tabs)
    {
        var lines = _figures.OrderBy(one => one.Key.Way, StringComparer.Ordinal).ThenBy(one => one.Key.IsFull)
            .Select(one => $"| {engine} | {one.Key.Way} | {(one.Key.IsFull ? tabs : 0)} | {one.Value} |")
            .Concat(_work.Select(one => string.Create(
                CultureInfo.InvariantCulture,
                $"work engine={engine} tabs={(one.Key ? tabs : 0)} server-cpu={one.Value.Worked.TotalSeconds:0.0}s of {one.Value.Took.TotalSeconds:0.0}s"))).ToList();
        TestContext.Current.SendDiagnosticMessage(string.Join('\n', lines));
        if (Environment.GetEnvironmentVariable(LogGivenBy) is { Length: > 0 } log)
        {
            await File.AppendAllLinesAsync(log, lines, Ct);
        }
    }

    private static int Given(string name, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out var given) ? given : otherwise;
}
