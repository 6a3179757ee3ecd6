using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
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

        using var answer = await Post(teacher, scene, 2, ("Crow.Step", "1"), ("Crow.Pitch", "B +20"), ("Effort.Step", "3"));

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
        using var first = await Post(teacher, scene, 1, ("Opening.Step", "4"));
        using var same = await Post(teacher, scene, 1);
        Assert.Single((await scene.Log()).History);

        using var changed = await Post(teacher, scene, 1, ("Opening.Step", "3"));

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
        var opened = await Row(teacher, scene, 1);
        await scene.Correct((await scene.Log()).Facts[0].Tail, BenchScene.Value(Domain.Bench.Test.Of(TestKind.Opening, 1)));
        await scene.Say(BenchScene.Value(Domain.Bench.Test.Of(TestKind.Effort, 0)));

        using var answer = await Send(teacher, scene, opened, ("Crow.Step", "2"));

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

        using var answer = await Post(teacher, scene, 1, ("Opening.Step", "2"), ("Crow.Step", "0"), ("Crow.Pitch", "H and a bit"));
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("value=\"H and a bit\"", page, StringComparison.Ordinal);
        Assert.Contains("can&#x27;t be read as a pitch", page, StringComparison.Ordinal);
        Assert.Equal([TestKind.Opening], (await scene.Log()).Live<Domain.Bench.Test>().Select(test => test.Now.TestKind));
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

    /// <summary>Posts one row as a browser does: the row's own fields belong to its form by name.</summary>
    private static async Task<HttpResponseMessage> Post(HttpClient teacher, BenchScene scene, int number, params (string Name, string Value)[] typed)
        => await Send(teacher, scene, await Row(teacher, scene, number), typed);

    private static async Task<Dictionary<string, string>> Row(HttpClient teacher, BenchScene scene, int number)
    {
        using var page = new HtmlParser().ParseDocument((await teacher.See(Path(scene))).Page);
        return page.QuerySelectorAll($"#row-{number} input, [form=row-{number}]").ToDictionary(
            field => field.GetAttribute("name")!,
            field => field is IHtmlSelectElement select ? select.Value ?? "" : ((IHtmlInputElement)field).Value);
    }

    private static async Task<HttpResponseMessage> Send(
        HttpClient teacher, BenchScene scene, Dictionary<string, string> fields, params (string Name, string Value)[] typed)
    {
        foreach (var (name, value) in typed)
        {
            Assert.Contains(name, fields.Keys);
            fields[name] = value;
        }

        using var content = new FormUrlEncodedContent(fields);
        return await teacher.PostAsync(new Uri(Path(scene), UriKind.Relative), content, TestContext.Current.CancellationToken);
    }
}
