namespace ReedClinic.Documents.Setting;

/// <summary>
/// Gives every piece of a document its place: paragraphs part only so that two lines stay together, headings stay with what
/// follows, rows aren't parted, and text runs beside the drawing that it is about. It knows nothing of any file format.
/// </summary>
public sealed class Paginator
{
    private const int TogetherAtLeast = 2;
    private const double AsideGap = 16;
    private const double FigureGap = 8;
    private const double ListGap = 5;
    private const double ListIndent = 13;

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
        for (var i = 0; i < flow.Count; i++)
        {
            setter.Place(flow, i);
        }

        return setter.pages;
    }

    private List<Placed> Page => pages[^1];

    private bool AtHead => y <= paper.Top + 0.01;

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
                Text(text, text.KeepsWithNext ? Least(flow, at + 1) : 0);
                break;
            case FlowTable table:
                Table(table);
                break;
            case FlowFigure figure:
                Figure(figure);
                break;
            case FlowAside aside:
                Aside(aside);
                break;
            case FlowRule rule:
                Page.AddRange([new PlacedOpen(FlowRole.Furniture), new PlacedRule(paper.Left, y, WidthAt(y)), new PlacedClose()]);
                y += rule.After;
                break;
            default:
                Clear();
                break;
        }
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

    private double WidthAt(double height) => paper.Measure - (height < asideFoot ? asideColumn + AsideGap : 0);

    private IReadOnlyList<string> Lines(FlowText text, double from)
    {
        double Width(int line) => WidthAt(from + (line * text.Style.Leading)) - text.Indent;
        return LineBreaker.Break(text.Text, text.Style, measure, Width, Width(0));
    }

    // The least height that what comes next needs, so that a heading isn't left alone.
    private double Least(IReadOnlyList<FlowItem> flow, int at)
    {
        for (; at < flow.Count; at++)
        {
            switch (flow[at])
            {
                case FlowText text:
                    return text.Before + (text.KeepsWithNext ? text.Style.Leading + Least(flow, at + 1) : TogetherAtLeast * text.Style.Leading);
                case FlowAside aside:
                    return AsideHeight(aside);
                case FlowFigure figure:
                    return Height(figure);
                case FlowTable table:
                    return 4 * table.Style.Leading;
                default:
                    continue;
            }
        }

        return 0;
    }

    private void Text(FlowText text, double behind)
    {
        y += AtHead ? 0 : text.Before;
        var lines = Lines(text, y);
        var leading = text.Style.Leading;
        var least = Math.Min(lines.Count, text.KeepsWithNext ? lines.Count : TogetherAtLeast);
        if (!AtHead && y + (least * leading) + behind > paper.Foot + 0.01)
        {
            Turn();
            lines = Lines(text, y);
        }

        Begin(text);
        for (var from = 0; from < lines.Count;)
        {
            var fit = Fit(lines.Count - from, leading);
            for (var i = 0; i < fit; i++, y += leading)
            {
                Page.Add(new PlacedText(lines[from + i], text.Style, paper.Left + text.Indent, Base(y, text.Style)));
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

    private void Begin(FlowText text)
    {
        Page.Add(new PlacedOpen(text.Mark is null ? text.Role : FlowRole.Item));
        if (text.Mark is { } mark)
        {
            Page.AddRange([new PlacedOpen(FlowRole.Mark), new PlacedText(mark, text.Style, paper.Left + text.Indent - ListIndent, Base(y, text.Style)), new PlacedClose(), new PlacedOpen(text.Role)]);
        }
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

    private double Height(FlowFigure figure) => Math.Min(figure.Width, WidthAt(y)) / figure.Drawing.Width * figure.Drawing.Height;

    private void Figure(FlowFigure figure)
    {
        if (!AtHead && y + Height(figure) > paper.Foot)
        {
            Turn();
        }

        var (width, height) = (Math.Min(figure.Width, WidthAt(y)), Height(figure));

        Draw(figure.Drawing, paper.Left, y, width);
        y += height + FigureGap;
    }

    private void Draw(Domain.Drawings.Sketch drawing, double x, double top, double width)
    {
        var scale = width / drawing.Width;
        Page.AddRange(
        [
            new PlacedOpen(FlowRole.Figure, $"{drawing.Title}. {drawing.Description}", x, top, width, drawing.Height * scale),
            new PlacedSketch(drawing, x, top, scale),
            new PlacedClose(),
        ]);
    }

    private List<IReadOnlyList<string>> ListOf(FlowAside aside) =>
        [.. aside.List.Select(item => LineBreaker.Break(item, aside.Style, measure, _ => aside.Column - ListIndent, aside.Column - ListIndent))];

    private double AsideHeight(FlowAside aside) =>
        (aside.Width / aside.Drawing.Width * aside.Drawing.Height) + ListGap
        + ListOf(aside).Sum(item => (item.Count * aside.Style.Leading) + 1.5);

    private void Aside(FlowAside aside)
    {
        Clear();
        if (!AtHead && y + AsideHeight(aside) > paper.Foot + 0.01)
        {
            Turn();
        }

        var left = paper.Width - paper.Right - aside.Column;
        Draw(aside.Drawing, left + ((aside.Column - aside.Width) / 2), y, aside.Width);
        var at = y + (aside.Width / aside.Drawing.Width * aside.Drawing.Height) + ListGap;
        Page.Add(new PlacedOpen(FlowRole.List));
        foreach (var (item, index) in ListOf(aside).Select((item, index) => (item, index)))
        {
            Page.AddRange(
            [
                new PlacedOpen(FlowRole.Item), new PlacedOpen(FlowRole.Mark),
                new PlacedText(FormattableString.Invariant($"{index + 1}"), aside.Style with { Face = Face.LabelStrong }, left, Base(at, aside.Style)),
                new PlacedClose(), new PlacedOpen(FlowRole.ItemBody),
            ]);
            foreach (var line in item)
            {
                Page.Add(new PlacedText(line, aside.Style, left + ListIndent, Base(at, aside.Style)));
                at += aside.Style.Leading;
            }

            at += 1.5;
            Page.AddRange([new PlacedClose(), new PlacedClose()]);
        }

        Page.Add(new PlacedClose());
        (asideFoot, asideColumn) = (at + 4, aside.Column);
    }

    private void Table(FlowTable table)
    {
        var width = WidthAt(y);
        var rows = table.Rows.Select(row => new TableRow(row, table, width, measure)).ToList();
        if (!AtHead && y + table.Style.Leading + rows[0].Height + rows.Skip(1).Take(1).Sum(row => row.Height) > paper.Foot)
        {
            Turn();
        }

        Page.Add(new PlacedOpen(FlowRole.Table));
        Page.AddRange([new PlacedOpen(FlowRole.Caption), new PlacedText(table.Caption, table.Style with { Tone = Tone.Pencil }, paper.Left, Base(y, table.Style)), new PlacedClose()]);
        y += table.Style.Leading;
        foreach (var (row, index) in rows.Select((row, index) => (row, index)))
        {
            if (y + row.Height > paper.Foot && !AtHead)
            {
                Turn();
                Again(rows[0], index);
            }

            y = row.Place(Page, paper.Left, y, head: index == 0, furniture: false);
        }

        Page.Add(new PlacedClose());
        y += 9;
    }

    private void Again(TableRow head, int index)
    {
        if (index > 0)
        {
            y = head.Place(Page, paper.Left, y, head: true, furniture: true);
        }
    }
}
