using System.Net;
using System.Net.Http.Headers;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Web.Features.Bench;
using ReedClinic.Web.Features.Bench.Forms;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>What the student allowed is asked about before more is written down; the log can still tell the truth.</summary>
public sealed class PermissionTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Without_a_circuit_a_cut_on_a_reed_for_safe_changes_is_asked_about_and_saved_with_the_tick()
    {
        var scene = await BenchScene.Open(host, "Alva", "blue thread");
        using var teacher = await host.Teacher();

        using var refused = await (await Clip(teacher, scene)).Set("Words", "by a hair").Post();

        Assert.Empty((await scene.Log()).History);
        using var page = new HtmlParser().ParseDocument((await teacher.See(refused.Leads()!.Split('#')[0])).Page);
        Assert.Contains("safe changes only", page.GetElementById("f-Agreed-error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("f-Agreed-error", page.GetElementById("f-Agreed")!.GetAttribute("aria-describedby"));
        Assert.Equal("by a hair", page.GetElementById("f-Words")!.TextContent);

        using var saved = await (await Clip(teacher, scene)).Set("Words", "by a hair").Set("Agreed", "true").Post();
        Assert.Equal($"{scene.Page}#entry-1", saved.Leads());
        Assert.Equal("by a hair. Agreed with the student since.", Assert.Single((await scene.Log()).Live<Adjustment>()).Now.Words);
        Assert.Contains("Agreed with the student since.", (await teacher.See(scene.Page)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task In_the_fields_it_can_be_said_that_it_was_done_without_being_agreed()
    {
        var scene = await BenchScene.Open(host, "Bergljot", "blue thread");
        using var teacher = await host.Teacher();

        using var saved = await (await Clip(teacher, scene)).Set("Words", "by a hair").Set("Agreed", "not").Post();

        Assert.Equal($"{scene.Page}#entry-1", saved.Leads());
        var fact = Assert.Single((await scene.Log()).Facts);
        Assert.Equal("by a hair. Done without being agreed.", Assert.IsType<Adjustment>(fact.Now).Words);
        Assert.Equal(("not", "by a hair."), (EntryForm.FieldsOf(fact.Now)["Agreed"], EntryForm.FieldsOf(fact.Now)["Words"]));
    }

    [Fact]
    public async Task A_safe_change_on_a_reed_for_safe_changes_is_not_asked_about()
    {
        var scene = await BenchScene.Open(host, "Bodil", "blue thread");
        using var teacher = await host.Teacher();

        using var saved = await (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Adjustment").Set("AdjustmentKind", "soak").Post();

        Assert.Equal($"{scene.Page}#entry-1", saved.Leads());
    }

    [Fact]
    public async Task Over_a_circuit_an_adjustment_on_a_reed_for_advice_only_is_asked_about_and_saved_with_the_tick()
    {
        var scene = await BenchScene.Open(host, "Cilla", Permission.AdviseOnly, "blue thread");
        var (session, me) = await Session(scene);
        session.Choose(EntryKind.Adjustment);
        session.Form.Typed["AdjustmentKind"] = "clean-inside";

        await session.SaveAsync(me, Ct);

        Assert.Equal("Agreed", Assert.Single(session.Problems.All).Field);
        Assert.Null(session.Saved);
        Assert.Empty((await scene.Log()).History);

        session.Form.Typed["Agreed"] = "true";
        await session.SaveAsync(me, Ct);

        Assert.False(session.Problems.Any);
        Assert.Equal(Agreement.Since, Assert.Single((await scene.Log()).Live<Adjustment>()).Now.Words);

        // Said better, the tick is still there and the remark is as it was typed.
        session.Correct(session.View!.Log.Facts[0]);
        Assert.Equal(("true", ""), (session.Form.Typed["Agreed"], session.Form.Typed["Words"]));
    }

    [Fact]
    public async Task A_reed_that_was_not_in_the_parcel_has_a_sentence_and_no_form()
    {
        var scene = await BenchScene.Open(host, "Disa", "blue thread", "grey thread");
        using var teacher = await host.Teacher();
        teacher.DefaultRequestHeaders.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));
        var form = (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Note").Set("Words", "x");
        await scene.Arrive(1, new ReedArrival(Presence.Missing));

        using var page = new HtmlParser().ParseDocument((await teacher.See(scene.Page)).Page);
        using var refused = await form.Post();

        Assert.Empty(page.QuerySelectorAll("main form, main .log button, main .pressable"));
        Assert.DoesNotContain("Try it first", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll(".to-form"));
        Assert.Contains("wasn’t in the parcel", page.QuerySelector(".off-bench")!.TextContent, StringComparison.Ordinal);
        Assert.Equal($"/batches/{scene.Batch.Code}/arrival", page.QuerySelector(".off-bench a")!.GetAttribute("href"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Empty((await scene.Log()).History);
    }

    [Theory]
    [InlineData(Fitness.DryFirst)]
    [InlineData(Fitness.Mould)]
    public async Task A_reed_that_is_not_fit_leads_to_where_it_is_marked_fit(Fitness fitness)
    {
        var scene = await BenchScene.Open(host, "Elna", "blue thread");
        await scene.Arrive(1, new ReedArrival(Presence.Here, Fitness: fitness));
        using var teacher = await host.Teacher();

        using var page = new HtmlParser().ParseDocument((await teacher.See(scene.Page)).Page);

        Assert.Contains(FitnessWords.Of(fitness).WhatFollows, page.QuerySelector(".off-bench")!.TextContent, StringComparison.Ordinal);
        Assert.Equal($"/batches/{scene.Batch.Code}/arrival", page.QuerySelector(".off-bench a")!.GetAttribute("href"));
        Assert.NotEmpty(page.QuerySelectorAll("main form"));
    }

    private static async Task<Form> Clip(HttpClient teacher, BenchScene scene) =>
        (await Form.At(teacher, scene.Page, scene.Entries)).Set("Kind", "Adjustment").Set("AdjustmentKind", "clip");

    private async Task<(BenchSession Session, Actor Me)> Session(BenchScene scene)
    {
        var scope = host.Services.CreateAsyncScope();
        await using var _ = scope;
        var me = new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);
        var session = new BenchSession(
            scope.ServiceProvider.GetRequiredService<BenchBook>(), scope.ServiceProvider.GetRequiredService<BenchDraftBook>(), TimeProvider.System);
        await session.OpenAsync(me, scene.Reed, Ct);
        return (session, me);
    }
}
