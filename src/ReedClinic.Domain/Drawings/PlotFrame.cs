using ReedClinic.Domain.Reeds.Drawing;

namespace ReedClinic.Domain.Drawings;

/// <summary>The ground of a plot: time to the right, something upwards.</summary>
/// <param name="Left">Where time begins, in drawing units.</param>
/// <param name="Right">Where it ends.</param>
/// <param name="Top">Where the highest value stands.</param>
/// <param name="Foot">Where the lowest stands.</param>
/// <param name="From">The first moment, in seconds.</param>
/// <param name="To">The last.</param>
/// <param name="Low">The lowest value.</param>
/// <param name="High">The highest.</param>
internal sealed record PlotFrame(double Left, double Right, double Top, double Foot, double From, double To, double Low, double High)
{
    private static readonly double[] Steps = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20];

    public double X(double seconds) => Left + ((Math.Clamp(seconds, From, To) - From) / (To - From) * (Right - Left));

    public double Y(double value) => Foot - ((Math.Clamp(value, Low, High) - Low) / (High - Low) * (Foot - Top));

    /// <summary>The moments that are written below: as many as have room.</summary>
    public IEnumerable<SketchPart> Moments()
    {
        var most = (Right - Left) / 62;
        var step = Steps.FirstOrDefault(step => (To - From) / step <= most, Steps[^1]);
        yield return new SketchPath(SketchInk.Ruler, Line((Left, Foot + 4), (Right, Foot + 4)));
        for (var at = Math.Max(0, Math.Ceiling(From / step)); at * step <= To + 1e-9; at++)
        {
            yield return new SketchPath(SketchInk.Ruler, Line((X(at * step), Foot + 4), (X(at * step), Foot + 9)));
            yield return new SketchWords(SketchType.Label, FormattableString.Invariant($"{at * step:0.##}"), X(at * step), Foot + 25, SketchAlign.Middle);
        }
    }

    /// <summary>A line across at a value, with its words before it.</summary>
    public IEnumerable<SketchPart> Across(double value, string words, SketchInk ink = SketchInk.Ruler) =>
    [
        new SketchPath(ink, Line((Left, Y(value)), (Right, Y(value)))),
        new SketchWords(SketchType.Label, words, Left - 8, Y(value) + 5, SketchAlign.End),
    ];

    /// <summary>A value from moment to moment; where there is none the line stops.</summary>
    public string Trace(IReadOnlyList<double?> values, double step, double offset = 0)
    {
        var path = new System.Text.StringBuilder();
        var isOn = false;
        for (var at = 0; at < values.Count; at++)
        {
            var seconds = ((at + 0.5) * step) + offset;
            if (values[at] is not { } value || seconds < From || seconds > To)
            {
                isOn = false;
                continue;
            }

            path.Append(isOn ? 'L' : 'M').Append(SvgPath.Number(X(seconds))).Append(',').Append(SvgPath.Number(Y(value)));
            isOn = true;
        }

        return path.ToString();
    }

    public static string Line(params ReadOnlySpan<(double X, double Y)> points)
    {
        var path = new System.Text.StringBuilder();
        foreach (var (x, y) in points)
        {
            path.Append(path.Length == 0 ? 'M' : 'L').Append(SvgPath.Number(x)).Append(',').Append(SvgPath.Number(y));
        }

        return path.ToString();
    }

    public static string Box(double left, double top, double right, double foot) => Line((left, top), (right, top), (right, foot), (left, foot)) + "Z";
}
