using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;
using static System.FormattableString;

namespace ReedClinic.Domain.Drawings;

/// <summary>
/// A stroke of the knife, drawn twice: from above, where it begins and ends; and from the side, how the knife stands, what
/// lies under the blade, and where the supporting finger is.
/// </summary>
public sealed class StrokeSketch
{
    private const double Above = 14;
    private const double Tall = 184;
    private const double Caption = 22;
    private const double End = 6;
    private const double NoteGap = 10;
    private const double ShortestLeader = 14; // a shorter one would look like a slip of the pen
    private const double SideTall = 198;

    private readonly StrokePlan plan;
    private readonly ReedOutline outline;
    private readonly StrokeShow show;
    private readonly double scale;
    private readonly double foot;
    private readonly List<SketchPart> parts = [];

    private StrokeSketch(StrokePlan plan, ReedOutline outline, StrokeShow show)
    {
        (this.plan, this.outline, this.show) = (plan, outline, show);
        scale = Math.Min(Tall / (plan.Bottom - plan.Top), show.BladeWidth / outline.Measures.TipWidth);
        foot = show.IsBeside ? Above + Tall : Y(plan.Bottom);
    }

    /// <summary>Draws the stroke against a kind of fault.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="style">How the reed is scraped.</param>
    /// <param name="instrument">What it is for; an oboe when nobody said.</param>
    /// <param name="show">For what place it is drawn.</param>
    /// <returns>Null where no knife is wanted.</returns>
    public static Sketch? Of(FindingKindId? kind, ScrapeStyle style, Instrument? instrument, StrokeShow show)
    {
        ArgumentNullException.ThrowIfNull(show);
        if (StrokePlan.For(kind, style, instrument) is not { } plan)
        {
            return null;
        }

        var drawn = new StrokeSketch(plan, ReedOutline.For(style, instrument), show);
        drawn.FromAbove();
        var top = show.IsBeside ? 0 : drawn.foot + Caption + End;
        drawn.FromTheSide(show.SideX, top);
        return new Sketch(
            show.Width, top + SideTall + Caption + End, "The stroke of the knife",
            $"From above: {plan.Start}, {plan.Finish}; thin the hatched place ({plan.Worked.Name()}) and leave alone what is drawn with dashes ({string.Join(", ", plan.Spared.Select(zone => zone.Name()))}). "
            + "From the side: the plaque lies between the blades, a finger supports it from below, and the knife stands almost upright, leaning a little the way it goes, towards the tip.",
            drawn.parts);
    }

    private void FromAbove()
    {
        parts.Add(Path(SketchInk.Cane, Inside(outline.Blade.Points)));
        foreach (var piece in outline.Drawn(plan.Worked, plan.Sides))
        {
            parts.Add(Path(SketchInk.Worked, Inside(piece.Shape.Points)));
        }

        foreach (var piece in plan.Spared.SelectMany(zone => outline.Drawn(zone)))
        {
            parts.Add(Path(SketchInk.LeaveAlone, Inside(piece.Shape.Points)));
        }

        if (plan.Top < outline.Measures.TipAtCentre)
        {
            parts.Add(new SketchPath(SketchInk.ZoneLine, Line(outline.Rooftop)));
        }

        parts.Add(Path(SketchInk.Line, Inside(outline.Blade.Points)));
        foreach (var way in plan.Ways)
        {
            Arrow(X(way.From.X), Y(way.From.Y), X(way.To.X), Y(way.To.Y));
        }

        Notes();
        parts.Add(new SketchWords(SketchType.Name, "from above", show.MiddleX, foot + Caption, SketchAlign.Middle));
    }

    // Where the stroke begins and where it ends, beside the blade; the one never covers the other.
    private void Notes()
    {
        var right = plan.Ways.MaxBy(way => way.From.X);
        var x = show.MiddleX + (outline.Measures.TipWidth / 2 * scale) + 22;
        var most = (int)((show.NotesEnd - x) / StrokeShow.SignWidth);
        var (start, finish) = (DrawnWords.Wrap(plan.Start, most), DrawnWords.Wrap(plan.Finish, most));
        var first = Y(right.To.Y) + 4;
        var second = Math.Max(Y(right.From.Y), Math.Max(Y(right.To.Y) + 46, first + (finish.Count * DrawnWords.LineHeight) + NoteGap));
        Note(start, x, second, X(right.From.X) + 4, Y(right.From.Y));
        Note(finish, x, first, X(right.To.X) + 5, Y(right.To.Y));
    }

