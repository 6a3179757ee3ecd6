using System.Globalization;

namespace ReedClinic.Domain.Drawings;

/// <summary>A crow’s way that runs to the right.</summary>
internal sealed class CrowAcross
{
    private const double Ground = 46;
    private const double FirstCrow = 92;
    private const double FirstCrowNarrow = 76;
    private const double LastCrow = 40;
    private const double LastCrowNarrow = 24;
    private const double GroundEnd = 14;
    private const double Top = 26;
    private const double Foot = 102;
    private const double Height = 136;
    private const double WithoutLabels = -12;
    private const double OneLabel = 4;
    private const double LabelsLow = 56;
    private const double SignWidth = 9.2;
    private const double KeySignWidth = 8.2;
    private const double SmallSignWidth = 7.8;
    private const double SmallLineHeight = 15;
    private const double NarrowStep = 78;
    private const double NarrowWidth = 480;

    private readonly CrowPicture picture;
    private readonly CrowShow show;
    private readonly List<double> along;
    private readonly double step;
    private readonly int lines;
    private readonly double down;
    private readonly CrowPlan plan;

    public CrowAcross(CrowPicture picture, CrowShow show)
    {
        (this.picture, this.show) = (picture, show);
        var (first, last) = show.Width < NarrowWidth ? (FirstCrowNarrow, LastCrowNarrow) : (FirstCrow, LastCrow);
        step = picture.Heard.Count < 2 ? show.Width : (show.Width - first - last) / (picture.Heard.Count - 1);
        along = [.. picture.Heard.Select((_, index) => first + (picture.Heard.Count < 2 ? 0 : index * step))];
        lines = show.Labels == CrowLabels.OverTheWay && HasRoom ? picture.Moves.Select(move => move.Work.Count).DefaultIfEmpty(0).Max() : 0;
        down = show.Labels == CrowLabels.OnTheWay ? 0 : lines == 0 ? WithoutLabels : OneLabel + ((lines - 1) * DrawnWords.LineHeight);
        plan = new CrowPlan(picture, along, (Foot + down, Top + down), (x, y) => (x, y));
    }

    /// <summary>Whether what was done has room over its steps: every word of it whole, and narrower than its step.</summary>
    public bool HasRoom => picture.Moves.All(move => move.Work.Count <= 2 && move.Work.All(words => words.Length * SignWidth <= step - SignWidth));

    /// <summary>Whether passes stand there by their number alone.</summary>
    public bool IsNarrow => step < NarrowStep;

    public CrowKeys Shown => plan.Shown;

    public (double Height, IReadOnlyList<SketchPart> Parts) Draw()
    {
        var key = CrowKey.Rows(picture, show.Keys & plan.Shown, Ground, show.Width - GroundEnd, Height + down, KeySignWidth * (show.Width < NarrowWidth ? Math.Max(1, show.Type) : 1));
        return (Height + down + key.Height,
        [
            .. plan.Ground(Ground, show.Width - GroundEnd, show.HasBand),
            new SketchWords(SketchType.Label, picture.Note, Ground - 6, plan.Aim + 5, SketchAlign.End),
            .. plan.Way(),
            .. show.Labels switch { CrowLabels.OnTheWay => OnTheWay(), CrowLabels.OverTheWay when lines > 0 => OverTheWay(), _ => [] },
            .. Passes(),
            .. key.Parts,
        ]);
    }

    private double Middle(int move) => (along[move] + along[move + 1]) / 2;

    private IEnumerable<SketchPart> OverTheWay() => picture.Moves.SelectMany((move, index) => move.Work.Select((words, line) =>
        new SketchWords(SketchType.Step, words, Middle(index), 14 + ((lines - move.Work.Count + line) * DrawnWords.LineHeight), SketchAlign.Middle)));

    private IEnumerable<SketchPart> OnTheWay()
    {
        var most = Math.Max(3, (int)((step - 6) / SmallSignWidth));
        foreach (var (move, index) in picture.Moves.Select((move, index) => (move, index)).Where(one => one.move.Work.Count > 0))
        {
            List<string> said = [.. move.Work.Take(2).Select(words => words.Length <= most ? words : DrawnWords.Start(words, most - 1).TrimEnd() + "…")];
            if (move.Work.Count > 2)
            {
                said[1] = "+ " + (move.Work.Count - 1).ToString(CultureInfo.InvariantCulture);
            }

            var y = plan.Aside(picture.Heard[index + 1].Middle);
            var from = y < LabelsLow ? y + 20 : y - 9 - ((said.Count - 1) * SmallLineHeight);
            foreach (var (words, line) in said.Select((words, line) => (words, line)))
            {
                yield return new SketchWords(SketchType.Step, words, Middle(index) + 8, from + (line * SmallLineHeight), SketchAlign.Middle);
            }
        }
    }

    private IEnumerable<SketchPart> Passes()
    {
        var foot = Height - 8 + down;
        if (IsNarrow)
        {
            yield return new SketchWords(SketchType.Label, "pass", Ground - 6, foot, SketchAlign.End);
        }

        foreach (var (heard, index) in picture.Heard.Select((heard, index) => (heard, index)).Where(one => !CrowSketch.IsSamePass(picture, one.index)))
        {
            var words = IsNarrow && heard.Pass > 0 ? heard.Pass.ToString(CultureInfo.InvariantCulture) : CrowSketch.Pass(heard, show);
            yield return new SketchWords(SketchType.Label, words, along[index], foot, SketchAlign.Middle);
        }
    }
}
