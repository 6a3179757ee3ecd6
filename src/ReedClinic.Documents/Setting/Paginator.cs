namespace ReedClinic.Documents.Setting;

/// <summary>
/// Gives every piece of a document its place: paragraphs part only so that two lines stay together, headings stay with what
/// follows, no item of a list stands alone, rows aren't parted, and text runs beside the drawing that it is about. It knows nothing of any file format.
/// </summary>
public sealed class Paginator
{
    private const int TogetherAtLeast = 2;
    private const double AsideGap = 16;
    private const double FigureGap = 8;
    private const double AsideFoot = 4;
    private const double TableGap = 9;
    private const double MostLost = 1 / 3.0;

    private readonly Paper paper;
    private readonly ITypeMeasure measure;
    private readonly List<List<Placed>> pages = [[]];
    private double y;
    private double asideFoot;
    private double asideColumn;

    private Paginator(Paper paper, ITypeMeasure measure)
    {
        (this.paper, this.measure) = (paper, measure);
        y = paper.Top;
    }

    /// <summary>Sets a document.</summary>
    /// <param name="flow">Its pieces, in the order in which they are read.</param>
    /// <param name="paper">The sheet.</param>
    /// <param name="measure">Tells how wide text is.</param>
    /// <returns>The pages; at least one. What was opened on one may be closed on a later one.</returns>
    public static IReadOnlyList<IReadOnlyList<Placed>> Set(IReadOnlyList<FlowItem> flow, Paper paper, ITypeMeasure measure)
    {
        ArgumentNullException.ThrowIfNull(flow);
        ArgumentNullException.ThrowIfNull(paper);
        ArgumentNullException.ThrowIfNull(measure);
        var setter = new Paginator(paper, measure);
        setter.Place(ListKeeping.Of(flow));
        return setter.pages;
    }

    private List<Placed> Page => pages[^1];

    private bool AtHead => y <= paper.Top + 0.01;

    private void Place(IReadOnlyList<FlowItem> flow)
    {
        for (var i = 0; i < flow.Count; i++)
        {
            Place(flow, i);
        }
    }

    private void Place(IReadOnlyList<FlowItem> flow, int at)
    {
        switch (flow[at])
        {
            case FlowOpen open:
                Page.Add(new PlacedOpen(open.Role));
                break;
            case FlowClose:
                Page.Add(new PlacedClose());
                break;
            case FlowText text:
                Text(flow, at, text);
                break;
            case FlowTable table:
                Table(table);
                break;
            case FlowFigure or FlowPicture:
                Figure(flow[at]);
                break;
            case FlowAside aside:
                Aside(aside);
                break;
            case FlowTogether together:
                Together(together.Items);
                break;
            case FlowRule rule:
                Page.AddRange([new PlacedOpen(FlowRole.Furniture), new PlacedRule(paper.Left, y, WidthAt(y, asideFoot)), new PlacedClose()]);
                y += rule.After;
                break;
            default:
                Clear();
                break;
        }
    }

    private void Together(IReadOnlyList<FlowItem> items)
    {
        if (!AtHead && Turns(items, y, asideFoot))
        {
            Turn();
        }

        Place(items);
    }

    // What is kept together turns the page where it has room only on the next one, and not much of this one is lost by it.
    private bool Turns(IReadOnlyList<FlowItem> items, double top, double foot) =>
        paper.Foot - Math.Max(top, foot) <= MostLost * (paper.Foot - paper.Top) && !Holds(items, top, foot) && Holds(items, paper.Top, 0);

    // Whether pieces end on the page on which they begin: they are set once for a trial.
    private bool Holds(IReadOnlyList<FlowItem> items, double top, double foot)
    {
        var trial = new Paginator(paper, measure) { y = top, asideFoot = foot, asideColumn = asideColumn };
        trial.Place(items);
        return trial.pages.Count == 1;
    }

    private void Turn()
    {
        pages.Add([]);
        (y, asideFoot) = (paper.Top, 0);
    }

    private void Clear()
    {
        y = Math.Max(y, asideFoot);
        asideFoot = 0;
        if (y >= paper.Foot)
        {
            Turn();
        }
    }

    private double WidthAt(double height, double foot) => paper.Measure - (height < foot ? asideColumn + AsideGap : 0);

    private IReadOnlyList<string> Lines(FlowText text, double from, double foot)
    {
        double Width(int line) => WidthAt(from + (line * text.Style.Leading), foot) - text.Indent;
        return LineBreaker.Break(text.Text, text.Style, measure, Width, Width(0));
    }

    // How far down a piece reaches with all that must stay with it, when it begins at a height beside an aside that ends at a foot.
    private double Reach(IReadOnlyList<FlowItem> flow, int at, double top, double foot)
    {
        for (; at < flow.Count; at++)
        {
            switch (flow[at])
            {
                case FlowText text:
                    top += top <= paper.Top + 0.01 ? 0 : text.Before;
                    var lines = Lines(text, top, foot).Count;
                    if (!text.KeepsWithNext)
                    {
                        return top + ((lines < 2 * TogetherAtLeast ? lines : TogetherAtLeast) * text.Style.Leading);
                    }

                    top += (lines * text.Style.Leading) + text.After;
                    continue;
                case FlowAside aside:
                    return Math.Max(top, foot) + (Box(aside, Math.Max(top, foot))?.Height ?? paper.Height);
                case FlowFigure or FlowPicture:
                    return top + Size(flow[at], top, foot).Height;
                case FlowTable table:
                    return top + TableRow.Beginning(table, Rows(table, WidthAt(top, foot)));
                case FlowClear:
                    top = Math.Max(top, foot);
                    continue;
                case FlowTogether together:
                    return Turns(together.Items, top, foot) ? paper.Height : Reach(together.Items, 0, top, foot);
                default:
                    continue;
            }
        }

        return top;
    }

