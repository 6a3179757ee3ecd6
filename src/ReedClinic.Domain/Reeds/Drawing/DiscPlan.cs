namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>
/// Finds a free spot for each numbered disc: inside its zone where there is room, beside the blade where there is not, and else the
/// nearest place on the drawing that covers neither a disc nor a word, with a line to where it belongs.
/// </summary>
internal sealed class DiscPlan(MapLayout layout)
{
    private const double Apart = 20.5;
    private const double Out = 16;
    private const double Border = 10.5;
    private const double Step = 6;
    private const double OverABlade = 60;
    private const int MostAside = 16;

    private static readonly int[] Levels = [0, 1, -1, 2, -2, 3, -3];

    private readonly List<(double X, double Y)> taken = [];

    /// <summary>All discs of the drawing.</summary>
    public IReadOnlyList<Disc> Discs() => [.. layout.AtTheEnd().Select(m => Put(m.Number, AtTheEnd())), .. On(Blades.Upper), .. On(Blades.Lower)];

    private List<Disc> On(Blades blade) =>
        [.. layout.On(blade).Where(m => !MapLayout.IsEnd(m.Mark.Place.Zone)).SelectMany(m => Shapes(m.Mark).Select(s => Put(m.Number, Spots(blade, s))))];

    private IReadOnlyList<ZoneArt> Shapes(ReedMark mark) =>
        mark.Place.Zone == Zone.WholeReed ? layout.Art.Shapes(Zone.Thread) : layout.Art.Shapes(mark.Place.Zone, mark.Place.Sides);

    private Disc Put(int number, IEnumerable<Disc> spots)
    {
        var first = spots.First();
        var spot = spots.FirstOrDefault(IsFree) ?? Anywhere(first).FirstOrDefault(IsFree, first);
        taken.Add((spot.X, spot.Y));
        return spot with { Number = number };
    }

    private bool IsFree(Disc spot) =>
        spot.X >= Border && spot.X <= layout.Width - Border && spot.Y >= Border && spot.Y <= layout.Height - Border
        && taken.All(t => Math.Pow(t.X - spot.X, 2) + Math.Pow(t.Y - spot.Y, 2) >= Apart * Apart);

    private IEnumerable<Disc> Spots(Blades blade, ZoneArt art)
    {
        var anchor = art.Shape.Anchor();
        return art.Zone switch
        {
            Zone.TipEdge or Zone.TipCorners => AboveTheTip(blade, anchor),
            Zone.Rails or Zone.SideEdges or Zone.Eye => BesideTheBlade(blade, art, anchor),
            _ => InTheZone(blade, art, anchor),
        };
    }

    // To the right of the view of the end, then to its left.
    private IEnumerable<Disc> AtTheEnd() =>
        from turn in new[] { 1, -1 }
        from i in Enumerable.Range(0, MostAside)
        select new Disc(0, layout.End.X + (turn * ((4.4 * SvgPath.Scale) + (i * 21))), layout.End.Y, layout.End.X + (turn * 3.3 * SvgPath.Scale), layout.End.Y);

    private IEnumerable<Disc> AboveTheTip(Blades blade, MmPoint anchor)
    {
        var x = layout.Middle(blade) + (anchor.X * SvgPath.Scale);
        var turn = anchor.X < 0 ? -1 : 1;
        return Enumerable.Range(0, MostAside).SelectMany(i => i == 0 ? [0] : new[] { -i, i })
            .Select(i => new Disc(0, x + (i * Apart * turn), layout.TipY - 17, x, layout.TipY));
    }

    private IEnumerable<Disc> BesideTheBlade(Blades blade, ZoneArt art, MmPoint anchor)
    {
        var (middle, outwards) = (layout.Middle(blade), blade == Blades.Upper ? -1 : 1);
        var side = anchor.X < -0.01 ? -1 : anchor.X > 0.01 ? 1 : outwards;
        var levels = layout.On(blade).Where(m => !Shapes(m.Mark).Any(s => s.Zone == art.Zone)).SelectMany(m => layout.Levels(m.Mark)).ToList();
        return Levels.Select(i => anchor.Y + (i * Apart / SvgPath.Scale))
            .OrderBy(y => levels.Any(l => Math.Abs(l - y) * SvgPath.Scale < 12))
            .Select(y => (Y: Y(y), Edge: art.Zone == Zone.Eye ? art.Shape.Right * SvgPath.Scale : layout.EdgeAt(y)))
            .Select(at => new Disc(0, middle + (side * (at.Edge + Out)), at.Y, middle + (side * (at.Edge - 2)), at.Y));
    }

    private IEnumerable<Disc> InTheZone(Blades blade, ZoneArt art, MmPoint anchor)
    {
        var (shape, middle) = (art.Shape, layout.Middle(blade));
        var grid = from i in Enumerable.Range(0, 13)
                   from j in Enumerable.Range(0, 13)
                   let p = new MmPoint(shape.Left + ((shape.Right - shape.Left) * (i + 0.5) / 13), shape.Top + ((shape.Bottom - shape.Top) * (j + 0.5) / 13))
                   where shape.Contains(p)
                   orderby Math.Pow(p.X - anchor.X, 2) + Math.Pow(p.Y - anchor.Y, 2)
                   select p;
        return grid.Prepend(anchor).Select(p => (X: middle + (p.X * SvgPath.Scale), Y: Y(p.Y))).Select(p => new Disc(0, p.X, p.Y, p.X, p.Y));
    }

    private IEnumerable<Disc> Anywhere(Disc meant) =>
        from i in Enumerable.Range(0, (int)((layout.Width - (2 * Border)) / Step) + 1)
        from j in Enumerable.Range(0, (int)((layout.Height - (2 * Border)) / Step) + 1)
        let spot = new Disc(0, Border + (i * Step), Border + (j * Step), meant.TieX, meant.TieY)
        where !IsWords(spot)
        orderby Math.Sqrt(Math.Pow(spot.X - spot.TieX, 2) + Math.Pow(spot.Y - spot.TieY, 2)) + (IsOverABlade(spot) ? OverABlade : 0)
        select spot;

    // The names of the blades and of their sides, and the view of the end with its own.
    private bool IsWords(Disc spot) => spot.Y < layout.TipY - 15 && (spot.Y > layout.TipY - layout.Air - 78 || Math.Abs(spot.X - layout.End.X) < 75);

    private bool IsOverABlade(Disc spot) => new[] { layout.UpperX, layout.LowerX }.Any(middle =>
        spot.Y > layout.TipY - Border && Math.Abs(spot.X - middle) < layout.EdgeAt((spot.Y - layout.TipY) / SvgPath.Scale) + Border);

    private double Y(double mm) => layout.TipY + (mm * SvgPath.Scale);
}
