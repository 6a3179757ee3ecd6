using System.Globalization;
using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Reeds.Drawing;
using ReedClinic.Web.Shared.ReedMap;

namespace ReedClinic.Web.Tests.ReedMaps;

public sealed class ReedMapTests : BunitContext
{
    private static readonly ReedMark HeartFault = new(new Place(Zone.HeartCentre, Blades.Lower), MarkKind.Fault, "flat across", "by finger");

    public ReedMapTests() => Services.AddLocalization();

    [Fact]
    public void The_drawing_has_a_title_and_says_in_words_what_it_shows()
    {
        var map = Draw([HeartFault]);

        var svg = map.Find("svg");
        Assert.Equal("img", svg.GetAttribute("role"));
        Assert.Equal("reed-map-title reed-map-desc", svg.GetAttribute("aria-labelledby"));
        Assert.Contains("Found, centre of the heart, lower blade: flat across", map.Find("#reed-map-desc").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_mark_is_a_line_of_the_list_with_its_kind_in_a_word()
    {
        var kinds = Enum.GetValues<MarkKind>();
        var map = Draw([.. kinds.Select(k => new ReedMark(new Place(Zone.Bark), k, "so it is"))]);

        var lines = map.FindAll(".mark-list li");
        Assert.Equal(kinds.Length, lines.Count);
        Assert.Equal(kinds.Length, lines.Select(l => l.QuerySelector("strong")!.TextContent).Distinct().Count());
    }

    [Fact]
    public void A_mark_is_drawn_by_the_outline_of_its_own_zone_on_its_own_blade_and_side()
    {
        var map = Draw([new ReedMark(new Place(Zone.Windows, Blades.Upper, Sides.Left), MarkKind.Worked, "blended")]);

        var drawn = Assert.Single(map.FindAll("g.blade path.mark"));
        Assert.Equal("url(#reed-map-worked)", drawn.GetAttribute("fill"));
        Assert.Equal(BladeArt.For(ScrapeStyle.LongScrape).Shapes(Zone.Windows, Sides.Left)[0].Path, drawn.GetAttribute("d"));
        Assert.Contains("upper blade", drawn.ParentElement!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mark_for_both_blades_and_sides_is_drawn_four_times_where_the_zone_has_two_parts()
    {
        var map = Draw([new ReedMark(new Place(Zone.TipSides), MarkKind.Worked, "thinned")]);

        Assert.Equal(4, map.FindAll("g.blade path.mark").Count);
        Assert.Equal(4, map.FindAll(".disc").Count);
    }

    [Theory]
    [InlineData(1, "worked")]
    [InlineData(2, "worked-2")]
    [InlineData(3, "worked-3")]
    [InlineData(9, "worked-3")]
    public void The_more_passes_a_place_was_worked_on_the_closer_its_strokes_lie(int times, string pattern)
    {
        var map = Draw([new ReedMark(new Place(Zone.Windows, Blades.Upper, Sides.Left), MarkKind.Worked, "blended", Times: times)]);

        Assert.Equal($"url(#reed-map-{pattern})", Assert.Single(map.FindAll("g.blade path.mark")).GetAttribute("fill"));
        Assert.NotNull(map.Find($"#reed-map-{pattern}"));
    }

    [Theory]
    [InlineData(MarkKind.Fault, "Suspected:")]
    [InlineData(MarkKind.Strength, "Good, perhaps:")]
    [InlineData(MarkKind.Taste, "Taste, perhaps:")]
    public void What_is_only_suspected_has_a_pattern_an_edge_and_a_word_of_its_own_on_the_drawing_and_in_the_list(MarkKind kind, string word)
    {
        var name = kind.ToString().ToLowerInvariant();
        var map = Draw([
            new ReedMark(new Place(Zone.Windows, Blades.Upper, Sides.Left), kind, "thin") { Suspected = true },
            new ReedMark(new Place(Zone.Opening), kind, "wide") { Suspected = true },
            new ReedMark(new Place(Zone.Windows, Blades.Lower, Sides.Left), kind, "thin")]);

        Assert.Equal([$"url(#reed-map-{name}-suspected)", $"url(#reed-map-{name})"], map.FindAll("g.blade path.mark").Select(path => path.GetAttribute("fill")));
        Assert.Equal($"url(#reed-map-{name}-suspected)", map.Find("g.end-view path.mark").GetAttribute("fill"));
        Assert.Equal([true, false], map.FindAll("g.blade path.mark").Select(path => path.ClassList.Contains("suspected")));
        Assert.NotNull(map.Find($"pattern#reed-map-{name}-suspected"));
        Assert.Equal([$"url(#reed-map-{name}-suspected)", $"url(#reed-map-{name}-suspected)", $"url(#reed-map-{name})"], map.FindAll(".mark-list .mark-swatch rect").Select(rect => rect.GetAttribute("fill")));
        Assert.Equal([word, word], map.FindAll(".mark-list li strong").Take(2).Select(strong => strong.TextContent));
        Assert.NotEqual(word, map.FindAll(".mark-list li strong")[2].TextContent);
    }

    [Fact]
    public void Left_and_right_are_said_on_each_blade_as_its_own_face_is_seen() =>
        Assert.Equal(["left", "right", "left", "right"], Draw([]).FindAll("text.blade-side").Select(text => text.TextContent));

    [Fact]
    public void The_number_of_what_is_about_the_whole_reed_stands_behind_those_words()
    {
        var map = Draw([new ReedMark(new Place(Zone.WholeReed), MarkKind.Worked, "soaked"), HeartFault]);

        var words = Assert.Single(map.FindAll("text.of-the-reed"));
        Assert.Equal("whole reed", words.TextContent);
        var number = map.FindAll("text.disc-number").Single(text => text.TextContent == "1");
        Assert.Equal(17, double.Parse(number.GetAttribute("x")!, CultureInfo.InvariantCulture) - double.Parse(words.GetAttribute("x")!, CultureInfo.InvariantCulture), 0.2);
        Assert.Empty(Draw([HeartFault]).FindAll("text.of-the-reed"));
    }

    [Fact]
    public void A_zone_that_this_scrape_does_not_have_is_told_in_the_list()
    {
        var map = Render<ReedMap>(p => p.Add(m => m.Marks, [new ReedMark(new Place(Zone.Windows), MarkKind.Fault, "thin")]).Add(m => m.Style, ScrapeStyle.ShortScrape));

        Assert.Empty(map.FindAll("g.blade path.mark"));
        Assert.EndsWith("windows: thin. The drawing of a short scrape has no windows: they would lie behind the heart, left and right of the middle, where bark is drawn.", map.Find(".mark-list li").TextContent.Trim(), StringComparison.Ordinal);
        Assert.Contains("has no windows", map.Find("#reed-map-desc").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unmarked_reed_says_so() => Assert.Contains("Nothing is marked", Draw([]).Find("figcaption").TextContent, StringComparison.Ordinal);

    [Fact]
    public void Zones_are_buttons_with_names_only_where_they_can_be_chosen()
    {
        Place? chosen = null;
        var map = Render<ReedMap>(p => p.Add(m => m.ZoneChosen, (Place place) => chosen = place));

        Assert.Empty(Draw([]).FindAll("[role=button]"));
        var zones = map.FindAll("[role=button]");
        Assert.All(zones, z => Assert.NotNull(z.GetAttribute("tabindex")));
        Assert.All(zones, z => Assert.False(string.IsNullOrEmpty(z.GetAttribute("aria-label"))));
        Assert.Equal(zones.Count, zones.Select(z => z.GetAttribute("aria-label")).Distinct().Count());
        map.Find("[aria-label='sides of the heart, lower blade, right']").Click();
        Assert.Equal(new Place(Zone.HeartSides, Blades.Lower, Sides.Right), chosen);
    }

    [Theory]
    [InlineData("Enter", true)]
    [InlineData(" ", true)]
    [InlineData("x", false)]
    public void A_zone_can_be_chosen_by_key(string key, bool choosing)
    {
        Place? chosen = null;
        var map = Render<ReedMap>(p => p.Add(m => m.ZoneChosen, (Place place) => chosen = place));

        map.Find("[aria-label='rooftop, upper blade, left']").KeyDown(new KeyboardEventArgs { Key = key });

        Assert.Equal(choosing ? new Place(Zone.Rooftop, Blades.Upper, Sides.Left) : null, chosen);
    }

    [Fact]
    public void The_chosen_zone_is_pressed()
    {
        var map = Render<ReedMap>(p => p.Add(m => m.ZoneChosen, (Place _) => { }).Add(m => m.Chosen, new Place(Zone.Rails, Blades.Upper)));

        Assert.Equal(2, map.FindAll("[aria-pressed=true]").Count);
    }

    [Fact]
    public void An_icon_is_one_image_whose_name_tells_its_state()
    {
        var icon = Render<ReedMap>(p => p.Add(m => m.Size, ReedMapSize.Icon).Add(m => m.Marks, [HeartFault]));

        Assert.Contains("flat across", icon.Find("svg").GetAttribute("aria-label"), StringComparison.Ordinal);
        Assert.Empty(icon.FindAll("figcaption, .disc, [tabindex]"));
    }

    [Fact]
    public void Two_maps_on_a_page_use_their_own_patterns()
    {
        var map = Render<ReedMap>(p => p.Add(m => m.Id, "second").Add(m => m.Marks, [HeartFault]));

        Assert.NotNull(map.Find("#second-fault"));
        Assert.Equal("url(#second-fault)", map.Find("g.blade path.mark").GetAttribute("fill"));
    }

    [Fact]
    public void What_a_teacher_typed_is_text_and_never_markup()
    {
        var map = Draw([HeartFault with { Words = "<script>alert(1)</script>" }]);

        Assert.Empty(map.FindAll("script"));
    }

    [Fact]
    public void A_mark_at_any_place_of_any_instruments_reed_is_drawn_or_told_and_breaks_nothing()
    {
        foreach (var instrument in Enum.GetValues<Instrument>())
        {
            foreach (var zone in Enum.GetValues<Zone>())
            {
                var map = Render<ReedMap>(p => p.Add(m => m.Marks, [new ReedMark(new Place(zone), MarkKind.Fault, "so it is")]).Add(m => m.Instrument, instrument));

                Assert.Contains("so it is", Assert.Single(map.FindAll(".mark-list li")).TextContent, StringComparison.Ordinal);
            }
        }
    }

    private IRenderedComponent<ReedMap> Draw(IReadOnlyList<ReedMark> marks) => Render<ReedMap>(p => p.Add(m => m.Marks, marks));
}
