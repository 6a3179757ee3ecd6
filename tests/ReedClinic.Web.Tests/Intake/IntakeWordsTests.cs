using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Intake;

/// <summary>What the intake's fields say and how they begin.</summary>
public sealed class IntakeWordsTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Theory]
    [InlineData("instrument")]
    [InlineData("tuning")]
    [InlineData("scrape")]
    [InlineData("how-many")]
    [InlineData("reed/1/bothers")]
    [InlineData("reed/1/permission")]
    public async Task Nothing_is_chosen_where_nobody_chose(string step)
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        using var page = await Look(student, $"{walk.Draft}/{step}");

        Assert.NotEmpty(page.QuerySelectorAll("form input[type=radio]"));
        Assert.Empty(page.QuerySelectorAll("form input[checked]"));
    }

    [Theory]
    [InlineData("instrument", "Instrument")]
    [InlineData("tuning", "TunesTo")]
    [InlineData("scrape", "Scrape")]
    [InlineData("reed/1/bothers", "Reeds[0].Opening")]
    public async Task Not_being_sure_stays_chosen_once_it_was_chosen(string step, string field)
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Answer(step, (field, ""));
        using var page = await Look(student, $"{walk.Draft}/{step}");

        Assert.Equal("", Assert.Single(page.QuerySelectorAll($"form input[type=radio][checked][name='{field}']")).GetAttribute("value"));
    }

    [Theory]
    [InlineData("4420", "380")]
    [InlineData("banana", "such as 440")]
    public async Task A_tuning_number_counts_without_its_choice_and_stays_typed(string typed, string said)
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var form = await Form.At(student, $"{walk.Draft}/tuning");
        using var answer = await form.Without("TunesTo").Set("TunesToAnother", typed).Set("Go", "on").Post();
        using var page = await Look(student, $"{walk.Draft}/tuning?again=yes");

        Assert.Null(page.QuerySelector("#f-TunesTo-error"));
        Assert.Contains(said, page.QuerySelector("#f-TunesToAnother-error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(typed, page.QuerySelector("#f-TunesToAnother")!.GetAttribute("value"));
        Assert.Equal("another", page.QuerySelector("input[name=TunesTo][checked]")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Going_on_without_an_instrument_is_answered_beside_the_choices()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var form = await Form.At(student, $"{walk.Draft}/instrument");
        using var answer = await form.Without("Instrument").Set("Go", "on").Post();

        Assert.Equal($"{walk.Draft}/instrument?again=yes", answer.Leads());
        using var page = await Look(student, $"{walk.Draft}/instrument?again=yes");
        Assert.Contains("Choose one", page.QuerySelector("#f-Instrument-error")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_looked_over_is_called_as_it_was_asked()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        List<string> asked = [];
        foreach (var step in new[] { "instrument", "tuning", "scrape", "country", "reed/1/recognise", "reed/1/bothers", "reed/1/permission" })
        {
            using var page = await Look(student, $"{walk.Draft}/{step}");
            asked.Add(page.QuerySelector("h1")!.TextContent.Trim());
        }

        using var over = await Look(student, $"{walk.Draft}/look-over");
        var said = over.QuerySelectorAll(".answer dt").Select(one => one.TextContent.Trim()).ToList();
        Assert.All(asked, question => Assert.Contains(question, said));
    }

    [Fact]
    public async Task No_text_is_cut_by_its_field()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        foreach (var step in new[] { "tuning", "country", "reed/1/recognise", "reed/1/bothers", "questions" })
        {
            using var page = await Look(student, $"{walk.Draft}/{step}");
            Assert.NotEmpty(page.QuerySelectorAll("form textarea, form input[type=text]"));
            Assert.Empty(page.QuerySelectorAll("form [maxlength]"));
        }
    }

    [Theory]
    [InlineData("Reeds[0].HowToRecognise", false)]
    [InlineData("Reeds[0].Bothers", false)]
    [InlineData("Reeds[0].HoursPlayed", true)]
    public async Task More_is_open_only_where_something_is_wrong_in_it(string field, bool open)
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var (_, answer) = await walk.Answer("reed/1/bothers", (field, field.EndsWith("Played", StringComparison.Ordinal) ? "lots" : ""));
        using var page = new HtmlParser().ParseDocument(answer);

        Assert.Equal(open, page.QuerySelector("details.more")!.HasAttribute("open"));
    }

    [Fact]
    public async Task A_good_reed_has_something_to_be_said_about_it_too()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        using var page = await Look(student, $"{walk.Draft}/reed/1/bothers");

        Assert.Contains("my best one", page.QuerySelector("#f-Reeds-0-Bothers-hint")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_mark_of_a_scale_is_read_out_as_a_whole_phrase()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        using var page = await Look(student, $"{walk.Draft}/reed/1/bothers");
        var read = page.QuerySelectorAll("label.stop").Select(l => l.TextContent.Trim()).ToArray();

        Assert.Equal(40, read.Length);
        Assert.Contains("a little flat", read);
        Assert.DoesNotContain(read, words => words.StartsWith("a little nothing", StringComparison.Ordinal)
            || words.StartsWith("a little it", StringComparison.Ordinal) || words.StartsWith("a little they", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Words_of_the_trade_are_explained_where_they_stand()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        using var page = await Look(student, $"{walk.Draft}/reed/1/bothers");
        var words = page.QuerySelector("main")!.TextContent;

        Assert.Contains("tied onto", words, StringComparison.Ordinal);
        Assert.Contains("staple", words, StringComparison.Ordinal);
        Assert.Contains("A blank is", words, StringComparison.Ordinal);
        Assert.DoesNotContain("'", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Signing_up_and_in_promise_nothing_that_they_do_not_keep()
    {
        using var visitor = host.Visitor();
        var link = await host.Invite(ClinicHost.NewEmail("eike"));
        using var up = await (await Form.At(visitor, link)).Set("Form.Name", "Eike").Set("Form.Password", "short").Post();
        var page = WebUtility.HtmlDecode((await up.Read()).Page);
        Assert.DoesNotContain("Nothing you typed is lost", page, StringComparison.Ordinal);
        Assert.Contains("type your password again", page, StringComparison.Ordinal);

        using var nothing = await (await Form.At(visitor, link)).Post();
        Assert.DoesNotContain("type your password again", (await nothing.Read()).Page, StringComparison.Ordinal);

        using var into = await (await Form.At(visitor, "/account/sign-in")).Set("Form.Email", "eike@harbour.example").Set("Form.Password", "short").Post();
        Assert.DoesNotContain("Nothing you typed is lost", (await into.Read()).Page, StringComparison.Ordinal);
    }

    private static async Task<IDocument> Look(HttpClient student, string path) => new HtmlParser().ParseDocument((await student.See(path)).Page);
}
