using System.Net;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Intake;

public sealed class IntakePagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task From_the_first_question_to_a_code()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        Assert.Equal($"{walk.Draft}/tuning", (await walk.Answer("instrument", ("Instrument", "Oboe"))).To);
        Assert.Equal($"{walk.Draft}/scrape", (await walk.Answer("tuning", ("TunesTo", "another"), ("TunesToAnother", "442.5"))).To);
        Assert.Equal($"{walk.Draft}/country", (await walk.Answer("scrape", ("Scrape", "ShortScrape"))).To);
        await walk.Fill(2);
        await walk.Answer("questions", ("Questions", "Is this one too old?"));
        var look = (await student.See($"{walk.Draft}/look-over")).Page;
        Assert.Contains("A = 442.5", look, StringComparison.Ordinal);

        var code = await walk.Send();

        var batch = (await student.See($"/batches/{code}?sent=yes")).Page;
        Assert.Contains(code, batch, StringComparison.Ordinal);
        Assert.Contains("thread number 2", batch, StringComparison.Ordinal);
        Assert.Contains("Is this one too old?", batch, StringComparison.Ordinal);
        Assert.Contains(code, (await student.See("/")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_reeds_in_the_same_words_are_refused_beside_the_field_and_are_not_sent()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(2);
        var (to, page) = await walk.Answer("reed/2/recognise", ("Reeds[1].HowToRecognise", "Thread number 1"));
        Assert.Null(to);
        Assert.Contains("id=\"f-Reeds-1-HowToRecognise-error\"", page, StringComparison.Ordinal);
        Assert.Contains("value=\"Thread number 1\"", page, StringComparison.Ordinal);

        using var refused = await (await Form.At(student, $"{walk.Draft}/look-over")).Post();
        Assert.Null(refused.Leads());
        Assert.Contains("Reed 1 is described in the same words", (await refused.Read()).Page, StringComparison.Ordinal);

        Assert.NotNull((await walk.Answer("reed/2/recognise", ("Reeds[1].HowToRecognise", "Thread number 1, a pencil dot"))).To);
        Assert.NotEmpty(await walk.Send());
    }

    [Fact]
    public async Task Before_it_is_sent_it_is_said_what_cannot_be_changed_and_afterwards_how_to_ask_and_what_can_be_added()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        Assert.Contains("nothing here can be changed any more", (await student.See($"{walk.Draft}/look-over")).Page, StringComparison.Ordinal);

        var code = await walk.Send();

        var batch = (await student.See($"/batches/{code}?sent=yes")).Page;
        Assert.Contains("put it into the parcel with the slip", batch, StringComparison.Ordinal);
        Assert.Contains("Nothing is here yet.", batch, StringComparison.Ordinal);
        Assert.Contains("id=\"reeds\"", batch, StringComparison.Ordinal);
        Assert.All([batch, (await student.See($"/batches/{code}/slip")).Page], page => Assert.Contains($"<a href=\"/batches/{code}#reeds\">add a sound or a picture of each</a>", page, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_was_begun_stands_in_both_lists_of_ones_reeds()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);

        foreach (var list in new[] { "/", "/batches" })
        {
            var page = (await student.See(list)).Page;
            Assert.Contains("<h1>My reeds</h1>", page, StringComparison.Ordinal);
            Assert.Contains("Continue where you stopped", page, StringComparison.Ordinal);
            Assert.Contains($"{walk.Draft}/drop", page, StringComparison.Ordinal);
            Assert.DoesNotContain("haven’t sent any reeds yet", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task What_was_begun_is_thrown_away_after_it_was_asked_once_and_not_what_another_tab_wrote_since()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        Assert.Contains($"{walk.Draft}/drop", (await student.See("/")).Page, StringComparison.Ordinal);
        var stale = await Form.At(student, $"{walk.Draft}/drop");
        await walk.Answer("instrument", ("Instrument", "Oboe"));

        using var late = await stale.Post();
        Assert.Contains("changed in another window", (await late.Read()).Page, StringComparison.Ordinal);
        using var gone = await (await Form.At(student, $"{walk.Draft}/drop")).Post();

        Assert.Equal("/intake?dropped=yes", gone.Leads());
        var page = (await student.See(gone.Leads()!)).Page;
        Assert.Contains("What you had begun was thrown away.", page, StringComparison.Ordinal);
        Assert.DoesNotContain(walk.Draft, page, StringComparison.Ordinal);
        using var again = await student.GetAsync(new Uri($"{walk.Draft}/look-over", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, again.StatusCode);
    }

    [Fact]
    public async Task What_was_typed_before_the_tab_was_closed_is_there_again()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var form = await Form.At(student, $"{walk.Draft}/reed/1/bothers");
        form.Set("Reeds[0].Bothers", "It stops speaking after\na page").Set("Reeds[0].Opening", "-2");
        using var kept = await form.PostTo($"{walk.Draft}/draft/reed/1/bothers");

        Assert.Equal(HttpStatusCode.OK, kept.StatusCode);
        var again = await Form.At(student, $"{walk.Draft}/reed/1/bothers");
        Assert.Equal("It stops speaking after\na page", again["Reeds[0].Bothers"]);
        Assert.Equal("-2", again["Reeds[0].Opening"]);
        Assert.Contains("Continue where you stopped", (await student.See("/")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sending_the_same_form_twenty_times_at_once_makes_one_batch()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        var form = await Form.At(student, $"{walk.Draft}/look-over");

        var answers = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => form.Post()));

        Assert.Single(answers.Select(a => a.Leads()).Distinct());
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Found, a.StatusCode));
        var mine = (await student.See("/batches")).Page;
        Assert.Equal(2, mine.Split("<h2><a href=\"/batches/").Length);
    }

    [Theory]
    [InlineData("reed/1/recognise", "Reeds[0].HowToRecognise", "")]
    [InlineData("reed/1/recognise", "Reeds[0].HowToRecognise", "a\u0007bell")]
    [InlineData("reed/1/permission", "Reeds[0].Permission", "EatIt")]
    [InlineData("reed/1/bothers", "Reeds[0].HoursPlayed", "-1")]
    [InlineData("reed/1/bothers", "Reeds[0].Response", "7")]
    [InlineData("tuning", "TunesToAnother", "a lot")]
    [InlineData("how-many", "HowMany", "13")]
    public async Task What_cannot_be_taken_is_said_beside_its_field(string step, string field, string typed)
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var (to, page) = await walk.Answer(step, ("Reeds[0].Bothers", "words that must not be lost"), (field, typed));

        Assert.Null(to);
        Assert.Contains($"id=\"f-{field.Replace('.', '-').Replace('[', '-').Replace("]", "", StringComparison.Ordinal)}-error\"", page, StringComparison.Ordinal);
        if (step.EndsWith("bothers", StringComparison.Ordinal))
        {
            Assert.Contains("words that must not be lost", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_text_that_is_too_long_is_refused_and_kept()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var words = new string('x', 1_001);
        var (to, page) = await walk.Answer("reed/1/bothers", ("Reeds[0].Bothers", words));

        Assert.Null(to);
        Assert.Contains("f-Reeds-0-Bothers-error", page, StringComparison.Ordinal);
        Assert.Equal(words, (await Form.At(student, $"{walk.Draft}/reed/1/bothers"))["Reeds[0].Bothers"]);
    }

    [Fact]
    public async Task Two_tabs_on_different_screens_keep_both_and_on_the_same_screen_the_second_is_shown_both()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        var one = await Form.At(student, $"{walk.Draft}/reed/1/recognise");
        var two = await Form.At(student, $"{walk.Draft}/reed/1/recognise");
        await walk.Answer("country", ("Country", "Norway"));
        using (var first = await one.Set("Reeds[0].HowToRecognise", "blue thread").Set("Go", "on").Post())
        {
            Assert.NotNull(first.Leads());
        }

        using var second = await two.Set("Reeds[0].HowToRecognise", "red thread").Set("Go", "on").Post();
        var page = (await second.Read()).Page;

        Assert.Contains("blue thread", page, StringComparison.Ordinal);
        Assert.Contains("value=\"red thread\"", page, StringComparison.Ordinal);
        using var insisted = await Form.Of(student, $"{walk.Draft}/reed/1/recognise", page).Set("Go", "on").Post();
        Assert.NotNull(insisted.Leads());
        Assert.Equal("red thread", (await Form.At(student, $"{walk.Draft}/reed/1/recognise"))["Reeds[0].HowToRecognise"]);
        Assert.Equal("Norway", (await Form.At(student, $"{walk.Draft}/country"))["Country"]);
    }

    [Fact]
    public async Task A_reed_that_was_written_about_is_not_dropped_without_asking()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(3);
        var (to, page) = await walk.Answer("how-many", ("HowMany", "2"));

        Assert.Null(to);
        Assert.Contains("name=\"LeaveOut\"", page, StringComparison.Ordinal);
        Assert.Contains("thread number 3", (await student.See($"{walk.Draft}/look-over")).Page, StringComparison.Ordinal);
        await walk.Answer("how-many", ("HowMany", "2"), ("LeaveOut", "true"));
        Assert.DoesNotContain("thread number 3", (await student.See($"{walk.Draft}/look-over")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_still_needed_is_named_and_nothing_is_sent()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        using var sent = await (await Form.At(student, $"{walk.Draft}/look-over")).Post();
        var (status, page, _) = await sent.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("/reed/1/permission?from=look-over#f-Reeds-0-Permission", page, StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"/batches/", (await student.See("/batches")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_else_sees_an_intake_or_a_batch()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        using var other = await host.Student("Bram");
        var draft = await other.See($"{walk.Draft}/country");
        await walk.Fill(1);
        var code = await walk.Send();

        Assert.Equal(HttpStatusCode.NotFound, draft.Status);
        Assert.Equal(HttpStatusCode.NotFound, (await other.See($"/batches/{code}")).Status);
        using var nobody = host.Visitor();
        Assert.StartsWith("/account/sign-in", (await nobody.See($"/batches/{code}")).Location, StringComparison.Ordinal);
    }
}
