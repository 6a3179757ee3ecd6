namespace ReedClinic.Documents.Setting;

/// <summary>The parts of a paragraph, a heading or an item of a list in their places.</summary>
internal static class TextPiece
{
    private const double ListIndent = 13;

    /// <summary>What is opened before its first line, with the mark of an item.</summary>
    public static IEnumerable<Placed> Begin(FlowText text, double left, double top) => text.Mark is not { } mark
        ? [new PlacedOpen(text.Role)]
        :
        [
            new PlacedOpen(FlowRole.Item), new PlacedOpen(FlowRole.Mark),
            new PlacedText(mark, text.Style, left + text.Indent - ListIndent, Paginator.Base(top, text.Style)),
            new PlacedClose(), new PlacedOpen(text.Role),
        ];

    /// <summary>One line. A link on several lines is one for each: a rectangle holds no more.</summary>
    public static IEnumerable<Placed> Line(FlowText text, string line, double left, double top, ITypeMeasure measure)
    {
        var (x, placed) = (left + text.Indent, new PlacedText(line, text.Style, left + text.Indent, Paginator.Base(top, text.Style)));
        return text.Link is { } link ? [new PlacedLink(link, x, top, measure.Width(line, text.Style), text.Style.Leading), placed, new PlacedClose()] : [placed];
    }
}
