using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>What the bench offers goes by what is known: tests before the knife on a reed that nobody has tried, and no question that was answered.</summary>
public sealed class BenchOffersTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_reed_that_nobody_has_tried_is_offered_tests_first_and_work_once_something_is_known()
    {
        var scene = await BenchScene.Open(host, "Vigdis", "blue thread");
        using var teacher = await host.Teacher();

        using var fresh = await Page(teacher, scene);
        await scene.Say(BenchScene.Value(Note.Of("a long case")));
        using var noted = await Page(teacher, scene);
        await scene.Say(BenchScene.Value(Finding.Of(new("tip-thick"), FindingCharacter.Taste, new Place(Zone.TipSides))));
        using var found = await Page(teacher, scene);

        Assert.Equal(("true", "crow"), Offered(fresh));
        Assert.Equal(("true", "crow"), Offered(noted));
        Assert.Equal("false", Offered(found).Tests);
        Assert.NotEqual("crow", Offered(found).First);
    }

    [Fact]
    public async Task Questions_that_a_sent_letter_answered_are_folded_and_say_so()
    {
        var scene = await BenchScene.Open(host, "Vilborg", "blue thread");
        using var teacher = await host.Teacher();
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            db.Add(new Question(new QuestionId(Parcel.NewOperation().Value), scene.Batch.Id, scene.Reed, 1, "Why is it slow?"));
            await db.SaveChangesAsync(Ct);
        }

        using var before = await Page(teacher, scene);
        await scene.Say(BenchScene.Value(Verdict.Of(VerdictKind.LeftAsItCame)));
        await host.SendLetter(scene.Batch.Code);
        using var after = await Page(teacher, scene);

        Assert.Null(before.GetElementById("answered"));
        Assert.Contains("Why is it slow?", before.QuerySelector("aside.complaint")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Why is it slow?", after.GetElementById("answered")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("answered in the letter", after.QuerySelector("#answered > summary")!.TextContent, StringComparison.Ordinal);
        Assert.False(after.GetElementById("answered")!.HasAttribute("open"));
    }

    private static async Task<IDocument> Page(HttpClient teacher, BenchScene scene) => new HtmlParser().ParseDocument((await teacher.See(scene.Page)).Page);

    private static (string? Tests, string? First) Offered(IDocument page) =>
        (page.QuerySelector("[data-bench-name=try]")!.GetAttribute("aria-pressed"), page.QuerySelector(".pick-list [data-bench-name=pick-1] span")?.TextContent);
}
