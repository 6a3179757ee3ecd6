using CsCheck;
using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Tests.Setting;

/// <summary>No page but the last is left with a hole that what follows would have filled, and a table has its drawing at its side.</summary>
public sealed class HoleTests
{
    private const double Tall = 360; // between the margins of the sheet, in points
    private const double Gap = 10; // the widest between two pieces
    private const double Line = 12;
    private const double Row = 19;

    // Each kind of piece: what it is, and the least of it that a page must have room for.
    private static readonly Gen<(Func<int, FlowItem> Piece, double Least)> Pieces = Gen.OneOf(
        Gen.Int[1, 40].Select(lines => ((Func<int, FlowItem>)(number => FixedType.Lines($"p{number}x", lines)), (lines < 4 ? lines : 2) * Line)),
        Gen.Double[20, 200].Select(height => ((Func<int, FlowItem>)(number => new FlowFigure(FixedType.Drawing(100, height) with { Title = $"p{number}x1" }, 100)), height)),
        Gen.Int[2, 12].Select(rows => ((Func<int, FlowItem>)(number => Table(number, rows)), Begun(rows))),
        Gen.Select(Gen.Int[2, 6], Gen.Double[20, 150]).Select((rows, height) => ((Func<int, FlowItem>)(number => FixedType.Beside(Table(number, rows), height)), Begun(rows))));

    private static readonly FlowTable Small = new("Caption", [[new("Column"), new("Other")], .. Enumerable.Range(1, 3).Select(row => (IReadOnlyList<FlowCell>)[new($"r{row}"), new("cell")])], [0.5, 0.5], FixedType.Body);

    [Fact]
    public void No_page_but_the_last_has_a_hole_that_the_next_piece_would_have_filled() => Pieces.Array[2, 25].Sample(pieces =>
    {
        var pages = FixedType.Set(pieces.Select((piece, index) => piece.Piece(index)));

        for (var page = 0; page < pages.Count - 1; page++)
        {
            var hole = Tall * (1 - PageBalance.Full(pages[page], FixedType.Sheet));
            if (hole > (Tall / 6) + Gap)
            {
                Assert.True(Least(pages[page + 1], pieces) > hole - Gap, $"page {page + 1}: {hole:0} points");
            }
        }
    }, iter: 4000);

    [Fact]
    public void A_table_has_its_drawing_at_its_side_at_every_height_or_lies_above_it()
    {
        var aside = 0;
        for (var above = 0.0; above <= Tall; above += 1)
        {
            var pages = FixedType.Set(new FlowRule(above), FixedType.Beside(Small, 60), FixedType.Lines("own", 9));

            var placed = FixedType.Placed(pages);
            var (caption, said) = (placed.Single(line => line.Text.Text == "Caption"), placed.Where(line => line.Text.Text.StartsWith("Said", StringComparison.Ordinal)).First());
            Assert.Equal(said.Page, Enumerable.Range(0, pages.Count).Single(page => pages[page].OfType<PlacedSketch>().Any()));
            if (said.Text.X > 100)
            {
                aside++;
                Assert.Equal((caption.Page, caption.Text.Y), (said.Page, said.Text.Y));
            }
            else
            {
                Assert.True(Tall - above > Tall / 6, $"{above} points down");
            }
        }

        Assert.InRange(aside, 300, (int)Tall);
    }

    [Fact]
    public void What_is_said_of_a_drawing_stands_on_its_page_unless_a_third_of_one_were_lost_by_it()
    {
        for (var above = 0.0; above <= Tall; above += 1)
        {
            var pages = FixedType.Set(new FlowRule(above), new FlowTogether([FixedType.Beside(Small, 60), FixedType.Lines("own", 3)]));

            var said = FixedType.Placed(pages).First(line => line.Text.Text.StartsWith("own", StringComparison.Ordinal)).Page;
            var drawn = Enumerable.Range(0, pages.Count).Single(page => pages[page].OfType<PlacedSketch>().Any());
            Assert.True(said == drawn || Tall - above > Tall / 3, $"{above} points down");
        }
    }

    [Fact]
    public void A_table_stays_where_it_has_room_and_its_drawing_goes_on_with_all_that_is_said_of_it()
    {
        var parted = 0;
        for (var above = 0.0; above <= Tall * 3 / 4; above += 1)
        {
            var pages = FixedType.Set(new FlowRule(above), new FlowTogether([FixedType.Beside(Small, 60), FixedType.Lines("own", 3)]) { MostLost = 1 / 3.0 });

            Assert.Equal(0, FixedType.PagesOf(pages, "Caption").Single());
            var drawn = Enumerable.Range(0, pages.Count).Single(page => pages[page].OfType<PlacedSketch>().Any());
            Assert.All(FixedType.PagesOf(pages, "own").Concat(FixedType.PagesOf(pages, "Said")), page => Assert.Equal(drawn, page));
            parted += drawn;
        }

        Assert.InRange(parted, 20, 60);
    }

