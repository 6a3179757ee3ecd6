using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds.Drawing;

namespace ReedClinic.Domain.Drawings;

/// <summary>The way of a crow in a plane: so far along for the work, so many cents aside for the pitch. Which is across and which is down is said from outside.</summary>
/// <param name="picture">What was heard and done.</param>
/// <param name="along">Where each crow stands along the work.</param>
/// <param name="aside">Where the flattest pitch stands, and the sharpest.</param>
/// <param name="at">Turns along and aside into across and down.</param>
internal sealed class CrowPlan(CrowPicture picture, IReadOnlyList<double> along, (double Flat, double Sharp) aside, Func<double, double, (double X, double Y)> at)
{
    private const double Turn = 14;
    private const double DotRadius = 6;
    private const double ShortRange = 4;
    private const double MeasuredRadius = 9.5;
    private const double MeasuredDot = 3;
    private const double MeasuredAside = 10;

    private readonly CentsRange extent = CrowStory.Around(picture.Heard.Concat(picture.Beside ?? []).SelectMany(heard => new[] { heard.Low, heard.High }));

    /// <summary>Where the target stands.</summary>
    public double Aim => Aside(0);

    /// <summary>What of the things that want a word of explanation is on it.</summary>
    public CrowKeys Shown => CrowKeys.Band
        | (picture.Heard.Any(IsRange) ? CrowKeys.Range : CrowKeys.None)
        | (picture.Moves.Any(move => move.HasGap) ? CrowKeys.Gap : CrowKeys.None)
        | (picture.Heard.Concat(picture.Beside ?? []).Any(heard => heard.IsMeasured) ? CrowKeys.Measured : CrowKeys.None);

    /// <summary>Where a pitch stands.</summary>
    /// <param name="cents">Its distance from the target.</param>
    public double Aside(double cents) =>
        aside.Flat + ((cents - extent.Low.Value) / (extent.High.Value - extent.Low.Value) * (aside.Sharp - aside.Flat));

    /// <summary>What lies below the way: the band of the target, and the target.</summary>
    /// <param name="from">Where along the work they begin.</param>
    /// <param name="to">Where they end.</param>
    /// <param name="hasBand">Whether the band is wanted.</param>
    public IEnumerable<SketchPart> Ground(double from, double to, bool hasBand)
    {
        var (flat, sharp) = (Aside(-CrowTarget.ToleranceCents), Aside(CrowTarget.ToleranceCents));
        if (hasBand)
        {
            yield return new SketchPath(SketchInk.Band, Line((from, flat), (to, flat), (to, sharp), (from, sharp)) + "Z");
        }

        yield return new SketchPath(SketchInk.Aim, Line((from, Aim), (to, Aim)));
    }

    /// <summary>The way from each crow to the next, and then the crows.</summary>
    public IEnumerable<SketchPart> Way()
    {
        yield return new SketchPath(SketchInk.WayGap, Way(gap: true));
        yield return new SketchPath(SketchInk.Way, Way(gap: false));
        for (var i = 0; i < picture.Heard.Count; i++)
        {
            var heard = picture.Heard[i];
            if (IsRange(heard))
            {
                yield return new SketchPath(SketchInk.Range, Line((along[i], Aside(heard.High)), (along[i], Aside(heard.Low))));
            }

            var (x, y) = at(along[i], Aside(heard.Middle));
            yield return new SketchDot(i == picture.Heard.Count - 1 ? SketchInk.LastPoint : SketchInk.Point, x, y, DotRadius);
            if (heard.IsMeasured)
            {
                yield return new SketchDot(SketchInk.Measured, x, y, MeasuredRadius);
            }
        }

        // A little further along, so that it is seen beside what was said in the same pass.
        foreach (var heard in picture.Beside ?? [])
        {
            var same = picture.Heard.ToList().FindLastIndex(said => said.Pass <= heard.Pass);
            var (x, y) = at(along[Math.Max(0, same)] + MeasuredAside, Aside(heard.Middle));
            yield return new SketchDot(SketchInk.Point, x, y, MeasuredDot);
            yield return new SketchDot(SketchInk.Measured, x, y, MeasuredRadius);
        }
    }

    private bool IsRange(CrowHeard heard) => Math.Abs(Aside(heard.High) - Aside(heard.Low)) > ShortRange;

    private string Way(bool gap) => string.Concat(picture.Moves.Select((move, index) => move.HasGap != gap ? "" : Line(
        (along[index], Aside(picture.Heard[index].Middle)),
        (along[index] + Turn, Aside(picture.Heard[index].Middle)),
        (along[index] + Turn, Aside(picture.Heard[index + 1].Middle)),
        (along[index + 1], Aside(picture.Heard[index + 1].Middle)))));

    private string Line(params IEnumerable<(double Along, double Aside)> points) =>
        "M" + string.Join('L', points.Select(point => at(point.Along, point.Aside)).Select(point => $"{SvgPath.Number(point.X)},{SvgPath.Number(point.Y)}"));
}
