using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Tests.Bench;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.FirstLooks;

public sealed class FirstLookPageTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task Every_reed_stands_under_the_same_tests_with_its_complaint()
    {
        var scene = await BenchScene.Open(host, "Liv", "blue thread", "grey thread");
        using var teacher = await host.Teacher();

        using var page = new HtmlParser().ParseDocument((await teacher.See(Path(scene))).Page);

        Assert.Equal(2, page.QuerySelectorAll("tbody tr").Length);
        Assert.All(page.QuerySelectorAll("tbody tr"), row => Assert.Equal(6, row.QuerySelectorAll("select").Length));
        Assert.Equal(2, page.QuerySelectorAll(".bothers").Length);
        Assert.All(page.QuerySelectorAll("select, input[type=text]"), field => Assert.False(string.IsNullOrEmpty(field.GetAttribute("aria-label"))));
    }

    [Fact]
    public async Task A_row_is_saved_as_tests_of_how_it_arrived_and_only_what_was_filled_in()
    {
        var scene = await BenchScene.Open(host, "Maren", "blue thread", "grey thread");
        using var teacher = await host.Teacher();

        using var answer = await Post(teacher, scene, from: 2, ("R2.Crow.Step", "1"), ("R2.Crow.Pitch", "B +20"), ("R2.Effort.Step", "3"));

        Assert.Equal($"{Path(scene)}?saved=2", answer.Leads());
        var log = await scene.Log(2);
        Assert.Equal([TestKind.Crow, TestKind.Effort], log.Passes[0].Tests.Select(test => test.TestKind));
        Assert.Equal("B +20", log.Live<Domain.Bench.Test>().First().Now.Pitch!.Text);
        Assert.Empty((await scene.Log()).History);
    }

    [Fact]
    public async Task Saving_the_same_row_again_writes_nothing_and_a_change_says_it_better()
    {
        var scene = await BenchScene.Open(host, "Nanna", "blue thread");
        using var teacher = await host.Teacher();
        using var first = await Post(teacher, scene, from: 1, ("R1.Opening.Step", "4"));
        using var same = await Post(teacher, scene, from: 1);
        Assert.Single((await scene.Log()).History);

        using var changed = await Post(teacher, scene, from: 1, ("R1.Opening.Step", "3"));

        var fact = Assert.Single((await scene.Log()).Facts);
        Assert.Equal(2, fact.Chain.Count);
        Assert.Equal(3, Assert.IsType<Domain.Bench.Test>(fact.Now).Step);
    }

    [Fact]
    public async Task A_colleagues_test_since_the_page_was_opened_is_left_alone_by_a_cell_that_was_not_touched()
    {
        var scene = await BenchScene.Open(host, "Odile", "blue thread");
        await scene.Say(BenchScene.Value(Domain.Bench.Test.Of(TestKind.Opening, 4)));
        using var teacher = await host.Teacher();
        var opened = await Table(teacher, scene);
        await scene.Correct((await scene.Log()).Facts[0].Tail, BenchScene.Value(Domain.Bench.Test.Of(TestKind.Opening, 1)));
        await scene.Say(BenchScene.Value(Domain.Bench.Test.Of(TestKind.Effort, 0)));

        using var answer = await Send(teacher, scene, opened, from: 1, ("R1.Crow.Step", "2"));

        Assert.Equal($"{Path(scene)}?saved=1", answer.Leads());
        Assert.Equal(
            [(TestKind.Opening, (int?)1), (TestKind.Effort, 0), (TestKind.Crow, 2)],
            (await scene.Log()).Live<Domain.Bench.Test>().Select(test => (test.Now.TestKind, test.Now.Step)));
    }

    [Fact]
    public async Task A_pitch_that_cannot_be_read_stays_and_keeps_no_other_cell_back()
    {
        var scene = await BenchScene.Open(host, "Oda", "blue thread");
        using var teacher = await host.Teacher();

        using var answer = await Post(teacher, scene, from: 1, ("R1.Opening.Step", "2"), ("R1.Crow.Step", "0"), ("R1.Crow.Pitch", "H and a bit"));
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("value=\"H and a bit\"", page, StringComparison.Ordinal);
        Assert.Contains("can&#x27;t be read as a pitch", page, StringComparison.Ordinal);
        Assert.Equal([TestKind.Opening], (await scene.Log()).Live<Domain.Bench.Test>().Select(test => test.Now.TestKind));
    }

    [Fact]
    public async Task One_save_keeps_what_was_filled_in_on_every_reed()
    {
        var scene = await BenchScene.Open(host, "Sunna", "blue thread", "grey thread", "red thread");
        using var teacher = await host.Teacher();

        using var answer = await Post(teacher, scene, from: 0, ("R1.Opening.Step", "1"), ("R3.Opening.Step", "3"), ("R3.Peep.Pitch", "C"));

        Assert.Equal($"{Path(scene)}?saved=0", answer.Leads());
        Assert.Equal([TestKind.Opening], (await scene.Log(1)).Live<Domain.Bench.Test>().Select(test => test.Now.TestKind));
        Assert.Empty((await scene.Log(2)).History);
        Assert.Equal([TestKind.Opening, TestKind.Peep], (await scene.Log(3)).Live<Domain.Bench.Test>().Select(test => test.Now.TestKind));
    }

    [Fact]
    public async Task What_cannot_be_saved_on_two_reeds_stays_on_both_and_each_has_its_problem_beside_it()
    {
        var scene = await BenchScene.Open(host, "Tyra", "blue thread", "grey thread");
        using var teacher = await host.Teacher();

        using var answer = await Post(
            teacher, scene, from: 2, ("R1.Crow.Step", "2"), ("R1.Crow.Pitch", "H"), ("R1.Effort.Step", "1"), ("R2.Peep.Pitch", "q"), ("R2.Opening.Step", "0"));
        using var page = new HtmlParser().ParseDocument((await answer.Read()).Page);

        var fields = FieldsOf(page);
        Assert.Equal(("2", "H", "1", "q", "0"), (fields["R1.Crow.Step"], fields["R1.Crow.Pitch"], fields["R1.Effort.Step"], fields["R2.Peep.Pitch"], fields["R2.Opening.Step"]));
        Assert.Equal(["f-R1-Crow-Pitch", "f-R2-Peep-Pitch"], page.QuerySelectorAll("[aria-invalid=true]").Select(field => field.Id));
        Assert.Equal(2, page.QuerySelectorAll(".problems a").Length);
        Assert.All(page.QuerySelectorAll(".problems a"), link => Assert.NotNull(page.GetElementById(link.GetAttribute("href")!.Split('#')[1])));
        Assert.Equal([TestKind.Effort], (await scene.Log(1)).Live<Domain.Bench.Test>().Select(test => test.Now.TestKind));

        fields["R1.Crow.Pitch"] = "B";
        using var again = await Send(teacher, scene, fields, from: 0, ("R2.Peep.Pitch", "C +5"));
        Assert.Equal($"{Path(scene)}?saved=0", again.Leads());
        Assert.Equal("B", (await scene.Log(1)).Live<Domain.Bench.Test>().Last().Now.Pitch!.Text);
        Assert.Equal(2, (await scene.Log(2)).History.Count);
    }

    [Fact]
    public async Task A_second_press_of_the_same_save_writes_nothing_more()
    {
        var scene = await BenchScene.Open(host, "Unn", "blue thread", "grey thread");
        using var teacher = await host.Teacher();
        var opened = await Table(teacher, scene);
        using var first = await Send(teacher, scene, opened, from: 0, ("R1.Opening.Step", "1"), ("R2.Effort.Step", "2"));

        using var second = await Send(teacher, scene, opened, from: 0);

        Assert.Equal($"{Path(scene)}?saved=0", second.Leads());
        Assert.Single((await scene.Log(1)).History);
        Assert.Single((await scene.Log(2)).History);
    }

    [Fact]
    public async Task A_problem_on_one_reed_does_not_put_an_old_wording_over_a_colleagues_on_another()
    {
        var scene = await BenchScene.Open(host, "Vår", "blue thread", "grey thread");
        await scene.Say(BenchScene.Value(Domain.Bench.Test.Of(TestKind.Opening, 4)));
        using var teacher = await host.Teacher();
        var opened = await Table(teacher, scene);
        await scene.Correct((await scene.Log()).Facts[0].Tail, BenchScene.Value(Domain.Bench.Test.Of(TestKind.Opening, 1)));

        using var refused = await Send(teacher, scene, opened, from: 2, ("R2.Peep.Pitch", "q"));
        using var page = new HtmlParser().ParseDocument((await refused.Read()).Page);
        using var again = await Send(teacher, scene, FieldsOf(page), from: 2, ("R2.Peep.Pitch", "C"));

        Assert.Equal(1, Assert.Single((await scene.Log()).Live<Domain.Bench.Test>()).Now.Step);
    }

    [Fact]
    public async Task What_was_filled_in_for_a_reed_on_which_work_began_meanwhile_stays_in_sight_and_is_not_taken_for_a_first_look()
    {
        var scene = await BenchScene.Open(host, "Ylva", "blue thread", "grey thread");
        using var teacher = await host.Teacher();
        var opened = await Table(teacher, scene);
        await scene.Say(BenchScene.Value(Adjustment.Of(new AdjustmentKindId("clip-hair"), new Place(Zone.TipEdge))));

        using var answer = await Send(teacher, scene, opened, from: 0, ("R1.Opening.Step", "3"), ("R2.Opening.Step", "1"));
        using var page = new HtmlParser().ParseDocument((await answer.Read()).Page);

        Assert.Equal("3", FieldsOf(page)["R1.Opening.Step"]);
        Assert.Contains("work on this reed has begun", page.QuerySelector("#reed-1 .error")!.TextContent, StringComparison.Ordinal);
        Assert.Empty((await scene.Log()).Live<Domain.Bench.Test>());
        Assert.Single((await scene.Log(2)).History);
    }

    [Theory]
    [InlineData(Presence.Here, Fitness.DryFirst)]
    [InlineData(Presence.Here, Fitness.Mould)]
    [InlineData(Presence.Missing, null)]
    public async Task A_reed_that_stays_off_the_bench_leads_to_the_arrival_page(Presence presence, Fitness? fitness)
    {
        var scene = await BenchScene.Open(host, "Zita", "blue thread", "grey thread");
        await scene.Arrive(2, new ReedArrival(presence, Fitness: fitness));
        using var teacher = await host.Teacher();

        using var page = new HtmlParser().ParseDocument((await teacher.See(Path(scene))).Page);

        Assert.Empty(page.QuerySelectorAll("#reed-2 select, #reed-2 button"));
        Assert.Equal($"/batches/{scene.Batch.Code}/arrival", page.QuerySelector("#reed-2 .row-actions a")!.GetAttribute("href"));
    }

    [Fact]
    public async Task Once_work_has_begun_the_row_is_only_read()
    {
        var scene = await BenchScene.Open(host, "Pia", "blue thread");
        await scene.Say(BenchScene.Value(Domain.Bench.Test.Of(TestKind.Opening, 4)));
        await scene.Say(BenchScene.Value(Adjustment.Of(new AdjustmentKindId("clip-hair"), new Place(Zone.TipEdge))));
        using var teacher = await host.Teacher();

        using var page = new HtmlParser().ParseDocument((await teacher.See(Path(scene))).Page);

        Assert.Empty(page.QuerySelectorAll("tbody select"));
        Assert.Contains("very open", page.QuerySelector("tbody")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_code_and_a_student_find_nothing()
    {
        var scene = await BenchScene.Open(host, "Ragna", "blue thread");
        using var teacher = await host.Teacher();
        using var student = await host.Student("Ragna");

        Assert.Equal(HttpStatusCode.NotFound, (await teacher.See("/batches/nonsense/first-look")).Status);
        Assert.NotEqual(HttpStatusCode.OK, (await student.See(Path(scene))).Status);
    }

    private static string Path(BenchScene scene) => $"/batches/{scene.Batch.Code}/first-look";

    /// <summary>Posts the whole table as a browser does, by the button beside one reed or, from 0, by the one at the end.</summary>
    private static async Task<HttpResponseMessage> Post(HttpClient teacher, BenchScene scene, int from, params (string Name, string Value)[] typed)
        => await Send(teacher, scene, await Table(teacher, scene), from, typed);

    private static async Task<Dictionary<string, string>> Table(HttpClient teacher, BenchScene scene)
    {
        using var page = new HtmlParser().ParseDocument((await teacher.See(Path(scene))).Page);
        return FieldsOf(page);
    }

    private static Dictionary<string, string> FieldsOf(IHtmlDocument page) =>
        page.QuerySelectorAll("form:has(table) input, form:has(table) select").ToDictionary(
            field => field.GetAttribute("name")!,
            field => field is IHtmlSelectElement select ? select.Value ?? "" : ((IHtmlInputElement)field).Value);

    private static async Task<HttpResponseMessage> Send(
        HttpClient teacher, BenchScene scene, Dictionary<string, string> fields, int from, params (string Name, string Value)[] typed)
    {
        foreach (var (name, value) in typed)
        {
            Assert.Contains(name, fields.Keys);
            fields[name] = value;
        }

        if (from != 0)
        {
            fields["From"] = $"{from}";
        }

        using var content = new FormUrlEncodedContent(fields);
        return await teacher.PostAsync(new Uri(Path(scene), UriKind.Relative), content, TestContext.Current.CancellationToken);
    }
}
