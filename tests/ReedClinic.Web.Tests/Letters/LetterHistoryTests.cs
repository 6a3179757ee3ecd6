using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

public sealed class LetterHistoryTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_version_shows_what_came_and_what_went_since_the_one_before()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        using var first = await (await Form.At(teacher, path)).Set("Block.habit", "Perhaps the knife turns early.").Post();
        using var second = await (await Form.At(teacher, path)).Set("Block.habit", "Perhaps the <b>knife</b> turns late.").Post();

        using var page = new HtmlParser().ParseDocument((await teacher.See($"{path}/2")).Page);

        Assert.Equal("What changed since version 1", page.QuerySelector(".letter-changes h2")!.TextContent);
        Assert.Equal(["The likely habit"], page.QuerySelectorAll(".letter-changes h3").Select(title => title.TextContent));
        Assert.Contains("early", string.Concat(page.QuerySelectorAll("del").Select(run => run.TextContent)), StringComparison.Ordinal);
        Assert.Contains("late", string.Concat(page.QuerySelectorAll("ins").Select(run => run.TextContent)), StringComparison.Ordinal);
        Assert.Null(page.QuerySelector(".letter-changes b"));
        using var one = new HtmlParser().ParseDocument((await teacher.See($"{path}/1")).Page);
        Assert.Null(one.QuerySelector(".letter-changes"));
    }

    [Fact]
    public async Task Each_sentence_leads_to_the_entries_that_it_rests_on()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";

        using var page = new HtmlParser().ParseDocument((await teacher.See(path)).Page);

        var ways = page.QuerySelectorAll(".letter-sources a").ToList();
        Assert.Contains(ways, way => way.TextContent.StartsWith("Reed 1, ", StringComparison.Ordinal) && way.TextContent.Contains("tip corners", StringComparison.Ordinal));
        Assert.All(ways, way => Assert.Matches("^/bench/[0-9a-f-]{36}#entry-[0-9]+$", way.GetAttribute("href")));
        Assert.Equal(System.Net.HttpStatusCode.OK, (await teacher.See(ways[0].GetAttribute("href")!.Split('#')[0])).Status);
    }

    [Fact]
    public async Task Once_a_letter_was_sent_its_page_says_how_the_mail_about_it_stands()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        using var mended = await (await Form.At(teacher, path)).Set("Verdict.verdict-two", "NeedsPlayingIn").Post();
        using var sent = await (await Form.At(teacher, path)).Set("Step", "send").Set("ReadThrough", "yes").Post();

        using var page = new HtmlParser().ParseDocument((await teacher.See(sent.Leads()!)).Page);

        Assert.Contains("The mail about it", page.QuerySelector("form.letter-mail [role=status]")!.TextContent, StringComparison.Ordinal);
    }
}
