namespace ReedClinic.Documents.Setting;

/// <summary>Where the next piece begins: how far down, and beside a drawing that ends at a foot.</summary>
/// <param name="Y">Its top.</param>
/// <param name="AsideFoot">Where the drawing on the right ends; 0 for none.</param>
/// <param name="AsideColumn">How wide its column is.</param>
internal readonly record struct Spot(double Y, double AsideFoot = 0, double AsideColumn = 0)
{
    /// <summary>Below every drawing.</summary>
    public double Below => Math.Max(Y, AsideFoot);
}

/// <summary>Looks ahead: how wide and how tall pieces will be, and whether a page has room for them, before any of them has its place.</summary>
internal sealed class Ahead(Paper paper, ITypeMeasure measure)
{
    public const int TogetherAtLeast = 2;
    public const double AsideFoot = 4;
    public const double MostForWords = 1 / 3.0;

    private const double AsideGap = 16;
    private const double MostLost = 1 / 6.0;

    public double WidthAt(Spot at) => paper.Measure - (at.Y < at.AsideFoot ? at.AsideColumn + AsideGap : 0);

    public IReadOnlyList<string> Lines(FlowText text, Spot begin)
    {
        double Width(int line) => WidthAt(begin with { Y = begin.Y + (line * text.Style.Leading) }) - text.Indent;
        return LineBreaker.Break(text.Text, text.Style, measure, Width, Width(0));
    }

    public (double Width, double Height) Size(FlowItem item, Spot at) => AsideBox.SizeOf(item, WidthAt(at), paper.Foot - paper.Top);

    public List<TableRow> Rows(FlowTable table, Spot at) => Rows(table, WidthAt(at));

    /// <summary>
    /// Whether what is kept together turns the page: it has room only on the next one, and not much of this one is lost by it. More is lost
    /// rather than that what is said of a drawing stands at the head of a page and its drawing at the foot of the one before.
    /// </summary>
    public bool Turns(FlowTogether together, Spot at) =>
        paper.Foot - at.Below <= MostLostBy(together, at) * (paper.Foot - paper.Top)
        && !Holds(together.Items, at) && Holds(together.Items, new(paper.Top));

    /// <summary>Whether a table stays on its page and its drawing goes on to the next one, with all that is said of it: together they have no room here.</summary>
    public bool Parts(FlowTogether together, Spot at) => LeavesItsTable(together, at) && !Holds(together.Items, at);

    // A table that has room goes on to no other page for its drawing’s sake: what is said of that goes on with it.
    private double MostLostBy(FlowTogether together, Spot at) =>
        together.IsLoose || LeavesItsTable(together, at) ? 0
        : LeavesItsWords(together, at) ? Math.Max(MostForWords, together.MostLost)
        : together.MostLost;

    private bool LeavesItsTable(FlowTogether together, Spot at) => together.Items is [FlowBeside drawn, _, ..] && Holds([drawn.Table], at);

    private bool LeavesItsWords(FlowTogether together, Spot at) => together.Items is [FlowBeside drawn, FlowText, ..] && Holds([drawn], at);

    /// <summary>The best that a page holds of a drawing and its list; null where it holds none. A list that stands beside its drawing stays on its page.</summary>
    public AsideBox? Box(FlowAside aside, double top) => AsideBox.In(paper.Foot - top, paper.Foot - paper.Top, aside, measure, box =>
        box.Rest.Count == 0 || Holds(box.Rest, new(top, top + box.Height + AsideFoot, aside.Column)));

    public AsideBox Least(FlowAside aside) => AsideBox.Least(aside, measure);

    /// <summary>A table with its drawing at its side; null where the page hasn't room for both, or the drawing would hang far below the table.</summary>
    public BesideBox? Beside(FlowBeside beside, Spot at)
    {
        foreach (var side in beside.Sides)
        {
            var rows = Rows(beside.Table, paper.Measure - Math.Max(side.Column, at.Y < at.AsideFoot ? at.AsideColumn : 0) - AsideGap);
            var box = new BesideBox(beside, side, rows, measure, at);
            if (box.Hangs <= BesideBox.MostHanging && Math.Max(box.TableFoot, box.SideFoot) <= paper.Foot + 0.01)
            {
                return box;
            }
        }

        return null;
    }

    /// <summary>Whether a table and its drawing are better off on the next page, side by side.</summary>
    public bool Turns(FlowBeside beside, Spot at) =>
        !beside.IsLoose && paper.Foot - at.Below <= MostLost * (paper.Foot - paper.Top) && Beside(beside, new(paper.Top)) is not null;

    /// <summary>A table and its drawing one below the other.</summary>
    public static FlowTogether Stacked(FlowBeside beside) =>
        new([new FlowTogether([beside.Table]) { IsLoose = beside.IsLoose }, new FlowTogether(beside.Below) { IsLoose = beside.IsLoose }]) { IsLoose = beside.IsLoose };

    /// <summary>How far down a piece reaches with all that must stay with it.</summary>
    public double Reach(IReadOnlyList<FlowItem> flow, int index, Spot at)
    {
        for (; index < flow.Count; index++)
        {
            switch (flow[index])
            {
                case FlowText text:
                    at = at with { Y = at.Y + (at.Y <= paper.Top + 0.01 ? 0 : text.Before) };
                    var lines = Lines(text, at).Count;
                    if (!text.KeepsWithNext)
                    {
                        return at.Y + ((lines < 2 * TogetherAtLeast ? lines : TogetherAtLeast) * text.Style.Leading);
                    }

                    at = at with { Y = at.Y + (lines * text.Style.Leading) + text.After };
                    continue;
                case FlowAside aside:
                    return at.Below + (Box(aside, at.Below)?.Height ?? paper.Height);
                case FlowFigure or FlowPicture:
                    return at.Y + Size(flow[index], at).Height;
                case FlowTable table:
                    return at.Y + TableRow.Beginning(table, Rows(table, at));
                case FlowClear:
                    at = at with { Y = at.Below };
                    continue;
                case FlowTogether together:
                    return Turns(together, at) ? paper.Height : Reach(together.Items, 0, at);
                case FlowBeside beside:
                    return Reach(beside, at);
                default:
                    continue;
            }
        }

        return at.Y;
    }

    private double Reach(FlowBeside beside, Spot at) => Beside(beside, at) is { } box
        ? box.TableFoot
        : Turns(beside, at) ? paper.Height : Reach([Stacked(beside)], 0, at);

    // Whether pieces end on the page on which they begin: they are set once for a trial.
    private bool Holds(IReadOnlyList<FlowItem> items, Spot at) => Paginator.Pages(items, paper, measure, at) == 1;

    private List<TableRow> Rows(FlowTable table, double width) => [.. table.Rows.Select(row => new TableRow(row, table, width, measure))];
}
