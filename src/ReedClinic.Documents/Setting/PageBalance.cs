namespace ReedClinic.Documents.Setting;

/// <summary>
/// Sets a document so that its pages are filled: as it is, or, where a page would stay half empty or the last one would have only a
/// few lines, with its lines a little nearer to each other or further apart.
/// </summary>
public static class PageBalance
{
    /// <summary>How much of a page before the last may stay empty without anything being tried.</summary>
    public const double Hole = 1 / 6.0;

    private const double LeastOnTheLast = 0.2;
    private const double HalfFull = 0.5;
    private const double WeightOfAPage = 1;
    private const double WeightOfAHole = 3;
    private const double WeightOfAFewLines = 0.4;
    private const double WeightOfParting = 0.1;
    private const double AirToLeading = 4;
    private const double LeastAir = 0.7;
    private const double LeastOfATable = 0.94;
    private const double EasilySaved = 0.86;
    private const double MostSaved = 0.84; // what is left of a text set as near as it may

    private const double LeastLeft = 0.7; // what is left of a text in the smallest type, of which no more is asked
    private const double LeastType = 8.4;

    // Only lines first, as much as still reads well; then with drawings that are a little smaller.
    private static readonly Way[] Ways =
        [new(0.97, 1), new(1.03, 1), new(0.94, 1), new(0.91, 1), new(1.06, 1), new(0.88, 1), new(1, 0.9), new(0.97, 0.9), new(0.94, 0.9), new(1.03, 0.9), new(1.06, 0.9), new(0.91, 0.9), new(0.88, 0.9), new(0.88, 0.82), new(0.88, 0.74), new(0.85, 0.74)];

    private static readonly Way[] Nearer = [new(0.94, 1), new(0.91, 1), new(0.88, 1), new(0.91, 0.9), new(0.88, 0.9), new(0.88, 0.82), new(0.88, 0.74), new(0.85, 0.74)];

    // Rather than a page more, tables part between their rows, and drawings from what is said of them.
    private static readonly Way[] Loose =
        [.. new (double Leading, double Drawings)[] { (0.97, 1), (0.94, 1), (0.91, 1), (0.91, 0.9), (0.88, 0.9), (0.88, 0.82), (0.85, 0.82), (0.85, 0.74) }.Select(way => new Way(way.Leading, way.Drawings, IsLoose: true))];

    // What would still take more pages than it should is set in type that is a little smaller, and never smaller than LeastType.
    private static readonly Way[] Smaller =
        [new(0.91, 0.82, IsLoose: true, Type: 0.97), new(0.88, 0.74, IsLoose: true, Type: 0.97), new(0.85, 0.74, IsLoose: true, Type: 0.95), new(0.83, 0.74, IsLoose: true, Type: 0.92)];

    /// <summary>Sets a document.</summary>
    /// <param name="flow">Its pieces, in the order in which they are read.</param>
    /// <param name="paper">The sheet.</param>
    /// <param name="measure">Tells how wide text is.</param>
    /// <param name="most">How many pages it should take at most: where it would take more, it is set in smaller type if that saves them.</param>
    /// <returns>The pages; at least one.</returns>
    public static IReadOnlyList<IReadOnlyList<Placed>> Set(IReadOnlyList<FlowItem> flow, Paper paper, ITypeMeasure measure, int most = int.MaxValue)
    {
        ArgumentNullException.ThrowIfNull(flow);
        ArgumentNullException.ThrowIfNull(paper);
        var best = Balanced(flow, paper, measure);
        return best.Count <= most || best.Sum(page => Full(page, paper)) * LeastLeft > most ? best
            : Smaller.Select(way => Paginator.Set([.. flow.Select(item => Led(item, way))], paper, measure)).FirstOrDefault(set => set.Count <= most) ?? best;
    }

    private static IReadOnlyList<IReadOnlyList<Placed>> Balanced(IReadOnlyList<FlowItem> flow, Paper paper, ITypeMeasure measure)
    {
        var best = Paginator.Set(flow, paper, measure);
        var isWell = IsWell(best, paper);
        if (isWell ? !SavesAPageEasily(best, paper) : HasNoHole(best, paper) && !MaySaveAPage(best, paper))
        {
            return best;
        }

        var (least, most, maySave) = (Cost(best, paper, new Way(1, 1)), best.Count, MaySaveAPage(best, paper));
        foreach (var way in (isWell ? Nearer : Ways).Concat(maySave ? Loose : []))
        {
            var set = Paginator.Set([.. flow.Select(item => Led(item, way))], paper, measure);
            if (Cost(set, paper, way) is var cost && cost < least)
            {
                (best, least) = (set, cost);
                if (HasNoHole(best, paper) && (best.Count < most || (IsWell(best, paper) && !maySave)))
                {
                    break;
                }
            }
        }

        return best;
    }

