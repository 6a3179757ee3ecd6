using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>An entry that is said better in the line: in its own place, one thing, and never over somebody else’s words.</summary>
public sealed class LineCorrectionTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_kept_as_a_remark_becomes_what_was_meant_in_its_own_place()
    {
        var (scene, teacher) = await Open("Ragna", Permission.TakeRisks);
        using var _ = teacher;
        var note = await scene.Say(BenchScene.Value(Note.Of("clp a hiar")));
        await scene.Say(BenchScene.Value(Note.Of("later")));

        using var saved = await Correct(await Line(teacher, scene), note, "clip a hair").Post();

        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        var fact = (await scene.Log()).Facts[0];
        Assert.Equal((note.Root, "clip-hair", FactState.Corrected), (fact.Root, Assert.IsType<Adjustment>(fact.Now).AdjustmentKind.Value, fact.State));
        Assert.Equal("clp a hiar", Assert.IsType<Note>(fact.Chain[0]).Words);
    }

    [Fact]
    public async Task A_correction_that_says_two_things_or_none_is_refused_and_nothing_is_written()
    {
        var (scene, teacher) = await Open("Runa", Permission.TakeRisks);
        using var _ = teacher;
        var note = await scene.Say(BenchScene.Value(Note.Of("one")));
        var line = await Line(teacher, scene);

        foreach (var (text, why) in new[] { ("clip a hair, crow is C", "A correction is one thing, and 2 were understood."), (" ", "Say something first.") })
        {
            using var refused = await Correct(line, note, text).Post();
            Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
            Assert.Contains(why, await refused.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        }

        Assert.Single((await scene.Log()).History);
    }

    [Fact]
    public async Task What_somebody_said_better_or_took_back_meanwhile_is_not_written_over()
    {
        var (scene, teacher) = await Open("Saga", Permission.TakeRisks);
        using var _ = teacher;
        var note = await scene.Say(BenchScene.Value(Note.Of("thik")));
        await scene.Correct(note.Tail, BenchScene.Value(Note.Of("thick")));

        using var refused = await Correct(await Line(teacher, scene), note, "too thick here").Post();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("Somebody corrected this meanwhile.", await refused.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        Assert.Equal("thick", Assert.Single((await scene.Log()).Live<Note>()).Now.Words);
    }

    [Fact]
    public async Task Why_the_work_stopped_is_kept_as_it_is_typed_and_makes_no_entry_of_its_own()
    {
        var (scene, teacher) = await Open("Signe", Permission.TakeRisks);
        using var _ = teacher;
        var stop = await scene.Say(BenchScene.Value(Stopped.Of()));

        using var saved = await Correct(await Line(teacher, scene), stop, "the tip is thin, and the crow is C").Post();

        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        var fact = Assert.Single((await scene.Log()).Facts);
        Assert.Equal("the tip is thin, and the crow is C", Assert.IsType<Stopped>(fact.Now).Words);
    }

    [Fact]
    public async Task Work_that_is_said_better_keeps_what_it_was_for_and_asks_again_where_it_goes_further_than_was_agreed()
    {
        var (scene, teacher) = await Open("Siv", Permission.SafeChangesOnly);
        using var _ = teacher;
        var found = await scene.Say(BenchScene.Value(Finding.Of(new("tip-thick"), FindingCharacter.Fault, new Place(Zone.TipSides))));
        var work = await scene.Say(BenchScene.Value(Adjustment.Of(new("clip"), new Place(Zone.TipEdge), new Amount(null, 0.3m), found.Root, null, Agreement.With(null))));
        var line = await Line(teacher, scene);

        using var further = await Correct(line, work, "clipped 0.6 mm").Post();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, further.StatusCode);
        Assert.Contains(Agreement.Field, await further.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);

        using var agreed = await Correct(line, work, "clipped 0.6 mm").Set("Agreed", "true").Post();
        Assert.Equal(HttpStatusCode.Created, agreed.StatusCode);
        var now = Assert.Single((await scene.Log()).Live<Adjustment>()).Now;
        Assert.Equal((0.6m, found.Root, true), (now.Amount.Millimetres, now.ForFindingId, Agreement.IsIn(now.Words)));
    }

    [Fact]
    public async Task A_correction_that_is_sent_again_gives_the_first_answer_and_changes_nothing()
    {
        var (scene, teacher) = await Open("Solveig", Permission.TakeRisks);
        using var _ = teacher;
        var note = await scene.Say(BenchScene.Value(Note.Of("crw C")));
        var line = Correct(await Line(teacher, scene), note, "crow C").Set("Operation", Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString());

        using var first = await line.Post();
        using var again = await line.Post();

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Created), (first.StatusCode, again.StatusCode));
        using var told = JsonDocument.Parse(await again.Content.ReadAsStringAsync(Ct));
        Assert.Equal("crow, on C", told.RootElement.GetProperty("said")[0].GetString());
        Assert.Equal(2, (await scene.Log()).History.Count);
    }

    private static Form Correct(Form line, BenchFact fact, string text) => line.Set("Text", text).Set("Seen", fact.Tail.Value.ToString());

    private async Task<(BenchScene Scene, HttpClient Teacher)> Open(string student, Permission permission)
    {
        var scene = await BenchScene.Open(host, student, permission, "blue thread");
        var teacher = await host.Teacher();
        teacher.DefaultRequestHeaders.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        return (scene, teacher);
    }

    private static Task<Form> Line(HttpClient teacher, BenchScene scene) => Form.At(teacher, scene.Page, $"{scene.Page}/line");
}
