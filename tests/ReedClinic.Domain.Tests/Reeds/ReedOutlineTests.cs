using CsCheck;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Reeds;

public sealed class ReedOutlineTests
{
    private static readonly Zone[] BelowTheCane = [Zone.Eye, Zone.Thread, Zone.Cork];

    public static TheoryData<ScrapeStyle> Styles => [ScrapeStyle.LongScrape, ScrapeStyle.ShortScrape];

    // Outside check. The parts are those of a teacher's open pages (oboeinsight.com/instruction/reed-making/reed-definitions):
    // bark about 3, back about 11, heart about 5, tip 4 at the sides and 2 less far down at the centre. Staple 47 and overall 70: teaching texts.
    [Fact]
    public void The_long_scrape_adds_up_from_the_staple_to_the_tip()
    {
        var m = ReedMeasures.LongScrape;

        Assert.Equal([47, 3, 11, 5, 4], [m.Staple, m.Bark, m.Windows, m.Heart, m.TipAtSides]);
        Assert.Equal(70, m.Overall);
        Assert.Equal(23, m.Cane);
        Assert.Equal(2, m.TipAtCentre);
        Assert.Equal(7, m.TipWidth);
    }

    [Fact]
    public void The_long_scrape_is_drawn_at_those_lengths()
    {
        var reed = ReedOutline.For(ScrapeStyle.LongScrape);

        Assert.Equal(23, reed.Blade.Bottom, 6);
        Assert.Equal(2, reed.Rooftop[20].Y, 6);
        Assert.Equal(4, reed.Rooftop[0].Y, 6);
        Assert.Equal(4, reed.Rooftop[40].Y, 6);
        Assert.Equal(9, reed.PiecesOf(Zone.Rails)[0].Shape.Top, 0);
        Assert.Equal(20, reed.PiecesOf(Zone.Spine)[0].Shape.Bottom, 6);
        Assert.Equal(20, reed.PiecesOf(Zone.Bark)[0].Shape.Top, 6);
    }

