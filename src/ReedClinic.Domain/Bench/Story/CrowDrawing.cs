using System.Globalization;

namespace ReedClinic.Domain.Bench.Story;

/// <summary>A crow on the drawing.</summary>
/// <param name="X">Across.</param>
/// <param name="Y">Down, of the middle of what was heard.</param>
/// <param name="Top">Down, of its sharpest end.</param>
/// <param name="Foot">Down, of its flattest end.</param>
/// <param name="Label">Its pass, under the drawing; empty where the one before is of the same pass.</param>
public sealed record CrowDot(double X, double Y, double Top, double Foot, string Label);

/// <summary>Words on a step of the drawing.</summary>
/// <param name="X">Their middle.</param>
/// <param name="Y">Their foot.</param>
/// <param name="Lines">At most two lines.</param>
public sealed record CrowWords(double X, double Y, IReadOnlyList<string> Lines);

/// <summary>Where things go in the drawing of a crow's story: one step to the right for each crow, cents upwards.</summary>
public sealed class CrowDrawing
{
    /// <summary>The drawing's width.</summary>
    public const double Width = 680;

    /// <summary>Its height.</summary>
    public const double Height = 136;

    private const double Left = 52;
    private const double Right = 660;
    private const double Top = 26;
    private const double Foot = 102;
    private const double LetterWidth = 7.8;

    private readonly double _low;
    private readonly double _high;

    /// <summary>Lays a story out.</summary>
    /// <param name="story">The story.</param>
    /// <param name="arrival">The word for the pass before any work.</param>
    public CrowDrawing(CrowStory story, string arrival)
    {
        ArgumentNullException.ThrowIfNull(story);
        (_low, _high) = (story.Extent.Low.Value, story.Extent.High.Value);
        var heard = story.Points.Select((point, index) => (point, index)).Where(one => one.point.Cents is not null).ToList();
        var step = heard.Count < 2 ? 0 : (Right - Left - 60) / (heard.Count - 1);
        var place = heard.Select((one, order) => (one.index, x: Left + 40 + (order * step))).ToDictionary(one => one.index, one => one.x);
        Dots =
        [
            .. heard.Select((one, order) => new CrowDot(
                place[one.index], Y(one.point.Cents!.Value.Middle.Value), Y(one.point.Cents.Value.High.Value), Y(one.point.Cents.Value.Low.Value),
                order > 0 && heard[order - 1].point.Pass == one.point.Pass ? "" : Label(one.point.Pass, arrival))),
        ];
        (Line, Gaps) = (Way(story, place, gaps: false), Way(story, place, gaps: true));
        Words = [.. story.Steps.Where(one => one.Work.Count > 0).Select(one => Say(one, place, Y(story.Points[one.To].Cents!.Value.Middle.Value), step))];
        (BandTop, BandFoot, Aim) = (Y(story.TargetBand.High.Value), Y(story.TargetBand.Low.Value), Y(0));
    }

    /// <summary>The crows.</summary>
    public IReadOnlyList<CrowDot> Dots { get; }

    /// <summary>The way between them: along, then up or down.</summary>
    public string Line { get; }

    /// <summary>The parts of the way on which not every pass was heard.</summary>
    public string Gaps { get; }

    /// <summary>What was done on each step.</summary>
    public IReadOnlyList<CrowWords> Words { get; }

    /// <summary>Where the band of the target begins.</summary>
    public double BandTop { get; }

    /// <summary>Where it ends.</summary>
    public double BandFoot { get; }

    /// <summary>The target itself.</summary>
    public double Aim { get; }

    /// <summary>A number as a path takes it.</summary>
    /// <param name="value">The number.</param>
    public static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Label(int pass, string arrival) => pass == 0 ? arrival : pass.ToString(CultureInfo.InvariantCulture);

    private static CrowWords Say(CrowStep step, Dictionary<int, double> place, double y, double width)
    {
        var most = Math.Max(3, (int)((width - 6) / LetterWidth));
        List<string> lines = [.. step.Work.Take(2).Select(words => words.Length <= most ? words : words[..(most - 1)].TrimEnd() + "…")];
        if (step.Work.Count > 2)
        {
            lines[1] = "+ " + (step.Work.Count - 1).ToString(CultureInfo.InvariantCulture);
        }

        return new CrowWords((place[step.From] + place[step.To]) / 2, y < 56 ? y + 20 : y - 9 - ((lines.Count - 1) * 15), lines);
    }

    private string Way(CrowStory story, Dictionary<int, double> place, bool gaps) => string.Concat(story.Steps.Where(step => step.HasGap == gaps).Select(step =>
    {
        var (from, to) = (story.Points[step.From].Cents!.Value.Middle.Value, story.Points[step.To].Cents!.Value.Middle.Value);
        var turn = place[step.From] + 14;
        return $"M{N(place[step.From])},{N(Y(from))}H{N(turn)}V{N(Y(to))}H{N(place[step.To])}";
    }));

    private double Y(double cents) => Foot - ((cents - _low) / (_high - _low) * (Foot - Top));
}
