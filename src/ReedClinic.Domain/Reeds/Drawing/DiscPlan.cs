namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>Finds a free spot for each numbered disc of one blade: inside its zone where there is room, beside the blade where there is not.</summary>
internal sealed class DiscPlan(MapLayout layout, Blades blade)
{
    private const double Apart = 20.5;
    private const double Out = 16;

    private readonly List<(double X, double Y)> taken = [];
    private readonly double middle = layout.Middle(blade);
    private readonly int outwards = blade == Blades.Upper ? -1 : 1;

    public IReadOnlyList<Disc> Discs() =>
        [.. layout.On(blade).Where(m => !MapLayout.IsEnd(m.Mark.Place.Zone)).SelectMany(m => Shapes(m.Mark).Select(s => Put(m.Number, s)))];

    private IReadOnlyList<ZoneArt> Shapes(ReedMark mark) =>
        mark.Place.Zone == Zone.WholeReed ? layout.Art.Shapes(Zone.Thread) : layout.Art.Shapes(mark.Place.Zone, mark.Place.Sides);

    private Disc Put(int number, ZoneArt art)
    {
        var anchor = art.Shape.Anchor();
        IEnumerable<Disc> spots = art.Zone switch
        {
            Zone.TipEdge or Zone.TipCorners => AboveTheTip(anchor),
            Zone.Rails or Zone.SideEdges or Zone.Eye => BesideTheBlade(art, anchor),
            _ => InTheZone(art, anchor),
        };
        var spot = spots.FirstOrDefault(s => Free(s.X, s.Y), spots.First());
        taken.Add((spot.X, spot.Y));
        return spot with { Number = number };
    }

    private bool Free(double x, double y) => taken.All(t => Math.Pow(t.X - x, 2) + Math.Pow(t.Y - y, 2) >= Apart * Apart);

    private List<Disc> AboveTheTip(MmPoint anchor)
    {
        var x = X(anchor.X);
        var turn = anchor.X < 0 ? -1 : 1;
        return [.. new[] { 0, -1, 1, -2, 2 }.Select(i => new Disc(0, x + (i * Apart * turn), layout.TipY - 17, x, layout.TipY))];
    }

    private List<Disc> BesideTheBlade(ZoneArt art, MmPoint anchor)
    {
        var side = anchor.X < -0.01 ? -1 : anchor.X > 0.01 ? 1 : outwards;
        var levels = layout.On(blade).Where(m => !Shapes(m.Mark).Any(s => s.Zone == art.Zone)).SelectMany(m => layout.Levels(m.Mark)).ToList();
        var spots = new[] { 0, 1, -1, 2, -2, 3, -3 }.Select(i => anchor.Y + (i * Apart / SvgPath.Scale))
            .OrderBy(y => levels.Any(l => Math.Abs(l - y) * SvgPath.Scale < 12));
        return [.. spots.Select(y => new Disc(0, middle + (side * (layout.EdgeAt(y) + Out)), Y(y), middle + (side * (layout.EdgeAt(y) - 2)), Y(y)))];
    }

    private IEnumerable<Disc> InTheZone(ZoneArt art, MmPoint anchor)
    {
        var shape = art.Shape;
        var grid = from i in Enumerable.Range(0, 13)
                   from j in Enumerable.Range(0, 13)
                   let p = new MmPoint(shape.Left + ((shape.Right - shape.Left) * (i + 0.5) / 13), shape.Top + ((shape.Bottom - shape.Top) * (j + 0.5) / 13))
                   where shape.Contains(p)
                   orderby Math.Pow(p.X - anchor.X, 2) + Math.Pow(p.Y - anchor.Y, 2)
                   select p;
        return grid.Prepend(anchor).Select(p => new Disc(0, X(p.X), Y(p.Y), X(p.X), Y(p.Y)));
    }

    private double X(double mm) => middle + (mm * SvgPath.Scale);

    private double Y(double mm) => layout.TipY + (mm * SvgPath.Scale);
}
