using System.Collections.Concurrent;

namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>One shape of a zone as path data, its origin at the middle of the tip.</summary>
/// <param name="Zone">The zone.</param>
/// <param name="Side">The half of the blade, or both.</param>
/// <param name="Path">Closed path data.</param>
/// <param name="Shape">The same in millimetres.</param>
public sealed record ZoneArt(Zone Zone, Sides Side, string Path, Outline Shape);

/// <summary>The path data of one blade, worked out once for each style.</summary>
public sealed class BladeArt
{
    private const int Turns = 16;
    private static readonly ConcurrentDictionary<ReedOutline, BladeArt> Made = new();

    private readonly Dictionary<(Zone, Sides), IReadOnlyList<ZoneArt>> shapes;

    private BladeArt(ReedOutline outline)
    {
        Outline = outline;
        shapes = (from zone in Enum.GetValues<Zone>() from side in Enum.GetValues<Sides>() select (zone, side))
            .ToDictionary(key => key, key => (IReadOnlyList<ZoneArt>)[.. outline.Drawn(key.zone, key.side).Select(Draw)]);
        Blade = SvgPath.Closed(outline.Blade.Points);
        Rooftop = SvgPath.Open(outline.Rooftop);
        Grain = string.Concat(outline.Grain.Select(SvgPath.Open));
        Pressable = [.. outline.Pieces.Select(p => p.Zone).Distinct().Where(z => z != Zone.Wire)
            .SelectMany(z => z == Zone.Spine ? outline.Drawn(z) : outline.PiecesOf(z)).Select(Draw)];
        Strings = string.Concat(Enumerable.Range(0, Turns).Select(Winding));
    }

    /// <summary>The outline that it is drawn from, in millimetres.</summary>
    public ReedOutline Outline { get; }

    /// <summary>The blade.</summary>
    public string Blade { get; }

    /// <summary>The line between heart and tip.</summary>
    public string Rooftop { get; }

    /// <summary>Lines along the cane.</summary>
    public string Grain { get; }

    /// <summary>The turns of the thread.</summary>
    public string Strings { get; }

    /// <summary>What can be pointed at, from the tip down.</summary>
    public IReadOnlyList<ZoneArt> Pressable { get; }

    /// <summary>The height of the drawing below the tip.</summary>
    public double Foot => Outline.Foot * SvgPath.Scale;

    /// <summary>The drawing for a reed.</summary>
    /// <param name="style">How it is scraped.</param>
    /// <param name="instrument">What it is for; an oboe when nobody said.</param>
    /// <returns>The same object every time.</returns>
    public static BladeArt For(ScrapeStyle style, Instrument? instrument = null) =>
        Made.GetOrAdd(ReedOutline.For(style, instrument), outline => new BladeArt(outline));

    /// <summary>The shapes that a zone is drawn with.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="side">Which half, or both.</param>
    /// <returns>None for a zone that isn't on this drawing.</returns>
    public IReadOnlyList<ZoneArt> Shapes(Zone zone, Sides side = Sides.Both) => shapes[(zone, side)];

    private static ZoneArt Draw(ZonePiece piece) => new(piece.Zone, piece.Side, SvgPath.Closed(piece.Shape.Points), piece.Shape);

    private string Winding(int turn)
    {
        var thread = Outline.PiecesOf(Zone.Thread)[0].Shape;
        var share = (turn + 0.5) / Turns;
        var y = thread.Top + ((thread.Bottom - thread.Top) * share);
        var half = thread.Points[1].X + ((thread.Points[2].X - thread.Points[1].X) * share);
        var (left, right) = (SvgPath.Number(-half * SvgPath.Scale), SvgPath.Number(half * SvgPath.Scale));
        return $"M{left},{SvgPath.Number((y - 0.08) * SvgPath.Scale)}Q0,{SvgPath.Number((y + 0.2) * SvgPath.Scale)} {right},{SvgPath.Number((y + 0.06) * SvgPath.Scale)}";
    }
}
