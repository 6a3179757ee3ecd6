using CsCheck;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Reeds.Drawing;

namespace ReedClinic.Domain.Tests.Reeds.Drawing;

/// <summary>Where several things are marked on one place, each is seen.</summary>
public sealed class SharedPlaceTests
{
    // What is drawn is rounded to a tenth of a unit: of so many points one may lie on a border.
    private const int Border = 30;

    private static readonly BladeArt Art = BladeArt.For(ScrapeStyle.LongScrape, Instrument.Oboe);

    private static readonly Gen<ReedMark[]> Crowded = Gen.Select(
        Gen.Enum<Zone>(), Gen.Enum<Sides>(), Gen.Enum<Sides>(), Gen.Enum<MarkKind>(), Gen.Enum<MarkKind>(), (zone, one, other, kind, second) => new[]
        {
            new ReedMark(new Place(zone, Blades.Both, one), kind, "one"),
            new ReedMark(new Place(zone, Blades.Both, other), second, "other"),
        });

    [Fact]
    public void What_is_marked_alone_or_with_the_same_sign_has_the_whole_place()
    {
        ReedMark[] faults = [Mark(Zone.HeartCentre, MarkKind.Fault), Mark(Zone.HeartCentre, MarkKind.Fault), Mark(Zone.Rails, MarkKind.Worked)];

        Assert.Equal(Art.Shapes(Zone.HeartCentre), SharedPlace.Shapes(Art, faults[0], faults));
        Assert.Equal(Art.Shapes(Zone.Rails), SharedPlace.Shapes(Art, faults[2], faults));
    }

    [Theory]
    [InlineData(Zone.HeartCentre)]
    [InlineData(Zone.TipEdge)]
    [InlineData(Zone.TipCorners)]
    [InlineData(Zone.Windows)]
    [InlineData(Zone.Transition)]
    [InlineData(Zone.Thread)]
    public void A_place_that_was_found_and_worked_is_shared_out_and_nothing_of_it_is_lost(Zone zone)
    {
        ReedMark[] marks = [Mark(zone, MarkKind.Fault), Mark(zone, MarkKind.Worked)];
        var (found, worked) = (SharedPlace.Shapes(Art, marks[0], marks), SharedPlace.Shapes(Art, marks[1], marks));

        Assert.Empty(found.Select(shape => shape.Path).Intersect(worked.Select(shape => shape.Path)));
        Assert.All(found.Zip(worked, Art.Shapes(zone)), both =>
        {
            var (one, other, whole) = both;
            var points = Grid(whole.Shape).ToList();
            Assert.InRange(points.Count(point => Within(one, point) == Within(other, point)), 0, points.Count / Border);
            Assert.InRange(points.Count(point => Within(one, point)), points.Count / 4, points.Count * 3 / 4);
        });
    }

    [Fact]
    public void Two_signs_never_lie_over_each_other_and_each_number_points_into_its_own() =>
        Crowded.Sample(
            marks =>
            {
                var layout = new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Print, marks, Instrument.Oboe);
                if (marks[0].Kind == marks[1].Kind || marks[0].Place.Zone == Zone.Wire)
                {
                    return;
                }

                var shapes = marks.Select(mark => layout.Shapes(Blades.Upper, mark)).ToList();
                var points = shapes[0].SelectMany(shape => Grid(shape.Shape)).Where(point => shapes[0].Any(shape => Within(shape, point))).ToList();
                Assert.InRange(points.Count(point => shapes[1].Any(shape => Within(shape, point))), 0, points.Count / Border);
                Assert.All(layout.Discs.Where(disc => disc.X != disc.TieX && disc.TieY > layout.TipY + 1), disc =>
                {
                    var middle = Math.Abs(disc.TieX - layout.UpperX) < Math.Abs(disc.TieX - layout.LowerX) ? layout.UpperX : layout.LowerX;
                    var tie = new MmPoint((disc.TieX - middle) / SvgPath.Scale, (disc.TieY - layout.TipY) / SvgPath.Scale);
                    Assert.DoesNotContain(shapes[2 - disc.Number], shape => Within(shape, tie));
                });
            },
            iter: 300);

    [Fact]
    public void On_paper_as_on_the_screen()
    {
        ReedMark[] marks = [Mark(Zone.HeartCentre, MarkKind.Fault), Mark(Zone.HeartCentre, MarkKind.Worked)];
        var paths = ReedSketch.Of(marks, ScrapeStyle.LongScrape, Instrument.Oboe, "A reed").Parts.OfType<SketchPath>().ToList();

        Assert.All(marks, mark => Assert.Equal(2, paths.Count(path => path.Data == SharedPlace.Shapes(Art, mark, marks)[0].Path)));
    }

    private static ReedMark Mark(Zone zone, MarkKind kind) => new(new Place(zone), kind, "so it is");

    private static IEnumerable<MmPoint> Grid(Outline shape) =>
        from i in Enumerable.Range(0, 23)
        from j in Enumerable.Range(0, 23)
        let point = new MmPoint(shape.Left + ((shape.Right - shape.Left) * (i + 0.4137) / 23), shape.Top + ((shape.Bottom - shape.Top) * (j + 0.4137) / 23))
        where shape.Contains(point)
        select point;

    // Reads a path as it is drawn: strips are several closed lines, and what is drawn is rounded to a tenth of a unit.
    private static bool Within(ZoneArt art, MmPoint point) => art.Path.Split('M', StringSplitOptions.RemoveEmptyEntries).Any(strip => new Outline(
        strip.TrimEnd('Z').Split(['L', ' ']).Select(at => at.Split(',')).Select(at => new MmPoint(Number(at[0]), Number(at[1])))).Contains(point));

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture) / SvgPath.Scale;
}
