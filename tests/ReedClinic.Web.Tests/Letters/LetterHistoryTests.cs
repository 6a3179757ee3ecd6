using AngleSharp.Html.Parser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
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
    public async Task A_version_has_the_day_on_which_it_was_kept_and_says_who_kept_it()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await BatchWorkedOn.Of(host, student);
        var path = $"/batches/{code}/letter";
        using var kept = await (await Form.At(teacher, path)).Set("Block.habit", "Perhaps the knife turns early.").Post();
        await KeepAgainAsync(code, new DateTimeOffset(2026, 3, 9, 12, 0, 0, TimeSpan.Zero));

        using var page = new HtmlParser().ParseDocument((await teacher.See($"{path}/2")).Page);

        Assert.StartsWith("Kept on 9 March 2026, ", page.QuerySelector(".letter-bar .hint")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("9 March 2026", page.QuerySelector(".letter-head")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reed_is_called_where_the_letter_is_written_as_where_it_is_read()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await BatchWorkedOn.Of(host, student);
        using var written = new HtmlParser().ParseDocument((await teacher.See($"/batches/{code}/letter")).Page);
        using var read = new HtmlParser().ParseDocument((await teacher.See($"/letters/{code}")).Page);

        Assert.Equal(
            read.QuerySelectorAll("section.letter-reed h2").Select(head => head.FirstChild!.TextContent.Trim()),
            written.QuerySelectorAll("section.letter-reed h2").Select(head => head.FirstChild!.TextContent.Trim()));
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

    // What is kept never changes, so the same words are kept once more, on another day.
    private async Task KeepAgainAsync(string code, DateTimeOffset at)
    {
        var ct = TestContext.Current.CancellationToken;
        await using var db = await host.Services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContextAsync(ct);
        var batch = (await db.Set<Batch>().ToListAsync(ct)).Single(one => one.Code.ToString() == code).Id;
        var letter = await db.Set<Letter>().SingleAsync(one => one.Batch == batch, ct);
        var first = await db.Set<LetterVersion>().SingleAsync(one => one.Batch == batch, ct);
        db.Add(letter.Keep(first.Payload, new OperationId(Guid.CreateVersion7(at)), first.SavedBy, at));
        await db.SaveChangesAsync(ct);
    }
}
