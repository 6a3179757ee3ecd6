namespace ReedClinic.Domain.Drawings;

/// <summary>A crow’s way that runs down, for narrow windows: its passes on the left, what was done and what it did on the right.</summary>
internal sealed class CrowDown
{
    private const double Flat = 76;
    private const double Sharp = 152;
    private const double Words = 174;
    private const double First = 62;
    private const double Ground = 40;
    private const double End = 14;
    private const double LeastStep = 40;
    private const double StepRoom = 16;
    private const double SignWidth = 8;
    private const double KeyGap = 10;

    private readonly CrowPicture picture;
    private readonly CrowShow show;
    private readonly List<double> along = [First];
    private readonly List<List<SketchWords>> said = [];
    private readonly CrowPlan plan;

    public CrowDown(CrowPicture picture, CrowShow show)
    {
        (this.picture, this.show) = (picture, show);
        foreach (var move in picture.Moves)
        {
            List<SketchWords> lines = show.Labels == CrowLabels.None ? [] : [.. move.Work.SelectMany(words => Lines(SketchType.Step, words)), .. Lines(SketchType.Label, move.Change)];
            var tall = Math.Max(LeastStep, (lines.Count * DrawnWords.LineHeight) + StepRoom);
            var top = along[^1] + ((tall - (lines.Count * DrawnWords.LineHeight)) / 2) + 13;
            said.Add([.. lines.Select((line, index) => line with { Y = top + (index * DrawnWords.LineHeight) })]);
            along.Add(along[^1] + tall);
        }

        plan = new CrowPlan(picture, along, (Flat, Sharp), (down, aside) => (aside, down));
    }

    public (double Height, IReadOnlyList<SketchPart> Parts) Draw()
    {
        var foot = along[^1] + End;
        var key = CrowKey.Rows(picture, show.Keys & plan.Shown, 0, show.Width, foot + KeyGap, SignWidth);
        return (foot + (key.Height > 0 ? key.Height + KeyGap : 0),
        [
            .. plan.Ground(Ground, foot, show.HasBand),
            new SketchWords(SketchType.Label, "flatter", Flat - 24, 14),
            new SketchWords(SketchType.Label, "sharper", Sharp + 24, 14, SketchAlign.End),
            new SketchWords(SketchType.Label, picture.Note, plan.Aim, 34, SketchAlign.Middle),
            .. plan.Way(),
            .. said.SelectMany(lines => lines),
            .. picture.Heard.Select((heard, index) => (heard, index)).Where(one => !CrowSketch.IsSamePass(picture, one.index))
                .Select(one => new SketchWords(SketchType.Label, CrowSketch.Pass(one.heard, show), 0, along[one.index] + 5)),
            .. key.Parts,
        ]);
    }

    private IEnumerable<SketchWords> Lines(SketchType type, string words) =>
        DrawnWords.Wrap(words, (int)((show.Width - Words) / SignWidth)).Select(line => new SketchWords(type, line, Words, 0));
}
