using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Reeds.Drawing;

namespace ReedClinic.Domain.Drawings;

/// <summary>The reed map as a drawing for paper: both blades, what was found, worked and left alone, and its numbers.</summary>
public sealed class ReedSketch
{
    private const double BelowTheCane = 3.6;
    private const double BelowTheFoot = 0.9;
    private const double TypeScale = 1.4;
    private const double PatchSide = 26;
    private const double DiscRadius = 10.2;

    private static readonly (SketchInk Ink, Zone[] Zones)[] Tints =
        [(SketchInk.Bark, [Zone.Bark, Zone.Rails, Zone.SideEdges]), (SketchInk.Pale, [Zone.Windows, Zone.WindowBase])];

    private readonly MapLayout layout;
    private readonly List<SketchPart> parts = [];

    private ReedSketch(MapLayout layout) => this.layout = layout;

    /// <summary>Draws a reed.</summary>
    /// <param name="marks">What it shows; its numbers are theirs, in this order, from 1.</param>
    /// <param name="style">How it is scraped.</param>
    /// <param name="instrument">What it is for; an oboe when nobody said.</param>
    /// <param name="title">What the drawing is of.</param>
    /// <param name="near">Whether it ends below the marks instead of showing all of the reed.</param>
    public static Sketch Of(IReadOnlyList<ReedMark> marks, ScrapeStyle style, Instrument? instrument, string title, bool near = false)
    {
        ArgumentNullException.ThrowIfNull(marks);
        var layout = new MapLayout(style, ReedMapSize.Print, marks, instrument);
        var drawn = new ReedSketch(layout);
        drawn.End();
        drawn.Blade(Blades.Upper, "upper blade");
        drawn.Blade(Blades.Lower, "lower blade");
        drawn.Discs();
        var outline = layout.Art.Outline;
        var below = layout.TipY + (SvgPath.Scale * (
            !marks.Any(mark => mark.Place.Zone is Zone.Thread or Zone.Cork or Zone.Eye or Zone.WholeReed) ? outline.Measures.Cane + BelowTheCane
            : outline.HasCork ? outline.Foot + BelowTheFoot
            : outline.PiecesOf(Zone.Thread)[0].Shape.Bottom + BelowTheFoot));
        if (near)
        {
            below = Math.Min(below, layout.NearFoot());
        }

        below = layout.Discs.Select(disc => disc.Y + DiscRadius + 1).Append(below).Max();
        return new Sketch(layout.Width, Math.Min(below, layout.Height), title, Say(marks, style, instrument), drawn.parts) { Type = TypeScale };
    }

    /// <summary>One mark in words, as it stands in the list beside the drawing.</summary>
    /// <param name="mark">The mark.</param>
    public static string Say(ReedMark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        return $"{mark.Place.SayPlainly()}: {mark.Words}{(string.IsNullOrWhiteSpace(mark.Detail) ? "" : $" ({mark.Detail})")}";
    }

    /// <summary>A mark's line in the list beside the drawing: what it is, where, and whether this drawing doesn't have it.</summary>
    /// <param name="mark">The mark.</param>
    /// <param name="style">How the reed is scraped.</param>
    /// <param name="instrument">What it is for; an oboe when nobody said.</param>
    public static string Line(ReedMark mark, ScrapeStyle style, Instrument? instrument)
    {
        ArgumentNullException.ThrowIfNull(mark);
        var line = $"{Name(mark)}: {Say(mark)}";
        return NotDrawn.Of(mark.Place, style, instrument) is null ? line : line.TrimEnd('.') + " (not on the drawing)";
    }

    /// <summary>What a mark is called in the list beside the drawing; what is only suspected isn't called found.</summary>
    /// <param name="mark">The mark.</param>
    public static string Name(ReedMark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        return mark.Kind switch
        {
            MarkKind.Strength => mark.Suspected ? "Good, perhaps" : "Good",
            MarkKind.Fault => mark.Suspected ? "Suspected" : "Found",
            MarkKind.Taste => mark.Suspected ? "Taste, perhaps" : "Taste",
            MarkKind.Worked => "Worked",
            _ => "Leave alone",
        };
    }

    private static string Say(IReadOnlyList<ReedMark> marks, ScrapeStyle style, Instrument? instrument) => marks.Count == 0
        ? "Both blades of the reed, tip up. Nothing is marked on them."
        : "Both blades of the reed, tip up. " + string.Join(" ", marks.Select((mark, index) => FormattableString.Invariant($"{index + 1}, {Told(mark, style, instrument)}")));

    private static string Told(ReedMark mark, ScrapeStyle style, Instrument? instrument) =>
        Line(mark, style, instrument) is var line && Name(mark) is var name ? $"{name.ToLowerInvariant()}{line[name.Length..].TrimEnd('.')}." : line;

