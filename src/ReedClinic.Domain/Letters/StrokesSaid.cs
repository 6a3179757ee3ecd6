using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>How much was done, for somebody who may want to do the same: in the log strokes are counted for each place.</summary>
internal static class StrokesSaid
{
    private static readonly HashSet<Zone> Paired = [Zone.TipCorners, Zone.TipSides, Zone.HeartSides, Zone.Windows, Zone.WindowBase, Zone.Rails, Zone.SideEdges];

    /// <summary>“one stroke on each” where the place has several of a kind, such as corners; else the amount as it is said beside the work.</summary>
    /// <param name="work">The work.</param>
    public static string Beside(Adjustment work) =>
        work.Amount is { Strokes: { } strokes, Millimetres: null } amount && string.IsNullOrWhiteSpace(amount.Words) && IsSeveral(work)
            ? $"{Prose.Number(strokes)} {(strokes == 1 ? "stroke" : "strokes")} on each"
            : work.AmountBeside();

    /// <summary>The same inside a sentence, where a number stands in words: “two strokes”.</summary>
    /// <param name="work">The work.</param>
    public static string Inside(Adjustment work) => work.Amount is { Strokes: { } strokes, Millimetres: null } amount && string.IsNullOrWhiteSpace(amount.Words) && !IsSeveral(work)
        ? $"{Prose.Number(strokes)} {(strokes == 1 ? "stroke" : "strokes")}"
        : Beside(work);

    private static bool IsSeveral(Adjustment work) =>
        Paired.Contains(work.Zone) && !(work.Blades is Blades.Upper or Blades.Lower && work.Sides is Sides.Left or Sides.Right);
}
