using CsCheck;
using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Tests.Setting;

/// <summary>What holds of every document, whatever stands in it.</summary>
public sealed class RandomFlowTests
{
    private static readonly Gen<string> Words = Gen.String[Gen.Char["abcdefg     -\n"], 1, 300];
    private static readonly Gen<string> FewWords = Gen.String[Gen.Char["hijk  "], 1, 40];

    private static readonly Gen<FlowItem> Items = Gen.Frequency(
        (5, Gen.Select(Words, Gen.Double[0, 12], Gen.Double[0, 8]).Select(FlowItem (text, before, after) => FixedType.Text(text) with { Before = before, After = after })),
        (2, FewWords.Select(FlowItem (text) => FixedType.Text(text, FlowRole.Heading) with { Before = 10, After = 4, KeepsWithNext = true })),
        (3, Gen.Select(Words, Gen.Bool).Select(FlowItem (text, keeps) => FixedType.Text(text, FlowRole.ItemBody) with { Mark = "m", Indent = 14, After = 2, KeepsWithNext = keeps })),
        (1, FewWords.Array[2, 2].Array[1, 9].Select(FlowItem (rows) => new FlowTable("Caption", [.. rows.Select(row => (IReadOnlyList<FlowCell>)[.. row.Select(cell => new FlowCell(cell))])], [0.3, 0.7], FixedType.Body))),
        (1, Gen.Select(Gen.Double[20, 320], Gen.Double[20, 300]).Select(FlowItem (width, height) => new FlowFigure(FixedType.Drawing(width, height), width))),
        (1, Gen.Select(Gen.Double[20, 60], Gen.Double[20, 150], FewWords.Array[0, 4]).Select(FlowItem (width, height, list) => new FlowAside(FixedType.Drawing(width, height), width, 80, list, FixedType.Body))),
        (1, Gen.Select(FewWords.Array[2, 2].Array[2, 5], Gen.Double[20, 150]).Select(FlowItem (rows, height) => FixedType.Beside(new("Caption", [.. rows.Select(row => (IReadOnlyList<FlowCell>)[.. row.Select(cell => new FlowCell(cell))])], [0.3, 0.7], FixedType.Body), height))),
        (1, Gen.Const<FlowItem>(new FlowClear())),
        (1, Gen.Const<FlowItem>(new FlowRule(6))));

    [Fact]
    public void Every_word_stands_once_and_in_its_order() => Items.Array[0, 25].Sample(flow =>
    {
        var placed = string.Concat(FixedType.Placed(FixedType.Set(flow)).Select(line => line.Text.Text));

        Assert.Equal(Bare(string.Concat(flow.SelectMany(Said))), Bare(placed));
    }, iter: 2000);

    [Fact]
    public void Nothing_stands_outside_the_margins_or_over_anything_else() => Items.Array[0, 25].Sample(flow =>
    {
        var pages = FixedType.Set(flow);

        var paper = FixedType.Sheet;
        foreach (var page in pages)
        {
            List<(double X, double Y, double Right, double Foot)> boxes =
            [
                .. page.OfType<PlacedText>().Where(text => text.Text.Trim().Length > 0).Select(text => (text.X, text.Y - 5, text.X + (text.Text.TrimEnd().Length * FixedType.Sign), text.Y)),
                .. page.OfType<PlacedSketch>().Select(drawing => (drawing.X, drawing.Y, drawing.X + (drawing.Drawing.Width * drawing.Scale), drawing.Y + (drawing.Drawing.Height * drawing.Scale))),
            ];
            Assert.All(boxes, box => Assert.True(box.X > paper.Left - 0.1 && box.Right < paper.Width - paper.Right + 0.1 && box.Y > paper.Top - 0.1 && box.Foot < paper.Foot + 0.1, $"{box}"));
            Assert.All(boxes.Index(), one => Assert.DoesNotContain(boxes.Take(one.Index), other =>
                other.X < one.Item.Right - 0.1 && one.Item.X < other.Right - 0.1 && other.Y < one.Item.Foot - 0.1 && one.Item.Y < other.Foot - 0.1));
        }
    }, iter: 2000);

    private static IEnumerable<string> Said(FlowItem item) => item switch
    {
        FlowText text => [text.Mark ?? "", text.Text],
        FlowTable table => [table.Caption, .. table.Rows.SelectMany(row => row).Select(cell => cell.Text)],
        FlowBeside beside => [.. Said(beside.Table), beside.Words],
        FlowAside aside => aside.List.SelectMany((line, index) => new[] { $"{index + 1}", line }),
        _ => [],
    };

    private static string Bare(string text) => text.Replace(" ", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal);
}
