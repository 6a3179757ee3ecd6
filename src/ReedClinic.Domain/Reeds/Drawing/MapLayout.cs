namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>A numbered disc that ties a mark to its line in the list.</summary>
/// <param name="Number">The mark's number.</param>
/// <param name="X">Its centre.</param>
/// <param name="Y">Its centre.</param>
/// <param name="TieX">Where a short line from the disc touches its zone.</param>
/// <param name="TieY">Where a short line from the disc touches its zone; the disc's own centre when it sits in the zone.</param>
public sealed record Disc(int Number, double X, double Y, double TieX, double TieY);

/// <summary>A label in the margin, with the line that leads to its blade.</summary>
/// <param name="Number">The mark's number.</param>
/// <param name="Lines">Its words, broken into lines.</param>
/// <param name="X">Where its text starts, or ends on the left.</param>
/// <param name="Y">The base line of its first line.</param>
/// <param name="OnLeft">Whether it stands left of the drawing.</param>
/// <param name="Leader">The leader's path data; it stays outside both blades, or there is none.</param>
public sealed record MarginLabel(int Number, IReadOnlyList<string> Lines, double X, double Y, bool OnLeft, string? Leader);

/// <summary>Where everything of one reed map goes. The upper blade stands left, the lower right, both tip up and seen from their own faces.</summary>
public sealed class MapLayout
{
    /// <summary>From one line of a label to the next.</summary>
    public const double LineHeight = 18;

    /// <summary>From the top of a label to where it points.</summary>
    internal const double Above = 11;

    private const int LabelChars = 27;
    private const double LabelGap = 9;
    private const double RowTall = 28;
    private const double Edge = 8;
    private const double ThreadShown = 3.4;
    private const double BelowTheMarks = 2.4;
    private const double BelowADisc = 11.2;

    /// <summary>Lays the drawing of one reed out.</summary>
    /// <param name="style">How it is scraped.</param>
    /// <param name="size">How large, and with what round it.</param>
    /// <param name="marks">What to show, in the order of the list.</param>
    /// <param name="instrument">What it is for; an oboe when nobody said.</param>
    /// <param name="isBrief">True where the room is for the blades: the drawing ends in the thread, unless something is marked below.</param>
    /// <param name="isNear">True where it is about its marks alone: a brief drawing that ends below them and below the heart.</param>
    public MapLayout(ScrapeStyle style, ReedMapSize size, IReadOnlyList<ReedMark> marks, Instrument? instrument = null, bool isBrief = false, bool isNear = false)
    {
        Size = size;
        Art = BladeArt.For(style, instrument);
        Marks = marks;
        var icon = size == ReedMapSize.Icon;
        var pad = icon ? 10 : 34;
        var gap = icon ? 22 : 58;
        Reach = Math.Max(3.6, (Art.Outline.Measures.TipWidth / 2) + 0.1) * SvgPath.Scale;
        UpperX = pad + Reach;
        LowerX = UpperX + (2 * Reach) + gap;
        Width = LowerX + Reach + pad;
        Air = !icon && marks.Any(mark => mark.Place.Zone is Zone.TipEdge or Zone.TipCorners) ? 12 : 0;
        OfTheReed = icon ? 0 : marks.Count(IsOfTheReed);
        TipY = icon ? 8 : 122 + AirOfTheEnd + RowOfTheReed + Air;
        IsCut = (isBrief || isNear) && !icon && !marks.Any(mark => mark.Place.Zone is Zone.Thread or Zone.Cork);
        Height = TipY + (icon ? (Art.Outline.Measures.Cane + 2.6) * SvgPath.Scale : IsCut ? (Art.Outline.Measures.Cane + ThreadShown) * SvgPath.Scale : Art.Foot + 14);
        Discs = icon ? [] : new DiscPlan(this).Discs();
        Labels = icon ? [] : [.. LabelsOf(true), .. LabelsOf(false)];
        Height = IsCut && isNear ? Math.Min(Height, NearFoot()) : Height;
    }

    /// <summary>How large it is drawn.</summary>
    public ReedMapSize Size { get; }

    /// <summary>The shapes of one blade.</summary>
    public BladeArt Art { get; }

    /// <summary>What is shown.</summary>
    public IReadOnlyList<ReedMark> Marks { get; }

    /// <summary>The width of the drawing, in drawing units.</summary>
    public double Width { get; }

    /// <summary>Its height.</summary>
    public double Height { get; }

    /// <summary>Whether it ends in the thread.</summary>
    public bool IsCut { get; }

    /// <summary>Where the tips stand.</summary>
    public double TipY { get; }

    /// <summary>The room between the tips and the words above them that numbers need, where some stand above a tip.</summary>
    public double Air { get; }

    /// <summary>The middle of the upper blade.</summary>
    public double UpperX { get; }

    /// <summary>The middle of the lower blade.</summary>
    public double LowerX { get; }

    /// <summary>Half the width that a blade is given.</summary>
    public double Reach { get; }

