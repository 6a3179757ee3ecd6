using System.Collections.Concurrent;

namespace ReedClinic.Domain.Reeds;

/// <summary>One piece of a zone on the face of a blade.</summary>
/// <param name="Zone">The zone it belongs to.</param>
/// <param name="Side">Left or right of the centre line; both for a part that is not halved (thread, eye, cork, wire).</param>
/// <param name="Shape">Its outline, following the blade's own curves.</param>
public sealed record ZonePiece(Zone Zone, Sides Side, Outline Shape);

/// <summary>
/// The geometry of the reed map: one blade seen from its own face, tip up, in millimetres from the tip and from the centre
/// line. Both blades of a reed have the same outline.
/// </summary>
public sealed class ReedOutline
{
    private static readonly ConcurrentDictionary<(ScrapeStyle, bool), ReedOutline> Made = new();

    private ReedOutline(ScrapeStyle style, Instrument instrument)
    {
        Style = style;
        HasCork = ReedMeasures.IsOboe(instrument);
        Measures = ReedMeasures.For(style, instrument);
        var shape = new BladeShape(Measures);
        Blade = shape.Between(BladeShape.TipLine, _ => Measures.Cane, _ => -1, _ => 1);
        var plan = new ZonePlan(shape, Measures);
        Pieces = [.. plan.Face(), .. plan.Below(HasCork)];
        Rooftop = plan.RooftopLine();
        Grain = plan.Grain();
    }

    /// <summary>How this reed is scraped.</summary>
    public ScrapeStyle Style { get; }

    /// <summary>Whether there is a cork below the thread, as an oboe's staple has.</summary>
    public bool HasCork { get; }

    /// <summary>The lowest point of what is drawn, in millimetres from the tip.</summary>
    public double Foot => HasCork ? PiecesOf(Zone.Cork)[0].Shape.Bottom : PiecesOf(Zone.Thread)[0].Shape.Bottom + 6;

    /// <summary>The lengths it is drawn from.</summary>
    public ReedMeasures Measures { get; }

    /// <summary>The outline of one blade, from the tip to the thread.</summary>
    public Outline Blade { get; }

    /// <summary>Every piece of every zone that this style has, from the tip down. Pieces on the face do not overlap, but for the wire.</summary>
    public IReadOnlyList<ZonePiece> Pieces { get; }

    /// <summary>The rooftop as an open line, left to right.</summary>
    public IReadOnlyList<MmPoint> Rooftop { get; }

    /// <summary>A few open lines along the cane that show its grain.</summary>
    public IReadOnlyList<IReadOnlyList<MmPoint>> Grain { get; }

    /// <summary>The outline for a reed.</summary>
    /// <param name="style">How it is scraped.</param>
    /// <param name="instrument">What it is for; an oboe when nobody said.</param>
    /// <returns>The same object every time.</returns>
    public static ReedOutline For(ScrapeStyle style, Instrument? instrument = null)
    {
        var isOboe = ReedMeasures.IsOboe(instrument);
        return Made.GetOrAdd((style, isOboe), _ => new ReedOutline(style, isOboe ? Instrument.Oboe : Instrument.CorAnglais));
    }

    /// <summary>The pieces that a zone is drawn with.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="side">Which half; both gives all of its pieces.</param>
    /// <returns>None for a zone that this style does not have or that has no place on the face.</returns>
    public IReadOnlyList<ZonePiece> PiecesOf(Zone zone, Sides side = Sides.Both) =>
        [.. Pieces.Where(p => p.Zone == zone && (side == Sides.Both || p.Side == Sides.Both || p.Side == side))];

    /// <summary>The shapes to draw for a zone: as its pieces, but two halves that meet on the centre line are drawn as one.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="side">Which half; both joins the halves of a zone in the middle.</param>
    /// <returns>None for a zone that this style does not have or that has no place on the face.</returns>
    public IReadOnlyList<ZonePiece> Drawn(Zone zone, Sides side = Sides.Both)
    {
        var pieces = PiecesOf(zone, side);
        var right = pieces.FirstOrDefault(p => p.Side == Sides.Right);
        if (side != Sides.Both || right is null || right.Shape.Left > 1e-9)
        {
            return pieces;
        }

        var half = right.Shape.Points;
        var foot = half.Where(p => p.X <= 1e-9).MaxBy(p => p.Y);
        List<MmPoint> flank = [.. half.Where(p => p.X > 1e-9)];
        var whole = new Outline([half[0], .. flank, foot, .. flank.AsEnumerable().Reverse().Select(p => p.Mirror())]);
        return [new ZonePiece(zone, Sides.Both, whole)];
    }

    /// <summary>The piece that contains a point.</summary>
    /// <param name="point">A point in millimetres.</param>
    /// <returns>The piece, or null outside every zone.</returns>
    public ZonePiece? At(MmPoint point) => Pieces.FirstOrDefault(p => p.Shape.Contains(point));
}
