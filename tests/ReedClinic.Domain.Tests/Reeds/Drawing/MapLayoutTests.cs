using System.Globalization;
using CsCheck;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Reeds.Drawing;

namespace ReedClinic.Domain.Tests.Reeds.Drawing;

public sealed class MapLayoutTests
{
    private static readonly Gen<ReedMark[]> SomeMarks = Gen.Select(
        Gen.Enum<Zone>(), Gen.Enum<Blades>(), Gen.Enum<Sides>(), Gen.Enum<MarkKind>(), Gen.String[Gen.Char["abc defgh"], 1, 90])
        .Select((zone, blades, sides, kind, words) => new ReedMark(new Place(zone, blades, sides), kind, words, words)).Array[0, 12];

    private static readonly Zone[] AboutTheTip = [Zone.TipCentre, Zone.TipSides, Zone.Rooftop, Zone.Transition, Zone.HeartCentre, Zone.TipCorners];

    [Fact]
    public void Numbers_above_a_tip_keep_clear_of_the_words_above_it()
    {
        ReedMark[] corners = [new(new Place(Zone.TipCorners), MarkKind.Fault, "thick"), new(new Place(Zone.TipCorners), MarkKind.Worked, "thinned"), new(new Place(Zone.TipEdge), MarkKind.Worked, "clipped")];

        var layout = new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Print, corners);

