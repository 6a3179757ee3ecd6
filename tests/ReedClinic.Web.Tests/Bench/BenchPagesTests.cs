using System.Net;
using System.Net.Http.Headers;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>The bench as a plain page with plain posts: what holds while no circuit is up.</summary>
public sealed class BenchPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_page_has_the_complaint_the_permission_and_the_map_in_view()
    {
        var scene = await BenchScene.Open(host, "Birgit", "blue thread", "grey thread");
        using var teacher = await host.Teacher();

        var (status, page, _) = await teacher.See(scene.Page);

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("slow to speak", page, StringComparison.Ordinal);
        Assert.Contains("Safe changes only.", page, StringComparison.Ordinal);
        Assert.Contains("aria-label=\"sides of the heart, upper blade, left\"", page, StringComparison.Ordinal);
        Assert.Contains($"/bench/{scene.Batch.Reeds[1].Id.Value}", page, StringComparison.Ordinal);
        Assert.Contains("Nothing is written about this reed yet", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_posted_entry_is_saved_before_it_is_acknowledged_and_twice_is_once()
    {
        var scene = await BenchScene.Open(host, "Cato", "blue thread");
        using var teacher = await host.Teacher();
        var form = (await Form.At(teacher, scene.Page, scene.Entries)).Set("TestKind", "Crow").Set("Step", "0").Set("Pitch", "C -15");

        using var first = await form.Post();
        using var second = await form.Post();

        Assert.Equal((HttpStatusCode.SeeOther, $"{scene.Page}#entry-1"), (first.StatusCode, first.Leads()));
        Assert.Equal((HttpStatusCode.SeeOther, $"{scene.Page}#entry-1"), (second.StatusCode, second.Leads()));
        Assert.Equal("C -15", Assert.Single((await scene.Log()).Live<Domain.Bench.Test>()).Now.Pitch!.Text);
        Assert.Contains("15 cents below C", (await teacher.See(scene.Page)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_caller_that_asks_for_json_gets_the_entrys_id()
    {
        var scene = await BenchScene.Open(host, "Dorte", "blue thread");
        using var teacher = await host.Teacher();
        teacher.DefaultRequestHeaders.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));

        using var saved = await (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Note").Set("Words", "hello").Post();
        using var refused = await (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Note").Set("Words", " ").Post();

        Assert.Equal(HttpStatusCode.Created, saved.StatusCode);
        Assert.Contains($"{Assert.Single((await scene.Log()).History).Entry.Id.Value}", (await saved.Read()).Page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
    }

    [Fact]
    public async Task More_text_than_can_be_shown_again_is_refused_in_words_that_say_where_it_is()
    {
        var scene = await BenchScene.Open(host, "Dunja", "blue thread");
        using var teacher = await host.Teacher();

        using var answer = await (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Note").Set("Words", new string('a', 20_000)).Post();

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("one step back", (await answer.Read()).Page, StringComparison.Ordinal);
        Assert.Empty((await scene.Log()).History);
    }

    [Fact]
    public async Task A_post_with_an_empty_id_is_saved_like_any_other()
    {
        var scene = await BenchScene.Open(host, "Dagny", "blue thread");
        using var teacher = await host.Teacher();
        for (var i = 1; i <= 2; i++)
        {
            using var saved = await (await Form.At(teacher, scene.Page, scene.Entries))
                .Set("Kind", "Note").Set("Words", "hello").Set("Operation", Guid.Empty.ToString()).Post();
            Assert.Equal($"{scene.Page}#entry-{i}", saved.Leads());
        }

        teacher.DefaultRequestHeaders.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        using var told = await (await Form.At(teacher, scene.Page, scene.Entries))
            .Set("Kind", "Note").Set("Words", "hello").Set("Operation", Guid.Empty.ToString()).Post();
        Assert.Equal(HttpStatusCode.Created, told.StatusCode);
    }

    [Fact]
    public async Task Taking_back_says_so_when_the_last_entry_is_another_one_by_now()
    {
        var scene = await BenchScene.Open(host, "Ditte", "blue thread");
        await using var scope = host.Services.CreateAsyncScope();
        var me = new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);
        var book = scope.ServiceProvider.GetRequiredService<BenchBook>();
        var session = new BenchSession(book, scope.ServiceProvider.GetRequiredService<BenchDraftBook>(), TimeProvider.System);
        await book.RecordAsync(me, scene.Reed, BenchScene.Value(Note.Of("first")), Parcel.NewOperation(), Ct);
        await session.OpenAsync(me, scene.Reed, Ct);
        await book.RecordAsync(me, scene.Reed, BenchScene.Value(Note.Of("in another window")), Parcel.NewOperation(), Ct);

        await session.UndoAsync(me, Ct);

        Assert.Contains("Nothing was taken back", Assert.Single(session.Problems.All).Message, StringComparison.Ordinal);
        Assert.Equal(2, session.View!.Log.Live<Note>().Count());
        await session.UndoAsync(me, Ct);
        Assert.False(session.Problems.Any);
        Assert.Equal("first", Assert.Single(session.View!.Log.Live<Note>()).Now.Words);
    }

    [Fact]
    public async Task What_cannot_be_saved_comes_back_as_it_was_typed_with_its_problem_beside_it()
    {
        var scene = await BenchScene.Open(host, "Eskil", "blue thread");
        using var teacher = await host.Teacher();

        using var answer = await (await Form.At(teacher, scene.Page, scene.Entries))
            .Set("TestKind", "Crow").Set("Pitch", "H minus a bit").Set("Words", "odd one").Post();
        var (_, page, _) = await teacher.See(answer.Leads()!.Split('#')[0]);

        Assert.Contains("value=\"H minus a bit\"", page, StringComparison.Ordinal);
        Assert.Contains("odd one", page, StringComparison.Ordinal);
        Assert.Contains("between B and C", page, StringComparison.Ordinal);
        Assert.Contains("aria-invalid=\"true\"", page, StringComparison.Ordinal);
        Assert.Empty((await scene.Log()).History);
    }

    [Fact]
    public async Task A_draft_is_each_teachers_own_and_goes_when_it_is_saved()
    {
        var scene = await BenchScene.Open(host, "Frida", "blue thread");
        using var one = await host.Teacher("Ilse");
        using var other = await host.Teacher("Jan");
        using var refused = await (await Form.At(one, scene.Page, scene.Entries)).Set("TestKind", "Crow").Set("Pitch", "nonsense").Post();

        Assert.Contains("nonsense", (await one.See(scene.Page)).Page, StringComparison.Ordinal);
        Assert.DoesNotContain("nonsense", (await other.See(scene.Page)).Page, StringComparison.Ordinal);

        using var saved = await (await Form.At(one, scene.Page, scene.Entries)).Set("Pitch", "C").Post();
        Assert.DoesNotContain("nonsense", (await one.See(scene.Page)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_teachers_on_one_reed_both_stand()
    {
        var scene = await BenchScene.Open(host, "Gro", "blue thread");
        using var one = await host.Teacher("Ilse");
        using var other = await host.Teacher("Jan");
        var first = (await Form.At(one, scene.Page, scene.Entries)).Set("Kind", "Note").Set("Words", "mine");
        var second = (await Form.At(other, scene.Page, scene.Entries)).Set("Kind", "Note").Set("Words", "and mine");

        using var a = await first.Post();
        using var b = await second.Post();

        Assert.Equal(["mine", "and mine"], (await scene.Log()).Live<Note>().Select(note => note.Now.Words));
    }

    [Fact]
    public async Task A_clash_over_one_wording_shows_both_and_keeps_what_was_typed()
    {
        var scene = await BenchScene.Open(host, "Hedda", "blue thread");
        var fact = await scene.Say(BenchScene.Value(Note.Of("first wording")));
        await scene.Correct(fact.Tail, BenchScene.Value(Note.Of("their wording")));
        using var teacher = await host.Teacher();

        using var answer = await (await Form.At(teacher, scene.Page, scene.Entries))
            .Set("Kind", "Note").Set("Seen", $"{fact.Tail.Value}").Set("Words", "my wording").Post();
        var (_, page, _) = await teacher.See(answer.Leads()!.Split('#')[0]);

        Assert.Contains("their wording", page, StringComparison.Ordinal);
        Assert.Contains("As you typed it</dt><dd>my wording", page, StringComparison.Ordinal);
        Assert.Contains("Save mine over it", page, StringComparison.Ordinal);
        Assert.Equal("their wording", Assert.Single((await scene.Log()).Live<Note>()).Now.Words);
    }

    [Fact]
    public async Task The_last_entry_can_be_taken_back()
    {
        var scene = await BenchScene.Open(host, "Iben", "blue thread");
        using var teacher = await host.Teacher();
        using var saved = await (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Note").Set("Words", "a slip").Post();

        using var undone = await (await Form.At(teacher, scene.Page, scene.Entries)).Without("Seen").Set("Kind", "Undo").Post();

        Assert.Equal(HttpStatusCode.SeeOther, undone.StatusCode);
        Assert.Empty((await scene.Log()).Live<Note>());
        Assert.Contains("taken back", (await teacher.See(scene.Page)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_map_shows_what_was_found_and_left_alone()
    {
        var scene = await BenchScene.Open(host, "Jorunn", "blue thread");
        await scene.Say(BenchScene.Value(LeaveAlone.Of(new Place(Zone.Spine), "good cane")));
        using var teacher = await host.Teacher();

        var (_, page, _) = await teacher.See(scene.Page);

        Assert.Contains("Leave alone, spine: good cane", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_but_those_who_work_here_comes_near_it()
    {
        var scene = await BenchScene.Open(host, "Kari", "blue thread");
        using var student = await host.Student("Kari");
        using var visitor = host.Visitor();
        using var teacher = await host.Teacher();
        var form = (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Note").Set("Words", "x");

        Assert.NotEqual(HttpStatusCode.OK, (await student.See(scene.Page)).Status);
        Assert.NotEqual(HttpStatusCode.OK, (await visitor.See(scene.Page)).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await teacher.See($"/bench/{Guid.Empty}")).Status);
        using var unsigned = await form.Without("__RequestVerificationToken").Post();
        Assert.Equal(HttpStatusCode.BadRequest, unsigned.StatusCode);
        Assert.Empty((await scene.Log()).History);
    }
}
