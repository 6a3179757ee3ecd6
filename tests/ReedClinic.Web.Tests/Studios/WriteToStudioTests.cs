using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Web.Tests.Hosting;
using ReedClinic.Web.Tests.Letters;

namespace ReedClinic.Web.Tests.Studios;

/// <summary>Wherever a page says that somebody may write or ask, there is a way to, or it says truly which is left.</summary>
public sealed class WriteToStudioTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private const string Mail = "desk@harbour.example";

    [Fact]
    public async Task What_the_owner_sets_stands_on_every_page_that_asks_to_write_and_without_it_the_pages_say_what_is_left()
    {
        using var owner = await host.SignedIn(await host.OpenStudio());
        using var student = await host.Student("Fenna");
        using var teacher = await host.Teacher();
        var code = await BatchWorkedOn.Of(host, student, "How long do I soak them?");
        await host.SendLetter(Read(code));
        var link = await LinkAsync(teacher, code);
        using var stranger = host.Visitor();

        await RefusesAsync(owner);
        await SayAsync(owner, postTo: "7 Quay Street\nMarrow Bay", writeTo: "");
        await HasNowhereAsync(student, stranger, code, link);
        await IsToldAsync(owner, isMissing: true);

        await SayAsync(owner, postTo: "7 Quay Street\nMarrow Bay", writeTo: Mail);
        await HasAWayAsync(student, stranger, code, link);
        await IsToldAsync(owner, isMissing: false);
        Assert.Contains(Mail, (await student.See("/privacy")).Page, StringComparison.Ordinal);
        using var staffs = await Look(teacher, $"/batches/{code}");
        Assert.Null(staffs.QuerySelector("#write"));
    }

    [Fact]
    public async Task What_stands_in_the_way_of_erasing_comes_first_and_nothing_is_listed_that_is_not_there()
    {
        using var student = await host.Student("Gesa");
        using var bare = await host.Student("Hauke");
        var code = await BatchWorkedOn.Of(host, student, "How long do I soak them?");
        await host.Announce("Hauke", "green thread");

        using var here = await Look(student, "/privacy/erase");
        using var coming = await Look(bare, "/privacy/erase");

        var main = here.QuerySelector("main")!.TextContent;
        Assert.InRange(main.IndexOf("Not yet possible", StringComparison.Ordinal), 0, main.IndexOf("What goes", StringComparison.Ordinal));
        Assert.DoesNotContain("letters", coming.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(code, main, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_question_left_open_leads_to_what_the_letter_says_of_it()
    {
        using var student = await host.Student("Imke");
        var code = await BatchWorkedOn.Of(host, student, "How long do I soak them?");
        await host.SendLetter(Read(code));

        using var batch = await Look(student, $"/batches/{code}");
        using var letter = await Look(student, $"/letters/{code}");

        var way = Assert.Single(batch.QuerySelectorAll("a.to-answer"));
        Assert.StartsWith("It was left open", way.TextContent, StringComparison.Ordinal);
        Assert.Contains("How long do I soak them?", letter.GetElementById(way.GetAttribute("href")!.Split('#')[1])!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_adds_a_sound_reads_where_it_will_be_heard()
    {
        using var student = await host.Student("Jelka");
        var batch = (await host.Announce("Jelka", "green thread")).Batch;

        using var page = await Look(student, $"/batches/{batch.Code}");

        Assert.Contains("The letter plays a before and after only where", page.QuerySelector("form[data-recording=ArrivalSound]")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("The letter plays", page.QuerySelector("form[data-recording=ArrivalPhoto]")!.TextContent, StringComparison.Ordinal);
    }

    private static async Task RefusesAsync(HttpClient owner)
    {
        using var refused = await (await Form.At(owner, "/studio")).Set("Form.WriteTo", "desk at the harbour").Post();
        using var page = new HtmlParser().ParseDocument((await refused.Read()).Page);
        Assert.Contains("such as name@example.org", page.QuerySelector("#f-Form-WriteTo-error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("desk at the harbour", page.QuerySelector("#f-Form-WriteTo")!.GetAttribute("value"));
    }

    private static async Task HasNowhereAsync(HttpClient student, HttpClient stranger, string code, string link)
    {
        using var batch = await Look(student, $"/batches/{code}");
        using var erase = await Look(student, "/privacy/erase");
        using var alone = await Look(stranger, link);
        Assert.Contains("The studio takes no mail here", batch.QuerySelector("#write")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Marrow Bay", batch.QuerySelector("#write")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Marrow Bay", erase.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Put a note into your next parcel", alone.QuerySelector("#write")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Marrow Bay", alone.Body!.TextContent, StringComparison.Ordinal); // it may be somebody's home
        Assert.Empty(batch.QuerySelectorAll("a[href^='mailto:']"));
    }

    private static async Task HasAWayAsync(HttpClient student, HttpClient stranger, string code, string link)
    {
        using var batch = await Look(student, $"/batches/{code}");
        using var letter = await Look(student, $"/letters/{code}");
        using var erase = await Look(student, "/privacy/erase");
        using var alone = await Look(stranger, link);
        var about = $"mailto:{Mail}?subject=Batch%20{code}";
        Assert.Equal(about, Assert.Single(batch.QuerySelectorAll("#write a")).GetAttribute("href"));
        Assert.Equal(about, Assert.Single(alone.QuerySelectorAll("#write a")).GetAttribute("href"));
        Assert.Equal($"mailto:{Mail}", Assert.Single(erase.QuerySelectorAll("main a[href^='mailto:']")).GetAttribute("href"));
        Assert.Single(letter.QuerySelectorAll($"main a[href='/batches/{code}#write']"));
    }

    private static async Task IsToldAsync(HttpClient owner, bool isMissing)
    {
        Assert.Equal(isMissing, WebUtility.HtmlDecode((await owner.See("/studio")).Page).Contains("students can’t write to you", StringComparison.Ordinal));
        Assert.Equal(isMissing, (await owner.See("/studio/upkeep")).Page.Contains("Students find no address to write to.", StringComparison.Ordinal));
    }

    private static BatchCode Read(string code) => Assert.IsType<Outcome<BatchCode>.Done>(BatchCode.Read(code)).Value;

    private static async Task SayAsync(HttpClient owner, string postTo, string writeTo)
    {
        using var said = await (await Form.At(owner, "/studio")).Set("Form.StudioName", "Quay Reeds").Set("Form.PostTo", postTo).Set("Form.WriteTo", writeTo).Post();
        Assert.Equal("/studio?done=yes", said.Leads());
    }

    private static async Task<string> LinkAsync(HttpClient teacher, string code)
    {
        var path = $"/batches/{code}/letter";
        var (_, made, _) = await (await Form.Named(teacher, path, (await teacher.See(path)).Page, "letter-link").Set("Link.Days", "7").Post()).Read();
        var at = made.IndexOf("/read/", StringComparison.Ordinal);
        return made[at..made.IndexOfAny(['"', '<', ' '], at)];
    }

    private static async Task<IHtmlDocument> Look(HttpClient somebody, string address)
    {
        var (status, page, _) = await somebody.See(address);
        Assert.Equal(HttpStatusCode.OK, status);
        return new HtmlParser().ParseDocument(page);
    }
}
