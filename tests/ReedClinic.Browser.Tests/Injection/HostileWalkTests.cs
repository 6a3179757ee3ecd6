using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Injection;

/// <summary>
/// A real browser on pages full of texts that try to be more than text (OWASP ASVS 5.0: 1.2.1, 3.2.2, 3.4.3, 14.2.3): nothing may
/// open, nothing may be refused by the content policy, nothing may be asked of another site.
/// </summary>
public sealed partial class HostileWalkTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const int MostKinds = 30;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Texts_that_try_to_be_more_stay_texts_on_every_page_of_owner_teacher_and_student()
    {
        var studio = new HostileStudio();
        await studio.FillAsync(app, Ct);
        Assert.Empty(studio.Unused);

        var teacher = await WalkAsync(DemoClinic.Teacher, []);
        var owner = await WalkAsync(DemoClinic.Owner, teacher);
        var student = await WalkAsync(DemoClinic.Student, []);

        Assert.Superset(new HashSet<string> { "/people", "/studio" }, owner);
        Assert.Superset(new HashSet<string> { "/bench/*", "/batches/*", "/batches/*/arrival", "/batches/*/letter" }, teacher);
        Assert.Superset(new HashSet<string> { "/batches", "/batches/*", "/letters/*" }, student);
    }

    // The first page, and one of every kind that links lead to from there, but those that were seen already.
    private async Task<HashSet<string>> WalkAsync(string who, HashSet<string> seen)
    {
        await using var visitor = await browser.VisitAsync(app, who, $"hostile-{who.Split('@')[0]}");
        var watch = await Watch.OverAsync(visitor, app.Home);
        var kinds = new HashSet<string>();
        var (waiting, met) = (new Queue<string>(["/"]), new HashSet<string> { "/" });
        while (kinds.Count < MostKinds && waiting.TryDequeue(out var path))
        {
            var kind = Own().Replace(path, "*");
            if ((kinds.Count > 0 && seen.Contains(kind)) || !kinds.Add(kind))
            {
                continue;
            }

            if (!await IsPageAsync(visitor, path))
            {
                continue;
            }

            if (kind == "/bench/*")
            {
                await visitor.LiveAsync();
            }

            await watch.LookAsync();
            foreach (var link in await visitor.Page.EvaluateAsync<string[]>("[...document.querySelectorAll('a[href]')].filter(a => a.origin === location.origin).map(a => a.pathname)"))
            {
                if (met.Add(link))
                {
                    waiting.Enqueue(link);
                }
            }
        }

        Assert.Empty(watch.Seen);
        return kinds;
    }

    // What is put away as a file opens nothing here.
    private static async Task<bool> IsPageAsync(Visitor visitor, string path)
    {
        try
        {
            await visitor.Page.GotoAsync(path, new PageGotoOptions { WaitUntil = WaitUntilState.DOMContentLoaded });
            return true;
        }
        catch (PlaywrightException file) when (file.Message.Contains("Download is starting", StringComparison.Ordinal))
        {
            return false;
        }
    }

    // What is one's own in an address: an id, a batch's code.
    [GeneratedRegex("(?<=/)([0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}|[0-9A-Z]{3}-[0-9A-Z]{4}|\\d+)(?=/|$)")]
    private static partial Regex Own();
}
