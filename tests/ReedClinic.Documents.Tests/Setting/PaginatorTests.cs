using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Tests.Setting;

/// <summary>What stays together where pages end. Every case is tried at every height of a page.</summary>
public sealed class PaginatorTests
{
    private static readonly FlowText Heading = FixedType.Text("Heading", FlowRole.Heading) with { Style = FixedType.Body with { Leading = 17 }, Before = 10, After = 4, KeepsWithNext = true };
    private static readonly FlowText Under = FixedType.Text("Under it") with { After = 5, KeepsWithNext = true };

    private static readonly string[] Together = ["Heading", "Caption", "Column", "r1c1l1", "r1c1l3"];

    public static TheoryData<int> Heights => [.. Enumerable.Range(0, FixedType.LinesOnAPage + 1)];

    [Theory, MemberData(nameof(Heights))]
    public void Of_a_paragraph_at_least_two_lines_stand_on_a_page(int above)
    {
        for (var lines = 2; lines < 9; lines++)
        {
            var pages = FixedType.PagesOf(Set(above, FixedType.Lines("own", lines)), "own");

            Assert.Equal(lines, pages.Count);
            Assert.All(pages.CountBy(page => page), page => Assert.True(page.Value >= 2, $"{lines} lines: {string.Join(' ', pages)}"));
        }
    }

    [Theory, MemberData(nameof(Heights))]
    public void An_item_of_a_list_stands_beside_its_mark(int above)
    {
        for (var lines = 1; lines < 6; lines++)
        {
            var placed = FixedType.Placed(Set(above, FixedType.Lines("own", lines) with { Role = FlowRole.ItemBody, Mark = "7.", Indent = 14 }));

            var (mark, first) = (placed.Single(line => line.Text.Text == "7."), placed.Single(line => line.Text.Text.TrimEnd() == "own1"));
            Assert.Equal((mark.Page, mark.Text.Y), (first.Page, first.Text.Y));
            Assert.True(mark.Text.X < first.Text.X);
        }
    }

    [Theory, MemberData(nameof(Heights))]
    public void A_heading_stays_with_two_lines_of_what_follows(int above)
    {
        for (var lines = 1; lines < 6; lines++)
        {
            var pages = Set(above, Heading, FixedType.Lines("own", lines));

            var under = FixedType.PagesOf(pages, "own");
            Assert.All(under.Take(2), page => Assert.Equal(FixedType.PagesOf(pages, "Heading").Single(), page));
        }
    }

    [Theory, MemberData(nameof(Heights))]
    public void A_heading_stays_with_a_drawing_and_with_what_stands_between(int above)
    {
        var figure = Set(above, Heading, Under, new FlowFigure(FixedType.Drawing(200, 130), 200));
        var aside = Set(above, Heading, Under, new FlowAside(FixedType.Drawing(60, 90), 60, 80, ["what it means", "and this"], FixedType.Body), FixedType.Lines("own", 9));

        Assert.Equal(FixedType.PagesOf(figure, "Heading").Single(), PageOfTheDrawing(figure));
        Assert.Equal(FixedType.PagesOf(aside, "Heading").Single(), PageOfTheDrawing(aside));
        Assert.Equal(FixedType.PagesOf(aside, "Heading").Single(), FixedType.PagesOf(aside, "own1").Single());
    }

    [Theory, MemberData(nameof(Heights))]
    public void A_heading_stays_with_a_table_and_its_first_row(int above)
    {
        var pages = Set(above, Heading, Table(rows: 9, lines: 3));

        Assert.Single(Together.Select(words => FixedType.PagesOf(pages, words)[0]).Distinct());
    }

    [Theory, MemberData(nameof(Heights))]
    public void No_row_is_parted_and_the_head_stands_again_where_a_table_goes_on(int above)
    {
        var pages = Set(above, Table(rows: 14, lines: 3));

        for (var row = 1; row <= 14; row++)
        {
            Assert.Single(FixedType.PagesOf(pages, $"r{row}c").Distinct());
        }

        Assert.Equal(14 * 6, FixedType.PagesOf(pages, "r").Count);
        foreach (var page in FixedType.PagesOf(pages, "r").Distinct())
        {
            var heads = pages[page].OfType<PlacedText>().Where(text => text.Text == "Column 1").ToList();
            var first = pages[page].OfType<PlacedText>().Where(text => text.Text.StartsWith('r')).Min(text => text.Y);
            Assert.True(Assert.Single(heads).Y < first);
        }
    }

    [Theory, MemberData(nameof(Heights))]
    public void The_last_row_of_a_table_never_stands_alone_on_a_page(int above)
    {
        for (var rows = 2; rows < 9; rows++)
        {
            var pages = FixedType.PagesOf(Set(above, Table(rows, lines: 3)), "r");

            Assert.Equal(rows * 6, pages.Count);
            Assert.True(pages.Count(page => page == pages[^1]) >= 12, $"{rows} rows: {string.Join(' ', pages)}");
        }
    }

