using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.People;
using ReedClinic.Web.Features.Bench;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>One teacher at one reed over a circuit: what is half typed, and what a press answers.</summary>
public sealed class BenchSessionTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private readonly Actor me = new(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_typed_for_one_kind_is_there_again_after_another()
    {
        var session = await Open(await BenchScene.Open(host, "Arne", "blue thread"));
        session.Choose(EntryKind.Note);
        session.Form.Typed["Words"] = "half a thought";
        session.Choose(EntryKind.Test);
        session.Form.Typed["Words"] = "and a remark";

        session.Choose(EntryKind.Note);
        Assert.Equal("half a thought", session.Form.Typed["Words"]);
        session.Choose(EntryKind.Note);
        Assert.Equal("half a thought", session.Form.Typed["Words"]);
        session.Choose(EntryKind.Test);
        Assert.Equal("and a remark", session.Form.Typed["Words"]);
    }

    [Fact]
    public async Task A_correction_that_was_left_is_there_again_and_does_not_get_mixed_up_with_something_new()
    {
        var scene = await BenchScene.Open(host, "Bror", "blue thread");
        await scene.Say(BenchScene.Value(Note.Of("the thred is loose")));
        var session = await Open(scene);
        session.Choose(EntryKind.Note);
        session.Form.Typed["Words"] = "something new";
        session.Correct(session.View!.Log.Facts[0]);
        session.Form.Typed["Words"] = "the thread is";
        session.Choose(EntryKind.Note);
        Assert.Equal(("something new", null), (session.Form.Typed["Words"], session.Form.Seen));

        session.Correct(session.View!.Log.Facts[0]);
        Assert.Equal("the thread is", session.Form.Typed["Words"]);
        session.Form.Typed["Words"] = "the thread is loose";
        await session.SaveAsync(me, Ct);

        Assert.Equal("the thread is loose", Assert.Single((await scene.Log()).Live<Note>()).Now.Words);
        Assert.Equal(("something new", null), (session.Form.Typed["Words"], session.Form.Seen));
    }

    [Fact]
    public async Task What_is_saved_or_given_up_does_not_come_back_and_what_was_set_aside_outlives_a_reload()
    {
        var scene = await BenchScene.Open(host, "Ciro", "blue thread", "grey thread");
        var session = await Open(scene);
        session.Choose(EntryKind.Risk);
        session.Form.Typed["Words"] = "it may tear";
        session.Choose(EntryKind.Stopped);
        session.Form.Typed["Words"] = "given up";
        await session.GiveUpAsync(me, Ct);
        session.Choose(EntryKind.Note);
        session.Form.Typed["Words"] = "saved";
        await session.SaveAsync(me, Ct);
        Assert.Equal("", session.Form.Typed["Words"]);
        session.Choose(EntryKind.Stopped);
        Assert.Equal("", session.Form.Typed["Words"]);

        var again = await Open(scene);

        Assert.Equal((EntryKind.Risk, "it may tear"), (again.Form.Kind, again.Form.Typed["Words"]));
        Assert.Equal("", (await Open(scene, 2)).Form.Typed["Words"]);
    }

    [Theory]
    [InlineData(EntryKind.Note)]
    [InlineData(EntryKind.Stopped)]
    public async Task A_second_press_says_saved_and_nothing_else_and_writes_nothing_more(EntryKind kind)
    {
        var scene = await BenchScene.Open(host, "Dag", "blue thread");
        var session = await Open(scene);
        session.Choose(kind);
        session.Form.Typed["Words"] = "once";

        await session.SaveAsync(me, Ct);
        await session.SaveAsync(me, Ct);

        Assert.NotNull(session.Saved);
        Assert.False(session.Problems.Any);
        Assert.Single((await scene.Log()).History);
    }

    [Fact]
    public async Task A_refusal_is_never_said_together_with_saved()
    {
        var session = await Open(await BenchScene.Open(host, "Egil", "blue thread"));
        session.Choose(EntryKind.Note);
        session.Form.Typed["Words"] = "once";
        await session.SaveAsync(me, Ct);
        session.Form.Typed["Words"] = " ";

        await session.SaveAsync(me, Ct);

        Assert.True(session.Problems.Any);
        Assert.Null(session.Saved);
    }

    private async Task<BenchSession> Open(BenchScene scene, int number = 1)
    {
        var session = new BenchSession(host.Services.GetRequiredService<BenchBook>(), host.Services.GetRequiredService<BenchDraftBook>(), TimeProvider.System);
        Assert.True(await session.OpenAsync(me, scene.Batch.Reeds[number - 1].Id, Ct));
        return session;
    }
}
