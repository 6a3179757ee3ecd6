using System.Net;
using System.Net.Http.Headers;
using AngleSharp.Html.Parser;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Tests.Hosting;
using static ReedClinic.Web.Tests.Bench.BenchScene;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>What was said aloud at the bench: beside its pass for the studio, and nobody else's until it goes with the letter.</summary>
public sealed class MemoPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_student_neither_hears_nor_sees_a_memo_unless_it_was_put_into_the_letter_that_was_sent()
    {
        var scene = await Open(host, "Wilma", "blue thread");
        using var student = await StudentOfAsync(scene);
        using var teacher = await host.Teacher();
        var (aloud, silent) = (await MemoAsync(scene), await MemoAsync(scene));

        using (var put = await (await Form.At(teacher, scene.Page, $"/recordings/{aloud}/letter")).Post())
        {
            Assert.Equal(scene.Page, put.Leads());
        }

        Assert.Empty(await SeenAsync(student, scene, aloud, silent));
        Assert.Equal([aloud, silent], await HeardAsync(teacher, aloud, silent));

        await host.SendLetter(scene.Batch.Code);

        Assert.Equal([aloud], (await SeenAsync(student, scene, aloud, silent)).Distinct());
        Assert.Equal([aloud], await HeardAsync(student, aloud, silent));
        Assert.Contains("Said at the bench", (await student.See($"/letters/{scene.Batch.Code}")).Page, StringComparison.Ordinal);
        Assert.Empty(await HeardAsync(await host.Student("Tove"), aloud, silent));
    }

    [Fact]
    public async Task A_memo_stands_beside_the_pass_in_which_it_was_made()
    {
        var scene = await Open(host, "Jory", "blue thread");
        var empty = await MemoAsync(scene);
        using var teacher = await host.Teacher();
        Assert.Contains($"src=\"/recordings/{empty}\"", (await teacher.See(scene.Page)).Page, StringComparison.Ordinal);

        await scene.Say(Value(Test.Of(TestKind.Crow, 0)));
        await scene.Say(Value(Adjustment.Of(new AdjustmentKindId("thin-corners"), new Place(Zone.TipCorners), new Amount(Strokes: 2))));
        await scene.Say(Value(Test.Of(TestKind.Crow, 1)));
        var worked = await MemoAsync(scene, 3);

        Assert.Equal(["pass-0"], await PlacesAsync(teacher, scene, empty));
        Assert.Equal(["pass-1"], await PlacesAsync(teacher, scene, worked));
    }

    [Fact]
    public async Task What_goes_with_a_letter_that_was_sent_stays_and_a_script_is_told_why()
    {
        var scene = await Open(host, "Ines", "blue thread");
        var memo = await MemoAsync(scene);
        using var teacher = await host.Teacher();
        var form = await Form.At(teacher, scene.Page, $"/recordings/{memo}/letter");
        teacher.DefaultRequestHeaders.Accept.Add(new MediaTypeWithQualityHeaderValue("application/json"));

        Assert.Equal(HttpStatusCode.NoContent, (await form.Post()).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await form.Set("In", "false").Set("Operation", Parcel.NewOperation().Value.ToString()).Post()).StatusCode);
        await host.SendLetter(scene.Batch.Code);
        using var late = await form.Set("In", "true").Set("Operation", Parcel.NewOperation().Value.ToString()).Post();

        Assert.Equal(HttpStatusCode.UnprocessableEntity, late.StatusCode);
        Assert.Contains("The letter was sent", await late.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        teacher.DefaultRequestHeaders.Accept.Clear();
        Assert.DoesNotContain($"/recordings/{memo}/letter", (await teacher.See(scene.Page)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_key_stands_on_the_bench_of_a_reed_that_can_be_worked_on_with_the_time_it_may_take()
    {
        var scene = await Open(host, "Sanne", "blue thread");
        using var teacher = await host.Teacher();

        using var page = new HtmlParser().ParseDocument((await teacher.See(scene.Page)).Page);
        var memo = Assert.Single(page.QuerySelectorAll("[data-memo]"));

        Assert.Equal((scene.Reed.Value.ToString(), "600"), (memo.GetAttribute("data-of"), memo.GetAttribute("data-most")));
        Assert.Equal("m", memo.QuerySelector("[data-bench-name=memo]")!.GetAttribute("data-bench-key"));
    }

    private async Task<HttpClient> StudentOfAsync(BenchScene scene)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var student = await scope.ServiceProvider.GetRequiredService<ClinicDb>().Set<Student>().SingleAsync(row => row.Id == scene.Batch.Student, Ct);
        return await host.SignedIn(student.Account!.Value);
    }

    private async Task<Guid> MemoAsync(BenchScene scene, int at = 0) =>
        (await RecordingParcel.KeepAsync(host, scene.Reed, RecordingKind.VoiceMemo, default, isFromStudio: true, at: at)).Id.Value;

    // Every page on which a student might come across one.
    private static async Task<List<Guid>> SeenAsync(HttpClient student, BenchScene scene, params Guid[] memos)
    {
        var seen = new List<Guid>();
        foreach (var path in new[] { "/", $"/batches/{scene.Batch.Code}", $"/letters/{scene.Batch.Code}", "/privacy", scene.Page })
        {
            var (_, page, _) = await student.See(path);
            seen.AddRange(memos.Where(memo => page.Contains(memo.ToString(), StringComparison.OrdinalIgnoreCase)));
        }

        return seen;
    }

    private static async Task<List<Guid>> HeardAsync(HttpClient client, params Guid[] memos)
    {
        var heard = new List<Guid>();
        foreach (var memo in memos)
        {
            var (status, _, _) = await client.See($"/recordings/{memo}");
            Assert.True(status is HttpStatusCode.OK or HttpStatusCode.NotFound, $"{status}");
            heard.AddRange(status == HttpStatusCode.OK ? [memo] : []);
        }

        return heard;
    }

    private static async Task<List<string?>> PlacesAsync(HttpClient teacher, BenchScene scene, Guid memo)
    {
        using var page = new HtmlParser().ParseDocument((await teacher.See(scene.Page)).Page);
        return [.. page.QuerySelectorAll($".pass:has(audio[src='/recordings/{memo}'])").Select(pass => pass.GetAttribute("aria-labelledby"))];
    }
}
