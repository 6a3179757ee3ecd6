using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>What the line takes back, and what it brings back: the same as the key.</summary>
public sealed class LineTakingBackTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("undo")]
    [InlineData("take that back")]
    public async Task What_was_taken_back_out_of_turn_comes_back_in_words_as_by_its_key_and_sent_twice_it_is_done_once(string text)
    {
        var (scene, teacher) = await Open($"Solvig{text.Length}", Permission.TakeRisks);
        using var _ = teacher;
        (await (await Line(teacher, scene)).Set("Text", "remember the low shelf").Post()).Dispose();
        (await (await Line(teacher, scene)).Set("Text", "remember the lamp").Post()).Dispose();
        var shelf = (await scene.Log()).Facts[0];
        (await (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Undo").Set("Seen", shelf.Tail.Value.ToString()).Set("One", "true").Post()).Dispose();
        Assert.Equal([FactState.TakenBack, FactState.Live], (await scene.Log()).Facts.Select(fact => fact.State));
        var sent = (await Line(teacher, scene)).Set("Text", text).Set("Operation", Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString());

        using var saved = await sent.Post();
        using var again = await sent.Post();

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Created), (saved.StatusCode, again.StatusCode));
        using var told = JsonDocument.Parse(await saved.Content.ReadAsStringAsync(Ct));
        Assert.Equal("It stands again: remember the low shelf", told.RootElement.GetProperty("whole").GetString());
        Assert.Equal(["remember the low shelf", "remember the lamp"], (await scene.Log()).Live<Note>().Select(note => note.Now.Words));
    }

    [Fact]
    public async Task Who_deletes_the_last_entry_in_words_means_what_stands()
    {
        var (scene, teacher) = await Open("Sigrun", Permission.TakeRisks);
        using var _ = teacher;
        (await (await Line(teacher, scene)).Set("Text", "remember the low shelf").Post()).Dispose();
        (await (await Line(teacher, scene)).Set("Text", "remember the lamp").Post()).Dispose();
        (await (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Undo").Set("Seen", (await scene.Log()).Facts[0].Tail.Value.ToString()).Set("One", "true").Post()).Dispose();

        (await (await Line(teacher, scene)).Set("Text", "delete the last entry").Post()).Dispose();

        Assert.Empty((await scene.Log()).Live<Note>());
    }

    [Theory]
    [InlineData("scratch that", true)]
    [InlineData("undo that", false)]
    public async Task What_was_said_in_one_line_is_taken_back_together(string text, bool isSeen)
    {
        var (scene, teacher) = await Open($"Solrun{text.Length}", Permission.TakeRisks);
        using var _ = teacher;
        (await (await Line(teacher, scene)).Set("Text", "left corner too thick").Post()).Dispose();
        (await (await Line(teacher, scene)).Set("Text", "crow C, low D late").Post()).Dispose();
        var newest = (await scene.Log()).Facts[^1];
        var sent = (await Line(teacher, scene)).Set("Text", text);

        using var saved = await (isSeen ? sent.Set("Meant", newest.Tail.Value.ToString()) : sent).Post();

        using var told = JsonDocument.Parse(await saved.Content.ReadAsStringAsync(Ct));
        Assert.Matches("^Taken back: low response: late.* · crow", told.RootElement.GetProperty("whole").GetString());
        Assert.Equal([FactState.Live, FactState.TakenBack, FactState.TakenBack], (await scene.Log()).Facts.Select(fact => fact.State));
    }

    [Fact]
    public async Task What_takes_back_while_something_is_asked_takes_back_nothing_that_stands()
    {
        var (scene, teacher) = await Open("Solgerd", Permission.TakeRisks);
        using var _ = teacher;
        (await (await Line(teacher, scene)).Set("Text", "remember the low shelf").Post()).Dispose();

        using var refused = await (await Line(teacher, scene)).Set("Text", "undo").Set("Asked", "true").Post();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Single((await scene.Log()).Live<Note>());
    }

    [Fact]
    public async Task What_waits_behind_what_is_asked_is_not_recorded_before_it_and_beside_a_mere_refusal_it_is()
    {
        var (scene, teacher) = await Open("Solfrid", Permission.TakeRisks);
        using var _ = teacher;

        using var waits = await (await Line(teacher, scene)).Set("Text", "remember the lamp").Set("Asked", "held").Post();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, waits.StatusCode);
        Assert.Empty((await scene.Log()).Facts);

        using var saved = await (await Line(teacher, scene)).Set("Text", "remember the lamp").Set("Asked", "true").Post();
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
