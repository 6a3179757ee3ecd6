using System.Net;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>What was noted as damaged when a reed arrived stands above its bench, and becomes a finding of its log by one press.</summary>
public sealed class ArrivalSeenTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private const string Chip = "tiny chip at the left corner, upper blade";

    [Fact]
    public async Task Damage_stands_at_the_top_of_its_reeds_bench_with_the_mark_of_the_upper_blade_and_on_no_other()
    {
        var scene = await Arrived("Sunnhild", Chip);
        using var teacher = await host.Teacher();

        var seen = (await Look(teacher, scene.Page)).QuerySelector(".complaint .arrival-seen")!;

        Assert.Contains(Chip, seen.TextContent, StringComparison.Ordinal);
        Assert.Contains("Upper blade: pencil dot", seen.TextContent, StringComparison.Ordinal);
        Assert.Null((await Look(teacher, $"/bench/{scene.Batch.Reeds[1].Id.Value}")).QuerySelector(".arrival-seen"));
    }

    [Fact]
    public async Task What_names_a_finding_is_noted_by_one_press_and_counts_as_seen_from_then_on()
    {
        var scene = await Arrived("Torhild", Chip);
        using var teacher = await host.Teacher();
        var thread = $"/batches/{scene.Batch.Code}/common-thread";
        Assert.Contains(Chip, (await Look(teacher, thread)).QuerySelector("#arrival-unnoted")!.ParentElement!.TextContent, StringComparison.Ordinal);
        await FoundOnTheSecondAsync(scene);
        Assert.Equal(["seen on arrival, not noted yet", "yes"], await Cells(teacher, thread));

        using var pressed = await Press(teacher, scene);

        Assert.Equal(HttpStatusCode.SeeOther, pressed.StatusCode);
        var found = Assert.Single((await scene.Log()).Live<Finding>()).Now;
        Assert.Equal((new FindingKindId("tip-corner-broken"), Blades.Upper, Sides.Left, Arose.AsItArrived), (found.FindingKind, found.Blades, found.Sides, found.Arose));
        var seen = (await Look(teacher, scene.Page)).QuerySelector(".arrival-seen")!;
        Assert.Contains(Chip, seen.TextContent, StringComparison.Ordinal);
        Assert.Empty(seen.QuerySelectorAll("button"));
        Assert.Equal(["yes", "yes"], await Cells(teacher, thread));
        Assert.Null((await Look(teacher, thread)).QuerySelector("#arrival-unnoted"));
    }

    [Theory]
    [InlineData("the case was damp", 0)]
    [InlineData("left corner chipped\nright corner chipped", 2)]
    public async Task Only_what_names_a_finding_can_be_noted_as_one(string damage, int findings)
    {
        var scene = await Arrived("Ragnfrid", damage);
        using var teacher = await host.Teacher();

        var seen = (await Look(teacher, scene.Page)).QuerySelector(".arrival-seen")!;

        Assert.Contains(damage.Replace("\n", "; ", StringComparison.Ordinal), seen.TextContent, StringComparison.Ordinal);
        var said = seen.QuerySelector("button")?.GetAttribute("data-say") ?? "[]";
        using var fields = JsonDocument.Parse(said);
        Assert.Equal(findings, fields.RootElement.GetArrayLength());
    }

    [Theory]
    [InlineData("tiny chip at the left corner, upper blade", "Upper")]
    [InlineData("A chip on the upper blade.", "Upper")]
    [InlineData("small chip at the tip of the upper blade", "Upper")]
    [InlineData("small chip in the tip, upper blade", "Upper")]
    [InlineData("Chip at the right tip corner. Upper blade.", "Upper")]
    [InlineData("chip at the tip on the upper blade, right corner", "Upper")]
    [InlineData("upper blade: small chip at the right corner", "Upper")]
    [InlineData("Upper blade has a small chip in the right corner", "Upper")]
    [InlineData("tiny chip on the upper blade, left corner", "Upper")]
    [InlineData("a small chip out of the tip, on the upper blade", "Upper")]
    [InlineData("one corner of the upper blade is chipped", "Upper")]
    [InlineData("corner chipped (upper blade)", "Upper")]
    [InlineData("Left corner chipped\nupper blade", "Upper")]
    [InlineData("crack in the tip of the lower blade", "Lower")]
    [InlineData("left corner chipped", "")]
    public async Task What_is_noted_of_one_blade_is_found_on_that_blade(string damage, string blade)
    {
        var scene = await Arrived("Gunnvor", damage);
        using var teacher = await host.Teacher();

        var said = (await Look(teacher, scene.Page)).QuerySelector(".arrival-seen button")!.GetAttribute("data-say")!;

        using var fields = JsonDocument.Parse(said);
        Assert.Equal(blade, Assert.Single(fields.RootElement.EnumerateArray()).TryGetProperty("Blades", out var named) ? named.GetString() : "");
    }

    [Fact]
    public async Task What_was_looked_for_and_is_not_there_is_not_offered()
    {
        var scene = await Arrived("Eydis", Chip);
        await scene.Say(BenchScene.Value(LookedFor.Of(new FindingKindId("tip-corner-broken"))));
        using var teacher = await host.Teacher();

        Assert.Empty((await Look(teacher, scene.Page)).QuerySelectorAll(".arrival-seen button"));
    }

    private async Task<BenchScene> Arrived(string student, string damage)
    {
        var scene = await BenchScene.Open(host, student, "red thread", "blue thread");
        await scene.Arrive(1, new ReedArrival(Presence.Here, "pencil dot", Damage: damage, Fitness: Fitness.Fit));
        return scene;
    }

    private async Task FoundOnTheSecondAsync(BenchScene scene)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var chipped = BenchScene.Value(Finding.Of(new FindingKindId("tip-corner-broken"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
        BenchScene.Value(await scope.ServiceProvider.GetRequiredService<BenchBook>().RecordAsync(
            new Actor(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false), scene.Batch.Reeds[1].Id, chipped, Parcel.NewOperation(), TestContext.Current.CancellationToken));
    }

    private static async Task<HttpResponseMessage> Press(HttpClient teacher, BenchScene scene)
    {
        var page = (await teacher.See(scene.Page)).Page;
        using var document = new HtmlParser().ParseDocument(page);
        using var fields = JsonDocument.Parse(document.QuerySelector(".arrival-seen button")!.GetAttribute("data-say")!);
        var form = Form.Of(teacher, scene.Page, page, $"{scene.Page}/line");
        foreach (var field in Assert.Single(fields.RootElement.EnumerateArray()).EnumerateObject())
        {
            form.Set(field.Name, field.Value.GetString()!);
        }

        return await form.Set("Operation", Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString()).PostTo(scene.Entries);
    }

    private static async Task<string[]> Cells(HttpClient teacher, string thread) =>
        [.. (await Look(teacher, thread)).QuerySelectorAll(".thread-sheet tbody tr").Single(row => row.QuerySelector("th")!.TextContent.StartsWith("Corner chipped", StringComparison.Ordinal)).QuerySelectorAll("td .sheet-mark").Select(cell => cell.TextContent.Trim())];

    private static async Task<IDocument> Look(HttpClient somebody, string address)
    {
        var (status, page, _) = await somebody.See(address);
        Assert.Equal(HttpStatusCode.OK, status);
        return await new HtmlParser().ParseDocumentAsync(page, TestContext.Current.CancellationToken);
    }
}
