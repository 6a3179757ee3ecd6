using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Drawings;

namespace ReedClinic.Documents.Tests.Setting;

/// <summary>Type of which every sign is half as wide as it is high, and a sheet of thirty lines of fifty-two signs.</summary>
internal sealed class FixedType : ITypeMeasure
{
    public const double Sign = 5;

    public const int LinesOnAPage = 30;

    public static readonly Paper Sheet = new(300, 400, 20, 20, 20, 20);

    public static readonly TypeStyle Body = new(Face.Text, 2 * Sign, 12);

    public double Width(string text, TypeStyle style) => text.Length * style.Size / 2;

    public static IReadOnlyList<IReadOnlyList<Placed>> Set(params IEnumerable<FlowItem> flow) => Paginator.Set([.. flow], Sheet, new FixedType());

    public static FlowText Text(string text, FlowRole role = FlowRole.Paragraph) => new(role, text, Body);

    /// <summary>So many lines, each of them one word of a name that says which.</summary>
    public static FlowText Lines(string name, int lines, bool keeps = false) =>
        new(FlowRole.Paragraph, string.Join('\n', Enumerable.Range(1, lines).Select(line => $"{name}{line}")), Body) { KeepsWithNext = keeps };

    public static Sketch Drawing(double width, double height) => new(width, height, "A drawing", "Nothing is on it.", []);

    /// <summary>A table and a drawing for its side, so tall.</summary>
    public static FlowBeside Beside(FlowTable table, double height) =>
        new(table, "Said of it", Body, [new(Drawing(80, height), 80)], [Text("Said of it") with { KeepsWithNext = true }, new FlowFigure(Drawing(80, height), 80)]);

    /// <summary>The page, from 0, and the place of each line of text that is not the page's own.</summary>
    public static List<(int Page, PlacedText Text)> Placed(IReadOnlyList<IReadOnlyList<Placed>> pages)
    {
        List<(int, PlacedText)> all = [];
        var furniture = 0;
        Stack<FlowRole> open = [];
        foreach (var (page, number) in pages.Select((page, number) => (page, number)))
        {
            foreach (var item in page)
            {
                switch (item)
                {
                    case PlacedOpen begin:
                        open.Push(begin.Role);
                        furniture += begin.Role == FlowRole.Furniture ? 1 : 0;
                        break;
                    case PlacedClose:
                        furniture -= open.Pop() == FlowRole.Furniture ? 1 : 0;
                        break;
                    case PlacedText text when furniture == 0:
                        all.Add((number, text));
                        break;
                }
            }
        }

        Assert.Empty(open);
        return all;
    }

    /// <summary>The pages on which lines that begin so stand, one for each line.</summary>
    public static List<int> PagesOf(IReadOnlyList<IReadOnlyList<Placed>> pages, string name) =>
        [.. Placed(pages).Where(line => line.Text.Text.StartsWith(name, StringComparison.Ordinal)).Select(line => line.Page)];
}
