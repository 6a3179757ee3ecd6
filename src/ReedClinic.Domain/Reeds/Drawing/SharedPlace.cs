namespace ReedClinic.Domain.Reeds.Drawing;

/// <summary>
/// What is drawn for a mark where others lie on the same place: strips of it by turns, so that no sign lies over another. A place that
/// was found thick and then worked shows both.
/// </summary>
public static class SharedPlace
{
    private const double Strip = 1.2;
    private const int MostTurns = 3;

    /// <summary>The shapes that a mark has on one blade.</summary>
    /// <param name="art">The blade.</param>
    /// <param name="mark">The mark.</param>
    /// <param name="among">Every mark that is drawn on that blade, itself among them.</param>
    /// <returns>The whole place where it has one sign alone; none where the drawing doesn't have the place.</returns>
    public static IReadOnlyList<ZoneArt> Shapes(BladeArt art, ReedMark mark, IReadOnlyList<ReedMark> among)
    {
        ArgumentNullException.ThrowIfNull(art);
        ArgumentNullException.ThrowIfNull(mark);
        ArgumentNullException.ThrowIfNull(among);
        var place = mark.Place;
        // Thread, cork and the like have no halves: whatever side is said, it is the same place.
        var isWhole = art.Shapes(place.Zone, Sides.Left).Select(shape => shape.Path).SequenceEqual(art.Shapes(place.Zone, Sides.Right).Select(shape => shape.Path));
        var here = among.Where(other => other.Place.Zone == place.Zone && (isWhole || Meet(other.Place.Sides, place.Sides))).ToList();
        if (Signs(here).Count < 2)
        {
            return art.Shapes(place.Zone, place.Sides);
        }

        return isWhole || here.TrueForAll(other => other.Place.Sides == place.Sides)
            ? Strips(art.Shapes(place.Zone, place.Sides), mark, here)
            : [.. new[] { Sides.Left, Sides.Right }.Where(side => Meet(side, place.Sides))
                .SelectMany(side => Strips(art.Shapes(place.Zone, side), mark, here.FindAll(other => Meet(other.Place.Sides, side)))).DistinctBy(shape => shape.Path)];
    }

    private static bool Meet(Sides one, Sides other) => one == Sides.Both || other == Sides.Both || one == other;

    private static (MarkKind, bool, int) Sign(ReedMark mark) => (mark.Kind, mark.Suspected, mark.Kind == MarkKind.Worked ? mark.Weight : 0);

    private static List<(MarkKind, bool, int)> Signs(IEnumerable<ReedMark> marks) => [.. marks.Select(Sign).Distinct().Order()];

    private static IReadOnlyList<ZoneArt> Strips(IReadOnlyList<ZoneArt> shapes, ReedMark mark, List<ReedMark> here)
    {
        var signs = Signs(here);
        return signs.Count < 2 ? shapes : [.. shapes.Select(shape => Cut(shape, signs.IndexOf(Sign(mark)), signs.Count))];
    }

    // Across the longer way; the strip that lies nearest to the middle is the one that its number points to.
    private static ZoneArt Cut(ZoneArt art, int turn, int turns)
    {
        var shape = art.Shape;
        var isTall = shape.Bottom - shape.Top >= shape.Right - shape.Left;
        var (from, length) = isTall ? (shape.Top, shape.Bottom - shape.Top) : (shape.Left, shape.Right - shape.Left);
        var count = Math.Clamp((int)(length / Strip), turns, turns * MostTurns);
        // By turns from one end to the other it would look like one side each.
        count += turns == 2 && !isTall && count % 2 == 0 && length / (count + 1) > Strip / 3 ? 1 : 0;
        var strips = Enumerable.Range(0, count).Where(i => i % turns == turn)
            .Select(i => (Outline: Between(shape, isTall, from + (length * i / count), from + (length * (i + 1) / count)), Off: Math.Abs(i + 0.5 - (count / 2.0))))
            .Where(strip => strip.Outline is not null).ToList();
        return strips.Count == 0
            ? art
            : new ZoneArt(art.Zone, art.Side, string.Concat(strips.Select(strip => SvgPath.Closed(strip.Outline!.Points))), strips.MinBy(strip => strip.Off).Outline!);
    }

    private static Outline? Between(Outline shape, bool isTall, double low, double high)
    {
        double Along(MmPoint point) => isTall ? point.Y : point.X;
        var points = Clip(Clip(shape.Points, point => Along(point) - low), point => high - Along(point));
        return points.Count < 3 ? null : new Outline(points);
    }

    // Sutherland and Hodgman's clipping against one line: what lies where the distance isn't negative.
    private static List<MmPoint> Clip(IReadOnlyList<MmPoint> points, Func<MmPoint, double> distance)
    {
        List<MmPoint> kept = [];
        for (int i = 0, before = points.Count - 1; i < points.Count; before = i++)
        {
            var (a, b) = (points[before], points[i]);
            var (there, here) = (distance(a), distance(b));
            if (there < 0 != here < 0)
            {
                var share = there / (there - here);
                kept.Add(new MmPoint(a.X + ((b.X - a.X) * share), a.Y + ((b.Y - a.Y) * share)));
            }

            if (here >= 0)
            {
                kept.Add(b);
            }
        }

        return kept;
    }
}
