using System.Globalization;
using ReedClinic.Domain.Bench.Story;

namespace ReedClinic.Domain.Drawings;

/// <summary>A reed's crow through the work, as a letter keeps it: where it stood, what was done, where it went.</summary>
/// <param name="Note">The note that it is compared with.</param>
/// <param name="Sentence">The whole in a sentence.</param>
/// <param name="Steps">Each step in a sentence.</param>
/// <param name="Dots">The crows.</param>
/// <param name="Words">What was done between them.</param>
/// <param name="Line">The way between them, as path data.</param>
/// <param name="Gaps">Parts of the way on which not every pass was heard.</param>
/// <param name="BandTop">Where the band of the target begins.</param>
/// <param name="BandFoot">Where it ends.</param>
/// <param name="Aim">The target itself.</param>
public sealed record CrowPicture(
    string Note, string Sentence, IReadOnlyList<string> Steps, IReadOnlyList<CrowDot> Dots, IReadOnlyList<CrowWords> Words,
    string Line, string Gaps, double BandTop, double BandFoot, double Aim)
{
    private const double LineHeight = 18;
    private const double SignWidth = 9.2;
    private const double NarrowStep = 78;

    /// <summary>The picture of a story; null when its crow was heard fewer than twice, which is no way.</summary>
    /// <param name="story">The story.</param>
    /// <param name="note">The note that it is compared with.</param>
    public static CrowPicture? Of(CrowStory story, string note)
    {
        ArgumentNullException.ThrowIfNull(story);
        if (story.Sentence is not { } sentence || story.Steps.Count == 0)
        {
            return null;
        }

        var drawing = new CrowDrawing(story, "came");
        return new(
            note, sentence, [.. story.Steps.Select(step => step.Sentence)], drawing.Dots, drawing.Words, drawing.Line, drawing.Gaps,
            drawing.BandTop, drawing.BandFoot, drawing.Aim);
    }

    /// <summary>
    /// What was done on each step and what it did, to stand below the drawing; nothing where the words have room in the drawing itself.
    /// </summary>
    public IReadOnlyList<string> Below => HasRoom ? [] : [.. Steps.Select((step, index) => $"{Passed(index + 1)}: {step}")];

    // Words stand over their step when every one of them is whole and narrower than it.
    private bool HasRoom => Words.SelectMany(words => words.Lines).All(line => !line.EndsWith('…') && !line.StartsWith('+') && line.Length * SignWidth <= Step - SignWidth);

    private double Step => Dots.Count < 2 ? CrowDrawing.Width : Dots[1].X - Dots[0].X;

    /// <summary>The picture as a drawing. Its words stand in lines of their own over the steps, so that nothing crosses them.</summary>
    public Sketch Draw()
    {
        var lines = HasRoom ? Words.Select(words => words.Lines.Count).DefaultIfEmpty(0).Max() : 0;
        var down = lines switch { 0 => -12, 1 => 4, _ => 4 + ((lines - 1) * LineHeight) };
        List<SketchPart> parts =
        [
            new SketchPath(SketchInk.Band, $"M46,{N(BandTop)}H666V{N(BandFoot)}H46Z", 0, down),
            new SketchPath(SketchInk.Aim, $"M46,{N(Aim)}H666", 0, down),
            new SketchWords(SketchType.Label, Note, 40, Aim + 5 + down, SketchAlign.End),
            new SketchPath(SketchInk.WayGap, Gaps, 0, down),
            new SketchPath(SketchInk.Way, Line, 0, down),
        ];
        if (lines > 0)
        {
            parts.AddRange(Words.SelectMany(words => words.Lines.Select((line, index) =>
                new SketchWords(SketchType.Step, line, words.X, 14 + ((lines - words.Lines.Count + index) * LineHeight), SketchAlign.Middle))));
        }

        parts.AddRange(Points(down));
        return new Sketch(CrowDrawing.Width, CrowDrawing.Height + down, "The crow through the work", $"{Sentence}. {string.Join(". ", Steps)}.", parts) { Type = 1.2 };
    }

    private IEnumerable<SketchPart> Points(double down)
    {
        var foot = CrowDrawing.Height - 8 + down;
        var narrow = Step < NarrowStep;
        if (narrow)
        {
            yield return new SketchWords(SketchType.Label, "pass", 40, foot, SketchAlign.End);
        }

        for (var i = 0; i < Dots.Count; i++)
        {
            var dot = Dots[i];
            if (dot.Foot - dot.Top > 4)
            {
                yield return new SketchPath(SketchInk.Range, $"M{N(dot.X)},{N(dot.Top)}V{N(dot.Foot)}", 0, down);
            }

            yield return new SketchDot(i == Dots.Count - 1 ? SketchInk.LastPoint : SketchInk.Point, dot.X, dot.Y + down, 6);
            yield return new SketchWords(SketchType.Label, narrow ? dot.Label : Passed(i, dot.Label), dot.X, foot, SketchAlign.Middle);
        }
    }

    // A crow is named by its pass; one of the same pass as the crow before it has no label of its own.
    private string Passed(int dot) => Passed(dot, Dots.Take(dot + 1).Select(one => one.Label).LastOrDefault(label => label.Length > 0) ?? "");

    private static string Passed(int dot, string label) => label.Length == 0 || char.IsLetter(label[0]) || dot == 0 ? label : "pass " + label;

    private static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
