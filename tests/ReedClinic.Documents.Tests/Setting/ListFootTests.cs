using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Tests.Setting;

/// <summary>No item of a list stands alone at the head or at the foot of a page: tried at every height of a page.</summary>
public sealed class ListFootTests
{
    private const int Tall = 360; // between the margins of the sheet, in points

    private static readonly FlowTable Table = new("Caption", [[new("Column"), new("Other")], [new("r1"), new("cell")], [new("r2"), new("cell")]], [0.5, 0.5], FixedType.Body);

    private static readonly Dictionary<string, FlowItem[]> Before = new()
    {
        ["a paragraph"] = [FixedType.Lines("said", 4)],
        ["a table"] = [new FlowTogether([Table])],
        ["a table and its drawing"] = [new FlowTogether([Table, new FlowTogether([FixedType.Text("Under it") with { KeepsWithNext = true }, new FlowFigure(FixedType.Drawing(200, 60), 200)])])],
    };

    public static TheoryData<string, int> Kinds => [.. from kind in Before.Keys from items in (int[])[1, 2, 3, 5] select (kind, items)];

    [Theory, MemberData(nameof(Kinds))]
    public void At_every_height_of_a_page_something_stands_beside_it(string kind, int items)
    {
        for (var above = 0.0; above <= Tall; above += 1)
        {
            var pages = FixedType.Set(
            [
                new FlowRule(above), .. Before[kind],
                new FlowOpen(FlowRole.List), .. Enumerable.Range(1, items).Select(item => FixedType.Lines($"item{item}.", 1) with { Role = FlowRole.ItemBody, Mark = "–", Indent = 14 }), new FlowClose(),
            ]);
            foreach (var (number, page) in pages.Index())
            {
                List<string> texts = [.. page.OfType<PlacedText>().Select(text => text.Text).Where(text => text != "–")];
                var alone = texts.Count(text => text.StartsWith("item", StringComparison.Ordinal)) == 1;
                var first = number > 0 && alone && texts[0].StartsWith("item", StringComparison.Ordinal) && !page.OfType<PlacedSketch>().Any();
                Assert.False(first || (alone && items > 1), $"{kind}, {items} items, {above} points down, page {number + 1}");
            }
        }
    }
}
