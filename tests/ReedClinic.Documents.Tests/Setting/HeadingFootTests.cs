using CsCheck;
using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Tests.Setting;

/// <summary>A heading never stands alone at the foot of a page: tried at every height of a page, before everything that may follow one.</summary>
public sealed class HeadingFootTests
{
    private const int Tall = 360; // between the margins of the sheet, in points

    private static readonly FlowText Heading = FixedType.Text("Heading", FlowRole.Heading) with { Style = FixedType.Body with { Leading = 17 }, Before = 10, After = 4, KeepsWithNext = true };
    private static readonly FlowTable Table = new("Caption", [[new("Column"), new("Other")], .. Enumerable.Range(1, 4).Select(row => (IReadOnlyList<FlowCell>)[new($"r{row}"), new("cell\nof two lines")])], [0.5, 0.5], FixedType.Body);
    private static readonly FlowFigure Figure = new(FixedType.Drawing(200, 130), 200);

    private static readonly Dictionary<string, FlowItem[]> Following = new()
    {
        ["one line"] = [FixedType.Lines("own", 1)],
        ["three lines"] = [FixedType.Lines("own", 3)],
        ["many lines"] = [FixedType.Lines("own", 40)],
        ["an item of a list"] = [new FlowOpen(FlowRole.List), FixedType.Lines("own", 5) with { Role = FlowRole.ItemBody, Mark = "–", Indent = 14 }, new FlowClose()],
        ["items that stay together"] = [.. Enumerable.Range(1, 4).Select(item => FixedType.Lines($"own{item}", 2, keeps: item < 4))],
        ["a line below it and a drawing"] = [FixedType.Text("Under it") with { After = 5, KeepsWithNext = true }, Figure],
        ["a drawing"] = [Figure],
        ["a drawing with text beside it"] = [new FlowAside(FixedType.Drawing(60, 90), 60, 80, ["what it means", "and this"], FixedType.Body), FixedType.Lines("own", 9)],
        ["a table"] = [Table],
        ["a table and its drawing"] = [new FlowTogether([Table, new FlowTogether([FixedType.Text("Under it") with { KeepsWithNext = true }, Figure])])],
        ["another heading"] = [Heading with { Text = "Heading two" }, FixedType.Lines("own", 4)],
        ["a part that begins below every drawing"] = [new FlowClear(), new FlowOpen(FlowRole.Section), FixedType.Lines("own", 4), new FlowClose()],
    };

    private static readonly Gen<FlowItem[]> Items = Gen.Int[0, Following.Count - 1].Select(which => Following.Values.ElementAt(which));

    public static TheoryData<string> Kinds => [.. Following.Keys];

    [Theory, MemberData(nameof(Kinds))]
    public void At_every_height_of_a_page_something_stands_below_it(string kind)
    {
        for (var above = 0.0; above <= Tall; above += 0.5)
        {
            Something(FixedType.Set([new FlowRule(above), Heading, .. Following[kind]]), $"{kind}, {above} points down");
        }
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Also_beside_a_drawing_that_reaches_further_down(string kind)
    {
        for (var above = 0.0; above <= Tall; above += 1)
        {
            var aside = new FlowAside(FixedType.Drawing(60, 70), 60, 80, [], FixedType.Body);
            Something(FixedType.Set([new FlowRule(above), aside, FixedType.Lines("beside", 2), Heading, .. Following[kind]]), $"{kind}, {above} points down");
        }
    }

    [Fact]
    public void Whatever_stands_before_and_after_it() =>
        Gen.Select(Gen.Int[0, 2 * Tall], Items.Array[1, 4], Items).Sample((above, before, after) =>
            Something(FixedType.Set([new FlowRule(above % Tall), .. before.SelectMany(items => items), Heading, .. after]), $"{above}"), iter: 3000);

    [Fact]
    public void What_belongs_together_stands_on_one_page_unless_much_of_a_page_would_be_lost()
    {
        for (var above = 0.0; above <= Tall; above += 1)
        {
            var pages = FixedType.Set(new FlowRule(above), new FlowTogether([FixedType.Text("Said of it") with { KeepsWithNext = true }, new FlowFigure(FixedType.Drawing(200, 60), 200), FixedType.Lines("step", 2)]));

            var page = FixedType.PagesOf(pages, "Said").Single();
            Assert.Single(pages[page].OfType<PlacedSketch>());
            Assert.True(FixedType.PagesOf(pages, "step").All(step => step == page) || Tall - above > Tall / 6, $"{above} points down");
        }
    }

    [Fact]
    public void A_list_that_stands_beside_its_drawing_stays_on_its_page()
    {
        for (var above = 0.0; above <= Tall; above += 1)
        {
            var pages = FixedType.Set(new FlowRule(above), new FlowAside(FixedType.Drawing(60, 50), 60, 80, [.. Enumerable.Range(1, 9).Select(item => $"item {item}")], FixedType.Body), FixedType.Lines("own", 3));

            var drawn = Enumerable.Range(0, pages.Count).Single(page => pages[page].OfType<PlacedSketch>().Any());
            Assert.All(FixedType.PagesOf(pages, "item"), page => Assert.Equal(drawn, page));
        }
    }

    // Below the last line of each heading stands something on the same page that is no heading.
    private static void Something(IReadOnlyList<IReadOnlyList<Placed>> pages, string where)
    {
        foreach (var page in pages)
        {
            foreach (var heading in page.OfType<PlacedText>().Where(text => text.Text.StartsWith("Heading", StringComparison.Ordinal)))
            {
                Assert.True(
                    page.OfType<PlacedText>().Any(text => text.Y > heading.Y && !text.Text.StartsWith("Heading", StringComparison.Ordinal)) || page.OfType<PlacedSketch>().Any(drawing => drawing.Y >= heading.Y - 1),
                    where);
            }
        }
    }
}
