using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Web.Features.Bench.Forms;
using ReedClinic.Web.Features.Bench.Line;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>The bench line as it is sent: once, whole, and never without its words.</summary>
public sealed class BenchLineTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_line_is_saved_and_told_and_sent_again_it_changes_nothing()
    {
        var (scene, teacher) = await Open("Ragna", Permission.TakeRisks);
        using var _ = teacher;
        var line = (await Line(teacher, scene)).Set("Text", "clip a hair").Set("Operation", Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString());

        using var first = await line.Post();
        using var again = await line.Post();

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Created), (first.StatusCode, again.StatusCode));
        Assert.Equal(Said(await first.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)), Said(await again.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)));
        var log = await scene.Log();
        Assert.Equal("clip-hair", Assert.Single(log.History).Entry is Adjustment work ? work.AdjustmentKind.Value : "");
    }

    [Fact]
    public async Task What_was_looked_for_and_is_not_there_is_never_told_as_if_it_were()
    {
        var (scene, teacher) = await Open("Romke", Permission.TakeRisks);
        using var _ = teacher;
        var line = (await Line(teacher, scene)).Set("Text", "heart not too thick").Set("Operation", Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString());

        using var answer = await line.Post();

        Assert.IsType<LookedFor>(Assert.Single((await scene.Log()).History).Entry);
        Assert.StartsWith("not there: heart", Said(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Rinske", "left as it came")]
    [InlineData("Roelie", "clip 0.4 mm")]
    public async Task What_was_saved_and_is_sent_again_is_not_asked_about_against_itself(string student, string text)
    {
        var (scene, teacher) = await Open(student, Permission.TakeRisks);
        using var _ = teacher;
        var line = (await Line(teacher, scene)).Set("Text", text).Set(ToldBefore.Field, "nothing").Set("Operation", Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString());
        using var asked = await line.Post();
        if (asked.StatusCode == HttpStatusCode.UnprocessableEntity)
        {
            using var problems = JsonDocument.Parse(await asked.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
            line.Set(ToldBefore.Field, problems.RootElement[0].GetProperty("field").GetString()![(ToldBefore.Field.Length + 1)..]);
            using var saved = await line.Post();
            Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
            line.Set(ToldBefore.Field, "nothing");
        }

        using var again = await line.Post();

        Assert.Equal(HttpStatusCode.Created, again.StatusCode);
        Assert.Single((await scene.Log()).History, said => said.Entry is Verdict or Adjustment);
    }

    [Fact]
    public async Task A_clip_that_still_left_enough_is_not_judged_against_itself_when_it_is_sent_again()
    {
        var (scene, teacher) = await Open("Ronja", Permission.TakeRisks);
        using var _ = teacher;
        await scene.Say(BenchScene.Value(Domain.Bench.Test.Of(TestKind.Length, millimetres: JustAboveTheFloor)));
        var line = (await Line(teacher, scene)).Set("Text", "crow C -20, clip a hair").Set(ToldBefore.Field, "nothing").Set("Operation", Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString());

        using var first = await line.Post();
        using var again = await line.Post();

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Created), (first.StatusCode, again.StatusCode));
        Assert.Single((await scene.Log()).Live<Adjustment>());
        // Another clip of the same size would be told of.
        using var other = await line.Set("Operation", Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString()).Post();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);
    }

    [Fact]
    public async Task One_advice_that_was_shown_lets_no_other_pass_and_all_are_set_aside_with_the_clip()
    {
        var (scene, teacher) = await Open("Runhild", Permission.TakeRisks);
        using var _ = teacher;
        await scene.Say(BenchScene.Value(Domain.Bench.Test.Of(TestKind.Length, millimetres: JustAboveTheFloor - 0.1m)));
        var line = (await Line(teacher, scene)).Set("Text", "clip a hair").Set(ToldBefore.Field, "nothing");

        var first = await Asked(line);
        var second = await Asked(line.Set(ToldBefore.Field, first));
        Assert.NotEqual(first, second);
        Assert.DoesNotContain((await scene.Log()).History, said => said.Entry is Adjustment or AdviceSetAside);

        using var saved = await line.Set(ToldBefore.Field, $"{second} {first}").Post();
        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        Assert.Equal([first, second], (await scene.Log()).Live<AdviceSetAside>().Select(aside => aside.Now.AdviceId.Value));
    }

    [Fact]
    public async Task Words_that_mean_nothing_to_the_bench_are_kept_as_a_note()
    {
        var (scene, teacher) = await Open("Runa", Permission.TakeRisks);
        using var _ = teacher;

        using var saved = await (await Line(teacher, scene)).Set("Text", "zebra umbrella <i>quartz</i>").Post();

        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        Assert.Equal("zebra umbrella <i>quartz</i>", Assert.Single((await scene.Log()).Live<Note>()).Now.Words);
    }

    [Fact]
    public async Task Work_that_was_done_without_being_agreed_is_recorded_so_and_stays_so_when_it_is_said_better()
    {
        var (scene, teacher) = await Open("Salvor", Permission.SafeChangesOnly);
        using var _ = teacher;

        using var saved = await (await Line(teacher, scene)).Set("Text", "clip 0.4 mm").Set("Agreed", "not").Post();
        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        var fact = Assert.Single((await scene.Log()).Facts);
        Assert.Equal(Agreement.Unagreed, Assert.IsType<Adjustment>(fact.Now).Words);

        using var better = await (await Line(teacher, scene)).Set("Text", "clip 0.4 mm on the upper blade").Set("Seen", fact.Tail.Value.ToString()).Post();
        Assert.Equal(HttpStatusCode.Created, better.StatusCode);
        Assert.EndsWith(Agreement.Unagreed, Assert.Single((await scene.Log()).Live<Adjustment>()).Now.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_typed_stays_in_the_log_through_a_correction_and_back_and_no_page_of_the_students_has_it()
    {
        var (scene, teacher) = await Open("Runolf", Permission.TakeRisks);
        using var _ = teacher;
        using var saved = await (await Line(teacher, scene)).Set("Text", "clip half a hair").Post();
        var first = Assert.Single((await scene.Log()).Facts);
        Assert.Equal("clip half a hair", first.Now!.Said);
        await scene.Say(BenchScene.Value(Domain.Bench.Test.Of(TestKind.Effort, 2)).AsSaid("quaint words"));
        Assert.Contains("said: “quaint words”", WebUtility.HtmlDecode((await teacher.See(scene.Page)).Page), StringComparison.Ordinal);

        using var better = await (await Line(teacher, scene)).Set("Text", "clip 0.15 mm").Set("Seen", first.Tail.Value.ToString()).Post();
        var fact = (await scene.Log()).Facts[0];
        Assert.Equal(["clip half a hair", "clip 0.15 mm"], fact.Chain.Select(link => link.Said));

        using var back = await (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Undo").Set("Seen", fact.Tail.Value.ToString()).Set("One", "true").Post();
        var gone = (await scene.Log()).Facts[0];
        var again = await Form.At(teacher, scene.Page, scene.Entries);
        foreach (var (name, value) in EntryForm.FieldsOf(gone.Withdrawn!).Append(new("Kind", "Adjustment")).Append(new("Seen", gone.Tail.Value.ToString())))
        {
            again.Set(name, value);
        }

        using var brought = await again.Post();
        Assert.Equal("clip 0.15 mm", (await scene.Log()).Facts[0].Now!.Said);

        using var student = await host.Student("Runolf");
        foreach (var page in new[] { "/", "/reeds", $"/batches/{scene.Batch.Code}", $"/letters/{scene.Batch.Code}" })
        {
            Assert.DoesNotContain("quaint", (await student.See(page)).Page, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("quaint", (await teacher.See($"/batches/{scene.Batch.Code}/letter")).Page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Saga", "clip 0.4 mm")]
    [InlineData("Sanna", "crow C# +5, clipped a hair")]
    public async Task Work_beyond_what_was_allowed_is_asked_about_and_saved_once_it_is_agreed(string student, string text)
    {
        var (scene, teacher) = await Open(student, Permission.SafeChangesOnly);
        using var _ = teacher;
        var line = (await Line(teacher, scene)).Set("Text", text);

        using var refused = await line.Post();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains(Agreement.Field, await refused.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Empty((await scene.Log()).History);

        using var saved = await line.Set("Agreed", "true").Post();
        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        Assert.True(Agreement.IsIn(Assert.Single((await scene.Log()).Live<Adjustment>()).Now.Words));
    }

    [Fact]
    public async Task A_line_that_is_empty_or_too_long_or_unreadable_is_refused_in_words()
    {
        var (scene, teacher) = await Open("Signe", Permission.TakeRisks);
        using var _ = teacher;
        var line = await Line(teacher, scene);

        foreach (var text in new[] { "  ", new string('x', LineEndpoint.Longest + 1), "clip a hair" + new string(' ', LineEndpoint.Longest), string.Join("; ", Enumerable.Repeat("clip a hair", OperationId.MostParts + 1)), "clip\u0007 a hair" })
        {
            using var refused = await line.Set("Text", text).Post();
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        }

        Assert.Empty((await scene.Log()).History);
    }

    [Fact]
    public async Task What_needs_no_agreement_is_not_written_down_as_agreed()
    {
        var (scene, teacher) = await Open("Siv", Permission.TakeRisks);
        using var _ = teacher;

        using var saved = await (await Line(teacher, scene)).Set("Text", "clip a hair").Set("Agreed", "true").Post();

        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        Assert.False(Agreement.IsIn(Assert.Single((await scene.Log()).Live<Adjustment>()).Now.Words));
    }

    [Fact]
    public async Task Nothing_is_said_of_a_reed_that_was_not_in_the_parcel()
    {
        var (scene, teacher) = await Open("Solveig", Permission.TakeRisks);
        using var _ = teacher;
        var line = (await Line(teacher, scene)).Set("Text", "clip a hair");
        await scene.Arrive(1, new ReedArrival(Presence.Missing));

        using var refused = await line.Post();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Empty((await scene.Log()).History);
    }

    private const decimal JustAboveTheFloor = 66.2m;

    // The advice that a line is asked about.
    private static async Task<string> Asked(Form line)
    {
        using var asked = await line.Post();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        using var problems = JsonDocument.Parse(await asked.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        return problems.RootElement[0].GetProperty("field").GetString()![(ToldBefore.Field.Length + 1)..];
    }

    private static string Said(string json)
    {
        using var told = JsonDocument.Parse(json);
        return told.RootElement.GetProperty("said")[0].GetString() + told.RootElement.GetProperty("sequence").GetInt32();
    }

    private async Task<(BenchScene Scene, HttpClient Teacher)> Open(string student, Permission permission)
    {
        var scene = await BenchScene.Open(host, student, permission, "blue thread");
        var teacher = await host.Teacher();
        teacher.DefaultRequestHeaders.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        return (scene, teacher);
    }

    private static Task<Form> Line(HttpClient teacher, BenchScene scene) => Form.At(teacher, scene.Page, $"{scene.Page}/line");
}