    // A page has 360 points. The drawing has 90, its list 32; it may have 78 parts of a hundred without its list.
    [Theory, MemberData(nameof(Heights))]
    public void A_drawing_goes_without_its_list_or_smaller_rather_than_onto_the_next_page(int above)
    {
        var aside = new FlowAside(FixedType.Drawing(60, 90), 60, 80, ["what it means", "and this"], FixedType.Body);

        var pages = Set(above, aside, FixedType.Lines("own", 9));

        Assert.Equal((FixedType.LinesOnAPage - above) * 12 >= 0.78 * 90 ? 0 : 1, PageOfTheDrawing(pages));
        var drawn = pages[PageOfTheDrawing(pages)].OfType<PlacedSketch>().Single();
        Assert.True(drawn.Y + (drawn.Scale * 90) <= FixedType.Sheet.Foot + 0.1);
        Assert.Equal(PageOfTheDrawing(pages), FixedType.PagesOf(pages, "what it means").Single());
        Assert.Single(FixedType.PagesOf(pages, "and this"));
    }

    [Fact]
    public void A_drawing_is_made_much_smaller_only_where_much_of_a_page_would_be_lost()
    {
        FlowAside Aside(double tall) => new(FixedType.Drawing(60, tall), 60, 80, [], FixedType.Body);
        int Page(int above, double tall) => PageOfTheDrawing(Set(above, Aside(tall)));

        Assert.Equal((0, 0), (Page(20, 120), Page(20, 150)));
        Assert.Equal((1, 1), (Page(20, 156), Page(26, 58)));
        Assert.Equal(0, Page(26, 50));
    }

    [Fact]
    public void A_chain_that_no_page_holds_is_parted_like_any_text()
    {
        var pages = FixedType.Set(Enumerable.Range(0, 40).Select(number => FixedType.Lines($"p{number}x", 2, keeps: true)));

        Assert.Equal(3, pages.Count);
    }

    [Fact]
    public void Text_beside_a_drawing_is_narrow_as_far_as_it_reaches_and_then_as_wide_as_the_column()
    {
        const double Column = 80;
        var aside = new FlowAside(FixedType.Drawing(60, 90), 60, Column, ["what it means", "and this"], FixedType.Body);
        var pages = FixedType.Set(FixedType.Lines("before", 3), aside, FixedType.Text(string.Join(' ', Enumerable.Repeat("of", 400))));

        var foot = pages[0].OfType<PlacedText>().Where(text => text.X > 200).Max(text => text.Y);
        var lines = FixedType.Placed(pages).Where(line => line.Page == 0).Select(line => line.Text).Where(text => text.Text.StartsWith("of", StringComparison.Ordinal) && text.X < 200).ToList();
        var narrow = FixedType.Sheet.Measure - Column;
        Assert.All(lines.Where(line => line.Y <= foot), line => Assert.InRange(Right(line), 0, FixedType.Sheet.Left + narrow - 10));
        Assert.All(lines.Where(line => line.Y <= foot), line => Assert.True(Right(line) > FixedType.Sheet.Left + (narrow * 0.8)));
        Assert.All(lines.Where(line => line.Y > foot + 12).SkipLast(1), line => Assert.True(Right(line) > FixedType.Sheet.Left + (FixedType.Sheet.Measure * 0.9)));
        Assert.Contains(lines, line => line.Y > foot);
        Assert.Contains(lines, line => line.Y < foot);
    }

    [Fact]
    public void What_is_cleared_begins_below_the_drawing()
    {
        var aside = new FlowAside(FixedType.Drawing(60, 90), 60, 80, ["what it means"], FixedType.Body);

        var placed = FixedType.Placed(FixedType.Set(aside, FixedType.Lines("beside", 1), new FlowClear(), FixedType.Lines("below", 1)));

        double Y(string words) => placed.Single(line => line.Text.Text == words).Text.Y;
        Assert.True(Y("beside1") < Y("what it means"));
        Assert.True(Y("below1") > Y("what it means"));
    }

    [Fact]
    public void A_table_that_leaves_a_drawing_behind_has_the_whole_measure()
    {
        var aside = new FlowAside(FixedType.Drawing(60, 320), 60, 80, [], FixedType.Body);

        var pages = FixedType.Set(aside, FixedType.Lines("beside", 27), Table(rows: 3, lines: 2));

        Assert.Equal(1, FixedType.PagesOf(pages, "Caption").Single());
        Assert.Equal(FixedType.Sheet.Left + (FixedType.Sheet.Measure / 2), pages[1].OfType<PlacedText>().Single(text => text.Text == "Column 2").X);
    }

    private static FlowTable Table(int rows, int lines)
    {
        string Cell(int row, int column) => string.Join('\n', Enumerable.Range(1, lines).Select(line => $"r{row}c{column}l{line}"));
        return new("Caption", [[new("Column 1"), new("Column 2")], .. Enumerable.Range(1, rows).Select(row => (IReadOnlyList<FlowCell>)[new(Cell(row, 1)), new(Cell(row, 2))])], [0.5, 0.5], FixedType.Body);
    }

    private static IReadOnlyList<IReadOnlyList<Placed>> Set(int above, params IEnumerable<FlowItem> flow) =>
        FixedType.Set([.. Enumerable.Range(0, above).Select(line => FixedType.Lines("above", 1)), .. flow]);

    private static int PageOfTheDrawing(IReadOnlyList<IReadOnlyList<Placed>> pages) =>
        Enumerable.Range(0, pages.Count).Single(page => pages[page].OfType<PlacedSketch>().Any());

    private static double Right(PlacedText text) => text.X + (text.Text.TrimEnd().Length * FixedType.Sign);
}
