using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

public sealed class LetterCorrectionPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private const string PutRight = "It is the upper blade & not the lower.";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_sent_letter_is_corrected_and_what_was_sent_stays_beside_it()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await SentAsync(student, teacher);
        var path = $"/batches/{code}/letter";
        using var begun = await (await Form.At(teacher, path, $"{path}/correct")).Post();
        Assert.Equal($"{path}?done=correcting", begun.Leads());
        var writing = (await teacher.See(path)).Page;
        Assert.Contains("This is a correction of a letter that was sent.", writing, StringComparison.Ordinal);

        var form = Form.Of(teacher, path, writing, path).Set("Step", "send").Set("ReadThrough", "yes");
        using var silent = await form.Post();
        using var refused = Parse((await silent.Read()).Page);
        Assert.Equal("Say in a sentence what was put right.", refused.QuerySelector("#f-WhatChanged-error")!.TextContent);

        using var typed = await Form.Of(teacher, path, writing, path).Set("Block.habit", "Perhaps <b>a heron</b>.").Set("WhatChanged", PutRight).Set("Step", "send").Set("ReadThrough", "yes").Post();
        Assert.Equal($"/letters/{code}/correction?before=sending", typed.Leads());
        var preview = (await teacher.See(typed.Leads()!)).Page;
        Assert.Contains("Perhaps &lt;b&gt;a heron&lt;/b&gt;.", preview, StringComparison.Ordinal);
        using (var asRead = Parse(preview))
        {
            Assert.Matches("^\\s*Corrected on .*" + System.Text.RegularExpressions.Regex.Escape(PutRight), asRead.QuerySelector("article.letter")!.PreviousElementSibling!.TextContent);
        }

        Assert.DoesNotContain("a heron", (await student.See($"/letters/{code}")).Page, StringComparison.Ordinal);
        var send = Form.Of(teacher, path, (await teacher.See(path)).Page, path).Set("Step", "send").Set("ReadThrough", "yes");
        using var sent = await send.Post();
        using var again = await send.Post();
        Assert.Equal($"{path}?done=sent", sent.Leads());
        Assert.Equal($"{path}?done=sent", again.Leads());
        await BothAreRead(student, code);
        await WhatWasSentIsCompared(teacher, path);
        using var draft = await teacher.GetAsync(new Uri($"/letters/{code}/file?paper=us-letter&sending=draft", UriKind.Relative), Ct);
        Assert.Equal($"/letters/{code}/file?paper=us-letter", draft.Leads());
    }

    [Fact]
    public async Task The_desk_tells_of_a_correction_that_is_begun_and_the_students_pages_of_one_that_was_sent()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await SentAsync(student, teacher);
        var path = $"/batches/{code}/letter";
        Assert.DoesNotContain("was corrected on", (await student.See("/")).Page, StringComparison.Ordinal);
        using var begun = await (await Form.At(teacher, path, $"{path}/correct")).Post();
        using (var desk = Parse((await teacher.See("/desk")).Page))
        {
            Assert.StartsWith("a correction isn’t sent yet", desk.QuerySelector($"a[href='{path}']")!.TextContent, StringComparison.Ordinal);
        }

        Assert.Contains("Tables, drawings and who signed stay as they were sent", (await teacher.See(path)).Page, StringComparison.Ordinal);
        using var typed = await Form.Of(teacher, path, (await teacher.See(path)).Page, path).Set("Block.habit", "Perhaps a heron.").Set("WhatChanged", PutRight).Post();
        using var sent = await Form.Of(teacher, path, (await teacher.See(path)).Page, path).Set("Step", "send").Set("ReadThrough", "yes").Post();

        using var done = Parse((await teacher.See("/desk")).Page);
        Assert.Null(done.QuerySelector($"a[href='{path}']"));
        Assert.Contains("was corrected on", (await student.See("/")).Page, StringComparison.Ordinal);
        Assert.Contains("was corrected on", (await student.See($"/batches/{code}")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_correction_is_dropped_and_an_old_page_of_it_changes_nothing()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await SentAsync(student, teacher)}/letter";
        using var begun = await (await Form.At(teacher, path, $"{path}/correct")).Post();
        var writing = (await teacher.See(path)).Page;
        using var words = await Form.Of(teacher, path, writing, path).Set("Block.habit", "Rash.").Post();

        using var stale = await Form.Of(teacher, path, writing, $"{path}/drop").Post();
        using var dropped = await Form.Of(teacher, path, (await teacher.See(path)).Page, $"{path}/drop").Post();

        Assert.Equal($"{path}?done=stood", stale.Leads());
        Assert.Equal($"{path}?done=dropped", dropped.Leads());
        Assert.Contains("The correction was dropped.", (await teacher.See(dropped.Leads()!)).Page, StringComparison.Ordinal);
        using var late = await Form.Of(teacher, path, writing, path).Set("Block.habit", "Late, with care.").Set("WhatChanged", "Late words.").Post();
        var page = (await late.Read()).Page;
        Assert.Contains("Late, with care.", page, StringComparison.Ordinal);
        Assert.Contains("Late words.", page, StringComparison.Ordinal);
        using var only = await Form.Of(teacher, path, writing, path).Set("WhatChanged", "Only this sentence.").Post();
        using var unkept = Parse((await only.Read()).Page);
        Assert.Equal("Only this sentence.", unkept.QuerySelector(".letter-unkept #f-WhatChanged")!.TextContent);
        Assert.Contains("Nobody corrects this letter any more", unkept.QuerySelector(".problems")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_written_down_since_a_letter_was_sent_is_told_beside_it_and_while_it_is_corrected()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await SentAsync(student, teacher);
        var path = $"/batches/{code}/letter";
        Assert.DoesNotContain("at the bench since the letter was sent", (await teacher.See(path)).Page, StringComparison.Ordinal);
        await BatchWorkedOn.CrowAsync(host, code);

        using var closed = Parse((await teacher.See(path)).Page);
        using var begun = await (await Form.At(teacher, path, $"{path}/correct")).Post();
        using var open = Parse((await teacher.See(path)).Page);

        Assert.All([closed, open], page => Assert.Collection(
            page.QuerySelectorAll(".letter-since li").Select(line => line.TextContent),
            heard => Assert.StartsWith("Reed 1, test: crow", heard, StringComparison.Ordinal),
            cut => Assert.StartsWith("Reed 1, adjustment: clipped", cut, StringComparison.Ordinal),
            again => Assert.StartsWith("Reed 1, test: crow", again, StringComparison.Ordinal)));
        Assert.DoesNotContain("Nothing is missing", open.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Something was written down since the letter was sent.", open.QuerySelector(".letter-jump a")!.TextContent);
    }

    [Fact]
    public async Task What_paper_cant_show_is_named_before_sending_wherever_it_was_typed()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await SentAsync(student, teacher)}/letter";
        using var begun = await (await Form.At(teacher, path, $"{path}/correct")).Post();
        using var kept = await Form.Of(teacher, path, (await teacher.See(path)).Page, path)
            .Set("Block.greeting", "Dear Wilma 🙂,").Set("Block.habit", "Perhaps 你好 it turns.").Set("WhatChanged", "The lesson 🌊 was mended.").Post();

        using var page = Parse((await teacher.See(path)).Page);
        using var preview = Parse((await teacher.See($"/letters/{path.Split('/')[2]}/correction")).Page);

        Assert.Equal(["🙂,", "你好", "🌊"], page.QuerySelectorAll(".letter-unprinted li").Select(item => item.TextContent));
        Assert.Equal(["🙂,", "你好", "🌊"], preview.QuerySelectorAll(".letter-unprinted li").Select(item => item.TextContent));
    }

    [Fact]
    public async Task A_sentence_that_a_colleague_wrote_meanwhile_is_not_erased_nor_written_over_nor_sent_unread()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await SentAsync(student, teacher)}/letter";
        using var begun = await (await Form.At(teacher, path, $"{path}/correct")).Post();
        var open = (await teacher.See(path)).Page;
        using var hers = await Form.Of(teacher, path, open, path).Set("WhatChanged", "Hers.").Post();

        using var untouched = await Form.Of(teacher, path, open, path).Post();
        Assert.Equal("Hers.", await SaidAsync(teacher, path));
        using var over = await Form.Of(teacher, path, open, path).Set("WhatChanged", "His.").Post();
        Assert.Equal("Hers.", await SaidAsync(teacher, path));
        var both = (await over.Read()).Page;
        using var shown = Parse(both);
        Assert.Contains("“Hers.”", shown.QuerySelector("#f-WhatChanged-error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("His.", shown.QuerySelector("#f-WhatChanged")!.TextContent.Trim());

        using var unread = await Form.Of(teacher, path, open, path).Set("Step", "send").Set("ReadThrough", "yes").Post();
        using var refused = Parse((await unread.Read()).Page);
        Assert.Contains("Please read it again.", refused.QuerySelector(".problems")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Hers.", refused.QuerySelector("#f-WhatChanged")!.TextContent.Trim());

        using var instead = await Form.Of(teacher, path, both, path).Post();
        Assert.Equal("His.", await SaidAsync(teacher, path));
    }

    private static async Task BothAreRead(HttpClient student, string code)
    {
        using var now = Parse((await student.See($"/letters/{code}")).Page);
        Assert.Contains(PutRight, now.QuerySelector("p.letter-notice")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Perhaps <b>a heron</b>.", now.QuerySelector("article.letter")!.TextContent, StringComparison.Ordinal);
        Assert.Matches("^Corrected at [0-9:]{5}: it takes the place of the letter that was sent at [0-9:]{5} on the same day", now.QuerySelector("article .letter-corrected")!.TextContent);
        var before = now.QuerySelector("p.letter-notice a")!.GetAttribute("href")!;
        Assert.Equal($"/letters/{code}/sent/1", before);
        using var old = Parse((await student.See(before)).Page);
        Assert.Contains("was replaced by a corrected one", old.QuerySelector("p.letter-notice")!.TextContent, StringComparison.Ordinal);
        Assert.EndsWith("replaced by a corrected one", old.Title, StringComparison.Ordinal);
        Assert.DoesNotContain("a heron", old.QuerySelector("article.letter")!.TextContent, StringComparison.Ordinal);
        Assert.Null(old.QuerySelector(".letter-corrected"));
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/letters/{code}/sent/3")).Status);
        var earlier = old.QuerySelector(".letter-bar a[href*=file]")!.GetAttribute("href")!;
        Assert.EndsWith("&sending=1", earlier, StringComparison.Ordinal);
        using var file = await student.GetAsync(new Uri(earlier, UriKind.Relative), Ct);
        Assert.Equal($"letter-{code}-sent-1.pdf", file.Content.Headers.ContentDisposition!.FileName);
        var (first, newest) = (await student.GetByteArrayAsync(new Uri(earlier, UriKind.Relative), Ct), await student.GetByteArrayAsync(new Uri($"/letters/{code}/file?paper=a4", UriKind.Relative), Ct));
        Assert.True(first.AsSpan().StartsWith("%PDF"u8) && newest.AsSpan().StartsWith("%PDF"u8));
        Assert.NotEqual(first.Length, newest.Length);
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/letters/{code}/file?sending=draft")).Status);
    }

    // The version that was sent says nothing new against the one that was kept right before it; against the letter that was sent it does.
    private static async Task WhatWasSentIsCompared(HttpClient teacher, string path)
    {
        using var writing = Parse((await teacher.See(path)).Page);
        var sent = writing.QuerySelectorAll(".letter-versions li:has(.letter-version-sent) a").Select(way => way.GetAttribute("href")!).ToList();
        using var newest = Parse((await teacher.See(sent[0])).Page);
        Assert.Equal($"What changed since version {sent[1].Split('/')[^1]}, which was sent", newest.QuerySelectorAll(".letter-changes h2")[^1].TextContent);
        Assert.Contains("heron", newest.QuerySelectorAll(".letter-changes")[^1].TextContent, StringComparison.Ordinal);
        Assert.StartsWith("Sent on ", newest.QuerySelector(".letter-bar .hint")!.TextContent, StringComparison.Ordinal);
    }

    private static async Task<string> SaidAsync(HttpClient teacher, string path)
    {
        using var page = Parse((await teacher.See(path)).Page);
        return page.QuerySelector("#f-WhatChanged")!.TextContent.Trim();
    }

    private async Task<string> SentAsync(HttpClient student, HttpClient teacher)
    {
        var code = await BatchWorkedOn.Of(host, student);
        var path = $"/batches/{code}/letter";
        using var mended = await (await Form.At(teacher, path)).Set("Verdict.verdict-two", "NeedsPlayingIn").Post();
        using var sent = await (await Form.At(teacher, path)).Set("Step", "send").Set("ReadThrough", "yes").Post();
        return code;
    }

    private static IHtmlDocument Parse(string page) => new HtmlParser().ParseDocument(page);
}
