using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Reeds.Drawing;

namespace ReedClinic.Domain.Tests.Reeds.Drawing;

/// <summary>Whatever is recorded of a place is found again beside its drawing.</summary>
public sealed class NotDrawnTests
{
    public static TheoryData<ScrapeStyle, Instrument?> Drawings =>
        [.. from style in Enum.GetValues<ScrapeStyle>() from instrument in Enum.GetValues<Instrument>().Select(one => (Instrument?)one).Prepend(null) select (style, instrument)];

    [Theory, MemberData(nameof(Drawings))]
    public void Every_place_has_its_number_on_the_drawing_or_words_that_say_it_is_not_on_it(ScrapeStyle style, Instrument? instrument) =>
        Assert.All(Places(), place =>
        {
            var mark = new ReedMark(place, MarkKind.Fault, "too thin", "pass 2");
            var line = ReedSketch.Line(mark, style, instrument);
            foreach (var size in new[] { ReedMapSize.Bench, ReedMapSize.Print })
            {
                var isDrawn = new MapLayout(style, size, [mark], instrument).Discs.Count > 0;
                Assert.Equal(isDrawn, NotDrawn.Of(place, style, instrument) is null);
                Assert.Equal(isDrawn, line.EndsWith("(pass 2)", StringComparison.Ordinal));
            }

            Assert.Matches(@"\(pass 2\)( \(not on the drawing\))?$", line);
            Assert.Equal(line.EndsWith(" (not on the drawing)", StringComparison.Ordinal), ReedSketch.Of([mark], style, instrument, "A reed").Description.Contains("(not on the drawing)", StringComparison.Ordinal));
        });

    [Fact]
    public void A_short_scrape_without_windows_says_in_a_letter_that_they_are_not_on_the_drawing()
    {
        var line = ReedSketch.Line(new ReedMark(new Place(Zone.Windows), MarkKind.Fault, "too thin.", null), ScrapeStyle.ShortScrape, Instrument.Oboe);

        Assert.Equal("Found: windows: too thin (not on the drawing)", line);
    }

    // The thread's top is where the cane ends; a number is 20.4 units wide.
    [Theory, MemberData(nameof(Drawings))]
    public void What_is_about_the_whole_reed_has_its_number_behind_those_words_and_never_by_the_thread(ScrapeStyle style, Instrument? instrument)
    {
        ReedMark[] marks = [.. Enumerable.Range(0, 9).Select(index => new ReedMark(new Place(Zone.WholeReed, index < 5 ? Blades.Both : index < 7 ? Blades.Upper : Blades.Lower), MarkKind.Taste, "bright"))];

        var layout = new MapLayout(style, ReedMapSize.Bench, marks, instrument);

        Assert.Equal(marks.Length, layout.Discs.Count);
        Assert.All(layout.Discs, disc => Assert.InRange(disc.Y, 10.2, layout.TipY - 40));
        Assert.Equal((layout.WholeReed!.Value.X + 17, layout.WholeReed.Value.Y), (layout.Discs[0].X, layout.Discs[0].Y));
        Assert.All(new MapLayout(style, ReedMapSize.Bench, [marks[5]], instrument).Discs, disc => Assert.True(disc.X < layout.UpperX));
        Assert.All(new MapLayout(style, ReedMapSize.Bench, [marks[8]], instrument).Discs, disc => Assert.True(disc.X > layout.LowerX));
    }

    private static IEnumerable<Place> Places() =>
        from zone in Enum.GetValues<Zone>() from blades in Enum.GetValues<Blades>() from side in Enum.GetValues<Sides>() select new Place(zone, blades, side);
}
