namespace ReedClinic.Documents.Setting;

/// <summary>A table on the left and, at its side, what is said and drawn of it; neither is parted.</summary>
internal sealed class BesideBox
{
    /// <summary>How far the drawing may reach below its table: what follows is set at its side.</summary>
    public const double MostHanging = 54;

    private const double WordsGap = 3;

    private readonly FlowBeside beside;
    private readonly FlowSide side;
    private readonly IReadOnlyList<string> lines;
    private readonly double top;

    public BesideBox(FlowBeside beside, FlowSide side, IReadOnlyList<TableRow> rows, ITypeMeasure measure, Spot at)
    {
        (this.beside, this.side, Rows) = (beside, side, rows);
        lines = LineBreaker.Break(beside.Words, beside.Style, measure, _ => side.Column, side.Column);
        TableFoot = at.Y + beside.Table.Style.Leading + rows.Sum(row => row.Height);
        top = at.Below;
        SideFoot = top + Tall + WordsGap + (side.Column / side.Drawing.Width * side.Drawing.Height);
    }

    public IReadOnlyList<TableRow> Rows { get; }

    public double Column => side.Column;

    public double TableFoot { get; }

    public double SideFoot { get; }

    public double Hangs => SideFoot - TableFoot;

    private double Tall => lines.Count * beside.Style.Leading;

    public void Place(List<Placed> page, double left)
    {
        page.Add(new PlacedOpen(FlowRole.Paragraph));
        page.AddRange(lines.Select((line, i) => new PlacedText(line, beside.Style, left, Paginator.Base(top + (i * beside.Style.Leading), beside.Style))));
        page.Add(new PlacedClose());
        page.AddRange(AsideBox.Drawn(side.Drawing, left, top + Tall + WordsGap, side.Column));
    }
}