    /// <summary>A patch of what a mark looks like, to stand in a list beside its number; in the drawing's own units.</summary>
    /// <param name="mark">The mark.</param>
    public static Sketch Patch(ReedMark mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        return new Sketch(PatchSide, PatchSide, Name(mark), "", [new SketchPath(Ink(mark), FormattableString.Invariant($"M1,1H{PatchSide - 1}V{PatchSide - 1}H1Z"))]);
    }

    private static SketchInk Ink(ReedMark mark) => mark.Kind switch
    {
        MarkKind.Strength => mark.Suspected ? SketchInk.StrengthSuspected : SketchInk.Strength,
        MarkKind.Fault => mark.Suspected ? SketchInk.FaultSuspected : SketchInk.Fault,
        MarkKind.Taste => mark.Suspected ? SketchInk.TasteSuspected : SketchInk.Taste,
        MarkKind.LeaveAlone => SketchInk.LeaveAlone,
        _ => mark.Weight switch { 1 => SketchInk.Worked, 2 => SketchInk.WorkedTwice, _ => SketchInk.WorkedOften },
    };

    private static bool IsFoot(Zone zone) => zone is Zone.Thread or Zone.Cork or Zone.Eye;

    private void End()
    {
        var (x, y) = layout.End;
        parts.Add(new SketchPath(SketchInk.Cane, EndArt.Upper, x, y));
        parts.Add(new SketchPath(SketchInk.Cane, EndArt.Lower, x, y));
        parts.Add(new SketchPath(SketchInk.Gap, EndArt.Gap, x, y));
        parts.AddRange(layout.AtTheEnd().Select(at => new SketchPath(Ink(at.Mark), EndArt.Gap, x, y)));
        parts.Add(new SketchPath(SketchInk.Line, EndArt.Upper, x, y));
        parts.Add(new SketchPath(SketchInk.Line, EndArt.Lower, x, y));
        parts.Add(new SketchWords(SketchType.Name, "opening", x, y - 22.6, SketchAlign.Middle));
    }

    private void Blade(Blades blade, string name)
    {
        var art = layout.Art;
        var (x, y) = (layout.Middle(blade), layout.TipY);
        parts.Add(new SketchPath(SketchInk.Cane, art.Blade, x, y));
        parts.AddRange(from tint in Tints from zone in tint.Zones from shape in art.Shapes(zone) select new SketchPath(tint.Ink, shape.Path, x, y));
        parts.Add(new SketchPath(SketchInk.Grain, art.Grain, x, y));
        parts.AddRange(art.Shapes(Zone.HeartBottom).Select(shape => new SketchPath(SketchInk.SoftLine, shape.Path, x, y)));
        parts.Add(new SketchPath(SketchInk.ZoneLine, art.Rooftop, x, y));
        parts.AddRange(Marks(blade, x, y, foot: false));
        parts.Add(new SketchPath(SketchInk.Line, art.Blade, x, y));
        parts.Add(new SketchPath(SketchInk.Thread, art.Shapes(Zone.Thread)[0].Path, x, y));
        parts.Add(new SketchPath(SketchInk.Turns, art.Strings, x, y));
        parts.AddRange(art.Shapes(Zone.Cork).Take(1).Select(cork => new SketchPath(SketchInk.Thread, cork.Path, x, y)));
        parts.AddRange(Marks(blade, x, y, foot: true));
        parts.Add(new SketchWords(SketchType.Name, name, x, y - layout.Air - 57, SketchAlign.Middle));
        parts.Add(new SketchWords(SketchType.Label, "left", x - layout.Reach, y - layout.Air - 33));
        parts.Add(new SketchWords(SketchType.Label, "right", x + layout.Reach, y - layout.Air - 33, SketchAlign.End));
    }

    private IEnumerable<SketchPath> Marks(Blades blade, double x, double y, bool foot) =>
        from one in layout.On(blade)
        where !MapLayout.IsEnd(one.Mark.Place.Zone) && IsFoot(one.Mark.Place.Zone) == foot
        from shape in layout.Shapes(blade, one.Mark)
        select new SketchPath(Ink(one.Mark), shape.Path, x, y);

    private void Discs()
    {
        parts.AddRange(layout.Discs.Where(disc => disc.X != disc.TieX || disc.Y != disc.TieY).Select(disc =>
            new SketchPath(SketchInk.Leader, $"M{SvgPath.Number(disc.X)},{SvgPath.Number(disc.Y)}L{SvgPath.Number(disc.TieX)},{SvgPath.Number(disc.TieY)}")));
        if (layout.WholeReed is var (x, y))
        {
            parts.Add(new SketchWords(SketchType.Name, Zone.WholeReed.Name(), x, y + 7.2, SketchAlign.End));
        }

        foreach (var disc in layout.Discs)
        {
            parts.Add(new SketchDot(SketchInk.Disc, disc.X, disc.Y, DiscRadius));
            parts.Add(new SketchWords(SketchType.Number, disc.Number.ToString(System.Globalization.CultureInfo.InvariantCulture), disc.X, disc.Y + (disc.Number < 10 ? 7.2 : 5.6), SketchAlign.Middle));
        }
    }
}
