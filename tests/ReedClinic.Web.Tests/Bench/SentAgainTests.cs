using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using Microsoft.AspNetCore.Hosting;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Forms;
using ReedClinic.Web.Features.Bench.Line;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>What was saved, and is sent again because its answer was lost, gets that answer: it isn’t judged by a log in which it stands itself.</summary>
public sealed class SentAgainTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task A_line_is_not_asked_about_because_of_the_crow_that_it_says_itself(ClinicEngine engine)
    {
        await using var host = new OnItsOwn(await databases.FreshAsync(engine));
        var (scene, teacher) = await Open(host, Permission.SafeChangesOnly);
        using var _ = teacher;
        await Say(teacher, scene, "crow C");
        var line = await Fresh(teacher, scene, "clipped a hair, crow is C +60");

        using var first = await line.Post();
        using var again = await line.Post();

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Created), (first.StatusCode, again.StatusCode));
        Assert.Equal(await first.Content.ReadAsStringAsync(Ct), await again.Content.ReadAsStringAsync(Ct));
        Assert.Equal(3, (await scene.Log()).History.Count);
        // The same words under an id of their own are asked about.
        using var other = await (await Fresh(teacher, scene, "clipped a hair, crow is C +60")).Post();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);
    }

    [Theory, OnBothEngines]
    public async Task Words_that_put_right_what_the_card_named_are_not_heard_as_a_remark_on_what_they_put_right(ClinicEngine engine)
    {
        await using var host = new OnItsOwn(await databases.FreshAsync(engine));
        var (scene, teacher) = await Open(host, Permission.TakeRisks);
        using var _ = teacher;
        await Say(teacher, scene, "two strokes off the right corner of the lower blade");
        var work = Assert.Single((await scene.Log()).Facts);
        var line = (await Fresh(teacher, scene, "sorry meant upper")).Set("Meant", work.Tail.Value.ToString());

        using var first = await line.Post();
        using var again = await line.Post();

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Created), (first.StatusCode, again.StatusCode));
        Assert.Equal(await first.Content.ReadAsStringAsync(Ct), await again.Content.ReadAsStringAsync(Ct));
        Assert.Equal((Blades.Upper, 2), (Assert.Single((await scene.Log()).Live<Adjustment>()).Now.Place.Blades, (await scene.Log()).History.Count));
    }

    [Theory, OnBothEngines]
    public async Task A_press_is_not_asked_about_because_of_what_was_said_since(ClinicEngine engine)
    {
        await using var host = new OnItsOwn(await databases.FreshAsync(engine));
        var (scene, teacher) = await Open(host, Permission.SafeChangesOnly);
        using var _ = teacher;
        await Say(teacher, scene, "crow C");
        var press = (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Adjustment").Set("Operation", Operation());
        foreach (var (field, value) in EntryForm.FieldsOf(BenchScene.Value(Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge), new Amount(null), null, null))))
        {
            press.Set(field, value);
        }

        using var first = await press.Post();
        await Say(teacher, scene, "crow C +60");
        using var again = await press.Post();

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Created), (first.StatusCode, again.StatusCode));
        Assert.Equal(await first.Content.ReadAsStringAsync(Ct), await again.Content.ReadAsStringAsync(Ct));
        Assert.Single((await scene.Log()).Live<Adjustment>());
    }

    [Theory, OnBothEngines]
    public async Task What_was_told_before_a_line_is_heeded_also_where_a_colleague_wrote_meanwhile(ClinicEngine engine)
    {
        await using var host = new OnItsOwn(await databases.FreshAsync(engine));
        var (scene, teacher) = await Open(host, Permission.TakeRisks);
        using var _ = teacher;
        await Say(teacher, scene, "crow C -40");
        var line = (await Fresh(teacher, scene, "crow is C +40, clipped a hair")).Set(ToldBefore.Field, "nothing");
        using var asked = await line.Post();
        using var problems = JsonDocument.Parse(await asked.Content.ReadAsStringAsync(Ct));
        line.Set(ToldBefore.Field, problems.RootElement[0].GetProperty("field").GetString()![(ToldBefore.Field.Length + 1)..]);
        await scene.Say(BenchScene.Value(Note.Of("somebody else writes")));

        using var saved = await line.Post();

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.Created), (asked.StatusCode, saved.StatusCode));
        Assert.Single((await scene.Log()).Live<AdviceSetAside>());
    }

    private static string Operation() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString();

    private static async Task Say(HttpClient teacher, BenchScene scene, string text)
    {
        using var saved = await (await Fresh(teacher, scene, text)).Post();
        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
    }

    private static async Task<Form> Fresh(HttpClient teacher, BenchScene scene, string text) =>
        (await Form.At(teacher, scene.Page, $"{scene.Page}/line")).Set("Text", text).Set("Operation", Operation());

    private static async Task<(BenchScene Scene, HttpClient Teacher)> Open(ClinicHost host, Permission permission)
    {
        var scene = await BenchScene.Open(host, "Rinske", permission, "blue thread");
        var teacher = await host.Teacher();
        teacher.DefaultRequestHeaders.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        return (scene, teacher);
    }

    private sealed class OnItsOwn(TestDatabase database) : ClinicHost
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            foreach (var (setting, value) in database.Settings)
            {
                builder.UseSetting(setting, value);
            }
        }
    }
}
