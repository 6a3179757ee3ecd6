using System.Text;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Documents.Letters;

/// <summary>A letter to be kept elsewhere: as a page that needs nothing else, and as plain text that says the same.</summary>
public static class LetterFile
{
    private const string Style = "body{font-family:Georgia,serif;max-width:40rem;margin:2rem auto;padding:0 1rem;line-height:1.5;color:#1e2a2f;background:#fff;overflow-wrap:anywhere}img{max-width:100%;height:auto}table{border-collapse:collapse}svg{display:block;width:100%;height:auto}.map{max-width:19rem}.way{max-width:38rem}th,td{border:1px solid #999;padding:.2rem .5rem;text-align:left}";

    /// <summary>The letter as a whole page.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="day">The day at its head.</param>
    /// <param name="among">Where it stands among the letters about its batch; null for the only one.</param>
    /// <param name="pictures">Where its pictures lie beside it, by their keys; one that isn't there is told in words.</param>
    /// <param name="printed">The name of the file beside it that has its drawings; null for none.</param>
    public static string Html(LetterDraft letter, DateTimeOffset day, LetterAmong? among = null, IReadOnlyDictionary<string, string>? pictures = null, string? printed = null)
    {
        ArgumentNullException.ThrowIfNull(letter);
        var html = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n<title>");
        html.Append(Escaped.Text(letter.Code)).Append("</title>\n<style>").Append(Style).Append("</style>\n</head>\n<body>\n<p>")
            .Append(Escaped.Text(letter.Studio ?? "")).Append("</p>\n<p>").Append(Escaped.Text(letter.Code)).Append(", ").Append(LetterPage.Day(day)).Append("</p>\n");
        foreach (var line in (among ?? LetterAmong.Only).Lines(day))
        {
            html.Append("<p>").Append(Escaped.Text(line)).Append("</p>\n");
        }

        if (printed is not null && HasDrawings(letter))
        {
            html.Append("<p><a href=\"").Append(Escaped.Text(printed)).Append("\">The same letter for paper</a> lies beside this page.</p>\n");
        }

        foreach (var section in LetterPage.Sections(letter, key => pictures?.GetValueOrDefault(key)))
        {
            var reed = letter.Reeds.FirstOrDefault(reed => reed.Id == section.Reed);
            html.Append("<section>\n").Append(section.Head);
            Drawn(html, "map", reed is null ? (section.Kind == "lesson" ? LetterPictures.Lesson(letter) : null) : LetterPictures.Reed(letter, reed));
            Listed(html, letter, reed?.Marks ?? (section.Kind == "lesson" ? letter.LessonMarks : []));
            Drawn(html, "way", section.Kind == "stroke" ? LetterPictures.Stroke(letter, StrokeShow.Letter) : null);
            html.Append(section.Body).Append(section.BeforeCrow);
            Crow(html, letter, reed);
            html.Append(section.Table).Append(section.Rest).Append("</section>\n");
        }

        return html.Append("</body>\n</html>\n").ToString();
    }

    private static bool HasDrawings(LetterDraft letter) => letter.Reeds.Any(reed => reed.Marks.Count > 0) || letter.LessonMarks.Count > 0;

    private static void Drawn(StringBuilder html, string kind, Sketch? drawing)
    {
        if (drawing is not null)
        {
            html.Append("<figure class=\"").Append(kind).Append("\">\n").Append(SketchSvg.Of(drawing)).Append("</figure>\n");
        }
    }

    private static void Crow(StringBuilder html, LetterDraft letter, LetterReed? reed)
    {
        if (reed?.Crow is { } crow && LetterPictures.Crow(letter, reed, CrowShow.Letter) is { } drawing)
        {
            Drawn(html, "way", drawing);
            html.Append("<p>").Append(Escaped.Text(crow.Sentence)).Append(".</p>\n<ul>\n")
                .AppendJoin("", LetterPictures.CrowSaid(letter, reed).Select(step => $"<li>{Escaped.Text(step)}</li>\n")).Append("</ul>\n");
        }
    }

    // What the drawing of a reed shows, in its own list.
    private static void Listed(StringBuilder html, LetterDraft letter, IReadOnlyList<Domain.Reeds.ReedMark> marks)
    {
        if (marks.Count > 0)
        {
            html.Append("<ol>\n").AppendJoin("", marks.Select(mark => $"<li>{Escaped.Text(LetterPictures.Line(letter, mark))}</li>\n")).Append("</ol>\n");
        }
    }

    /// <summary>The same words without any marks.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="day">The day at its head.</param>
    /// <param name="among">Where it stands among the letters about its batch; null for the only one.</param>
    public static string Plain(LetterDraft letter, DateTimeOffset day, LetterAmong? among = null)
    {
        ArgumentNullException.ThrowIfNull(letter);
        var text = new StringBuilder();
        text.Append(letter.Studio).Append('\n').Append(letter.Code).Append(", ").Append(LetterPage.Day(day)).Append('\n')
            .AppendJoin("", (among ?? LetterAmong.Only).Lines(day).Select(line => line + "\n")).Append('\n');
        var reeds = letter.Reeds.ToDictionary(reed => reed.Id);
        Domain.Reeds.ReedId? at = null;
        foreach (var block in letter.Blocks.Where(block => !block.IsEmpty))
        {
            if (block.Reed is { } reed && reed != at && reeds.TryGetValue(reed, out var known))
            {
                text.Append(System.Globalization.CultureInfo.InvariantCulture, $"Reed {known.Number}: {known.HowToRecognise}\n\n");
            }
            else if (block.Reed is null && block.Heading is { } heading)
            {
                text.Append(heading).Append("\n\n");
            }

            at = block.Reed;
            if (block.Kind == BlockKind.ReedAnswers)
            {
                text.Append(LetterPage.AskedName(LetterPage.ReedName(reeds.GetValueOrDefault(at ?? default)))).Append("\n\n");
            }

            Body(text, block);
        }

        return text.ToString().TrimEnd() + "\n";
    }

    private static void Body(StringBuilder text, LetterBlock block)
    {
        foreach (var (paragraph, index) in block.Paragraphs.Select((paragraph, index) => (paragraph, index)))
        {
            text.Append(!block.IsList ? "" : block.Kind == BlockKind.Plan ? FormattableString.Invariant($"{index + 1}. ") : "- ").Append(PictureMark.SaidIn(block, paragraph)).Append(block.IsList ? "\n" : "\n\n");
        }

        text.Append(block.Kind == BlockKind.ReedNow && block.Rows.Count > 0 ? "How it played when it came → how it plays now:\n" : "");
        foreach (var row in block.Kind == BlockKind.ReedNow ? block.Rows : [])
        {
            text.Append("- ").Append(row.Test).Append(": ").Append(row.Before ?? "not tried").Append(" → ").Append(row.Now ?? "not tried again").Append('\n');
        }

        text.Append(block.IsList || block.Rows.Count > 0 ? "\n" : "");
    }
}