        // The edge of a number lies 9.5 units from its middle; the names of the sides stand 32 units above the tip, and the air with them.
        Assert.All(layout.Discs.Where(disc => disc.Y < layout.TipY), disc => Assert.InRange(disc.Y - 9.5 - (layout.TipY - layout.Air - 32), 12, 60));
        Assert.Equal(0, new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Print, [new(new Place(Zone.HeartCentre), MarkKind.Strength, "kept")]).Air);
    }

    [Fact]
    public void Labels_never_overlap() =>
        SomeMarks.Sample(marks =>
        {
            foreach (var side in new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, marks).Labels.GroupBy(l => l.OnLeft))
            {
                var boxes = side.Select(l => (Top: l.Y - 15, Bottom: l.Y - 15 + (l.Lines.Count * MapLayout.LineHeight))).OrderBy(b => b.Top).ToList();
                Assert.All(boxes.Zip(boxes.Skip(1)), pair => Assert.True(pair.First.Bottom <= pair.Second.Top + 1e-6));
                Assert.All(boxes, box => Assert.True(box.Top >= 0 && box.Bottom <= new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, marks).Height + 1e-6, $"{box} leaves the drawing"));
            }
        });

    [Theory]
    [InlineData(ScrapeStyle.LongScrape, Instrument.Oboe, ReedMapSize.Bench)]
    [InlineData(ScrapeStyle.ShortScrape, Instrument.CorAnglais, ReedMapSize.Print)]
    public void Discs_never_overlap_stay_on_the_drawing_and_are_tied_to_their_place(ScrapeStyle style, Instrument instrument, ReedMapSize size) =>
        SomeMarks.Sample(
            marks =>
            {
                var layout = new MapLayout(style, size, marks, instrument);
                foreach (var (disc, index) in layout.Discs.Select((disc, index) => (disc, index)))
                {
                    Assert.All(layout.Discs.Skip(index + 1), other => Assert.True(Math.Sqrt(Math.Pow(disc.X - other.X, 2) + Math.Pow(disc.Y - other.Y, 2)) >= 22.4, $"{disc} covers {other}"));
                    Assert.True(disc.X >= 10.2 && disc.X <= layout.Width - 10.2 && disc.Y >= 10.2 && disc.Y <= layout.Height - 10.2, $"{disc} leaves the drawing");
                    Assert.True(IsTied(layout, disc, marks[disc.Number - 1]), $"{disc} belongs to {marks[disc.Number - 1].Place}");
                }
            },
            iter: 300);

    // It ends on its zone, or where the zone lies nearest on an edge.
    private static bool IsTied(MapLayout layout, Disc disc, ReedMark mark) =>
        MapLayout.IsEnd(mark.Place.Zone) ? Math.Abs(Math.Abs(disc.TieX - layout.End.X) - (3.3 * SvgPath.Scale)) < 1
        : new[] { layout.UpperX, layout.LowerX }
            .SelectMany(middle => layout.Art.Shapes(mark.Place.Zone == Zone.WholeReed ? Zone.Thread : mark.Place.Zone, mark.Place.Sides).Select(shape => (middle, shape.Shape)))
            .Any(one => disc.TieX >= one.middle + (one.Shape.Left * SvgPath.Scale) - 12 && disc.TieX <= one.middle + (one.Shape.Right * SvgPath.Scale) + 12
                && disc.TieY >= layout.TipY + (one.Shape.Top * SvgPath.Scale) - 75 && disc.TieY <= layout.TipY + (one.Shape.Bottom * SvgPath.Scale) + 75);

    [Fact]
    public void A_number_covers_no_thin_place_of_the_tip_and_lines_of_one_side_do_not_cross() =>
        Gen.Select(Gen.Int[0, AboutTheTip.Length - 1].Select(at => AboutTheTip[at]), Gen.Enum<Blades>(), Gen.Enum<Sides>())
            .Select((zone, blades, sides) => new ReedMark(new Place(zone, blades, sides), MarkKind.Fault, "words")).Array[1, 8].Sample(
            marks =>
            {
                var layout = new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Print, marks);
                var thin = layout.Discs.Where(disc => marks[disc.Number - 1].Place.Zone is Zone.TipCentre or Zone.TipSides or Zone.Rooftop or Zone.Transition).ToList();
                foreach (var disc in thin)
                {
                    Assert.All(new[] { layout.UpperX, layout.LowerX }, middle => Assert.True(Math.Abs(disc.X - middle) >= layout.Reach + 10, $"{disc} lies on a blade"));
                    Assert.All(thin.Where(other => Math.Abs(other.X - disc.X) < 1 && other.Y > disc.Y), other => Assert.True(other.TieY >= disc.TieY - 1e-6, $"the lines of {disc} and {other} cross"));
                }
            },
            iter: 300);

    [Fact]
    public void A_drawing_cut_below_its_marks_still_holds_every_disc() =>
        SomeMarks.Where(marks => marks.Length > 0).Sample(
            marks =>
            {
                var drawn = ReedSketch.Of(marks, ScrapeStyle.LongScrape, Instrument.Oboe, "A reed", near: true);
                Assert.All(drawn.Parts.OfType<SketchDot>(), disc => Assert.InRange(disc.Y, disc.Radius, drawn.Height - disc.Radius));
            },
            iter: 200);

    [Fact]
    public void Leaders_stay_outside_both_blades() =>
        SomeMarks.Sample(marks =>
        {
            var layout = new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, marks);
            var blade = layout.Art.Outline.Blade;
            foreach (var leader in layout.Labels.Select(l => l.Leader).OfType<string>())
            {
                var ends = leader[1..].Split('L').Select(p => p.Split(',').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray()).ToList();
                for (var t = 0.0; t <= 1; t += 0.02)
                {
                    var (x, y) = (ends[0][0] + ((ends[1][0] - ends[0][0]) * t), ends[0][1] + ((ends[1][1] - ends[0][1]) * t));
                    Assert.DoesNotContain(new[] { layout.UpperX, layout.LowerX }, middle =>
                        new[] { -0.15, 0.15 }.All(aside => blade.Contains(new MmPoint(((x - middle) / 16) + aside, ((y - layout.TipY) / 16) + aside))));
                }
            }
        }, iter: 100);

    [Theory]
    [InlineData(ScrapeStyle.LongScrape)]
    [InlineData(ScrapeStyle.ShortScrape)]
    public void A_cor_anglais_reed_is_drawn_wider_at_the_tip_and_without_a_cork(ScrapeStyle style)
    {
        var (oboe, corAnglais) = (ReedOutline.For(style), ReedOutline.For(style, Instrument.CorAnglais));

        Assert.True(corAnglais.Blade.Right > oboe.Blade.Right && corAnglais.Measures.Overall < oboe.Measures.Overall);
        Assert.Empty(corAnglais.PiecesOf(Zone.Cork));
        Assert.NotEmpty(oboe.PiecesOf(Zone.Cork));
        Assert.Equal(oboe.Pieces.Select(piece => piece.Zone).Except([Zone.Cork]).Distinct(), corAnglais.Pieces.Select(piece => piece.Zone).Distinct());
        Assert.Same(oboe, ReedOutline.For(style, Instrument.Oboe));
        Assert.Same(corAnglais, ReedOutline.For(style, Instrument.OboeDAmore));
        var layout = new MapLayout(style, ReedMapSize.Bench, [], Instrument.CorAnglais);
        Assert.True(layout.Reach >= corAnglais.Blade.Right * SvgPath.Scale);
        Assert.True(layout.Height > corAnglais.Foot * SvgPath.Scale);
    }

    [Fact]
    public void A_usual_label_has_a_leader() =>
        Assert.NotNull(Assert.Single(new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, [new ReedMark(new Place(Zone.Spine), MarkKind.Strength, "whole")]).Labels).Leader);

    [Fact]
    public void Discs_of_a_usual_number_of_marks_do_not_cover_one_another()
    {
        ReedMark[] marks =
        [
            new(new Place(Zone.TipSides), MarkKind.Worked, "thinned"),
            new(new Place(Zone.TipSides, Blades.Upper), MarkKind.Fault, "thick"),
            new(new Place(Zone.TipCentre), MarkKind.LeaveAlone, "good cane"),
            new(new Place(Zone.Rooftop), MarkKind.Worked, "cleaned"),
            new(new Place(Zone.Transition), MarkKind.Taste, "long"),
            new(new Place(Zone.Rails), MarkKind.Strength, "even"),
            new(new Place(Zone.SideEdges, Blades.Lower, Sides.Left), MarkKind.Fault, "leaks"),
        ];

        var discs = new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, marks).Discs;

        foreach (var (a, i) in discs.Select((d, i) => (d, i)))
        {
            Assert.All(discs.Skip(i + 1), b => Assert.True(Math.Sqrt(Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2)) > 19, $"{a} covers {b}"));
        }
    }

    [Fact]
    public void Long_words_are_shortened_in_the_margin_only()
    {
        var label = Assert.Single(new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, [new ReedMark(new Place(Zone.Spine), MarkKind.Strength, string.Join(' ', Enumerable.Repeat("spine", 40)))]).Labels);

        Assert.Equal(2, label.Lines.Count);
        Assert.EndsWith("…", label.Lines[^1], StringComparison.Ordinal);
    }
}
