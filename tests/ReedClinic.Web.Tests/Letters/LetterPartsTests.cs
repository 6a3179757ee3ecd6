using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

public sealed class LetterPartsTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_letter_leads_to_each_of_its_parts_and_whoever_forgets_the_tick_is_led_back_to_it()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await BatchWorkedOn.Of(host, student, "How long do I soak them?");
        var path = $"/batches/{code}/letter";
        using var said = await (await Form.At(teacher, path)).Set("Verdict.verdict-two", "NeedsPlayingIn").Set("Answer.question-one", "Three to five minutes.").Post();
        LeadsToEach(Parse((await teacher.See($"/letters/{code}")).Page), $"/letters/{code}");

        using var hasty = await (await Form.At(teacher, $"/letters/{code}", path)).Set("Step", "send").Post();
        using var page = Parse((await hasty.Read()).Page);
        Assert.NotNull(page.QuerySelector("#send .problems[autofocus] a[href$='#f-ReadThrough']"));
        Assert.Single(page.QuerySelectorAll(".problems"));
        Assert.Equal("f-ReadThrough-error", page.QuerySelector("input[name=ReadThrough]")!.GetAttribute("aria-describedby"));

        using var sent = await (await Form.At(teacher, path)).Set("Step", "send").Set("ReadThrough", "yes").Post();
        LeadsToEach(Parse((await student.See($"/letters/{code}")).Page), $"/letters/{code}/sent/1");
        using var mine = Parse((await student.See("/batches")).Page);
        Assert.Equal($"Read your letter about {code}", mine.QuerySelector($"a[href='/letters/{code}']")!.GetAttribute("aria-label"));
        using var about = Parse((await student.See($"/batches/{code}")).Page);
        using var letter = Parse((await student.See($"/letters/{code}")).Page);
        Assert.Contains("Three to five minutes.", letter.GetElementById(Assert.Single(about.QuerySelectorAll("a.to-answer")).GetAttribute("href")!.Split('#')[1])!.TextContent, StringComparison.Ordinal);
        using var correcting = await (await Form.At(teacher, path, $"{path}/correct")).Post();
        using var writing = Parse((await teacher.See(path)).Page);
        Assert.NotNull(writing.QuerySelector("form[action$='/drop'] details:not([open]) button"));
        Assert.Empty(writing.QuerySelectorAll("form[action$='/drop'] > button"));
    }

    [Fact]
    public async Task Whoever_writes_a_letter_sees_the_way_of_a_crow_where_its_reader_does()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await BatchWorkedOn.Of(host, student);
        await BatchWorkedOn.CrowAsync(host, code);

        using var draft = Parse((await teacher.See($"/batches/{code}/letter")).Page);
        using var read = Parse((await teacher.See($"/letters/{code}")).Page);

        var shown = Assert.Single(draft.QuerySelectorAll(".letter-part .crow-way"));
        Assert.Equal(Assert.Single(read.QuerySelectorAll(".crow-way")).OuterHtml, shown.OuterHtml);
        Assert.NotNull(shown.Closest(".letter-part")!.QuerySelector("table"));
    }

    private static void LeadsToEach(IHtmlDocument page, string at)
    {
        Assert.Single(page.Head!.QuerySelectorAll("style"), style => style.TextContent.Contains($"@bottom-left {{ content: 'Batch {at.Split('/')[2]}'", StringComparison.Ordinal));
        // Words of the trade are explained where they are met first: what a plan needs stands in nothing that is folded.
        Assert.Null(page.QuerySelector("section.letter-check details"));
        var list = page.QuerySelector(".letter-parts.no-print")!;
        Assert.Equal("In this letter", page.GetElementById(list.GetAttribute("aria-labelledby")!)!.TextContent);
        Assert.Equal("H2", page.GetElementById(list.GetAttribute("aria-labelledby")!)!.TagName);
        Assert.All(page.QuerySelectorAll("article.letter section[id]"), part => Assert.Equal($"{at}#{list.Id}", part.QuerySelector(".letter-up.no-print a")!.GetAttribute("href")));
        var links = list.QuerySelectorAll("a");
        Assert.Equal(["Reed 1", "Reed 2", "What they have in common"], links.Select(link => link.TextContent).Where(name => name.StartsWith("Reed", StringComparison.Ordinal) || name.StartsWith("What they have", StringComparison.Ordinal)));
        Assert.All(links, link =>
        {
            Assert.StartsWith(at + "#part-", link.GetAttribute("href"), StringComparison.Ordinal);
            Assert.Single(page.QuerySelectorAll("section"), section => section.Id == link.GetAttribute("href")!.Split('#')[1]);
        });
    }

    private static IHtmlDocument Parse(string page) => new HtmlParser().ParseDocument(page);
}
