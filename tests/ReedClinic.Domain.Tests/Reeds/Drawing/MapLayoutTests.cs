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
    public void Numbers_above_a_tip_stand_in_the_order_of_the_places_that_their_lines_lead_to()
    {
        ReedMark[] marks =
        [
            new(new Place(Zone.TipCorners, Blades.Upper), MarkKind.Fault, "thick"), new(new Place(Zone.TipEdge), MarkKind.Fault, "uneven"), new(new Place(Zone.TipEdge), MarkKind.Worked, "clipped"),
            new(new Place(Zone.TipCorners, Blades.Upper, Sides.Left), MarkKind.Worked, "thinned"), new(new Place(Zone.TipCorners, Blades.Upper, Sides.Left), MarkKind.LeaveAlone, "fine"),
        ];

        var above = new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, marks).Discs.GroupBy(disc => (disc.Y, IsUpper: disc.TieX < MiddleOf(marks))).ToList();

        Assert.All(above, row => Assert.Equal(row.OrderBy(disc => disc.X).Select(disc => disc.TieX), row.Select(disc => disc.TieX).Order()));
    }

    private static double MiddleOf(ReedMark[] marks) => new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, marks).End.X;

    [Theory]
    [InlineData(Zone.HeartCentre, true)]
    [InlineData(Zone.Wire, true)]
    [InlineData(Zone.Thread, false)]
    [InlineData(Zone.Cork, false)]
    public void A_brief_drawing_ends_in_the_thread_unless_something_is_marked_there(Zone zone, bool isCut)
    {
        ReedMark[] marks = [new(new Place(zone), MarkKind.Fault, "loose")];
        var (brief, whole) = (new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, marks, isBrief: true), new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, marks));

        Assert.Equal(isCut, brief.IsCut);
        Assert.Equal(isCut, brief.Height < whole.Height - 100);
        Assert.InRange(brief.Height, brief.TipY + (brief.Art.Outline.Measures.Cane * SvgPath.Scale), whole.Height);
        Assert.All(brief.Discs, disc => Assert.InRange(disc.Y + 9.5, 0, brief.Height));
    }

    [Theory]
    [InlineData(ScrapeStyle.LongScrape, Zone.TipCorners)]
    [InlineData(ScrapeStyle.ShortScrape, Zone.Spine)]
    [InlineData(ScrapeStyle.LongScrape, Zone.WholeReed)]
    public void In_a_letter_no_word_touches_the_view_onto_the_tip(ScrapeStyle style, Zone zone)
    {
        // The type is set 1.4 times as large as on the screen, at 16; its long letters reach 0.8 of that up and 0.3 down, and the lens 12.5 from its middle, with its line 13.5.
        const double Size = 16 * 1.4;
        const double Clear = 2;

        var drawn = ReedSketch.Of([new(new Place(zone), MarkKind.Fault, "thick")], style, null, "Reed 1");
        var middle = drawn.Parts.OfType<SketchPath>().First(part => part.Data == EndArt.Upper).Y;

        Assert.All(drawn.Parts.OfType<SketchWords>().Where(words => words.Type == SketchType.Name), words => Assert.True(
            words.Text == "opening" ? words.Y - (0.8 * Size) >= 0 && words.Y + (0.3 * Size) <= middle - 13.5 - Clear : words.Y - (0.8 * Size) >= middle + 13.5 + Clear, $"{words.Text} at {words.Y}, the lens at {middle}"));
    }

    [Fact]
    public void A_near_drawing_ends_below_its_marks_and_their_numbers_and_never_below_a_brief_one() =>
        SomeMarks.Sample(marks =>
        {
            var (near, brief) = (new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, marks, isNear: true), new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Bench, marks, isBrief: true));

            Assert.Equal(brief.IsCut, near.IsCut);
            Assert.InRange(near.Height, near.TipY + (near.Art.Outline.Measures.Heart * SvgPath.Scale), brief.Height);
            Assert.All(near.Discs, disc => Assert.InRange(disc.Y + 9.5, 0, near.Height));
            Assert.True(marks.Any(mark => mark.Place.Zone is not (Zone.TipEdge or Zone.TipCorners or Zone.TipSides or Zone.Opening)) || near.Height < brief.Height - 100, $"{near.Height} of {brief.Height}");
        });

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
                    Assert.All(layout.Discs.Skip(index + 1), other => Assert.True(Math.Sqrt(Math.Pow(disc.X - other.X, 2) + Math.Pow(disc.Y - other.Y, 2)) >= 25.9, $"{disc} stands close to {other}"));
                    Assert.True(disc.X >= 10.2 && disc.X <= layout.Width - 10.2 && disc.Y >= 10.2 && disc.Y <= layout.Height - 10.2, $"{disc} leaves the drawing");
                    Assert.True(IsTied(layout, disc, marks[disc.Number - 1]), $"{disc} belongs to {marks[disc.Number - 1].Place}");
                }
            },
            iter: 300);

    [Theory]
    [InlineData(ReedMapSize.Bench, 1)]
    [InlineData(ReedMapSize.Print, 1)]
    [InlineData(ReedMapSize.Bench, 4)]
    [InlineData(ReedMapSize.Print, 9)]
    public void Numbers_of_what_is_about_the_whole_reed_follow_its_words_in_a_row_of_their_own(ReedMapSize size, int count)
    {
        ReedMark[] marks = [.. Enumerable.Range(0, count).Select(_ => new ReedMark(new Place(Zone.WholeReed), MarkKind.Worked, "soaked")), new(new Place(Zone.Opening), MarkKind.Fault, "wide"), new(new Place(Zone.WholeReed, Blades.Upper), MarkKind.Fault, "stronger")];

        var layout = new MapLayout(ScrapeStyle.LongScrape, size, marks);

        var words = layout.WholeReed!.Value;
        var row = layout.Discs.Where(disc => disc.Number <= count).OrderBy(disc => disc.Number).ToList();
        Assert.All(row.Index(), one => Assert.Equal((words.X + 17 + (one.Index * 26), words.Y), (one.Item.X, one.Item.Y)));
        Assert.InRange(words.X, 70, layout.Width);
        Assert.InRange(words.Y, layout.End.Y + 26, layout.NamesY - 26);
        var ofTheUpper = layout.Discs.Single(disc => disc.Number == count + 2);
        Assert.Equal((layout.UpperX - 60, layout.NamesY), (ofTheUpper.X, ofTheUpper.Y));
    }

    [Fact]
    public void Without_a_mark_of_the_whole_reed_there_is_no_row_for_it()
    {
        var (with, without) = (new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Print, [new(new Place(Zone.WholeReed), MarkKind.Worked, "soaked")]), new MapLayout(ScrapeStyle.LongScrape, ReedMapSize.Print, [new(new Place(Zone.WholeReed, Blades.Lower), MarkKind.Worked, "evened up")]));

        Assert.Null(without.WholeReed);
        Assert.Equal(28, with.TipY - without.TipY);
        Assert.Equal("whole reed", Assert.Single(ReedSketch.Of(with.Marks, ScrapeStyle.LongScrape, null, "A reed").Parts.OfType<SketchWords>(), words => words.Align == SketchAlign.End && words.Type == SketchType.Name).Text);
        Assert.DoesNotContain(ReedSketch.Of(without.Marks, ScrapeStyle.LongScrape, null, "A reed").Parts.OfType<SketchWords>(), words => words.Text == "whole reed");
    }

    // It ends on its zone, or where the zone lies nearest on an edge.
    private static bool IsTied(MapLayout layout, Disc disc, ReedMark mark) =>
        mark.Place.Zone == Zone.WholeReed ? disc.TieX == disc.X && disc.TieY == disc.Y && disc.Y < layout.TipY - 20
        : MapLayout.IsEnd(mark.Place.Zone) ? Math.Abs(Math.Abs(disc.TieX - layout.End.X) - (3.3 * SvgPath.Scale)) < 1
        : new[] { layout.UpperX, layout.LowerX }
            .SelectMany(middle => layout.Art.Shapes(mark.Place.Zone, mark.Place.Sides).Select(shape => (middle, shape.Shape)))
            .Any(one => disc.TieX >= one.middle + (one.Shape.Left * SvgPath.Scale) - 12 && disc.TieX <= one.middle + (one.Shape.Right * SvgPath.Scale) + 12
                && disc.TieY >= layout.TipY + (one.Shape.Top * SvgPath.Scale) - 75 && disc.TieY <= layout.TipY + (one.Shape.Bottom * SvgPath.Scale) + 75);

    // A number is 20.4 units wide. Thread and cork are so large that theirs may stand on them, and on the eye, which is no cane. What is
    // marked at the tip and finds no room above it any more goes where there is some: only the columns’ own lines never cross.
    [Theory]
    [InlineData(ScrapeStyle.LongScrape, Instrument.Oboe)]
    [InlineData(ScrapeStyle.ShortScrape, Instrument.Oboe)]
    [InlineData(ScrapeStyle.LongScrape, Instrument.CorAnglais)]
    public void No_number_lies_on_anything_that_is_marked_on_the_cane_and_no_lines_of_one_side_cross(ScrapeStyle style, Instrument instrument) =>
        SomeMarks.Sample(
            marks =>
            {
                var layout = new MapLayout(style, ReedMapSize.Print, marks, instrument);
                foreach (var disc in layout.Discs)
                {
                    Assert.All(CaneShapes(layout), shape => Assert.False(Touches(disc, shape.Middle, layout.TipY, shape.Shape), $"{disc} lies on {shape.Zone}"));
                }

                foreach (var column in layout.Discs.Where(disc => disc.X != disc.TieX && disc.Y > layout.TipY && disc.TieY > layout.TipY).GroupBy(disc => Math.Round(disc.X)))
                {
                    Assert.All(from one in column from other in column where one.Number < other.Number select (one, other), pair => Assert.False(Cross(pair.one, pair.other), $"the lines of {pair.one} and {pair.other} cross"));
                }
            },
            iter: 300);

    private static IEnumerable<(double Middle, Outline Shape, Zone Zone)> CaneShapes(MapLayout layout) =>
        from blade in new[] { Blades.Upper, Blades.Lower }
        from one in layout.On(blade)
        where one.Mark.Place.Zone is not (Zone.Thread or Zone.Cork or Zone.Eye or Zone.WholeReed) && !MapLayout.IsEnd(one.Mark.Place.Zone)
        from shape in layout.Art.Shapes(one.Mark.Place.Zone, one.Mark.Place.Sides)
        select (layout.Middle(blade), shape.Shape, shape.Zone);

    private static bool Touches(Disc disc, double middle, double tip, Outline shape) =>
        Enumerable.Range(0, 24).Select(i => i * Math.PI / 12).SelectMany(turn => new[] { 10.2, 5 }.Select(r => (X: disc.X + (r * Math.Cos(turn)), Y: disc.Y + (r * Math.Sin(turn)))))
            .Any(at => shape.Contains(new MmPoint((at.X - middle) / SvgPath.Scale, (at.Y - tip) / SvgPath.Scale)));

    // Whether two lines have a point in common that isn't an end of either.
    private static bool Cross(Disc a, Disc b)
    {
        var (ax, ay, bx, by) = (a.TieX - a.X, a.TieY - a.Y, b.TieX - b.X, b.TieY - b.Y);
        var slant = (ax * by) - (ay * bx);
        if (Math.Abs(slant) < 1e-9)
        {
            return false;
        }

        var s = (((b.X - a.X) * by) - ((b.Y - a.Y) * bx)) / slant;
        var t = (((b.X - a.X) * ay) - ((b.Y - a.Y) * ax)) / slant;
        return s is > 1e-6 and < 1 - 1e-6 && t is > 1e-6 and < 1 - 1e-6;
    }

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
