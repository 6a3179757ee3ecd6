using ReedClinic.Domain.Drawings;

namespace ReedClinic.Documents.Setting;

/// <summary>What a part of a document is, for whoever doesn't see it.</summary>
public enum FlowRole
{
    /// <summary>The document's title.</summary>
    Title,

    /// <summary>A heading.</summary>
    Heading,

    /// <summary>A heading within a part.</summary>
    Under,

    /// <summary>A paragraph.</summary>
    Paragraph,

    /// <summary>A part with a heading.</summary>
    Section,

    /// <summary>A list.</summary>
    List,

    /// <summary>An item of a list.</summary>
    Item,

    /// <summary>An item's number or dot.</summary>
    Mark,

    /// <summary>An item's words.</summary>
    ItemBody,

    /// <summary>A table.</summary>
    Table,

    /// <summary>A table's row.</summary>
    Row,

    /// <summary>A cell that heads a row or a column.</summary>
    Head,

    /// <summary>A cell.</summary>
    Cell,

    /// <summary>A drawing.</summary>
    Figure,

    /// <summary>What is said under a drawing or over a table.</summary>
    Caption,

    /// <summary>What belongs to the page and not to the text.</summary>
    Furniture,
}

/// <summary>A piece of a document before it has a place, in the order in which it is read.</summary>
public abstract record FlowItem;

/// <summary>What follows, to its <see cref="FlowClose"/>, belongs together.</summary>
/// <param name="Role">As what.</param>
public sealed record FlowOpen(FlowRole Role) : FlowItem;

/// <summary>The end of what was opened last.</summary>
public sealed record FlowClose : FlowItem;

/// <summary>A paragraph, a heading or an item of a list.</summary>
/// <param name="Role">What it is.</param>
/// <param name="Text">Its text; line ends in it stay.</param>
/// <param name="Style">How it is set.</param>
public sealed record FlowText(FlowRole Role, string Text, TypeStyle Style) : FlowItem
{
    /// <summary>Room above it, in points; none at the head of a page.</summary>
    public double Before { get; init; }

    /// <summary>Room below it, in points.</summary>
    public double After { get; init; }

    /// <summary>How far it is set in, in points.</summary>
    public double Indent { get; init; }

    /// <summary>What stands in the room on its left, such as “1.”; null for nothing.</summary>
    public string? Mark { get; init; }

    /// <summary>A small patch between the mark and the text; null for none.</summary>
    public Sketch? Patch { get; init; }

    /// <summary>Whether it stays with what follows.</summary>
    public bool KeepsWithNext { get; init; }

    /// <summary>The address that the whole of it leads to; null for nowhere.</summary>
    public string? Link { get; init; }
}

/// <summary>A table. Its first row heads the columns and stands again where the table goes on; no row is parted.</summary>
/// <param name="Caption">What it shows.</param>
/// <param name="Rows">Its rows, each with the same number of cells; the first cell of each heads it.</param>
/// <param name="Shares">The shares of the columns in its width; their sum is 1.</param>
/// <param name="Style">How it is set.</param>
public sealed record FlowTable(string Caption, IReadOnlyList<IReadOnlyList<FlowCell>> Rows, IReadOnlyList<double> Shares, TypeStyle Style) : FlowItem;

/// <summary>A cell of a table.</summary>
/// <param name="Text">Its text.</param>
/// <param name="Tone">Its tone.</param>
public sealed record FlowCell(string Text, Tone Tone = Tone.Ink);

/// <summary>A drawing by itself, in the text's column.</summary>
/// <param name="Drawing">The drawing.</param>
/// <param name="Width">Its width, in points; it is made smaller where there is less.</param>
public sealed record FlowFigure(Sketch Drawing, double Width) : FlowItem;

/// <summary>A picture by itself, in the text's column.</summary>
/// <param name="Picture">The picture.</param>
/// <param name="Words">What it shows.</param>
/// <param name="Width">Its width, in points; it is made smaller where there is less.</param>
public sealed record FlowPicture(PrintPicture Picture, string Words, double Width) : FlowItem;

/// <summary>A drawing on the right, with its list below it; what follows is set beside it as far as it reaches.</summary>
/// <param name="Drawing">The drawing.</param>
/// <param name="Width">Its width, in points.</param>
/// <param name="Column">The width of its column, which the list has.</param>
/// <param name="List">What its numbers mean.</param>
/// <param name="Style">How the list is set.</param>
public sealed record FlowAside(Sketch Drawing, double Width, double Column, IReadOnlyList<string> List, TypeStyle Style) : FlowItem
{
    /// <summary>Whether the list is too long for its column: then all of it stands beside the drawing, in the text.</summary>
    public bool IsListLong { get; init; }

