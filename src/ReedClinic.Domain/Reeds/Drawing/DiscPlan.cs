namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>
/// Finds a free spot for each numbered disc: behind the words “whole reed” for what is about the reed as a whole, beside a blade's name for
/// what is about that blade as a whole; above the tip for its edge and corners; in a column beside the blade for all the rest of the cane, with a line to its place, so that no number lies on
/// what was found or worked; on thread and cork, which are large enough, in its zone. Where there is no room, the nearest place on the drawing that covers neither a disc nor a word.
/// </summary>
internal sealed class DiscPlan(MapLayout layout)
{
    private const double Apart = 26;
    private const double Out = 15;
    private const double Border = 10.5;
    private const double Step = 6;
    private const double BelowTheTip = 6;
    private const int MostAside = 16;
    private const double BesideTheName = 60;
    private const double BehindTheWords = 17;

    // In millimetres: here the blade is as wide as it gets, while its edge curves.
    private const double BelowTheEdge = 1;
    private const double AboveTheNames = 27;

    private readonly List<(double X, double Y)> taken = [];

    /// <summary>All discs of the drawing.</summary>
    public IReadOnlyList<Disc> Discs() => [.. layout.AtTheEnd().Select(m => Put(m.Number, AtTheEnd())), .. Whole(), .. On(Blades.Upper), .. On(Blades.Lower)];

    // Of the reed: behind its words. Of one blade: beside its name. Where there are many, the row above.
    private IEnumerable<Disc> Whole() => layout.Whole().Select(m => Put(m.Number, m.Mark.Place.Blades switch
    {
        Blades.Upper => [AtTheNames(layout.UpperX - BesideTheName), AtTheNames(layout.UpperX + BesideTheName), .. Above(-1)],
        Blades.Lower => [AtTheNames(layout.LowerX + BesideTheName), AtTheNames(layout.LowerX - BesideTheName), .. Above(1)],
        _ => [.. InTheRow(), .. Above(-1), .. Above(1)],
    }));

    /// <summary>How wide a row of numbers is, from the words before them.</summary>
    /// <param name="count">How many.</param>
    internal static double RowOf(int count) => BehindTheWords + Border + ((count - 1) * Apart);

    /// <summary>How many numbers a row of a width holds.</summary>
    /// <param name="width">Its width, from the words before them.</param>
    internal static int InARow(double width) => (int)((width - BehindTheWords - Border) / Apart) + 1;

    private IEnumerable<Disc> InTheRow() => layout.WholeReed is not { } words ? [] :
        from i in Enumerable.Range(0, layout.RoomInTheRow)
        let x = words.X + BehindTheWords + (i * Apart)
        select new Disc(0, x, words.Y, x, words.Y);

    private Disc AtTheNames(double x) => new(0, x, layout.NamesY, x, layout.NamesY);

    private IEnumerable<Disc> Above(int side) =>
        from i in Enumerable.Range(0, 4)
        let x = layout.End.X + (side * ((layout.Width / 2) - Border - 1 - (i * Apart)))
        let y = layout.NamesY - AboveTheNames
        select new Disc(0, x, y, x, y);

    private List<Disc> On(Blades blade)
    {
        var shapes = layout.On(blade).Where(m => !MapLayout.IsEnd(m.Mark.Place.Zone)).SelectMany(m => layout.Shapes(blade, m.Mark).Select(shape => (m.Number, Shape: shape))).ToList();
        var beside = Beside(blade, [.. shapes.Where(one => IsBeside(one.Shape.Zone))]);
        var others = shapes.Where(one => !IsBeside(one.Shape.Zone)).OrderBy(one => one.Shape.Zone).Select(one => (one.Shape.Zone, Disc: Put(one.Number, Spots(blade, one.Shape)))).ToLookup(one => IsAbove(one.Zone), one => one.Disc);
        return [.. beside, .. Uncrossed([.. others[true]]), .. others[false]];
    }

    private static bool IsAbove(Zone zone) => zone is Zone.TipEdge or Zone.TipCorners;

    private static bool IsBeside(Zone zone) => !IsAbove(zone) && zone is not (Zone.Thread or Zone.Cork);

    // In a column on each side of the blade; what lies on both sides of the middle goes where there are fewer.
    private List<Disc> Beside(Blades blade, List<(int Number, ZoneArt Shape)> shapes)
    {
        var outwards = blade == Blades.Upper ? -1 : 1;
        var sided = shapes.Select(one => (one.Number, one.Shape, Side: one.Shape.Shape.Anchor().X is var x && x < -0.3 ? -1 : x > 0.3 ? 1 : 0)).ToList();
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
        var top = layout.TipY + BelowTheTip - (Apart / 2);
        var apart = MapLayout.Spread([.. Around([.. column.Select(one => Y(one.Tie.Y))]).Select(y => (y - top - (Apart / 2) + MapLayout.Above, Apart))], layout.Height - Border + (Apart / 2) - top);
        List<Disc> discs = [.. column.Select((one, i) => new Disc(
            one.Number, middle + (side * (layout.Reach + Out)), top + apart[i] + (Apart / 2), middle + (one.Tie.X * SvgPath.Scale), Y(one.Tie.Y)))];
        return Uncrossed(discs).Select(disc => Put(disc.Number, [disc]));
    }