    // What is well as it is is set again only where lines that are a little nearer could save its last page.
    private static bool SavesAPageEasily(IReadOnlyList<IReadOnlyList<Placed>> pages, Paper paper) =>
        pages.Count > 1 && pages.Sum(page => Full(page, paper)) * EasilySaved <= pages.Count - 1;

    /// <summary>How far down a page its last piece stands, as a share of the height between the margins.</summary>
    /// <param name="page">The page.</param>
    /// <param name="paper">The sheet.</param>
    public static double Full(IReadOnlyList<Placed> page, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(paper);
        return (page.Select(Foot).DefaultIfEmpty(paper.Top).Max() - paper.Top) / (paper.Foot - paper.Top);
    }

    private static double Foot(Placed placed) => placed switch
    {
        PlacedText text => text.Y + (text.Style.Size * 0.3),
        PlacedRule rule => rule.Y,
        PlacedSketch drawing => drawing.Y + (drawing.Drawing.Height * drawing.Scale),
        PlacedPicture picture => picture.Y + picture.Height,
        _ => 0,
    };

    private static bool IsWell(IReadOnlyList<IReadOnlyList<Placed>> pages, Paper paper) =>
        pages.Count == 1 || (Full(pages[^1], paper) > HalfFull && HasNoHole(pages, paper));

    // Whether the nearest lines could save the last page; one that has only a few lines may be filled as well.
    private static bool MaySaveAPage(IReadOnlyList<IReadOnlyList<Placed>> pages, Paper paper) =>
        Full(pages[^1], paper) < LeastOnTheLast || pages.Sum(page => Full(page, paper)) * MostSaved <= pages.Count - 1;

    private static bool HasNoHole(IReadOnlyList<IReadOnlyList<Placed>> pages, Paper paper) => pages.SkipLast(1).All(page => Full(page, paper) >= 1 - Hole);

    private static double Cost(IReadOnlyList<IReadOnlyList<Placed>> pages, Paper paper, Way way) =>
        (WeightOfAPage * pages.Count)
        + (WeightOfAHole * pages.SkipLast(1).Sum(page => Math.Max(0, 1 - Hole - Full(page, paper))))
        + (pages.Count > 1 && Full(pages[^1], paper) < LeastOnTheLast ? WeightOfAFewLines : 0)
        + Math.Abs(way.Leading - 1) + (1 - way.Drawings) + (way.IsLoose ? WeightOfParting : 0);

    private static FlowItem Led(FlowItem item, Way way) => item switch
    {
        FlowText text => Led(text, way, Math.Max(LeastAir, 1 + (AirToLeading * (way.Leading - 1)))),
        FlowTogether together => together with { Items = [.. together.Items.Select(one => Led(one, way))], IsLoose = way.IsLoose },
        FlowBeside beside => beside with { Table = Led(beside.Table, way), Below = [.. beside.Below.Select(one => Led(one, way with { Drawings = 1 }))], IsLoose = way.IsLoose },
        FlowTable table => Led(table, way),
        FlowAside aside => aside with { Scale = way.Drawings },
        FlowFigure figure => figure with { Width = figure.Width * way.Drawings },
        _ => item,
    };

    private static FlowTable Led(FlowTable table, Way way) => table with { Style = Led(table.Style, Math.Max(LeastOfATable, way.Leading), way.Type) };

    private static FlowText Led(FlowText text, Way way, double air) =>
        text with { Style = Led(text.Style, way.Leading, way.Type), Before = text.Before * air, After = text.After * air };

    private static TypeStyle Led(TypeStyle style, double leading, double type) =>
        style with { Leading = style.Leading * leading, Size = type < 1 ? Math.Max(Math.Min(LeastType, style.Size), style.Size * type) : style.Size };

    // How near lines stand and how large drawings and type are, against the usual, and whether what else stays together is parted.
    private readonly record struct Way(double Leading, double Drawings, bool IsLoose = false, double Type = 1);
}
