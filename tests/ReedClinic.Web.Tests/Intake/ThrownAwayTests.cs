using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Intake;

/// <summary>What was begun and is thrown away: what goes is told before, and a tab that still shows it keeps what is typed.</summary>
public sealed class ThrownAwayTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_tab_of_what_was_thrown_away_shows_what_was_typed_in_it_to_copy()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var tab = (await Form.At(student, $"{walk.Draft}/reed/1/bothers")).Set("Reeds[0].Bothers", "It sags <b>after</b>\na page").Set("Reeds[0].Opening", "-2");
        var look = await Form.At(student, $"{walk.Draft}/look-over");
        var twice = await Form.At(student, $"{walk.Draft}/drop");
        using var gone = await (await Form.At(student, $"{walk.Draft}/drop")).Post();

        using var typed = await tab.Post();
        using var sent = await look.Post();
        using var again = await twice.Post();
        using var saved = await tab.PostTo($"{walk.Draft}/draft/reed/1/bothers");

        using var page = Parse((await typed.Read()).Page);
        Assert.Equal(HttpStatusCode.Gone, typed.StatusCode);
        Assert.Equal("This isn’t here any more", page.QuerySelector("main h1")!.TextContent);
        Assert.Equal("It sags <b>after</b>\na page", Assert.Single(page.QuerySelectorAll("main .as-written")).TextContent);
        Assert.Equal("/intake", page.QuerySelector("main a.button")!.GetAttribute("href"));
        Assert.All([sent, again], answer => Assert.Equal(HttpStatusCode.Gone, answer.StatusCode));
        Assert.Contains("was thrown away meanwhile", (await sent.Read()).Page, StringComparison.Ordinal);
        Assert.Contains("was thrown away meanwhile", (await again.Read()).Page, StringComparison.Ordinal);
        Assert.Contains("thrown away in another window", await saved.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Before_it_is_thrown_away_what_goes_is_told_and_to_keep_it_comes_first()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Answer("instrument", ("Instrument", "Oboe"));
        await walk.Fill(2);
        await walk.Answer("questions", ("Questions", "Is this one too old?"));

        using var page = Parse((await student.See($"{walk.Draft}/drop")).Page);

        Assert.Equal(
            ["Reed 1", "Reed 2", "Your questions: “Is this one too old?”", "Your answers about your instrument and yourself"],
            page.QuerySelectorAll(".drop-goes li").Select(line => line.TextContent.Split(" (“")[0]));
        var actions = page.QuerySelectorAll("main .actions > *").Where(action => action.LocalName is "a" or "button").ToList();
        Assert.Equal(["Keep it", "Yes, throw it away"], actions.Select(action => action.TextContent));
        Assert.Equal(["button", "second"], actions.Select(action => action.ClassName));
    }

    [Fact]
    public async Task Of_two_that_were_begun_each_link_says_which()
    {
        using var student = await host.Student();
        var one = await IntakeWalk.Begin(student);
        await one.Fill(1);
        var other = await IntakeWalk.Begin(student);
        await other.Answer("instrument", ("Instrument", "Oboe"));

        using var page = Parse((await student.See("/intake")).Page);

        var links = page.QuerySelectorAll(".continue a");
        Assert.Equal(4, links.Length);
        Assert.Equal(4, links.Select(link => link.GetAttribute("aria-label")).Distinct().Count());
        Assert.Contains(links, link => link.GetAttribute("aria-label")!.StartsWith(link.TextContent + ": last opened ", StringComparison.Ordinal) && link.GetAttribute("aria-label")!.Contains("thread number 1", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Where_nothing_was_asked_the_page_before_sending_says_so_and_leads_there()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);

        using var page = Parse((await student.See($"{walk.Draft}/look-over")).Page);

        var part = page.QuerySelectorAll("main section.summary")[^1];
        Assert.Empty(part.QuerySelectorAll("dl"));
        Assert.Contains("You ask nothing for now.", part.TextContent, StringComparison.Ordinal);
        Assert.Equal("Ask something", Assert.Single(part.QuerySelectorAll("a")).TextContent);
        Assert.EndsWith("/questions?from=look-over", part.QuerySelector("a")!.GetAttribute("href"), StringComparison.Ordinal);
    }

    private static IHtmlDocument Parse(string page) => new HtmlParser().ParseDocument(page);
}
