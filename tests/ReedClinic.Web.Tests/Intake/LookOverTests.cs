using System.Net;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Domain.Intake;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Intake;

/// <summary>Looking an intake over: changing one answer, and the cautions that what was written calls for.</summary>
public sealed class LookOverTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Theory]
    [InlineData("instrument", "Instrument", "CorAnglais")]
    [InlineData("country", "Country", "Iceland")]
    [InlineData("how-many", "HowMany", "2")]
    [InlineData("reed/1/recognise", "Reeds[0].HowToRecognise", "a yellow thread")]
    [InlineData("reed/1/bothers", "Reeds[0].Bothers", "It is too hard.")]
    [InlineData("reed/1/permission", "Reeds[0].Permission", "AdviseOnly")]
    [InlineData("questions", "Questions", "Is it too old?")]
    public async Task After_a_change_one_is_back_where_one_came_from(string step, string field, string answer)
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        using var look = await Look(student, $"{walk.Draft}/look-over");
        var change = Assert.Single(look.QuerySelectorAll("main .summary a"), link => link.GetAttribute("href")!.StartsWith($"{walk.Draft}/{step}", StringComparison.Ordinal)).GetAttribute("href")!;

        using var changed = await (await Form.At(student, change)).Set(field, answer).Set("Go", "on").Post();

        Assert.Equal($"{walk.Draft}/look-over", changed.Leads());
    }

    [Fact]
    public async Task A_mark_against_the_words_and_a_question_asked_twice_are_asked_about_and_lock_nothing()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        using var before = await Look(student, $"{walk.Draft}/look-over");
        using var marked = await (await Form.At(student, $"{walk.Draft}/reed/1/bothers?from=look-over"))
            .Set("Reeds[0].Bothers", "It is too sharp.").Set("Reeds[0].Intonation", "-2").Set("Reeds[0].Questions", "Is it old?\nis it old??").Set("Go", "on").Post();

        using var look = await Look(student, $"{walk.Draft}/look-over");

        Assert.Empty(before.QuerySelectorAll("main [role=note]"));
        Assert.Contains("You marked “flat”", Assert.Single(look.QuerySelectorAll("main .alike")).TextContent, StringComparison.Ordinal);
        Assert.Contains("one thing twice", look.QuerySelector("main .hint[role=note]")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(look.QuerySelector("main form button"));
        using var step = await Look(student, $"{walk.Draft}/reed/1/bothers");
        Assert.Contains("You marked “flat”", Assert.Single(step.QuerySelectorAll("main .alike")).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hours_that_few_reeds_are_played_are_asked_about_and_lock_nothing()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        foreach (var (hours, isAsked) in new[] { ("40", false), ("500", true) })
        {
            using var said = await (await Form.At(student, $"{walk.Draft}/reed/1/bothers?from=look-over")).Set("Reeds[0].HoursPlayed", hours).Set("Go", "on").Post();
            Assert.Equal($"{walk.Draft}/look-over", said.Leads());
            foreach (var page in new[] { "look-over", "reed/1/bothers" })
            {
                using var shown = await Look(student, $"{walk.Draft}/{page}");
                Assert.Equal(isAsked ? ["You wrote “500” for the hours it has been played. Most reeds are played out well before 100: are you sure? If so, leave it as it is."] : [], shown.QuerySelectorAll("main .alike").Select(note => note.TextContent));
            }
        }
    }

    [Fact]
    public async Task An_intake_in_which_nothing_was_answered_is_used_instead_of_another()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        using var again = await (await Form.At(student, "/intake")).Post();
        Assert.StartsWith(walk.Draft, again.Leads(), StringComparison.Ordinal);

        await walk.Fill(1);
        using var another = await (await Form.At(student, "/intake")).Post();
        Assert.DoesNotContain(walk.Draft, another.Leads()!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_change_that_cannot_be_taken_stays_on_its_screen_and_still_leads_back()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(2);
        var change = $"{walk.Draft}/reed/1/recognise?from=look-over";

        using var refused = await (await Form.At(student, change)).Set("Reeds[0].HowToRecognise", "").Set("Go", "on").Post();
        var again = refused.Leads()!;
        Assert.Equal($"{change}&again=yes", again);
        var form = await Form.At(student, again);
        Assert.Contains("f-Reeds-0-HowToRecognise-error", (await student.See(again)).Page, StringComparison.Ordinal);
        using var mended = await form.Set("Reeds[0].HowToRecognise", "a red thread").Set("Go", "on").Post();

        Assert.Equal($"{walk.Draft}/look-over", mended.Leads());
    }

    [Fact]
    public async Task Whoever_goes_through_all_of_it_is_still_led_to_the_next_question()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);

        Assert.Equal($"{walk.Draft}/tuning", (await walk.Answer("instrument", ("Instrument", "Oboe"))).To);
    }

    [Theory]
    [InlineData("Bothers", "It makes my lips numb.", "feel numb")]
    [InlineData("Bothers", "There is mould on it.", "wrap it by itself")]
    [InlineData("Bothers", "I had a cold when I played it.", "until you are well")]
    [InlineData("Questions", "Can I scrape it before I send it?", "Please send it as it is")]
    public async Task What_calls_for_a_caution_has_it_beside_it_at_once_and_until_it_is_posted(string field, string words, string caution)
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        var name = $"Reeds[0].{field}";

        using var kept = await (await Form.At(student, $"{walk.Draft}/reed/1/bothers")).Set(name, words).PostTo($"{walk.Draft}/draft/reed/1/bothers");
        using var answer = JsonDocument.Parse(await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        Assert.Contains(caution, Assert.Single(answer.RootElement.GetProperty("cautions").GetProperty(name).EnumerateArray()).GetString(), StringComparison.Ordinal);

        using var step = await Look(student, $"{walk.Draft}/reed/1/bothers");
        Assert.Contains(caution, Assert.Single(step.QuerySelectorAll($"[data-cautions='{name}'] p")).TextContent, StringComparison.Ordinal);
        using var look = await Look(student, $"{walk.Draft}/look-over");
        Assert.Contains(caution, Assert.Single(look.QuerySelectorAll("main .summary .said-cautions p")).TextContent, StringComparison.Ordinal);

        var code = await walk.Send();
        using var batch = await Look(student, $"/batches/{code}");
        Assert.Contains(caution, Assert.Single(batch.QuerySelectorAll("main .said-cautions p")).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_question_about_all_of_them_is_cautioned_too_and_nothing_where_nothing_calls_for_it()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        using (var before = await Look(student, $"{walk.Draft}/look-over"))
        {
            Assert.Empty(before.QuerySelectorAll(".said-cautions"));
        }

        await walk.Answer("questions", ("Questions", "Should I sand the tips a little first?"));

        using var look = await Look(student, $"{walk.Draft}/look-over");
        Assert.Contains("no sandpaper", Assert.Single(look.QuerySelectorAll(".said-cautions")).TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_opens_the_parcel_and_plays_the_reed_is_told()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        await walk.Answer("reed/1/bothers", ("Reeds[0].Bothers", "It smells, and my tongue is sore from it."));
        var code = await walk.Send();
        using var owner = await host.Teacher();

        using var arrival = await Look(owner, $"/batches/{code}/arrival");
        using var batch = await Look(owner, $"/batches/{code}");

        foreach (var page in new[] { arrival, batch })
        {
            var told = page.QuerySelectorAll("main .said-cautions p").Select(line => line.TextContent).ToList();
            Assert.Equal(2, told.Count);
            Assert.Contains("a doctor or a dentist is asked", told[0], StringComparison.Ordinal);
            Assert.Contains("neither played nor scraped", told[1], StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task What_will_be_answered_is_shown_as_questions_and_what_was_answered_as_it_was_asked()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        await walk.Answer(
            "reed/1/bothers",
            ("Reeds[0].Bothers", "Low notes come late. Why does it do that?"),
            ("Reeds[0].Response", ""),
            ("Reeds[0].Intonation", "1"),
            ("Reeds[0].MadeHow", ""),
            ("Reeds[0].HoursPlayed", "about two"),
            ("Reeds[0].Questions", "Is it too old? Should I clip it?"));
        await walk.Answer("questions", ("Questions", "How long do I soak? And in what?\nWhich case is best?"));

        using var look = await Look(student, $"{walk.Draft}/look-over");
        var lines = look.QuerySelectorAll("main .summary .answer").ToDictionary(line => line.QuerySelector("dt")!.TextContent.Trim(), line => line.QuerySelector("dd")!.TextContent.Trim());

        Assert.Equal("Is it too old?\nShould I clip it?\nWhy does it do that?", lines["Questions, which the letter answers"]);
        Assert.Equal("How long do I soak? And in what?\nWhich case is best?", lines["Is there anything you want to ask?"]);
        Assert.Equal("I don’t know", lines[AspectWords.Of(Aspect.Response).Question]);
        Assert.Equal(AspectWords.Of(Aspect.Intonation).Say(new ScaleMark(1)), lines[AspectWords.Of(Aspect.Intonation).Question]);
        Assert.Equal("I don’t know", lines["How was it made?"]);
        Assert.Equal("about two", lines["How many hours has it been played?"]);
        Assert.All([AspectWords.Of(Aspect.Opening).Question, "What is it for?", "Marked", "Do you want to ask anything about your reed?"], ask => Assert.DoesNotContain(ask, lines.Keys));
        await walk.Send();
    }

    [Fact]
    public async Task Whoever_asks_in_passing_is_not_told_that_they_ask_nothing()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        await walk.Answer("reed/1/bothers", ("Reeds[0].Bothers", "Low notes come late. Why does it do that?"));

        var (_, page, _) = await student.See($"{walk.Draft}/look-over");
        Assert.DoesNotContain("You ask nothing for now.", page, StringComparison.Ordinal);
        Assert.Contains("A question, which the letter answers", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_asks_about_one_reed_is_not_told_that_they_ask_nothing()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        Assert.Contains("You ask nothing for now.", (await student.See($"{walk.Draft}/look-over")).Page, StringComparison.Ordinal);

        await walk.Answer("reed/1/bothers", ("Reeds[0].Questions", "Is it too old?"));

        var (_, page, _) = await student.See($"{walk.Draft}/look-over");
        Assert.DoesNotContain("You ask nothing for now.", page, StringComparison.Ordinal);
        Assert.Contains("Nothing besides what you ask about single reeds, above.", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reeds_that_can_be_taken_for_each_other_are_told_beside_both_and_are_sent_all_the_same()
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(2);
        await walk.Answer("reed/1/recognise", ("Reeds[0].HowToRecognise", "red thread"));
        await walk.Answer("reed/2/recognise", ("Reeds[1].HowToRecognise", "red thread, and I bit the corner"));

        using var look = await Look(student, $"{walk.Draft}/look-over");

        Assert.Equal([2, 1], look.QuerySelectorAll("main .summary .alike").Select(note => note.TextContent.Contains("reed 2 (“red thread, and I bit the corner”)", StringComparison.Ordinal) ? 2 : 1));
        Assert.NotEmpty(await walk.Send());
    }

    [Theory]
    [InlineData("442,5", "A = 442.5")]
    [InlineData("442.5", "A = 442.5")]
    [InlineData("about there", "about there")]
    public async Task A_tuning_note_comes_back_as_it_was_typed_and_is_shown_as_the_hint_shows_one(string typed, string shown)
    {
        using var student = await host.Student();
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(1);
        await walk.Answer("tuning", ("TunesTo", "another"), ("TunesToAnother", typed));

        using var look = await Look(student, $"{walk.Draft}/look-over");
        using var step = await Look(student, $"{walk.Draft}/tuning");

        Assert.Contains(look.QuerySelectorAll("main .summary dd"), line => line.TextContent.Contains(shown, StringComparison.Ordinal));
        Assert.Equal(typed, step.QuerySelector("input[name=TunesToAnother]")!.GetAttribute("value"));
    }

    private static async Task<IDocument> Look(HttpClient somebody, string address)
    {
        var (status, page, _) = await somebody.See(address);
        Assert.Equal(HttpStatusCode.OK, status);
        return await new HtmlParser().ParseDocumentAsync(page, TestContext.Current.CancellationToken);
    }
}
