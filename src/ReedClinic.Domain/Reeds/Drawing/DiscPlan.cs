namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>
/// Finds a free spot for each numbered disc: inside its zone where there is room, beside the blade where there is not (always for the
/// thin places of the tip, which a disc would cover: their lines never cross), and else the nearest place on the drawing that covers neither a disc nor a word, with a line to where it belongs.
/// </summary>
internal sealed class DiscPlan(MapLayout layout)
{
    private const double Apart = 22.5;
    private const double Out = 16;
    private const double Border = 10.5;
    private const double Step = 6;
    private const double OverABlade = 60;
    private const int MostAside = 16;

    private static readonly int[] Levels = [0, 1, -1, 2, -2, 3, -3];

    private readonly List<(double X, double Y)> taken = [];

    /// <summary>All discs of the drawing.</summary>
    public IReadOnlyList<Disc> Discs() => [.. layout.AtTheEnd().Select(m => Put(m.Number, AtTheEnd())), .. On(Blades.Upper), .. On(Blades.Lower)];

    private List<Disc> On(Blades blade)
    {
        var shapes = layout.On(blade).Where(m => !MapLayout.IsEnd(m.Mark.Place.Zone)).SelectMany(m => Shapes(m.Mark).Select(shape => (m.Number, Shape: shape))).ToList();
        var thin = BesideTheTip(blade, [.. shapes.Where(one => IsThin(one.Shape.Zone))]);
        return [.. thin, .. shapes.Where(one => !IsThin(one.Shape.Zone)).Select(one => Put(one.Number, Spots(blade, one.Shape)))];
    }

    // Where a disc would cover most of the place that it is about.
    private static bool IsThin(Zone zone) => zone is Zone.TipCentre or Zone.TipSides or Zone.Rooftop or Zone.Transition;

    // In a column on each side of the blade, in the order in which their places lie from the tip down, so that their lines don't cross.
    private List<Disc> BesideTheTip(Blades blade, List<(int Number, ZoneArt Shape)> thin)
    {
        var outwards = blade == Blades.Upper ? -1 : 1;
        var sided = thin.Select(one => (one.Number, one.Shape, Side: one.Shape.Shape.Anchor().X is var x && x < -0.3 ? -1 : x > 0.3 ? 1 : 0)).ToList();
        var counts = new Dictionary<int, int> { [-1] = sided.Count(one => one.Side == -1), [1] = sided.Count(one => one.Side == 1) };
        List<(int Number, ZoneArt Shape, int Side)> given = [];
        foreach (var one in sided)
        {
            var side = one.Side != 0 ? one.Side : counts[outwards] <= counts[-outwards] + 1 ? outwards : -outwards;
            counts[side] += one.Side == 0 ? 1 : 0;
            given.Add((one.Number, one.Shape, side));
        }

        return [.. given.GroupBy(one => one.Side).SelectMany(column => Column(blade, column.Key, [.. column.Select(one => (one.Number, Tie: Towards(one.Shape, column.Key))).OrderBy(one => one.Tie.Y).ThenBy(one => one.Number)]))];
    }

    private IEnumerable<Disc> Column(Blades blade, int side, IReadOnlyList<(int Number, MmPoint Tie)> column)
    {
        var middle = layout.Middle(blade);
        var next = layout.TipY - 4;
        foreach (var (number, tie) in column)
        {
            var y = Math.Max(next, Y(tie.Y) - (Apart * (column.Count - 1) / 3));
            var disc = new Disc(0, middle + (side * (layout.Reach + Out - 2)), y, middle + (tie.X * SvgPath.Scale), Y(tie.Y));
            next = y + Apart;
            yield return Put(number, [disc]);
        }
    }

    // The point of a place that lies nearest to one side, a little within it.
    private static MmPoint Towards(ZoneArt art, int side)
    {
        var shape = art.Shape;
        var x = side < 0 ? shape.Left : shape.Right;
        var within = (shape.Right - shape.Left) * 0.12 * side;
        var at = x - within;
        var inside = Enumerable.Range(0, 41).Select(i => new MmPoint(at, shape.Top + ((shape.Bottom - shape.Top) * i / 40))).Where(shape.Contains).ToList();
        return inside.Count > 0 ? inside[inside.Count / 2] : shape.Anchor();
    }

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