    /// <summary>The middle of the view onto the end of the tip.</summary>
    public (double X, double Y) End => ((UpperX + LowerX) / 2, 34 + (AirOfTheEnd / 2));

    // In the type of a letter the words above and below the view onto the tip are larger.
    private double AirOfTheEnd => Size == ReedMapSize.Print ? 14 : 0;

    /// <summary>The level of the blades' names, where what is about one blade as a whole has its number.</summary>
    public double NamesY => TipY - Air - 57;

    /// <summary>Where the words “whole reed” end and on what level their row is, under the opening; the numbers of what is about the reed as a whole follow them. Null where there are none.</summary>
    public (double X, double Y)? WholeReed => OfTheReed == 0 ? null : (WordsOfTheReed + ((Width - WordsOfTheReed - DiscPlan.RowOf(Math.Min(OfTheReed, RoomInTheRow))) / 2), NamesY - RowTall);

    /// <summary>How many numbers the row of the whole reed holds.</summary>
    internal int RoomInTheRow => DiscPlan.InARow(Width - WordsOfTheReed - Edge);

    /// <summary>How much room the row of the whole reed takes above the names.</summary>
    internal double RowOfTheReed => OfTheReed == 0 ? 0 : RowTall;

    private int OfTheReed { get; }

    /// <summary>How much room the words “whole reed” are given; in the type of a letter they are wider.</summary>
    internal double WordsOfTheReed => Size == ReedMapSize.Print ? 108 : 74;

    /// <summary>The numbers of the marks, in or beside their places.</summary>
    public IReadOnlyList<Disc> Discs { get; }

    /// <summary>The words of the marks, in the margins.</summary>
    public IReadOnlyList<MarginLabel> Labels { get; }

    /// <summary>The middle of a blade.</summary>
    /// <param name="blade">Upper or lower.</param>
    public double Middle(Blades blade) => blade == Blades.Upper ? UpperX : LowerX;

    /// <summary>The marks that show on one blade.</summary>
    /// <param name="blade">Upper or lower.</param>
    public IEnumerable<(int Number, ReedMark Mark)> On(Blades blade) =>
        Numbered().Where(m => m.Mark.Place.Blades == Blades.Both || m.Mark.Place.Blades == blade);

    /// <summary>The marks at the opening or inside, shown on the view of the end.</summary>
    public IEnumerable<(int Number, ReedMark Mark)> AtTheEnd() => Numbered().Where(m => IsEnd(m.Mark.Place.Zone));

    /// <summary>What is drawn for a mark on one blade: its place, or its strips of it where other signs lie there too.</summary>
    /// <param name="blade">Upper or lower.</param>
    /// <param name="mark">The mark.</param>
    /// <param name="beside">Marks that aren't of the layout and are drawn with it.</param>
    public IReadOnlyList<ZoneArt> Shapes(Blades blade, ReedMark mark, params IReadOnlyList<ReedMark> beside) =>
        SharedPlace.Shapes(Art, mark, [.. On(blade).Select(m => m.Mark), .. beside.Where(other => other.Place.Blades == Blades.Both || other.Place.Blades == blade)]);

    /// <summary>The marks that are about the reed, or a blade of it, as a whole.</summary>
    public IEnumerable<(int Number, ReedMark Mark)> Whole() => Numbered().Where(m => m.Mark.Place.Zone == Zone.WholeReed);

    /// <summary>Whether a mark is about the reed as a whole, and not about one blade of it.</summary>
    /// <param name="mark">The mark.</param>
    internal static bool IsOfTheReed(ReedMark mark) => mark.Place is { Zone: Zone.WholeReed, Blades: Blades.Both };

    /// <summary>Whether a zone is seen from the end only.</summary>
    /// <param name="zone">The zone.</param>
    public static bool IsEnd(Zone zone) => zone is Zone.Opening or Zone.Inside;

    private IEnumerable<(int Number, ReedMark Mark)> Numbered() => Marks.Select((m, i) => (i + 1, m));

    /// <summary>Where a drawing ends that is about its marks alone: below them, their numbers and the heart.</summary>
    internal double NearFoot()
    {
        var measures = Art.Outline.Measures;
        var lowest = Marks.SelectMany(mark => Art.Shapes(mark.Place.Zone, mark.Place.Sides)).Select(shape => shape.Shape.Bottom).Append(measures.TipAtSides + measures.Heart).Max();
        return Discs.Select(disc => disc.Y + BelowADisc).Append(TipY + ((lowest + BelowTheMarks) * SvgPath.Scale)).Max();
    }

    /// <summary>Half the width of what is drawn at a level.</summary>
    /// <param name="y">Millimetres from the tip.</param>
    public double EdgeAt(double y) =>
        SvgPath.Scale * (y > Art.Outline.Measures.Cane + 8 ? 3.6 : Art.Outline.Blade.Points.Where(p => p.X > 0 && p.Y < Art.Outline.Measures.Cane).MinBy(p => Math.Abs(p.Y - y)).X);

