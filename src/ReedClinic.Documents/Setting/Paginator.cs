namespace ReedClinic.Documents.Setting;

/// <summary>
/// Gives every piece of a document its place: paragraphs part only so that two lines stay together, headings stay with what
/// follows, no item of a list stands alone, rows aren't parted, and text runs beside the drawing that it is about. It knows nothing of any file format.
/// </summary>
public sealed class Paginator
{
    private const double FigureGap = 8;
    private const double TableGap = 9;

    private readonly Paper paper;
    private readonly ITypeMeasure measure;
    private readonly Ahead ahead;
    private readonly List<List<Placed>> pages = [[]];
    private Spot at;

    private Paginator(Paper paper, ITypeMeasure measure, Spot at) =>
        (this.paper, this.measure, ahead, this.at) = (paper, measure, new Ahead(paper, measure), at);

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
        var setter = new Paginator(paper, measure, new(paper.Top));
        setter.Place(ListKeeping.Of(flow));
        return setter.pages;
    }

    /// <summary>How many pages some pieces take from a spot on.</summary>
    internal static int Pages(IReadOnlyList<FlowItem> items, Paper paper, ITypeMeasure measure, Spot from)
    {
        var trial = new Paginator(paper, measure, from);
        trial.Place(items);
        return trial.pages.Count;
    }

    internal static double Base(double top, TypeStyle style) => top + (style.Leading * 0.5) + (style.Size * 0.34);

    private List<Placed> Page => pages[^1];

    private bool AtHead => at.Y <= paper.Top + 0.01;

    private void Place(IReadOnlyList<FlowItem> flow)
    {
        for (var i = 0; i < flow.Count; i++)
        {
            Place(flow, i);
        }
    }

    private void Place(IReadOnlyList<FlowItem> flow, int index)
    {
        switch (flow[index])
        {
            case FlowOpen open:
                Page.Add(new PlacedOpen(open.Role));
                break;
            case FlowClose:
                Page.Add(new PlacedClose());
                break;
            case FlowText text:
                Text(flow, index, text);
                break;
            case FlowTable table:
                Table(table);
                break;
            case FlowBeside beside:
                Beside(beside);
                break;
            case FlowFigure or FlowPicture:
                Figure(flow[index]);
                break;
            case FlowAside aside:
                Aside(aside);
                break;
            case FlowTogether together:
                Together(together);
                break;
            case FlowRule rule:
                Page.AddRange([new PlacedOpen(FlowRole.Furniture), new PlacedRule(paper.Left, at.Y, ahead.WidthAt(at)), new PlacedClose()]);
                Down(rule.After);
                break;
            default:
                Clear();
                break;
        }
    }

    private void Together(FlowTogether together)
    {
        if (!AtHead && ahead.Turns(together, at))
        {
            Turn();
        }

        if (together.Items is [FlowBeside beside, ..] && ahead.Parts(together, at))
        {
            Table(beside.Table);
            Together(new([.. beside.Below, .. together.Items.Skip(1)]) { MostLost = Ahead.MostForWords, IsLoose = together.IsLoose });
            return;
        }

        Place(together.Items);
    }

    private void Turn()
    {
        pages.Add([]);
        at = new(paper.Top);
    }

    private void Down(double by) => at = at with { Y = at.Y + by };

    private void Clear()
    {
        at = new(at.Below);
        if (at.Y >= paper.Foot)
        {
            Turn();
        }
    }

    // A piece turns the page when none of it has room, or when what must stay with it has room only on a page of its own.
    private bool MustTurn(IReadOnlyList<FlowItem> flow, int index, FlowText text, int lines) =>
        Fit(lines, text.Style.Leading) == 0
        || (text.KeepsWithNext && ahead.Reach(flow, index, at with { Y = at.Y - text.Before }) > paper.Foot + 0.01 && ahead.Reach(flow, index, new(paper.Top)) <= paper.Foot + 0.01);

    private void Text(IReadOnlyList<FlowItem> flow, int index, FlowText text)
    {
        var head = AtHead;
        Down(head ? 0 : text.Before);
        var lines = ahead.Lines(text, at);
        var leading = text.Style.Leading;
        if (!head && MustTurn(flow, index, text, lines.Count))
        {
            Turn();
            lines = ahead.Lines(text, at);
        }

        Page.AddRange(TextPiece.Begin(text, paper.Left, at.Y));
        for (var from = 0; from < lines.Count;)
        {
            var fit = Fit(lines.Count - from, leading);
            for (var i = 0; i < fit; i++, Down(leading))
            {
                Page.AddRange(TextPiece.Line(text, lines[from + i], paper.Left, at.Y, measure));
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

        Down(text.After);
    }

    // How many lines go onto this page: never one alone, here or on the next, where that can be helped.
    private int Fit(int lines, double leading)
    {
        var room = (int)Math.Floor((paper.Foot - at.Y + 0.01) / leading);
        if (room >= lines)
        {
            return lines;
        }

        var fit = lines - room < Ahead.TogetherAtLeast ? room - 1 : room;
        return AtHead ? Math.Max(1, fit) : fit < Ahead.TogetherAtLeast ? 0 : fit;
    }

    private void Figure(FlowItem item)
    {
        if (!AtHead && at.Y + ahead.Size(item, at).Height > paper.Foot + 0.01)
        {
            Turn();
        }

        var (width, height) = ahead.Size(item, at);
        Page.AddRange(item is FlowPicture picture ? AsideBox.Shown(picture, paper.Left, at.Y, width, height) : AsideBox.Drawn(((FlowFigure)item).Drawing, paper.Left, at.Y, width));
        Down(height + FigureGap);
    }

    // Where a page would be left half empty, the drawing is made a little smaller, or its list stands beside it in the text.
    private void Aside(FlowAside aside)
    {
        Clear();
        if (!AtHead && ahead.Box(aside, at.Y) is null)
        {
            Turn();
        }

        var box = ahead.Box(aside, at.Y) ?? ahead.Least(aside);
        box.Place(Page, paper.Width - paper.Right - aside.Column, at.Y);
        at = new(at.Y, at.Y + box.Height + Ahead.AsideFoot, aside.Column);
        Place(box.Rest);
    }

    // Side by side here, or else on the next page; or one below the other, and then apart rather than that much of a page is lost.
    private void Beside(FlowBeside beside)
    {
        if (!AtHead && ahead.Beside(beside, at) is null && ahead.Turns(beside, at))
        {
            Turn();
        }

        if (ahead.Beside(beside, at) is not { } box)
        {
            Together(Ahead.Stacked(beside));
            return;
        }

        Rows(beside.Table, box.Rows);
        box.Place(Page, paper.Width - paper.Right - box.Column);
        at = new(at.Y, box.SideFoot + Ahead.AsideFoot, box.Column);
    }

    private void Table(FlowTable table)
    {
        if (!AtHead && at.Y + TableRow.Beginning(table, ahead.Rows(table, at)) > paper.Foot + 0.01)
        {
            Turn();
        }

        Rows(table, ahead.Rows(table, at));
    }

    private void Rows(FlowTable table, IReadOnlyList<TableRow> rows)
    {
        Page.Add(new PlacedOpen(FlowRole.Table));
        Page.AddRange([new PlacedOpen(FlowRole.Caption), new PlacedOpen(FlowRole.Paragraph), new PlacedText(table.Caption, table.Style with { Tone = Tone.Pencil }, paper.Left, Base(at.Y, table.Style)), new PlacedClose(), new PlacedClose()]);
        Down(table.Style.Leading);
        foreach (var (row, index) in rows.Select((row, index) => (row, index)))
        {
            var next = index == rows.Count - 2 && index > 1 ? rows[^1].Height : 0;
            if (at.Y + row.Height + next > paper.Foot + 0.01 && !AtHead)
            {
                Turn();
                Down(index > 0 ? rows[0].Place(Page, paper.Left, at.Y, head: true, furniture: true) - at.Y : 0);
            }

            Down(row.Place(Page, paper.Left, at.Y, head: index == 0, furniture: false) - at.Y);
        }

        Page.Add(new PlacedClose());
        Down(TableGap);
    }
}
