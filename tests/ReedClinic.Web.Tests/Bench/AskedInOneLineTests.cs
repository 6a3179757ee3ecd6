using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Web.Features.Bench.Line;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>A question of the bench says all that its answer goes for, a correction is asked what the first entry was, and a note is no verdict.</summary>
public sealed class AskedInOneLineTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Permission.AdviseOnly, "clip a hair, and clip half a millimetre", "One answer goes for both: clipped by a hair, and clipped")]
    [InlineData(Permission.TakeRisks, "clip a hair, and clip half a millimetre", "One answer goes for both: clipped by a hair, and clipped")]
    [InlineData(Permission.AdviseOnly, "clip a hair, two strokes off the left corner, clip half a millimetre", "One answer goes for all 3: clipped by a hair · ")]
    [InlineData(Permission.TakeRisks, "clip a hair, thin the corners, verdict improved", "One answer goes for all 3: clipped by a hair · ")]
    [InlineData(Permission.TakeRisks, "clip a hair, verdict improved", "One answer goes for both: clipped by a hair, and ")]
    public async Task A_question_about_a_line_with_several_deeds_names_them_all(Permission permission, string text, string told)
    {
        var (scene, teacher) = await Open($"Tora{permission}{text.Length}", permission);
        using var _ = teacher;

        using var refused = await (await Line(teacher, scene)).Set("Text", text).Set(ToldBefore.Field, "").Post();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        using var problems = JsonDocument.Parse(await refused.Content.ReadAsStringAsync(Ct));
        Assert.Contains(told, problems.RootElement[0].GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Empty((await scene.Log()).History);
    }

    [Fact]
    public async Task A_question_about_one_deed_names_no_other()
    {
        var (scene, teacher) = await Open("Torunn", Permission.AdviseOnly);
        using var _ = teacher;

        using var refused = await (await Line(teacher, scene)).Set("Text", "clip a hair, crow is C").Set(ToldBefore.Field, "").Post();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.DoesNotContain("One answer", await refused.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_correction_that_makes_a_clip_too_long_is_told_as_the_clip_would_have_been_and_the_second_time_it_stands()
    {
        var (scene, teacher) = await Open("Trude", Permission.TakeRisks);
        using var _ = teacher;
        await Say(teacher, scene, "length 66.5 mm, crow is C -40");
        await Say(teacher, scene, "clip 0.1 mm");
        var clip = (await scene.Log()).Live<Adjustment>().Single();
        var line = (await Line(teacher, scene)).Set("Text", "clip 0.8 mm").Set("Seen", clip.Root.Value.ToString());

        using var refused = await line.Set(ToldBefore.Field, "").Post();
        using var problems = JsonDocument.Parse(await refused.Content.ReadAsStringAsync(Ct));
        var field = problems.RootElement[0].GetProperty("field").GetString()!;

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.StartsWith("Heeded:length-floor/", field, StringComparison.Ordinal);
        Assert.Contains("about 65.7 mm are left", problems.RootElement[0].GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Equal(100, (await scene.Log()).Live<Adjustment>().Single().Now.AmountMicrometres);

        using var saved = await line.Set(ToldBefore.Field, field["Heeded:".Length..]).Post();
        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        Assert.Equal(800, (await scene.Log()).Live<Adjustment>().Single().Now.AmountMicrometres);
        Assert.Single((await scene.Log()).Live<AdviceSetAside>());
    }

    [Fact]
    public async Task Words_that_put_the_size_of_a_clip_right_are_told_of_too_and_the_same_clip_said_again_isn_t()
    {
        var (scene, teacher) = await Open("Turid", Permission.TakeRisks);
        using var _ = teacher;
        await Say(teacher, scene, "length 66.5 mm, crow is C -40");
        await Say(teacher, scene, "clip 0.1 mm");
        var clip = (await scene.Log()).Live<Adjustment>().Single();

        using var refused = await (await Line(teacher, scene)).Set("Text", "no, 0.8 mm").Set(ToldBefore.Field, "").Post();
        using var same = await (await Line(teacher, scene)).Set("Text", "clipped 0.1 mm").Set("Seen", clip.Root.Value.ToString()).Set(ToldBefore.Field, "").Post();

        Assert.Contains("Heeded:length-floor/", await refused.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Created, same.StatusCode);
    }

    [Theory]
    [InlineData("verdict: the lamp by the door")]
    [InlineData("my verdict: the lamp by the door")]
    public async Task A_note_that_is_called_a_verdict_says_that_it_is_none(string words)
    {
        var (scene, teacher) = await Open($"Tyra{words.Length}", Permission.TakeRisks);
        using var _ = teacher;

        using var saved = await (await Line(teacher, scene)).Set("Text", words).Post();

        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        Assert.IsType<Note>(Assert.Single((await scene.Log()).Facts).Now);
        using var told = JsonDocument.Parse(await saved.Content.ReadAsStringAsync(Ct));
        Assert.EndsWith("A note leaves the verdict open: it has its own key (v).", told.RootElement.GetProperty("whole").GetString(), StringComparison.Ordinal);
    }

    private static async Task Say(HttpClient teacher, BenchScene scene, string text)
    {
        using var saved = await (await Line(teacher, scene)).Set("Text", text).Post();
        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
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