    // Common practice: a European reed on a 46 mm staple is about 72 long and scraped for less than half of its cane.
    [Fact]
    public void The_short_scrape_is_longer_and_has_no_windows()
    {
        var reed = ReedOutline.For(ScrapeStyle.ShortScrape);

        Assert.Equal(72, reed.Measures.Overall);
        Assert.Empty(reed.PiecesOf(Zone.Windows));
        Assert.Empty(reed.PiecesOf(Zone.Spine));
        Assert.True(reed.PiecesOf(Zone.HeartBottom)[0].Shape.Bottom < reed.Measures.Cane / 2);
        Assert.NotEmpty(reed.PiecesOf(Zone.Bark));
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void Zones_lie_inside_the_blade(ScrapeStyle style)
    {
        var reed = ReedOutline.For(style);
        var wide = new Outline(reed.Blade.Points.Select(p => new MmPoint(p.X * 1.004, p.Y + (p.Y < 1 ? -0.01 : 0.01))));

        var outside = reed.Pieces.Where(p => !BelowTheCane.Contains(p.Zone))
            .SelectMany(p => p.Shape.Points.Where(q => !wide.Contains(q)).Select(q => (p.Zone, p.Side, q)));

        Assert.Empty(outside);
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void Left_mirrors_right(ScrapeStyle style)
    {
        var reed = ReedOutline.For(style);

        foreach (var right in reed.Pieces.Where(p => p.Side == Sides.Right))
        {
            var left = Assert.Single(reed.Pieces, p => p.Zone == right.Zone && p.Side == Sides.Left);
            Assert.Equal(right.Shape.Points.OrderBy(p => p.Y).ThenBy(p => p.X), left.Shape.Mirror().Points.OrderBy(p => p.Y).ThenBy(p => p.X));
            Assert.True(right.Shape.Left >= -1e-9 && left.Shape.Right <= 1e-9, $"{right.Zone} crosses the centre line");
        }
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void No_two_zones_of_the_face_share_a_point(ScrapeStyle style)
    {
        var reed = ReedOutline.For(style);
        var face = reed.Pieces.Where(p => p.Zone != Zone.Wire).ToList();

        PointsOn(reed).Sample(point => Assert.True(face.Count(p => WellInside(p.Shape, point)) <= 1, Say(face, point)), iter: 20_000);
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void The_zones_leave_hardly_any_of_the_face_over(ScrapeStyle style)
    {
        var reed = ReedOutline.For(style);
        var covered = reed.Pieces.Where(p => p.Zone != Zone.Wire && !BelowTheCane.Contains(p.Zone)).Sum(p => p.Shape.Area);

        Assert.InRange(covered / reed.Blade.Area, 0.96, 1.0001);
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void Pointing_into_a_zone_gives_that_zone_and_side(ScrapeStyle style)
    {
        var reed = ReedOutline.For(style);
        var pieces = reed.Pieces.Where(p => p.Zone != Zone.Wire).ToList();

        // The eye is drawn over the first turns of the thread, so that a point in both is in the eye.
        var eye = pieces.Single(p => p.Zone == Zone.Eye).Shape;
        Gen.Select(Gen.Int[0, pieces.Count - 1], Gen.Double.Unit, Gen.Double.Unit)
            .Select(g => (Piece: pieces[g.Item1], Point: Inside(pieces[g.Item1].Shape, g.Item2, g.Item3)))
            .Where(g => WellInside(g.Piece.Shape, g.Point) && (g.Piece.Zone == Zone.Eye || !eye.Contains(g.Point)))
            .Sample(g => Assert.Equal((g.Piece.Zone, g.Piece.Side), (reed.At(g.Point)!.Zone, reed.At(g.Point)!.Side)));
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void The_anchor_of_every_piece_is_inside_it(ScrapeStyle style) =>
        Assert.All(ReedOutline.For(style).Pieces, p => Assert.True(p.Shape.Contains(p.Shape.Anchor()), $"{p.Zone} {p.Side}"));

    [Fact]
    public void A_blade_is_widest_at_the_tip_and_narrows_all_the_way_to_the_thread()
    {
        var blade = ReedOutline.For(ScrapeStyle.LongScrape).Blade;
        var right = blade.Points.Where(p => p.X > 0 && p.Y is > 0.5 and < 23).OrderBy(p => p.Y).Select(p => p.X).ToList();

        Assert.All(right.Zip(right.Skip(1)), pair => Assert.True(pair.First >= pair.Second - 1e-9));
        Assert.InRange(right[^1] * 2, 4.0, 4.2);
    }

    [Fact]
    public void Nothing_is_found_off_the_reed() => Assert.Null(ReedOutline.For(ScrapeStyle.LongScrape).At(new MmPoint(5, 3)));

    [Fact]
    public void A_centre_zone_asked_for_on_one_side_gives_that_half_only()
    {
        var reed = ReedOutline.For(ScrapeStyle.LongScrape);

        Assert.Equal(2, reed.PiecesOf(Zone.Spine).Count);
        Assert.Equal(Sides.Left, Assert.Single(reed.PiecesOf(Zone.Spine, Sides.Left)).Side);
        Assert.Equal(Sides.Both, Assert.Single(reed.PiecesOf(Zone.Thread, Sides.Left)).Side);
        Assert.Empty(reed.PiecesOf(Zone.Inside));
    }

    [Theory]
    [MemberData(nameof(Styles))]
    public void The_halves_of_a_zone_in_the_middle_are_drawn_as_one(ScrapeStyle style)
    {
        var reed = ReedOutline.For(style);

        foreach (var zone in new[] { Zone.TipCentre, Zone.Rooftop, Zone.HeartCentre, Zone.HeartBottom })
        {
            var whole = Assert.Single(reed.Drawn(zone));
            Assert.Equal(reed.PiecesOf(zone).Sum(p => p.Shape.Area), whole.Shape.Area, 3);
            Assert.Single(reed.Drawn(zone, Sides.Left));
        }

        Assert.Equal(2, reed.Drawn(Zone.TipSides).Count);
    }

    private static Gen<MmPoint> PointsOn(ReedOutline reed) =>
        Gen.Select(Gen.Double[-3.6, 3.6], Gen.Double[0, reed.Measures.Cane]).Select(g => new MmPoint(g.Item1, g.Item2)).Where(reed.Blade.Contains);

    private static MmPoint Inside(Outline o, double x, double y) => new(o.Left + (x * (o.Right - o.Left)), o.Top + (y * (o.Bottom - o.Top)));

    /// <summary>Neighbours share their border: a hundredth of a millimetre of it belongs to both.</summary>
    private static bool WellInside(Outline o, MmPoint p) =>
        o.Contains(p) && o.Contains(p with { X = p.X - 0.01 }) && o.Contains(p with { X = p.X + 0.01 }) && o.Contains(p with { Y = p.Y - 0.01 }) && o.Contains(p with { Y = p.Y + 0.01 });

    private static string Say(List<ZonePiece> face, MmPoint point) =>
        $"{point}: {string.Join(", ", face.Where(p => p.Shape.Contains(point)).Select(p => $"{p.Zone} {p.Side}"))}";
}
