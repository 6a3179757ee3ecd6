using System.Globalization;
using System.Text;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Documents.Letters;

/// <summary>The paper that a letter is laid out for.</summary>
public enum Paper
{
    /// <summary>Whatever lies in the printer.</summary>
    Any,

    /// <summary>210 by 297 mm (ISO 216).</summary>
    A4,

    /// <summary>8.5 by 11 inches.</summary>
    UsLetter,
}

/// <summary>
/// A part of a letter as HTML. For a reed, its drawing belongs between head and body; whoever shows the letter draws it.
/// </summary>
/// <param name="Reed">The reed that the part is about; null for a part about all of them.</param>
/// <param name="Kind">A short name of what it is, for its class.</param>
/// <param name="Head">Its heading, as HTML; may be empty.</param>
/// <param name="Body">Its first block, as HTML: it is kept together with the heading and the drawing.</param>
/// <param name="Rest">Its other blocks, as HTML; only a reed has them.</param>
public sealed record LetterSection(ReedId? Reed, string Kind, string Head, string Body, string Rest = "");

/// <summary>Sets a composed letter as HTML: as parts for a page of the site, or as one whole file that needs nothing else.</summary>
public static class LetterPage
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>The letter's parts in order. Blocks about the same reed stand together in one.</summary>
    /// <param name="letter">The letter.</param>
    public static IReadOnlyList<LetterSection> Sections(LetterDraft letter)
    {
        ArgumentNullException.ThrowIfNull(letter);
        var reeds = letter.Reeds.ToDictionary(reed => reed.Id);
        var sections = new List<LetterSection>();
        foreach (var block in letter.Blocks.Where(block => !block.IsEmpty))
        {
            var body = LetterBlockHtml.Body(block);
            if (block.Reed is { } reed)
            {
                if (sections.Count > 0 && sections[^1].Reed == reed)
                {
                    sections[^1] = sections[^1] with { Rest = sections[^1].Rest + body };
                }
                else
                {
                    sections.Add(new(reed, "reed", ReedHead(reeds.GetValueOrDefault(reed)), body));
                }
            }
            else
            {
                sections.Add(new(null, LetterBlockHtml.Class(block.Kind), LetterBlockHtml.Head(block), body));
            }
        }

        return sections;
    }

    /// <summary>One block's text, as HTML; for whoever shows the blocks one by one.</summary>
    /// <param name="block">The block.</param>
    public static string Body(LetterBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        return LetterBlockHtml.Body(block);
    }

    /// <summary>The day of a letter as it stands at its head, such as “9 March 2026”.</summary>
    /// <param name="day">The day.</param>
    public static string Day(DateTimeOffset day) => day.ToString("d MMMM yyyy", English);

    /// <summary>The whole letter as one HTML file that needs nothing else.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="day">The day at its head.</param>
    /// <param name="paper">The paper that it is laid out for.</param>
    /// <param name="drawings">Drawings of the reeds as SVG that is trusted; a reed without one is shown by its words.</param>
    public static string Html(
        LetterDraft letter, DateTimeOffset day, Paper paper = Paper.Any, IReadOnlyDictionary<ReedId, string>? drawings = null)
    {
        ArgumentNullException.ThrowIfNull(letter);
        var html = new StringBuilder();
        html.Append("<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
            .Append(Escaped.Text($"Letter about batch {letter.Code}"))
            .Append("</title>\n<style>\n").Append(LetterStyle.For(paper)).Append("</style>\n</head>\n<body>\n<main class=\"letter\">\n")
            .Append("<header class=\"letter-head\"><p>").Append(Escaped.Text($"Batch {letter.Code}"))
            .Append("</p><p>").Append(Escaped.Text(Day(day))).Append("</p></header>\n");
        foreach (var section in Sections(letter))
        {
            html.Append("<section class=\"letter-").Append(section.Kind).Append("\">\n<div class=\"letter-top\">\n").Append(section.Head);
            if (section.Reed is { } reed && drawings?.GetValueOrDefault(reed) is { } drawing)
            {
                html.Append("<div class=\"letter-drawing\">").Append(drawing).Append("</div>\n");
            }

            html.Append(section.Body).Append("</div>\n").Append(section.Rest).Append("</section>\n");
        }

        return html.Append("</main>\n</body>\n</html>\n").ToString();
    }

    /// <summary>The same as bytes, in UTF-8.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="day">The day at its head.</param>
    /// <param name="paper">The paper that it is laid out for.</param>
    /// <param name="drawings">Drawings of the reeds as SVG that is trusted.</param>
    public static byte[] Bytes(
        LetterDraft letter, DateTimeOffset day, Paper paper = Paper.Any, IReadOnlyDictionary<ReedId, string>? drawings = null) =>
        Encoding.UTF8.GetBytes(Html(letter, day, paper, drawings));

    private static string ReedHead(LetterReed? reed) => reed is null
        ? ""
        : $"<h2>Reed {reed.Number.ToString(CultureInfo.InvariantCulture)} <span class=\"letter-recognise\">{Escaped.Text(reed.HowToRecognise)}</span></h2>\n";
}