    private List<MarginLabel> LabelsOf(bool onLeft)
    {
        var middle = onLeft ? UpperX : LowerX;
        var wanted = Numbered().Where(m => onLeft == (m.Mark.Place.Blades == Blades.Upper && !IsEnd(m.Mark.Place.Zone)) && Levels(m.Mark).Any())
            .Select(m => (m.Number, m.Mark, Y: TipY + (Levels(m.Mark).Average() * SvgPath.Scale), Lines: Wrap(m.Number, m.Mark), Whole: m.Mark.Place.Zone == Zone.WholeReed))
            .OrderBy(m => m.Y).ThenBy(m => m.Number).ToList();
        if (wanted.Sum(m => (m.Lines.Count * LineHeight) + LabelGap) > Height)
        {
            wanted = [.. wanted.Select(m => m with { Lines = Break($"{m.Number}  {m.Mark.Words}", 1) })];
        }

        var tops = Spread([.. wanted.Select(m => (m.Y, Tall: (m.Lines.Count * LineHeight) + LabelGap))], Height);
        return [.. wanted.Select((m, i) => m.Whole ? Label(m.Number, m.Lines, tops[i], onLeft, null) : Label(m.Number, m.Lines, tops[i], onLeft, Leader(m.Y, tops[i], onLeft, middle)))];
    }

    private MarginLabel Label(int number, IReadOnlyList<string> lines, double top, bool onLeft, string? leader) =>
        new(number, lines, onLeft ? -8 : Width + 8, top + 15, onLeft, leader);

    private string? Leader(double y, double top, bool onLeft, double middle)
    {
        var turn = onLeft ? -1 : 1;
        var elbow = onLeft ? 4 : Width - 4;
        var edge = y < TipY - 40 ? End.X + (5.4 * SvgPath.Scale) : middle + (turn * (EdgeAt((y - TipY) / SvgPath.Scale) + 7));
        return TouchesABlade(elbow, top + Above, edge, y) ? null : $"M{SvgPath.Number(elbow)},{SvgPath.Number(top + Above)}L{SvgPath.Number(edge)},{SvgPath.Number(y)}";
    }

    /// <summary>Whether a straight line would run over a blade: a label that had to move so far aside has its number only.</summary>
    private bool TouchesABlade(double fromX, double fromY, double toX, double toY) =>
        Enumerable.Range(0, 121).Select(i => i / 120.0).Any(t => new[] { UpperX, LowerX }.Any(middle => Art.Outline.Blade.Contains(new MmPoint(
            (fromX + ((toX - fromX) * t) - middle) / SvgPath.Scale, (fromY + ((toY - fromY) * t) - TipY) / SvgPath.Scale))));

    /// <summary>The levels, in millimetres from the tip, that a mark's leader points to.</summary>
    /// <param name="mark">The mark.</param>
    public IEnumerable<double> Levels(ReedMark mark) => mark.Place.Zone switch
    {
        Zone.WholeReed => [((IsOfTheReed(mark) ? NamesY - RowTall : NamesY) - TipY) / SvgPath.Scale],
        Zone.Opening or Zone.Inside => [(End.Y - TipY) / SvgPath.Scale],
        var zone => Art.Shapes(zone, mark.Place.Sides).Take(1).Select(s => s.Shape.Anchor().Y),
    };

    /// <summary>Moves labels apart, down first and then up from the foot, keeping their order.</summary>
    /// <param name="wanted">Where each should point to, and how tall it is, in order.</param>
    /// <param name="height">Where the lowest ends at most.</param>
    /// <returns>Their tops.</returns>
    internal static double[] Spread(IReadOnlyList<(double Y, double Tall)> wanted, double height)
    {
        var tops = new double[wanted.Count];
        var floor = 0.0;
        for (var i = 0; i < tops.Length; i++)
        {
            tops[i] = Math.Max(floor, wanted[i].Y - Above);
            floor = tops[i] + wanted[i].Tall;
        }

        var roof = height;
        for (var i = tops.Length - 1; i >= 0 && tops[i] + wanted[i].Tall > roof; i--)
        {
            tops[i] = roof - wanted[i].Tall;
            roof = tops[i];
        }

        return tops;
    }

    private static List<string> Wrap(int number, ReedMark mark)
    {
        var lines = Break($"{number}  {mark.Words}", 2);
        return string.IsNullOrWhiteSpace(mark.LabelDetail) ? lines : [.. lines, .. Break(mark.LabelDetail, 2)];
    }

    /// <summary>Breaks words into at most so many lines; what is left out ends in an ellipsis (the list has it in full).</summary>
    internal static List<string> Break(string words, int most)
    {
        var lines = new List<string> { "" };
        foreach (var word in words.Split(' '))
        {
            var joined = lines[^1].Length == 0 ? word : lines[^1] + " " + word;
            if (joined.Length <= LabelChars || lines[^1].Length == 0)
            {
                lines[^1] = joined;
            }
            else if (lines.Count < most)
            {
                lines.Add(word);
            }
            else
            {
                lines[^1] += " …";
                break;
            }
        }

        return [.. lines.Select(l => l.Length > LabelChars + 2 ? l[..LabelChars] + "…" : l)];
    }
}