    // As near to where they are meant as they can be together: as far down as up.
    private static List<double> Around(IReadOnlyList<double> meant)
    {
        var (down, up) = (meant.ToArray(), meant.ToArray());
        for (var i = 1; i < meant.Count; i++)
        {
            down[i] = Math.Max(down[i - 1] + Apart, meant[i]);
            up[^(i + 1)] = Math.Min(up[^i] - Apart, meant[meant.Count - 1 - i]);
        }

        return [.. down.Zip(up, (lower, upper) => (lower + upper) / 2)];
    }

    // Two lines that cross change places: both together are shorter then, so that it comes to an end.
    private static List<Disc> Uncrossed(List<Disc> discs)
    {
        while (Crossing(discs) is var (one, other) && one != other)
        {
            (discs[one], discs[other]) = (discs[one] with { X = discs[other].X, Y = discs[other].Y }, discs[other] with { X = discs[one].X, Y = discs[one].Y });
        }

        return discs;
    }

    private static (int One, int Other) Crossing(List<Disc> discs) =>
        (from one in Enumerable.Range(0, discs.Count) from other in Enumerable.Range(one + 1, discs.Count - one - 1) where Cross(discs[one], discs[other]) select (one, other)).FirstOrDefault();

    private static bool Cross(Disc a, Disc b) =>
        Turn(a.X, a.Y, a.TieX, a.TieY, b.X, b.Y) * Turn(a.X, a.Y, a.TieX, a.TieY, b.TieX, b.TieY) < -1e-6
        && Turn(b.X, b.Y, b.TieX, b.TieY, a.X, a.Y) * Turn(b.X, b.Y, b.TieX, b.TieY, a.TieX, a.TieY) < -1e-6;

    // On which side of a line a point lies.
    private static int Turn(double fromX, double fromY, double toX, double toY, double x, double y) =>
        ((toX - fromX) * (y - fromY)) - ((toY - fromY) * (x - fromX)) is var area && Math.Abs(area) < 1e-6 ? 0 : Math.Sign(area);

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

    private Disc Put(int number, IEnumerable<Disc> spots)
    {
        var first = spots.First();
        var spot = spots.FirstOrDefault(IsFree) ?? Anywhere(first).FirstOrDefault(IsFree, first);
        taken.Add((spot.X, spot.Y));
        return spot with { Number = number };
    }

    private bool IsFree(Disc spot) =>
        !IsOnTheWords(spot) && spot.X >= Border && spot.X <= layout.Width - Border && spot.Y >= Border && spot.Y <= layout.Height - Border
        && taken.All(t => Math.Pow(t.X - spot.X, 2) + Math.Pow(t.Y - spot.Y, 2) >= (Apart * Apart) - 1e-6);

    private bool IsOnTheWords(Disc spot) =>
        layout.WholeReed is { } words && Math.Abs(spot.Y - words.Y) < 20 && spot.X < words.X + Border && spot.X > words.X - layout.WordsOfTheReed - Border;

    private IEnumerable<Disc> Spots(Blades blade, ZoneArt art) =>
        IsAbove(art.Zone) ? AboveTheTip(blade, art.Shape.Anchor()) : InTheZone(blade, art, art.Shape.Anchor());

    // To the right of the view of the end, then to its left.
    private IEnumerable<Disc> AtTheEnd() =>
        from turn in new[] { 1, -1 }
        from i in Enumerable.Range(0, MostAside)
        select new Disc(0, layout.End.X + (turn * ((4.4 * SvgPath.Scale) + (i * Apart))), layout.End.Y, layout.End.X + (turn * 3.3 * SvgPath.Scale), layout.End.Y);

    // Several for one corner go outwards first: the middle is the edge's.
    private IEnumerable<Disc> AboveTheTip(Blades blade, MmPoint anchor)
    {
        var x = layout.Middle(blade) + (anchor.X * SvgPath.Scale);
        var turn = anchor.X < 0 ? -1 : 1;
        return Enumerable.Range(0, MostAside).SelectMany(i => i == 0 ? [0] : new[] { i, -i })
            .Select(i => new Disc(0, x + (i * Apart * turn), layout.TipY - 17, x, layout.TipY));
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
        orderby IsOverABlade(spot), Math.Pow(spot.X - spot.TieX, 2) + Math.Pow(spot.Y - spot.TieY, 2)
        select spot;

    // The names of the blades and of their sides, and the view of the end with its own.
    private bool IsWords(Disc spot) => spot.Y < layout.TipY - 15 && (spot.Y > layout.TipY - layout.Air - 78 - layout.RowOfTheReed || Math.Abs(spot.X - layout.End.X) < 75);

    private bool IsOverABlade(Disc spot) => new[] { layout.UpperX, layout.LowerX }.Any(middle =>
        spot.Y > layout.TipY - Border && Math.Abs(spot.X - middle) < layout.EdgeAt(Math.Max(BelowTheEdge, (spot.Y - layout.TipY) / SvgPath.Scale)) + Border);

    private double Y(double mm) => layout.TipY + (mm * SvgPath.Scale);
}
