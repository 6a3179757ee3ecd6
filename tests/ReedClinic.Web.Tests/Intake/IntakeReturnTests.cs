using System.Net;
using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;
using ReedClinic.Web.Tests.Letters;

namespace ReedClinic.Web.Tests.Intake;

/// <summary>Coming back: after a stop, after a refusal, after a change of mind.</summary>
public sealed class IntakeReturnTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task Fewer_reeds_stay_chosen_while_the_question_about_the_others_is_open()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(2);
        await walk.Answer("how-many", ("HowMany", "1"));

        var form = await Form.At(student, $"{walk.Draft}/how-many?again=yes");
        Assert.Equal("1", form["HowMany"]);
        using var answer = await form.Set("LeaveOut", "true").Set("Go", "on").Post();

        Assert.Equal($"{walk.Draft}/reed/1/recognise", answer.Leads());
        using var page = new HtmlParser().ParseDocument((await student.See(answer.Leads()!)).Page);
        Assert.Equal("Your reed", page.QuerySelector(".path-head span")!.TextContent.Replace('\u00a0', ' '));
    }

    [Fact]
    public async Task A_single_reed_has_no_number_and_no_others_and_one_thing_that_lacks_is_one_thing()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        await walk.Answer("reed/1/bothers", ("Reeds[0].Bothers", ""), ("Reeds[0].Questions", "Is it too old?"));
        string[] steps = ["reed/1/recognise", "reed/1/bothers", "reed/1/permission", "look-over"];
        foreach (var step in steps)
        {
            using var page = new HtmlParser().ParseDocument((await student.See($"{walk.Draft}/{step}")).Page);
            var said = page.QuerySelector("main")!.TextContent.Replace('\u00a0', ' ');
            Assert.DoesNotContain("the others", said, StringComparison.Ordinal);
            Assert.DoesNotContain("each reed", said, StringComparison.Ordinal);
            Assert.DoesNotMatch("[Rr]eed 1", said);
        }

        Assert.Contains("One thing is still needed", (await student.See($"{walk.Draft}/look-over")).Page, StringComparison.Ordinal);
        Assert.Contains("you can choose differently for each reed", await TwoAsync("reed/2/permission"), StringComparison.Ordinal);
        Assert.Contains("How can we tell reed 2 from the others?", await TwoAsync("reed/2/recognise"), StringComparison.Ordinal);

        async Task<string> TwoAsync(string step)
        {
            await walk.Answer("how-many", ("HowMany", "2"));
            return System.Net.WebUtility.HtmlDecode((await student.See($"{walk.Draft}/{step}")).Page).Replace('\u00a0', ' ');
        }
    }

    [Fact]
    public async Task Nothing_is_sent_while_the_question_how_many_is_open()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(2);
        await walk.Answer("how-many", ("HowMany", "1"));

        using var answer = await (await Form.At(student, $"{walk.Draft}/look-over")).Post();
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains($"{walk.Draft}/how-many?from=look-over#", page, StringComparison.Ordinal);
        await walk.Answer("how-many", ("HowMany", "2"));
        Assert.NotEmpty(await walk.Send());
    }

    [Theory]
    [InlineData("tuning")]
    [InlineData("scrape")]
    [InlineData("how-many")]
    [InlineData("questions")]
    [InlineData("look-over")]
    public async Task An_intake_goes_on_at_the_page_that_was_open_last(string step)
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await student.See($"{walk.Draft}/{step}");

        Assert.Equal($"{walk.Draft}/{step}", await Goes(student));
    }

    [Fact]
    public async Task An_intake_whose_last_page_is_gone_goes_on_at_what_is_still_needed()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(2);
        await student.See($"{walk.Draft}/reed/2/bothers");
        using var answer = await (await Form.At(student, $"{walk.Draft}/how-many")).Set("HowMany", "1").Set("LeaveOut", "true").Set("Go", "stop").Post();

        Assert.Equal("/", answer.Leads());
        Assert.Equal($"{walk.Draft}/how-many", await Goes(student));
    }

    [Fact]
    public async Task The_list_of_open_intakes_says_where_each_one_stands()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await student.See($"{walk.Draft}/instrument");
        Assert.Contains("Nothing answered yet", (await student.See("/")).Page, StringComparison.Ordinal);
        Assert.DoesNotContain("1 reed", (await student.See("/intake")).Page, StringComparison.Ordinal);

        await walk.Fill(2);
        await student.See($"{walk.Draft}/reed/2/permission");

        using var home = new HtmlParser().ParseDocument((await student.See("/")).Page);
        var said = home.QuerySelector(".continue span")!.TextContent.Replace('\u00a0', ' ');
        Assert.StartsWith("2 reeds, last opened today", said.Trim(), StringComparison.Ordinal);
        Assert.Contains("How far may we go with reed 2?", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("reed/1/bothers", "Reeds[0].HoursPlayed", "lots")]
    [InlineData("tuning", "TunesTo", "banana")]
    [InlineData("how-many", "HowMany", "13")]
    public async Task A_refusal_is_a_page_that_can_be_loaded_again(string step, string field, string typed)
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        using var answer = await (await Form.At(student, $"{walk.Draft}/{step}")).Set(field, typed).Set("Go", "on").Post();

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Equal($"{walk.Draft}/{step}?again=yes", answer.Leads());
        var page = (await student.See(answer.Leads()!)).Page;
        Assert.Contains("class=\"error\"", page, StringComparison.Ordinal);
        Assert.Contains("role=\"alert\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"error\"", (await student.See($"{walk.Draft}/{step}")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_saved_at_all_is_answered_at_once_with_every_word_of_it()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var words = new string('x', 130_000);
        using var answer = await (await Form.At(student, $"{walk.Draft}/questions")).Set("Questions", words).Set("Go", "on").Post();

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains(words, (await answer.Read()).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_typed_is_promised_only_where_something_was_typed()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var (_, empty) = await walk.Answer("reed/1/recognise");
        Assert.DoesNotContain("Nothing you typed is lost", empty, StringComparison.Ordinal);

        var (_, typed) = await walk.Answer("reed/1/recognise", ("Reeds[0].HowToRecognise", new string('x', 201)));
        Assert.Contains("Nothing you typed is lost", typed, StringComparison.Ordinal);
        Assert.Contains("200 characters; it has 201", typed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_way_never_gets_shorter_by_sending_more_reeds()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var before = await Done(student, $"{walk.Draft}/how-many");
        await walk.Answer("how-many", ("HowMany", "12"));
        var done = new List<double> { before };
        foreach (var step in new[] { "reed/1/recognise", "reed/1/bothers", "reed/12/permission", "questions", "look-over" })
        {
            done.Add(await Done(student, $"{walk.Draft}/{step}"));
        }

        Assert.Equal(done.Order(), done);
        Assert.Equal(done.Count, done.Distinct().Count());
        Assert.True(done[^1] < 1);
    }

    private static async Task<string?> Goes(HttpClient student)
    {
        using var page = new HtmlParser().ParseDocument((await student.See("/")).Page);
        return page.QuerySelector("a[href^='/intake/']")?.GetAttribute("href");
    }

    private static async Task<double> Done(HttpClient student, string path)
    {
        using var page = new HtmlParser().ParseDocument((await student.See(path)).Page);
        var bar = page.QuerySelector("progress.path-line")!;
        double Of(string name) => double.Parse(bar.GetAttribute(name)!, System.Globalization.CultureInfo.InvariantCulture);
        return Of("value") / Of("max");
    }

    [Fact]
    public async Task The_plan_of_the_last_letter_stands_beside_whom_a_knife_wants_near()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        using var judged = await (await Form.At(teacher, path)).Set("Verdict.verdict-two", "NeedsPlayingIn").Post();
        var form = (await Form.At(teacher, path)).Set("Step", "send").Set("ReadThrough", "yes");
        using var sent = await form.Post();
        Assert.Equal($"{path}?done=sent", sent.Leads());

        using var page = new HtmlParser().ParseDocument((await student.See("/intake")).Page);
        var last = page.QuerySelector(".last-time")!;
        Assert.NotEmpty(last.QuerySelectorAll("ol li"));
        Assert.Contains("If you are not grown up yet, use a knife only with a parent or guardian and your teacher beside you.", last.TextContent, StringComparison.Ordinal);
    }
}
