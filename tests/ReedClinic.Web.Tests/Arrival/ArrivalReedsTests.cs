using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Domain.Intake;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Arrival;

/// <summary>Several reeds under each other on the page of an arrival are told from each other.</summary>
public sealed class ArrivalReedsTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task Each_reed_that_is_not_said_to_be_fit_is_named_once()
    {
        using var student = await host.Student("Wobbe");
        var parcel = await host.Announce("Wobbe", "black thread", "white thread", "brown thread");
        using var teacher = await host.Teacher();

        var form = await Form.At(teacher, $"/batches/{parcel.Batch.Code}/arrival");
        form.Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[1].Fitness", "Fit").Set("Form.Reeds[2].Presence", "Here").Set("Form.Reeds[3].Presence", "Here");
        using var answer = await form.Post();
        using var page = new HtmlParser().ParseDocument((await answer.Read()).Page);

        Assert.Equal(
            ["Reed 2: say whether it is fit to handle before it goes any further.", "Reed 3: say whether it is fit to handle before it goes any further."],
            page.QuerySelectorAll(".problems li").Select(line => line.TextContent.Trim()));
    }

    [Theory]
    [InlineData("None", 0)]
    [InlineData("UpperToTheLeft", -1)]
    [InlineData("UpperToTheRight", 1)]
    public async Task Each_overlap_is_drawn_as_it_is_named(string overlap, int side)
    {
        using var student = await host.Student("Jelle" + overlap);
        var parcel = await host.Announce("Jelle" + overlap, "black thread");
        using var teacher = await host.Teacher();
        using var page = new HtmlParser().ParseDocument((await teacher.See($"/batches/{parcel.Batch.Code}/arrival")).Page);

        var choice = page.QuerySelector($"input[name='Form.Reeds[1].Overlap'][value='{overlap}']")!;
        var drawing = choice.Closest("label")!.QuerySelector("svg.overlap-drawing")!;
        Assert.Equal(side, Math.Sign(Begins(drawing, ".upper") - Begins(drawing, ".under")));
    }

    // Where a blade’s line begins, from the left.
    private static int Begins(IElement drawing, string blade) =>
        int.Parse(drawing.QuerySelector(blade)!.GetAttribute("d")!.TrimStart('M').Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public async Task What_is_ticked_while_an_unannounced_reed_is_added_is_not_called_unsaid()
    {
        using var student = await host.Student("Aukje");
        var parcel = await host.Announce("Aukje", "olive thread", "amber thread", "silver thread");
        using var teacher = await host.Teacher();
        var path = $"/batches/{parcel.Batch.Code}/arrival";

        var form = (await Form.At(teacher, path)).Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[3].Presence", "Missing");
        using var added = await form.Set("Form.Extra.HowToRecognise", "bare cork").Set("Form.Step", "extra").Post();
        using var ticked = new HtmlParser().ParseDocument((await added.Read()).Page);
        using var anew = new HtmlParser().ParseDocument((await teacher.See(path)).Page);

        Assert.Equal("Not said yet whether it is in the parcel: Reed 2.", Line(ticked, "Not said yet"));
        Assert.Equal("Ticked below, and not saved yet: Reed 1, Reed 3.", Line(ticked, "Ticked below"));
        Assert.Equal("Not said yet whether it is in the parcel: Reed 1, Reed 2, Reed 3.", Line(anew, "Not said yet"));
        Assert.Null(Line(anew, "Ticked below"));
    }

    private static string? Line(IDocument page, string begins) => page.QuerySelectorAll("section[aria-live] p")
        .Select(line => string.Join(' ', line.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Replace(" ,", ",", StringComparison.Ordinal))
        .SingleOrDefault(line => line.StartsWith(begins, StringComparison.Ordinal));

    [Fact]
    public async Task Reeds_that_can_be_taken_for_each_other_say_so_and_each_shows_how_far_one_may_go()
    {
        using var student = await host.Student("Hylke");
        var parcel = await host.Announce("Hylke", "red thread", "red thread, and I bit the corner", "blue thread");
        using var teacher = await host.Teacher();

        using var page = new HtmlParser().ParseDocument((await teacher.See($"/batches/{parcel.Batch.Code}/arrival")).Page);

        var reeds = page.QuerySelectorAll(".arrival-tag");
        Assert.Contains("taken for reed 2 (“red thread, and I bit the corner”)", Assert.Single(reeds[0].QuerySelectorAll(".alike")).TextContent, StringComparison.Ordinal);
        Assert.Contains("taken for reed 1 (“red thread”)", Assert.Single(reeds[1].QuerySelectorAll(".alike")).TextContent, StringComparison.Ordinal);
        Assert.Empty(reeds[2].QuerySelectorAll(".alike"));
        Assert.Equal(parcel.Batch.Reeds.Select(reed => Said(reed.Permission)), reeds.Select(reed => reed.QuerySelector(".permission")?.TextContent));
    }

    private static string Said(Permission permission) => permission switch
    {
        Permission.AdviseOnly => "Advise only",
        Permission.SafeChangesOnly => "Safe changes only",
        _ => "Risks allowed",
    };
}
