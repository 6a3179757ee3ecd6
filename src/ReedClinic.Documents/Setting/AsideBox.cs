namespace ReedClinic.Documents.Setting;

/// <summary>A drawing on the right with its list below it, the list broken into lines; it is never parted.</summary>
internal sealed class AsideBox
{
    private const double ListGap = 5;
    private const double ListIndent = 13;
    private const double ItemGap = 1.5;
    private const double ListFoot = 6;
    private const double Tolerance = 0.01;
    private const double HighestPicture = 0.45;

    private const double LeastScale = 0.78;
    private const double MuchRoom = 0.17;

    // Rather a drawing that is a little smaller than the list apart from it; and only where much room would be lost much smaller.
    private static readonly (double Scale, bool WithList, double LeastRoom)[] Ways =
        [(1, true, 0), (0.92, true, 0), (1, false, 0), (0.92, false, 0), (0.86, false, MuchRoom), (LeastScale, false, MuchRoom)];

    private readonly FlowAside aside;
    private readonly List<IReadOnlyList<string>> list;
    private readonly double width;
    private readonly double indent;

    private AsideBox(FlowAside aside, ITypeMeasure measure, double scale, bool withList)
    {
        this.aside = aside;
        width = aside.Width * Math.Max(LeastScale, scale * aside.Scale);
        indent = ListIndent + (aside.Patches.Count == 0 ? 0 : TextPiece.PatchRoom);
        var room = aside.Column - indent;
        list = withList ? [.. aside.List.Select(item => LineBreaker.Break(item, aside.Style, measure, _ => room, room))] : [];
        Height = Tall + (list.Count == 0 ? 0 : ListGap) + list.Sum(item => (item.Count * aside.Style.Leading) + ItemGap);
    }

    public double Height { get; }

    /// <summary>Its list, where that has no room below it: it stands beside the drawing, in the text.</summary>
    public IReadOnlyList<FlowItem> Rest => list.Count == aside.List.Count ? [] :
    [
        new FlowOpen(FlowRole.List),
        .. aside.List.Select((item, index) => new FlowText(FlowRole.ItemBody, item, aside.Style) { Mark = FormattableString.Invariant($"{index + 1}"), Patch = PatchOf(index), Indent = indent + 1, After = index == aside.List.Count - 1 ? ListFoot : ItemGap }),
        new FlowClose(),
    ];

    private Domain.Drawings.Sketch? PatchOf(int index) => aside.Patches.Count == 0 ? null : aside.Patches[index];

    private double Tall => width / aside.Drawing.Width * aside.Drawing.Height;

    /// <summary>The best that some room holds; null where it holds none.</summary>
    /// <param name="room">The room.</param>
    /// <param name="page">The height of a whole page.</param>
    /// <param name="aside">The drawing and its list.</param>
    /// <param name="measure">Tells how wide text is.</param>
    /// <param name="keeps">Whether its page holds the list that stands beside it.</param>
    public static AsideBox? In(double room, double page, FlowAside aside, ITypeMeasure measure, Func<AsideBox, bool> keeps) =>
        Ways.Where(way => room >= way.LeastRoom * page && !(way.WithList && aside.IsListLong)).Select(way => new AsideBox(aside, measure, way.Scale, way.WithList)).FirstOrDefault(box => box.Height <= room + Tolerance && keeps(box));

    /// <summary>As it is at its smallest: no page holds more of it.</summary>
    public static AsideBox Least(FlowAside aside, ITypeMeasure measure) => new(aside, measure, LeastScale, withList: false);

    public void Place(List<Placed> page, double left, double top)
    {
        page.AddRange(Drawn(aside.Drawing, left + ((aside.Column - width) / 2), top, width));
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
                new PlacedClose(), .. TextPiece.Patched(PatchOf(index), left + indent, at, aside.Style), new PlacedOpen(FlowRole.ItemBody),
            ]);
            page.AddRange(item.Select((line, i) => new PlacedText(line, aside.Style, left + indent, Paginator.Base(at + (i * aside.Style.Leading), aside.Style))));
            page.AddRange([new PlacedClose(), new PlacedClose()]);
            at += (item.Count * aside.Style.Leading) + ItemGap;
        }

        page.Add(new PlacedClose());
    }

    /// <summary>How large a drawing or a picture is by itself: as wide as it may be, and a picture never higher than a part of the page.</summary>
    public static (double Width, double Height) SizeOf(FlowItem item, double room, double page)
    {
        var (wide, ratio, highest) = item is FlowPicture picture
            ? (picture.Width, (double)picture.Picture.Height / picture.Picture.Width, page * HighestPicture)
            : (((FlowFigure)item).Width, ((FlowFigure)item).Drawing.Height / ((FlowFigure)item).Drawing.Width, double.PositiveInfinity);
        var width = Math.Min(Math.Min(wide, room), highest / ratio);
        return (width, width * ratio);
    }

    /// <summary>A picture in its place.</summary>
    public static IEnumerable<Placed> Shown(FlowPicture picture, double x, double top, double width, double height) =>
    [
        new PlacedOpen(FlowRole.Figure, picture.Words, x, top, width, height),
        new PlacedPicture(picture.Picture, x, top, width, height),
        new PlacedClose(),
    ];

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
