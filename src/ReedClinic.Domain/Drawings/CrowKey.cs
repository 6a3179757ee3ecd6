using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Drawings;

/// <summary>What the lines and the band of a crow’s way mean, in rows below the drawing.</summary>
internal static class CrowKey
{
    private const double RowHeight = 22;
    private const double Swatch = 26;
    private const double WordsAt = 34;
    private const double Apart = 22;

    /// <summary>The rows.</summary>
    /// <param name="picture">What was heard.</param>
    /// <param name="keys">What is to be explained.</param>
    /// <param name="left">Where the rows begin.</param>
    /// <param name="width">Where they end.</param>
    /// <param name="top">Their top.</param>
    /// <param name="signWidth">How wide a letter is.</param>
    /// <returns>The parts, and how tall all of them are.</returns>
    public static (IReadOnlyList<SketchPart> Parts, double Height) Rows(CrowPicture picture, CrowKeys keys, double left, double width, double top, double signWidth)
    {
        List<SketchPart> parts = [];
        var (x, y) = (left, top);
        foreach (var key in new[] { CrowKeys.Band, CrowKeys.Range, CrowKeys.Gap, CrowKeys.Measured }.Where(key => keys.HasFlag(key)))
        {
            var lines = DrawnWords.Wrap(Words(key, picture), (int)((width - left - WordsAt) / signWidth));
            var wide = WordsAt + (lines.Max(line => line.Length) * signWidth);
            if (x > left && x + wide > width)
            {
                (x, y) = (left, y + RowHeight);
            }

            parts.AddRange(Sign(key, x, y + 10));
            parts.AddRange(lines.Select((line, index) => new SketchWords(SketchType.Label, line, x + WordsAt, y + 15 + (index * DrawnWords.LineHeight))));
            (x, y) = (x + wide + Apart, y + ((lines.Count - 1) * DrawnWords.LineHeight));
        }

        return (parts, parts.Count == 0 ? 0 : y + RowHeight - top);
    }

    private static string Words(CrowKeys key, CrowPicture picture) => key switch
    {
        CrowKeys.Band => FormattableString.Invariant($"within {CrowTarget.ToleranceCents:0} cents of {picture.Note}{(picture.A4 is { } a4 ? FormattableString.Invariant($" at\u00A0A\u00A0{a4:0.#}\u00A0Hz") : "")}"),
        CrowKeys.Range => "somewhere in between",
        CrowKeys.Measured => "measured from a recording",
        _ => "not every pass was heard",
    };

    private static IEnumerable<SketchPart> Sign(CrowKeys key, double x, double y) => key switch
    {
        CrowKeys.Band =>
        [
            new SketchPath(SketchInk.Band, $"M0,-8H{Swatch}V8H0Z", x, y),
            new SketchPath(SketchInk.Aim, $"M0,0H{Swatch}", x, y),
        ],
        CrowKeys.Range => [new SketchPath(SketchInk.Range, "M13,-7V7", x, y), new SketchDot(SketchInk.Point, x + 13, y, 4.5)],
        CrowKeys.Measured => [new SketchDot(SketchInk.Point, x + 13, y, 3), new SketchDot(SketchInk.Measured, x + 13, y, 7.5)],
        _ => [new SketchPath(SketchInk.WayGap, $"M0,0H{Swatch}", x, y)],
    };
}
