using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Diagnosis;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Diagnosis;
using ReedClinic.Web.Tests.Bench;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Diagnosis;

/// <summary>The page of evidence of a reed, over HTTP, and what is chosen about the quiet line.</summary>
public sealed class ReedEvidenceTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_found_is_weighed_with_what_is_not_the_reed_beside_it_and_every_number_has_its_mark()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        await scene.Say(Corners());
        using var teacher = await host.Teacher();

        using var page = await Page(teacher, scene);

        Assert.Equal("Tip corners too thick", page.QuerySelector(".cause-columns > div:first-child .cause h3")!.TextContent);
        Assert.Contains(page.QuerySelectorAll(".beside .cause h3"), one => one.TextContent == "The instrument");
        Assert.Contains(page.QuerySelectorAll(".beside .cause h3"), one => one.TextContent == "The way it is played");
        Assert.Equal("Found at the bench.", page.QuerySelector("#cause-tip-corners-thick .found-so")!.TextContent);
        Assert.Null(page.QuerySelector("#cause-tip-corners-thick :is(.chance, .odds)"));
        Assert.All(page.QuerySelectorAll(".cause .odds"), odds => Assert.NotNull(odds.Closest("details")));
        Assert.DoesNotMatch(@"hoped for|in 100", string.Concat(page.QuerySelectorAll(".worth, ol.unlooked").Select(part => part.TextContent)));
        Assert.NotEmpty(page.QuerySelectorAll(".reasons .for"));
        Assert.Contains(page.QuerySelectorAll(".proposal h3"), one => one.TextContent == "Stop here.");
        Assert.All(page.QuerySelectorAll(".proposal li, .clues li, .held-back li"), one => Assert.NotNull(one.QuerySelector(".known")));
        Assert.NotEmpty(page.QuerySelectorAll(".unlooked li"));
        Assert.InRange(page.QuerySelectorAll(".cause-columns > div:first-child > .cause").Length, 1, 3);
        Assert.InRange(page.QuerySelectorAll("section > .proposals > li").Length, 1, 3);
        Assert.DoesNotContain("NaN", page.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_speaks_first_is_open_and_everything_else_is_one_press_away()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        await scene.Say(Corners());
        using var teacher = await host.Teacher();
        using var page = await Page(teacher, scene);
        var open = page.QuerySelectorAll("details").Where(part => part.HasAttribute("open")).ToList();

        Assert.Single(page.QuerySelectorAll(".cause > details[open]"));
        Assert.Single(page.QuerySelectorAll(".proposal > details[open]"));
        Assert.Equal(2, open.Count);
        Assert.Single(page.QuerySelectorAll("section > ol.unlooked > li"));
        Assert.All(page.QuerySelectorAll(".cause > details > summary, .proposal > details > summary"), summary => Assert.NotNull(summary.QuerySelector("h3")));
        Assert.All(page.QuerySelectorAll(".word, .reasons, .cause .odds, .proposal dl, .held-back, .clues, .learned, .how ul"), part => Assert.NotNull(part.Closest("details")));
    }

    [Fact]
    public async Task Where_the_work_has_ended_the_page_says_so_as_the_line_at_the_bench_does()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        await scene.Say(Corners());
        await scene.Say(BenchScene.Value(Stopped.Of()));
        using var teacher = await host.Teacher();
        using var page = await Page(teacher, scene);

        Assert.Contains("The work on this reed has ended", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.NotEmpty(page.QuerySelectorAll("section > .proposals > li"));
        Assert.Empty(page.QuerySelectorAll(".proposal > details[open], .kind-cane, .held-back"));
        Assert.DoesNotContain("silent", page.Body.TextContent, StringComparison.Ordinal);
        Assert.Contains("nothing more to suggest", page.Body.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_to_do_stands_before_what_to_keep_in_mind_and_each_deed_has_its_caution_beside_it()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        await scene.Say(Corners());
        using var teacher = await host.Teacher();
        using var page = await Page(teacher, scene);
        var next = page.QuerySelector("section[aria-labelledby=next]")!;

        Assert.Equal("OL", next.QuerySelector("h2")!.NextElementSibling!.TagName);
        Assert.All(next.QuerySelectorAll("ul.minded"), list => Assert.NotNull(list.ParentElement!.QuerySelector("ol.proposals ~ ul.minded")));
        var deeds = next.QuerySelectorAll(".kind-cane, .kind-undoable");
        Assert.NotEmpty(deeds);
        Assert.All(deeds, card => Assert.NotEmpty(card.QuerySelector("summary .caveat")!.TextContent.Trim()));
    }

    [Fact]
    public async Task A_cause_is_confirmed_and_opened_again_on_the_page_and_counted_for_the_next_reed()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread", "red thread");
        await scene.Say(Corners());
        using var teacher = await host.Teacher("Ilse");
        using var confirmed = await Answer(teacher, scene, "tip-corners-thick", "Confirmed");
        using var page = await Page(teacher, scene);
        var other = $"/bench/{scene.Batch.Reeds[1].Id.Value}/evidence";

        Assert.Equal($"{scene.Page}/evidence", confirmed.Leads());
        Assert.Contains("Ilse said that it was this.", page.QuerySelector("#cause-tip-corners-thick .said-so")!.TextContent, StringComparison.Ordinal);
        Assert.Null(page.QuerySelector("#cause-tip-corners-thick .odds"));
        Assert.Contains("confirmed of", page.QuerySelector("#cause-tip-corners-thick details")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await teacher.See(other)).Status);

        using var open = await Answer(teacher, scene, "tip-corners-thick", "Open");
        using var after = await Page(teacher, scene);
        Assert.Null(after.QuerySelector("#cause-tip-corners-thick .said-so"));
        Assert.Equal(2, (await scene.Log()).Live<CauseJudged>().Count());
    }

    [Fact]
    public async Task An_answer_that_says_nothing_is_refused_beside_its_cause_and_a_form_sent_twice_counts_once()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        await scene.Say(Corners());
        using var teacher = await host.Teacher();
        var path = $"{scene.Page}/evidence";
        var form = Form.Named(teacher, path, (await teacher.See(path)).Page, "cause-tip-corners-thick").Set("Word.Answer", "Perhaps");
        using var refused = await form.Post();
        using var page = new HtmlParser().ParseDocument(await refused.Content.ReadAsStringAsync(Ct));
        using var first = await form.Set("Word.Answer", "Dismissed").Post();
        using var second = await form.Post();

        Assert.Equal("Say whether it was this or not.", page.QuerySelector("#word-tip-corners-thick")!.TextContent);
        Assert.Single(page.QuerySelectorAll(".problem-words"));
        Assert.Single((await scene.Log()).Live<CauseJudged>());
    }

    [Fact]
    public async Task A_reed_of_which_nothing_is_known_says_so_and_names_no_cause()
    {
        var scene = await BenchScene.Open(host, "Nuria", Permission.AdviseOnly, "blue thread");
        using var teacher = await host.Teacher();

        using var page = await Page(teacher, scene);

        Assert.Empty(page.QuerySelectorAll(".cause-columns > div:first-child .cause"));
        Assert.Contains("Nothing was seen, tried or marked yet", page.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_contradicts_itself_is_told_in_a_plain_sentence()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        await scene.Say(Fault("opening-wide", Zone.Opening));
        await scene.Say(Fault("opening-narrow", Zone.Opening));
        using var teacher = await host.Teacher();

        using var page = await Page(teacher, scene);

        Assert.Contains(page.QuerySelectorAll(".remark"), one => one.TextContent.Contains("can’t both hold: look again", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_reed_that_was_not_in_the_parcel_has_no_buttons_and_an_unknown_one_no_page()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        await scene.Arrive(1, new ReedArrival(Presence.Missing));
        using var teacher = await host.Teacher();

        using var page = await Page(teacher, scene);

        Assert.Contains("wasn’t in the parcel", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll(".word"));
        Assert.Equal(HttpStatusCode.NotFound, (await teacher.See($"/bench/{Parcel.NewOperation().Value}/evidence")).Status);
    }

    [Fact]
    public async Task The_quiet_line_is_chosen_on_my_account_by_those_who_work_here_alone()
    {
        using var teacher = await host.Teacher("Ilse");
        using var student = await host.Student("Sanne");
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        var page = (await teacher.See("/account")).Page;
        using var nothing = await Form.Named(teacher, "/account", page, "bench-reasoning").Set("Line.Wanted", "perhaps").Post();

        Assert.DoesNotContain("bench-reasoning", (await student.See("/account")).Page, StringComparison.Ordinal);
        Assert.Contains("Choose whether the line is there.", await nothing.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        Assert.DoesNotContain("reason-line", (await teacher.See(scene.Page)).Page, StringComparison.Ordinal);

        using var on = await Form.Named(teacher, "/account", page, "bench-reasoning").Set("Line.Wanted", "on").Post();
        Assert.Equal("/account?done=bench-line", on.Leads());
        Assert.Contains("reason-line", (await teacher.See(scene.Page)).Page, StringComparison.Ordinal);

        using var off = await Form.Named(teacher, "/account", (await teacher.See("/account")).Page, "bench-reasoning").Set("Line.Wanted", "off").Post();
        Assert.Contains("gone from your bench", (await teacher.See(off.Leads()!)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_word_from_the_bench_goes_by_the_address_of_its_entries_and_nonsense_is_refused()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        using var teacher = await host.Teacher();
        var form = await Form.At(teacher, scene.Page, scene.Entries);
        using var said = await form.Set("Kind", "CauseJudged").Set("Cause", "tip-thick").Set("Answer", "Confirmed").Set("Operation", $"{Parcel.NewOperation().Value}").Post();
        using var nonsense = await form.Set("Cause", "Tip <thick>").Set("Operation", $"{Parcel.NewOperation().Value}").Post();

        Assert.Equal(CauseAnswer.Confirmed, Assert.Single((await scene.Log()).Live<CauseJudged>()).Now.Answer);
        Assert.Contains("tip too thick", (await teacher.See(scene.Page)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_line_is_worked_out_from_what_is_at_hand_and_says_one_thing()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        await scene.Say(Corners());
        await using var scope = host.Services.CreateAsyncScope();
        var desk = scope.ServiceProvider.GetRequiredService<ReasonDesk>();
        var bench = scope.ServiceProvider.GetRequiredService<Data.Bench.BenchBook>();
        var view = (await bench.FindAsync(new(new(Parcel.NewOperation().Value), null, true, false), scene.Reed, Ct))!;

        var line = await desk.WorkOutAsync(view, Ct);

        Assert.Equal(view.Log.LastSequence, line.Of);
        Assert.Equal(Domain.Diagnosis.Proposals.ProposalKind.Look, line.Step!.Kind);
        Assert.True((await ReasonDesk.WhyAsync(line.Evidence, Ct)).Count is > 0 and <= ReasonDesk.MostCauses);
        await desk.LearnAsync(Ct);
        Assert.NotNull(scope.ServiceProvider.GetRequiredService<LearnedHere>().AtHand);
    }

    [Fact]
    public async Task An_answer_to_a_cause_that_has_gone_meanwhile_is_told_kindly_where_the_causes_stand_and_saves_nothing()
    {
        var scene = await BenchScene.Open(host, "Nuria", "blue thread");
        await scene.Say(Corners());
        using var teacher = await host.Teacher();
        var path = $"{scene.Page}/evidence";
        var gone = Form.Named(teacher, path, (await teacher.See(path)).Page, "cause-tip-corners-thick").Set("Word.Answer", "Confirmed");
        Assert.Equal("cause-tip-corners-thick", gone["_handler"]);

        using var told = await gone.Set("_handler", "cause-side-leak").Post();

        Assert.Equal(HttpStatusCode.OK, told.StatusCode);
        using var page = await new HtmlParser().ParseDocumentAsync(await told.Content.ReadAsStringAsync(Ct), Ct);
        var words = page.QuerySelector("section[aria-labelledby=likely] > #word-gone[role=alert]")!;
        Assert.StartsWith("Your answer about “", words.TextContent, StringComparison.Ordinal);
        Assert.True(words.HasAttribute("autofocus"));
        Assert.Empty((await scene.Log()).Live<CauseJudged>());
        Assert.Null((await Page(teacher, scene)).QuerySelector("#word-gone"));
    }

    private static Finding Corners() => Fault("tip-corners-thick", Zone.TipCorners);

    private static Finding Fault(string kind, Zone zone) =>
        BenchScene.Value(Finding.Of(new FindingKindId(kind), FindingCharacter.Fault, new Place(zone)));

    private static async Task<IHtmlDocument> Page(HttpClient teacher, BenchScene scene)
    {
        var (status, page, _) = await teacher.See($"{scene.Page}/evidence");
        Assert.Equal(HttpStatusCode.OK, status);
        return new HtmlParser().ParseDocument(page);
    }

    private static async Task<HttpResponseMessage> Answer(HttpClient teacher, BenchScene scene, string cause, string answer)
    {
        var path = $"{scene.Page}/evidence";
        return await Form.Named(teacher, path, (await teacher.See(path)).Page, $"cause-{cause}").Set("Word.Answer", answer).Post();
    }
}
