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

    /// <summary>The picture as a drawing.</summary>
    public Sketch Draw()
    {
        List<SketchPart> parts =
        [
            new SketchPath(SketchInk.Band, $"M46,{N(BandTop)}H666V{N(BandFoot)}H46Z"),
            new SketchPath(SketchInk.Aim, $"M46,{N(Aim)}H666"),
            new SketchWords(SketchType.Label, Note, 40, Aim + 5, SketchAlign.End),
            new SketchPath(SketchInk.WayGap, Gaps),
            new SketchPath(SketchInk.Way, Line),
        ];
        parts.AddRange(Words.SelectMany(words => words.Lines.Select((line, index) =>
            new SketchWords(SketchType.Step, line, words.X + 8, words.Y + (index * 15), SketchAlign.Middle))));
        for (var i = 0; i < Dots.Count; i++)
        {
            var dot = Dots[i];
            if (dot.Foot - dot.Top > 4)
            {
                parts.Add(new SketchPath(SketchInk.Range, $"M{N(dot.X)},{N(dot.Top)}V{N(dot.Foot)}"));
            }

            parts.Add(new SketchDot(i == Dots.Count - 1 ? SketchInk.LastPoint : SketchInk.Point, dot.X, dot.Y, 6));
            parts.Add(new SketchWords(SketchType.Label, dot.Label.Length == 0 || char.IsLetter(dot.Label[0]) ? dot.Label : "pass " + dot.Label, dot.X, 128, SketchAlign.Middle));
        }

        return new Sketch(CrowDrawing.Width, CrowDrawing.Height, "The crow through the work", $"{Sentence}. {string.Join(". ", Steps)}.", parts) { Type = 1.2 };
    }

    private static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