    /// <summary>A small patch for each line of the list, to stand after its number; none, or as many as there are lines.</summary>
    public IReadOnlyList<Sketch> Patches { get; init; } = [];

    /// <summary>How large the drawing is at most, against its width; it is never made smaller than can be read.</summary>
    public double Scale { get; init; } = 1;
}

/// <summary>Pieces that stand on one page where a page holds them and no large part of one is lost by it.</summary>
/// <param name="Items">The pieces.</param>
public sealed record FlowTogether(IReadOnlyList<FlowItem> Items) : FlowItem
{
    /// <summary>How much of a page may be lost by it, as a share.</summary>
    public double MostLost { get; init; } = 1 / 6.0;

    /// <summary>Whether it is parted rather than that anything of a page is lost by it.</summary>
    public bool IsLoose { get; init; }
}

/// <summary>A table with a drawing of its own at its right side; one below the other where a page hasn't room for them side by side.</summary>
/// <param name="Table">The table.</param>
/// <param name="Words">What is said over the drawing.</param>
/// <param name="Style">How that is set at the table's side.</param>
/// <param name="Sides">The drawing as it may stand there, the narrowest first; none where it has room only below the table.</param>
/// <param name="Below">The same words and the same drawing below the table.</param>
public sealed record FlowBeside(FlowTable Table, string Words, TypeStyle Style, IReadOnlyList<FlowSide> Sides, IReadOnlyList<FlowItem> Below) : FlowItem
{
    /// <summary>Whether they are parted rather than that anything of a page is lost by them.</summary>
    public bool IsLoose { get; init; }
}

/// <summary>A drawing as it stands at the side of something.</summary>
/// <param name="Drawing">The drawing.</param>
/// <param name="Column">The width of its column, in points, which it fills.</param>
public sealed record FlowSide(Sketch Drawing, double Column);

/// <summary>A thin line across the column.</summary>
/// <param name="After">Room below it, in points.</param>
public sealed record FlowRule(double After) : FlowItem;

/// <summary>What follows begins below every drawing.</summary>
public sealed record FlowClear : FlowItem;

/// <summary>A piece of a document in its place on a page, in points from the upper left corner.</summary>
public abstract record Placed;

/// <summary>What follows, to its <see cref="PlacedClose"/>, belongs together; it may go on on the next page.</summary>
/// <param name="Role">As what.</param>
/// <param name="Words">What is said of it to whoever doesn't see it; null where it speaks for itself.</param>
/// <param name="X">The left of a figure.</param>
/// <param name="Y">Its top.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
public sealed record PlacedOpen(FlowRole Role, string? Words = null, double X = 0, double Y = 0, double Width = 0, double Height = 0) : Placed;

/// <summary>What follows, to its <see cref="PlacedClose"/>, leads to an address.</summary>
/// <param name="Address">The address.</param>
/// <param name="X">The left of where it is pressed.</param>
/// <param name="Y">Its top.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
public sealed record PlacedLink(string Address, double X, double Y, double Width, double Height) : Placed;

/// <summary>The end of what was opened last.</summary>
public sealed record PlacedClose : Placed;

/// <summary>Text on one line.</summary>
/// <param name="Text">The text.</param>
/// <param name="Style">How it is set.</param>
/// <param name="X">Its left.</param>
/// <param name="Y">Its base line.</param>
public sealed record PlacedText(string Text, TypeStyle Style, double X, double Y) : Placed;

/// <summary>A drawing.</summary>
/// <param name="Drawing">The drawing.</param>
/// <param name="X">Its left.</param>
/// <param name="Y">Its top.</param>
/// <param name="Scale">Points for each of its units.</param>
public sealed record PlacedSketch(Sketch Drawing, double X, double Y, double Scale) : Placed;

/// <summary>A picture.</summary>
/// <param name="Picture">The picture.</param>
/// <param name="X">Its left.</param>
/// <param name="Y">Its top.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
public sealed record PlacedPicture(PrintPicture Picture, double X, double Y, double Width, double Height) : Placed;

/// <summary>A thin level line.</summary>
/// <param name="X">Its left.</param>
/// <param name="Y">Its height.</param>
/// <param name="Length">Its length.</param>
public sealed record PlacedRule(double X, double Y, double Length) : Placed;
