using ReedClinic.Domain.Drawings;

namespace ReedClinic.Documents.Setting;

/// <summary>The parts of a paragraph, a heading or an item of a list in their places.</summary>
internal static class TextPiece
{
    /// <summary>How much room a patch takes before a text.</summary>
    public const double PatchRoom = 12;

    private const double ListIndent = 13;
    private const double PatchSide = 8;

    /// <summary>What is opened before its first line, with the mark of an item.</summary>
    public static IEnumerable<Placed> Begin(FlowText text, double left, double top) => text.Mark is not { } mark
        ? [new PlacedOpen(text.Role)]
        :
        [
            new PlacedOpen(FlowRole.Item), new PlacedOpen(FlowRole.Mark),
            new PlacedText(mark, text.Style, left + text.Indent - ListIndent - (text.Patch is null ? 0 : PatchRoom), Paginator.Base(top, text.Style)),
            new PlacedClose(), .. Patched(text.Patch, left + text.Indent, top, text.Style), new PlacedOpen(text.Role),
        ];

    /// <summary>A patch before a text, as tall as its small letters stand; nothing where there is none.</summary>
    public static IEnumerable<Placed> Patched(Sketch? patch, double textLeft, double top, TypeStyle style) => patch is null ? [] :
    [
        new PlacedOpen(FlowRole.Furniture),
        new PlacedSketch(patch, textLeft - PatchRoom, Paginator.Base(top, style) - PatchSide + 1, PatchSide / patch.Width),
        new PlacedClose(),
    ];

    /// <summary>One line. A link on several lines is one for each: a rectangle holds no more.</summary>
    public static IEnumerable<Placed> Line(FlowText text, string line, double left, double top, ITypeMeasure measure)
    {
        var (x, placed) = (left + text.Indent, new PlacedText(line, text.Style, left + text.Indent, Paginator.Base(top, text.Style)));
        return text.Link is { } link ? [new PlacedLink(link, x, top, measure.Width(line, text.Style), text.Style.Leading), placed, new PlacedClose()] : [placed];
    }
}
