namespace ReedClinic.Documents.Setting;

/// <summary>A drawing on the right with its list below it, the list broken into lines; it is never parted.</summary>
internal sealed class AsideBox
{
    private const double ListGap = 5;
    private const double ListIndent = 13;
    private const double ItemGap = 1.5;

    private readonly FlowAside aside;
    private readonly List<IReadOnlyList<string>> list;

    public AsideBox(FlowAside aside, ITypeMeasure measure)
    {
        this.aside = aside;
        var room = aside.Column - ListIndent;
        list = [.. aside.List.Select(item => LineBreaker.Break(item, aside.Style, measure, _ => room, room))];
        Height = Tall + ListGap + list.Sum(item => (item.Count * aside.Style.Leading) + ItemGap);
    }

    public double Height { get; }

    private double Tall => aside.Width / aside.Drawing.Width * aside.Drawing.Height;

    public void Place(List<Placed> page, double left, double top)
    {
        page.AddRange(Drawn(aside.Drawing, left + ((aside.Column - aside.Width) / 2), top, aside.Width));
        if (list.Count == 0)
        {
            return;
        }

        var at = top + Tall + ListGap;
        page.Add(new PlacedOpen(FlowRole.List));
        foreach (var (item, index) in list.Select((item, index) => (item, index)))
        {
            page.AddRange(
            [
                new PlacedOpen(FlowRole.Item), new PlacedOpen(FlowRole.Mark),
                new PlacedText(FormattableString.Invariant($"{index + 1}"), aside.Style with { Face = Face.LabelStrong }, left, Paginator.Base(at, aside.Style)),
                new PlacedClose(), new PlacedOpen(FlowRole.ItemBody),
            ]);
            page.AddRange(item.Select((line, i) => new PlacedText(line, aside.Style, left + ListIndent, Paginator.Base(at + (i * aside.Style.Leading), aside.Style))));
            page.AddRange([new PlacedClose(), new PlacedClose()]);
            at += (item.Count * aside.Style.Leading) + ItemGap;
        }

        page.Add(new PlacedClose());
    }

    /// <summary>A drawing in its place.</summary>
    public static IEnumerable<Placed> Drawn(Domain.Drawings.Sketch drawing, double x, double top, double width)
    {
        var scale = width / drawing.Width;
        return
        [
            new PlacedOpen(FlowRole.Figure, $"{drawing.Title}. {drawing.Description}", x, top, width, drawing.Height * scale),
            new PlacedSketch(drawing, x, top, scale),
            new PlacedClose(),
        ];
    }
}