    [Fact]
    public void A_drawing_that_would_hang_far_below_its_table_lies_below_it()
    {
        var beside = FixedType.Beside(Small, 160);

        Assert.All(FixedType.Placed(FixedType.Set(beside)), line => Assert.True(line.Text.X < 200));
    }

    [Fact]
    public void A_last_page_of_a_few_lines_is_saved_by_nearer_lines_and_a_page_that_is_well_is_left_as_it_is()
    {
        static IReadOnlyList<IReadOnlyList<Placed>> Set(int lines) => PageBalance.Set([.. Enumerable.Range(1, lines).Select(line => FixedType.Lines($"line{line}", 1))], FixedType.Sheet, new FixedType());

        Assert.All(Enumerable.Range(1, 33), lines => Assert.Single(Set(lines)));
        Assert.Equal(2, Set(50).Count);
        Assert.Equal(12, Set(50)[0].OfType<PlacedText>().Skip(1).First().Y - Set(50)[0].OfType<PlacedText>().First().Y, 6);
    }

    [Fact]
    public void What_would_take_more_pages_than_it_should_is_set_in_smaller_type_and_only_where_that_saves_them()
    {
        static IReadOnlyList<IReadOnlyList<Placed>> Set(int lines, int most) => PageBalance.Set([.. Enumerable.Range(1, lines).Select(line => FixedType.Lines($"line{line}", 1))], FixedType.Sheet, new FixedType(), most);
        static IEnumerable<double> Types(IReadOnlyList<IReadOnlyList<Placed>> pages) => pages.SelectMany(page => page).OfType<PlacedText>().Select(text => text.Style.Size).Distinct();

        Assert.Equal([4, 5], [Set(140, 4).Count, Set(140, int.MaxValue).Count]);
        Assert.True(Assert.Single(Types(Set(140, 4))) is >= 8.4 and < 2 * FixedType.Sign);
        Assert.Equal([2 * FixedType.Sign], Types(Set(140, 5)));
        Assert.Equal([2 * FixedType.Sign], Types(Set(200, 4)));
    }

    [Fact]
    public void Rather_than_a_page_more_a_table_goes_on_between_its_rows()
    {
        static FlowPicture Picture(int tall) => new(new PrintPicture(default, 100, tall, 1), "A picture", 100);
        List<FlowItem> flow = [Picture(145), Picture(145), new FlowTogether([Table(2, 6)]), Picture(150), Picture(85)];

        Assert.Equal(3, FixedType.Set(flow).Count);
        var pages = PageBalance.Set(flow, FixedType.Sheet, new FixedType());
        Assert.Equal([2, 2], [pages.Count, pages.Count(page => page.OfType<PlacedText>().Count(text => text.Text.TrimEnd() == "1") == 1)]);
    }

    [Fact]
    public void Balanced_pages_are_never_more_and_never_emptier() => Pieces.Array[2, 25].Sample(pieces =>
    {
        List<FlowItem> flow = [.. pieces.Select((piece, index) => piece.Piece(index))];
        var (plain, balanced) = (Paginator.Set(flow, FixedType.Sheet, new FixedType()), PageBalance.Set(flow, FixedType.Sheet, new FixedType()));

        double Lost(IReadOnlyList<IReadOnlyList<Placed>> pages) => pages.SkipLast(1).Sum(page => Math.Max(0, 1 - PageBalance.Hole - PageBalance.Full(page, FixedType.Sheet)));
        Assert.True(balanced.Count < plain.Count || (balanced.Count == plain.Count && Lost(balanced) <= Lost(plain) + 0.14), $"{balanced.Count} of {plain.Count}, {Lost(balanced):0.00} of {Lost(plain):0.00}");
    }, iter: 500);

    private static double Begun(int rows) => Line + ((rows == 3 ? 3 : 2) * Row);

    private static FlowTable Table(int number, int rows) =>
        new($"p{number}x1", [.. Enumerable.Range(1, rows).Select(row => (IReadOnlyList<FlowCell>)[new($"{row}"), new("cell")])], [0.5, 0.5], FixedType.Body);

    // How much room what stands at the head of a page must have; nothing where it goes on there.
    private static double Least(IReadOnlyList<Placed> page, (Func<int, FlowItem> Piece, double Least)[] pieces)
    {
        var first = page.Select(placed => placed switch { PlacedText text => text.Text, PlacedSketch drawing => drawing.Drawing.Title, _ => null }).OfType<string>().First().TrimEnd();
        if (first.StartsWith("Said", StringComparison.Ordinal))
        {
            return Line + page.OfType<PlacedSketch>().First().Drawing.Height;
        }

        return first.StartsWith('p') && first.EndsWith("x1", StringComparison.Ordinal) ? pieces[int.Parse(first[1..^2], System.Globalization.CultureInfo.InvariantCulture)].Least : 0;
    }
}
