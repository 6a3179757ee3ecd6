namespace ReedClinic.Documents.Setting;

/// <summary>A row of a table, its cells broken into lines; it is never parted.</summary>
internal sealed class TableRow
{
    private const double Pad = 3.5;

    private readonly List<(IReadOnlyList<string> Lines, double X, TypeStyle Style)> cells = [];
    private readonly double width;

    public TableRow(IReadOnlyList<FlowCell> row, FlowTable table, double width, ITypeMeasure measure)
    {
        this.width = width;
        var x = 0.0;
        for (var i = 0; i < row.Count; i++)
        {
            var style = table.Style with { Tone = row[i].Tone, Face = ReferenceEquals(row, table.Rows[0]) ? Face.LabelStrong : table.Style.Face };
            var room = (table.Shares[i] * width) - 8;
            cells.Add((LineBreaker.Break(row[i].Text, style, measure, _ => room, room), x, style));
            x += table.Shares[i] * width;
        }

        Height = (cells.Max(cell => cell.Lines.Count) * table.Style.Leading) + (2 * Pad);
    }

    public double Height { get; }

    /// <summary>The caption, the row that heads the columns, and one more, or two where there are no others: no row stands alone on the next page.</summary>
    public static double Beginning(FlowTable table, IReadOnlyList<TableRow> rows) => table.Style.Leading + rows.Take(rows.Count == 3 ? 3 : 2).Sum(row => row.Height);

    public double Place(List<Placed> page, double left, double top, bool head, bool furniture)
    {
        page.Add(new PlacedOpen(furniture ? FlowRole.Furniture : FlowRole.Row));
        foreach (var (cell, index) in cells.Select((cell, index) => (cell, index)))
        {
            if (!furniture)
            {
                page.Add(new PlacedOpen(head || index == 0 ? FlowRole.Head : FlowRole.Cell));
            }

            page.AddRange(cell.Lines.Select((line, i) =>
                new PlacedText(line, cell.Style, left + cell.X, Paginator.Base(top + Pad + (i * cell.Style.Leading), cell.Style))));
            if (!furniture)
            {
                page.Add(new PlacedClose());
            }
        }

        page.Add(new PlacedClose());
        page.AddRange([new PlacedOpen(FlowRole.Furniture), new PlacedRule(left, top + Height, width), new PlacedClose()]);
        return top + Height;
    }
}