    // The tip points to the right. Blades are drawn much thicker than they are.
    private void FromTheSide(double left, double top)
    {
        var tip = left + 196;
        var y = top + 120;
        parts.Add(new SketchPath(SketchInk.Hand, Invariant($"M{left},{y + 78:0.#}Q{left + 4},{y + 42:0.#} {left + 46},{y + 30:0.#}Q{left + 100},{y + 15:0.#} {left + 136},{y + 19:0.#}Q{left + 156},{y + 25:0.#} {left + 146},{y + 41:0.#}Q{left + 130},{y + 55:0.#} {left + 90},{y + 57:0.#}Q{left + 62},{y + 62:0.#} {left + 56},{y + 78:0.#}")));
        parts.Add(new SketchPath(SketchInk.Cane, Invariant($"M{left},{y + 5:0.#}L{tip},{y + 5:0.#}L{tip},{y + 7:0.#}Q{left + 110},{y + 12:0.#} {left},{y + 20:0.#}Z")));
        parts.Add(new SketchPath(SketchInk.Cane, Invariant($"M{left},{y:0.#}L{tip},{y:0.#}L{tip},{y - 2:0.#}Q{left + 110},{y - 7:0.#} {left},{y - 15:0.#}Z")));
        parts.Add(new SketchPath(SketchInk.Plaque, Invariant($"M{left + 40},{y:0.#}L{tip + 14},{y:0.#}L{tip + 14},{y + 5:0.#}L{left + 40},{y + 5:0.#}Z")));
        parts.Add(new SketchPath(SketchInk.Line, Invariant($"M{left},{y - 15:0.#}Q{left + 110},{y - 7:0.#} {tip},{y - 2:0.#}M{left},{y + 20:0.#}Q{left + 110},{y + 12:0.#} {tip},{y + 7:0.#}")));
        parts.Add(new SketchPath(SketchInk.WayGap, Invariant($"M{left + 120},{y - 12:0.#}L{left + 120},{y - 112:0.#}")));
        parts.Add(new SketchPath(SketchInk.Metal, Invariant($"M{left + 120},{y - 8:0.#}L{left + 128},{y - 104:0.#}L{left + 148},{y - 102:0.#}Z")));
        Arrow(left + 150, y - 30, left + 204, y - 30);
        parts.Add(new SketchWords(SketchType.Label, "almost upright,", left + 112, y - 94, SketchAlign.End));
        parts.Add(new SketchWords(SketchType.Label, "leaning the way", left + 112, y - 77, SketchAlign.End));
        parts.Add(new SketchWords(SketchType.Label, "it goes", left + 112, y - 60, SketchAlign.End));
        parts.Add(new SketchWords(SketchType.Label, "to the tip", left + 208, y - 40, SketchAlign.End));
        parts.Add(new SketchWords(SketchType.Label, "plaque", tip + 14, y + 30, SketchAlign.End));
        parts.Add(new SketchWords(SketchType.Label, "finger or thumb", left + 84, y + 78));
        parts.Add(new SketchWords(SketchType.Name, "from the side", left + 104, top + SideTall + Caption, SketchAlign.Middle));
    }

    private void Note(IReadOnlyList<string> lines, double x, double y, double toX, double toY)
    {
        parts.AddRange(lines.Select((line, index) => new SketchWords(SketchType.Label, line, x, y + 5 + (index * DrawnWords.LineHeight))));
        if (Math.Abs(x - 4 - toX) + Math.Abs(y - toY) > ShortestLeader)
        {
            parts.Add(new SketchPath(SketchInk.Leader, Invariant($"M{x - 4:0.#},{y:0.#}L{toX:0.#},{toY:0.#}")));
        }
    }

    private void Arrow(double x, double y, double toX, double toY)
    {
        var length = Math.Sqrt(((toX - x) * (toX - x)) + ((toY - y) * (toY - y)));
        var (dx, dy) = ((toX - x) / length, (toY - y) / length);
        var (backX, backY) = (toX - (dx * 11), toY - (dy * 11));
        parts.Add(new SketchPath(
            SketchInk.Arrow,
            Invariant($"M{x:0.#},{y:0.#}L{toX:0.#},{toY:0.#}M{backX - (dy * 5):0.#},{backY + (dx * 5):0.#}L{toX:0.#},{toY:0.#}L{backX + (dy * 5):0.#},{backY - (dx * 5):0.#}")));
    }

    // What lies between the two borders of the drawing, cut straight.
    private List<MmPoint> Inside(IReadOnlyList<MmPoint> shape) => Cut(Cut(shape, plan.Top, below: true), plan.Bottom, below: false);

    // Sutherland and Hodgman's clipping against one horizontal line.
    private static List<MmPoint> Cut(IReadOnlyList<MmPoint> shape, double border, bool below)
    {
        List<MmPoint> kept = [];
        for (var i = 0; i < shape.Count; i++)
        {
            var (one, next) = (shape[i], shape[(i + 1) % shape.Count]);
            var (here, there) = (below == (one.Y >= border), below == (next.Y >= border));
            if (here)
            {
                kept.Add(one);
            }

            if (here != there)
            {
                var share = (border - one.Y) / (next.Y - one.Y);
                kept.Add(new(one.X + ((next.X - one.X) * share), border));
            }
        }

        return kept;
    }

    private SketchPath Path(SketchInk ink, List<MmPoint> points) => new(ink, points.Count == 0 ? "" : Line(points) + "Z");

    private string Line(IReadOnlyList<MmPoint> points) => "M" + string.Join("L", points.Select(point => Invariant($"{X(point.X):0.#},{Y(point.Y):0.#}")));

    private double X(double mm) => show.MiddleX + (mm * scale);

    private double Y(double mm) => Above + ((mm - plan.Top) * scale);
}
