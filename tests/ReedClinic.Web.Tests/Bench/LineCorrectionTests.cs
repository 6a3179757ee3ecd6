using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Forms;
using ReedClinic.Web.Features.Bench.Line;
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

    [Fact]
    public async Task An_entry_further_back_is_taken_back_what_hangs_on_it_says_so_and_it_comes_back_as_it_was()
    {
        var (scene, teacher) = await Open("Solrun", Permission.TakeRisks);
        using var _ = teacher;
        var found = await scene.Say(BenchScene.Value(Finding.Of(
            new("tip-thick"), FindingCharacter.Taste, new Place(Zone.TipSides, Blades.Upper), FindingShape.ShapeAcross, null, null,
            KnownBy.Light | KnownBy.Finger, Certainty.Suspected, Arose.SeenLaterAlreadyThere, "The left one.")));
        await scene.Say(BenchScene.Value(FindingEnded.Of(found.Root, FindingEnding.Better)));
        Assert.Contains("What was said of it stays, and tells that this was taken back:", await teacher.GetStringAsync(scene.Page, Ct), StringComparison.Ordinal);

        using var back = await Press(await Form.At(teacher, scene.Page, scene.Entries), SayButton.Back(found)).Post();

        Assert.Equal(HttpStatusCode.Created, back.StatusCode);
        var gone = (await scene.Log()).FactOf(found.Root)!;
        Assert.Null(gone.Now);
        Assert.Contains("which was taken back: better", await teacher.GetStringAsync(scene.Page, Ct), StringComparison.Ordinal);
        using var twice = await Press(await Form.At(teacher, scene.Page, scene.Entries), SayButton.Back(found)).Post();
        Assert.Equal(HttpStatusCode.Conflict, twice.StatusCode);

        using var again = await Press(await Form.At(teacher, scene.Page, scene.Entries), SayButton.Again(gone, gone.Withdrawn!)).Post();

        Assert.Equal(HttpStatusCode.Created, again.StatusCode);
        var stands = (await scene.Log()).FactOf(found.Root)!;
        Assert.Equal(EntryForm.FieldsOf(found.Now!), EntryForm.FieldsOf(stands.Now!));
        Assert.Equal(found.Sequence, stands.Sequence);
    }

    [Theory]
    [InlineData("sorry meant upper", Blades.Upper, Sides.Right)]
    [InlineData("sorry, left side", Blades.Lower, Sides.Left)]
    public async Task What_puts_right_the_place_right_after_an_entry_corrects_it(string text, Blades blades, Sides sides)
    {
        var (scene, teacher) = await Open($"Stina{sides}", Permission.TakeRisks);
        using var _ = teacher;
        var line = await Line(teacher, scene);
        (await line.Set("Text", "two strokes off the right corner of the lower blade").Post()).Dispose();

        using var saved = await (await Line(teacher, scene)).Set("Text", text).Post();

        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        using var told = JsonDocument.Parse(await saved.Content.ReadAsStringAsync(Ct));
        Assert.True(told.RootElement.GetProperty("corrected").GetBoolean());
        var fact = Assert.Single((await scene.Log()).Facts);
        Assert.Equal((FactState.Corrected, new Place(Zone.TipCorners, blades, sides), 2), (fact.State, Assert.IsType<Adjustment>(fact.Now).Place, ((Adjustment)fact.Now).AmountStrokes));
    }

    [Theory]
    [InlineData("no, two strokes not three", "three strokes off the right corner of the lower blade", 2)]
    [InlineData("make that two", "three strokes off the right corner of the lower blade", 2)]
    public async Task How_much_was_done_is_put_right_by_the_line_after_it(string text, string before, int strokes)
    {
        var (scene, teacher) = await Open($"Svala{text.Length}", Permission.TakeRisks);
        using var _ = teacher;
        (await (await Line(teacher, scene)).Set("Text", before).Post()).Dispose();

        using var saved = await (await Line(teacher, scene)).Set("Text", text).Post();

        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        var fact = Assert.Single((await scene.Log()).Facts);
        Assert.Equal((FactState.Corrected, strokes), (fact.State, Assert.IsType<Adjustment>(fact.Now).AmountStrokes));
    }

    [Theory]
    [InlineData("amend that, needs a push", "crow is D", "needs a push")]
    [InlineData("undo that, needs a push", "blows freely", "needs a push")]
    public async Task What_takes_back_and_says_another_puts_that_in_the_last_ones_place(string text, string before, string step)
    {
        var (scene, teacher) = await Open($"Sunniva{text.Length}", Permission.TakeRisks);
        using var _ = teacher;
        (await (await Line(teacher, scene)).Set("Text", "left corner too thick").Post()).Dispose();
        (await (await Line(teacher, scene)).Set("Text", before).Post()).Dispose();

        using var saved = await (await Line(teacher, scene)).Set("Text", text).Post();

        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        var facts = (await scene.Log()).Facts;
        Assert.Equal(2, facts.Count);
        Assert.Equal((FactState.Corrected, step), (facts[^1].State, Assert.IsType<Domain.Bench.Test>(facts[^1].Now).StepWord));
    }

    [Fact]
    public async Task The_crow_that_was_meant_takes_the_place_of_the_one_that_was_said()
    {
        var (scene, teacher) = await Open("Svana", Permission.TakeRisks);
        using var _ = teacher;
        (await (await Line(teacher, scene)).Set("Text", "crow is D").Post()).Dispose();

        using var saved = await (await Line(teacher, scene)).Set("Text", "correction, the crow is C not D").Post();

        Assert.Equal("C", Assert.IsType<Domain.Bench.Test>(Assert.Single((await scene.Log()).Facts).Now).Pitch!.PitchClass.Name);
    }

    [Theory]
    [InlineData("scratch that last one")]
    [InlineData("take that back")]
    public async Task What_is_taken_back_in_words_goes_as_by_its_key(string text)
    {
        var (scene, teacher) = await Open($"Svenja{text.Length}", Permission.TakeRisks);
        using var _ = teacher;
        (await (await Line(teacher, scene)).Set("Text", "left corner too thick").Post()).Dispose();
        (await (await Line(teacher, scene)).Set("Text", "crow is D").Post()).Dispose();
        var sent = (await Line(teacher, scene)).Set("Text", text).Set("Operation", Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString());

        using var saved = await sent.Post();
        using var again = await sent.Post();

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.Created), (saved.StatusCode, again.StatusCode));
        using var told = JsonDocument.Parse(await saved.Content.ReadAsStringAsync(Ct));
        Assert.Equal("Taken back: crow, a D: 200 cents above C", told.RootElement.GetProperty("whole").GetString());
        var log = await scene.Log();
        Assert.Equal([FactState.Live, FactState.TakenBack], log.Facts.Select(fact => fact.State));
    }

    [Fact]
    public async Task What_a_colleague_said_is_not_taken_back_in_words()
    {
        var (scene, teacher) = await Open("Swantje", Permission.TakeRisks);
        using var _ = teacher;
        await scene.Say(BenchScene.Value(Note.Of("mine")));

        using var saved = await (await Line(teacher, scene)).Set("Text", "scratch that").Post();

        Assert.Equal([EntryKind.Note, EntryKind.Note], (await scene.Log()).Facts.Select(fact => fact.Kind));
        Assert.All((await scene.Log()).Facts, fact => Assert.Equal(FactState.Live, fact.State));
    }

    [Fact]
    public async Task What_the_card_named_is_meant_and_nothing_that_was_said_meanwhile()
    {
        var (scene, teacher) = await Open("Sunna", Permission.TakeRisks);
        using var _ = teacher;
        using var first = await (await Line(teacher, scene)).Set("Text", "remember the low shelf").Post();
        var shown = (await scene.Log()).Facts[^1];
        using var second = await (await Line(teacher, scene)).Set("Text", "remember the lamp").Post();

        using var refused = await (await Line(teacher, scene)).Set("Text", "scratch that").Set("Meant", shown.Tail.Value.ToString()).Post();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Equal(2, (await scene.Log()).Live<Note>().Count());
    }

    [Fact]
    public async Task What_a_colleague_said_last_is_not_put_right_in_passing()
    {
        var (scene, teacher) = await Open("Sunniva", Permission.TakeRisks);
        using var _ = teacher;
        await scene.Say(BenchScene.Value(Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners, Blades.Lower, Sides.Right), new Amount(2))));

        using var saved = await (await Line(teacher, scene)).Set("Text", "sorry meant upper").Post();

        Assert.Equal([EntryKind.Adjustment, EntryKind.Note], (await scene.Log()).Facts.Select(fact => fact.Kind));
    }

    [Fact]
    public async Task In_a_correction_the_blade_alone_changes_the_blade_and_a_remark_never_takes_the_place_of_work()
    {
        var (scene, teacher) = await Open("Svea", Permission.TakeRisks);
        using var _ = teacher;
        var work = await scene.Say(BenchScene.Value(Adjustment.Of(new("thin-corners"), new Place(Zone.TipCorners, Blades.Lower, Sides.Right), new Amount(2))));
        var line = await Line(teacher, scene);

        using var refused = await Correct(line, work, "hm, I wonder about that").Post();
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("Only a remark was understood", await refused.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);

        using var saved = await Correct(line, work, "sorry meant upper").Post();
        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        Assert.Equal(new Place(Zone.TipCorners, Blades.Upper, Sides.Right), Assert.Single((await scene.Log()).Live<Adjustment>()).Now.Place);
    }

    private static Form Press(Form form, string say) =>
        JsonSerializer.Deserialize<Dictionary<string, string>>(say)!.Aggregate(form, (sent, field) => sent.Set(field.Key, field.Value));

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
