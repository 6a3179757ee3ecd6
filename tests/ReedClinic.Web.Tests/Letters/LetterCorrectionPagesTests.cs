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
        Assert.DoesNotContain("a heron", (await student.See($"/letters/{code}")).Page, StringComparison.Ordinal);
        var send = Form.Of(teacher, path, (await teacher.See(path)).Page, path).Set("Step", "send").Set("ReadThrough", "yes");
        using var sent = await send.Post();
        using var again = await send.Post();
        Assert.Equal($"{path}?done=sent", sent.Leads());
        Assert.Equal($"{path}?done=sent", again.Leads());
        await BothAreRead(student, code);
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
    }

    private static async Task BothAreRead(HttpClient student, string code)
    {
        using var now = Parse((await student.See($"/letters/{code}")).Page);
        Assert.Contains(PutRight, now.QuerySelector("p.letter-notice")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Perhaps <b>a heron</b>.", now.QuerySelector("article.letter")!.TextContent, StringComparison.Ordinal);
        Assert.StartsWith("Corrected: it takes the place", now.QuerySelector("article .letter-corrected")!.TextContent, StringComparison.Ordinal);
        var before = now.QuerySelector("p.letter-notice a")!.GetAttribute("href")!;
        Assert.Equal($"/letters/{code}/sent/1", before);
        using var old = Parse((await student.See(before)).Page);
        Assert.Contains("was replaced by a corrected one", old.QuerySelector("p.letter-notice")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("a heron", old.QuerySelector("article.letter")!.TextContent, StringComparison.Ordinal);
        Assert.Null(old.QuerySelector(".letter-corrected"));
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/letters/{code}/sent/3")).Status);
        var earlier = old.QuerySelector(".letter-bar a[href*=file]")!.GetAttribute("href")!;
        Assert.EndsWith("&sending=1", earlier, StringComparison.Ordinal);
        var (first, newest) = (await student.GetByteArrayAsync(new Uri(earlier, UriKind.Relative), Ct), await student.GetByteArrayAsync(new Uri($"/letters/{code}/file?paper=a4", UriKind.Relative), Ct));
        Assert.True(first.AsSpan().StartsWith("%PDF"u8) && newest.AsSpan().StartsWith("%PDF"u8));
        Assert.NotEqual(first.Length, newest.Length);
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/letters/{code}/file?sending=draft")).Status);
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