    // A piece turns the page when none of it has room, or when what must stay with it has room only on a page of its own.
    private bool MustTurn(IReadOnlyList<FlowItem> flow, int at, FlowText text, int lines) =>
        Fit(lines, text.Style.Leading) == 0
        || (text.KeepsWithNext && Reach(flow, at, y - text.Before, asideFoot) > paper.Foot + 0.01 && Reach(flow, at, paper.Top, 0) <= paper.Foot + 0.01);

    private void Text(IReadOnlyList<FlowItem> flow, int at, FlowText text)
    {
        var head = AtHead;
        y += head ? 0 : text.Before;
        var lines = Lines(text, y, asideFoot);
        var leading = text.Style.Leading;
        if (!head && MustTurn(flow, at, text, lines.Count))
        {
            Turn();
            lines = Lines(text, y, asideFoot);
        }

        Page.AddRange(TextPiece.Begin(text, paper.Left, y));
        for (var from = 0; from < lines.Count;)
        {
            var fit = Fit(lines.Count - from, leading);
            for (var i = 0; i < fit; i++, y += leading)
            {
                Page.AddRange(TextPiece.Line(text, lines[from + i], paper.Left, y, measure));
            }

            from += fit;
            if (from < lines.Count)
            {
                Turn();
            }
        }

        Page.Add(new PlacedClose());
        if (text.Mark is not null)
        {
            Page.Add(new PlacedClose());
        }

        y += text.After;
    }

    // How many lines go onto this page: never one alone, here or on the next, where that can be helped.
    private int Fit(int lines, double leading)
    {
        var room = (int)Math.Floor((paper.Foot - y + 0.01) / leading);
        if (room >= lines)
        {
            return lines;
        }

        var fit = lines - room < TogetherAtLeast ? room - 1 : room;
        return AtHead ? Math.Max(1, fit) : fit < TogetherAtLeast ? 0 : fit;
    }

    internal static double Base(double top, TypeStyle style) => top + (style.Leading * 0.5) + (style.Size * 0.34);

    private (double Width, double Height) Size(FlowItem item, double top, double foot) => AsideBox.SizeOf(item, WidthAt(top, foot), paper.Foot - paper.Top);

    private void Figure(FlowItem item)
    {
        if (!AtHead && y + Size(item, y, asideFoot).Height > paper.Foot + 0.01)
        {
            Turn();
        }

        var (width, height) = Size(item, y, asideFoot);
        Page.AddRange(item is FlowPicture picture ? AsideBox.Shown(picture, paper.Left, y, width, height) : AsideBox.Drawn(((FlowFigure)item).Drawing, paper.Left, y, width));
        y += height + FigureGap;
    }

    // Where a page would be left half empty, the drawing is made a little smaller, or its list stands beside it in the text.
    private void Aside(FlowAside aside)
    {
        Clear();
        if (!AtHead && Box(aside, y) is null)
        {
            Turn();
        }

        var box = Box(aside, y) ?? AsideBox.Least(aside, measure);
        box.Place(Page, paper.Width - paper.Right - aside.Column, y);
        (asideFoot, asideColumn) = (y + box.Height + AsideFoot, aside.Column);
        Place(box.Rest);
    }

    // A list that stands beside its drawing stays on the drawing's page.
    private AsideBox? Box(FlowAside aside, double top) => AsideBox.In(paper.Foot - top, paper.Foot - paper.Top, aside, measure, box =>
    {
        (var column, asideColumn) = (asideColumn, aside.Column);
        var holds = box.Rest.Count == 0 || Holds(box.Rest, top, top + box.Height + AsideFoot);
        asideColumn = column;
        return holds;
    });

    private List<TableRow> Rows(FlowTable table, double width) => [.. table.Rows.Select(row => new TableRow(row, table, width, measure))];

    private void Table(FlowTable table)
    {
        var rows = Rows(table, WidthAt(y, asideFoot));
        if (!AtHead && y + TableRow.Beginning(table, rows) > paper.Foot + 0.01)
        {
            Turn();
            rows = Rows(table, WidthAt(y, asideFoot));
        }

        Page.Add(new PlacedOpen(FlowRole.Table));
        Page.AddRange([new PlacedOpen(FlowRole.Caption), new PlacedOpen(FlowRole.Paragraph), new PlacedText(table.Caption, table.Style with { Tone = Tone.Pencil }, paper.Left, Base(y, table.Style)), new PlacedClose(), new PlacedClose()]);
        y += table.Style.Leading;
        foreach (var (row, index) in rows.Select((row, index) => (row, index)))
        {
            var next = index == rows.Count - 2 && index > 1 ? rows[^1].Height : 0;
            if (y + row.Height + next > paper.Foot + 0.01 && !AtHead)
            {
                Turn();
                y = index > 0 ? rows[0].Place(Page, paper.Left, y, head: true, furniture: true) : y;
            }

            y = row.Place(Page, paper.Left, y, head: index == 0, furniture: false);
        }

        Page.Add(new PlacedClose());
        y += TableGap;
    }
}
