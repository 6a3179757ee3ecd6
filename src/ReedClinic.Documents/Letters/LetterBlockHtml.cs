using System.Text;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Documents.Letters;

/// <summary>One block of a letter as HTML. Every text is escaped.</summary>
internal static class LetterBlockHtml
{
    public static string Head(LetterBlock block) =>
        block.Heading is { } heading && block.Reed is null ? $"<h2>{Escaped.Text(heading)}</h2>\n" : "";

    public static string Body(LetterBlock block, Func<string, string?> pictures)
    {
        var html = new StringBuilder();
        if (block.Kind == BlockKind.ReedNow)
        {
            Paragraphs(html, block, pictures);
            Rows(html, block);
        }
        else if (block.IsList)
        {
            List(html, block, pictures);
        }
        else
        {
            Paragraphs(html, block, pictures);
        }

        return html.ToString();
    }

    public static string Class(BlockKind kind) => kind switch
    {
        BlockKind.Greeting => "greeting",
        BlockKind.DoneWell => "done-well",
        BlockKind.Arrival => "arrival",
        BlockKind.Answers or BlockKind.ReedAnswers => "answers",
        BlockKind.Lesson => "lesson",
        BlockKind.Habit => "habit",
        BlockKind.CheckYourself => "check",
        BlockKind.Stroke => "stroke",
        BlockKind.Plan => "plan",
        BlockKind.Care => "care",
        BlockKind.Cautions => "cautions",
        BlockKind.Closing => "closing",
        _ => "reed",
    };

    private static void Paragraphs(StringBuilder html, LetterBlock block, Func<string, string?> pictures)
    {
        foreach (var (paragraph, index) in block.Paragraphs.Select((paragraph, index) => (paragraph, index)))
        {
            if (Picture(paragraph, block, pictures) is { } picture)
            {
                html.Append(picture).Append('\n');
                continue;
            }

            var salutation = block.Kind == BlockKind.Greeting && index == 0 ? " class=\"letter-salutation\"" : "";
            html.Append("<p").Append(salutation).Append('>').Append(Words(paragraph, block)).Append("</p>\n");
        }
    }

    // What it shows is said by the picture itself, or where it can't be had, in words.
    private static string? Picture(LetterParagraph paragraph, LetterBlock block, Func<string, string?> pictures) =>
        PictureMark.Of(block, paragraph) is not { } mark ? null
        : pictures(mark.Key) is not { } address ? $"<p>{Escaped.Text(mark.Said)}</p>"
        : $"<figure class=\"letter-picture\"><img src=\"{Escaped.Text(address)}\" alt=\"{Escaped.Text(mark.Words)}\" loading=\"lazy\"></figure>";

    // In a part that the studio wrote, an address alone is a link, and a field that still waits is marked.
    private static string Words(LetterParagraph paragraph, LetterBlock block)
    {
        if (NoteLink.Of(block, paragraph) is { } link)
        {
            return Link(link);
        }

        var end = NoteLink.AtEnd(block, paragraph);
        var words = Escaped.Lines(end is null ? paragraph.Text : paragraph.Text[..^end.Length]);
        foreach (var field in block.IsEdited ? NoteField.NamesIn(paragraph.Text).Select(NoteField.Written) : [])
        {
            words = words.Replace(Escaped.Text(field), $"<mark class=\"letter-unfilled\">{Escaped.Text(field)}</mark>", StringComparison.Ordinal);
        }

        return end is null ? words : words + Link(end);
    }

    private static string Link(string link)
    {
        var address = Escaped.Text(link);
        return $"<a class=\"letter-link\" href=\"{address}\" rel=\"noopener noreferrer nofollow\">{address}</a>";
    }

    private static void List(StringBuilder html, LetterBlock block, Func<string, string?> pictures)
    {
        if (block.Paragraphs.Count == 0)
        {
            return;
        }

        var list = block.Kind == BlockKind.Plan ? "ol" : "ul";
        html.Append('<').Append(list).Append(" class=\"letter-list\">\n");
        foreach (var item in block.Paragraphs)
        {
            html.Append("<li>").Append(Picture(item, block, pictures) ?? Words(item, block)).Append("</li>\n");
        }

        html.Append("</").Append(list).Append(">\n");
    }

    private static void Rows(StringBuilder html, LetterBlock block)
    {
        if (block.Rows.Count == 0)
        {
            return;
        }

        html.Append("<table class=\"letter-rows\">\n<caption>How it played, and how it plays now</caption>\n<thead><tr>")
            .Append("<th scope=\"col\">Test</th><th scope=\"col\">When it came</th><th scope=\"col\">Now</th></tr></thead>\n<tbody>\n");
        foreach (var row in block.Rows)
        {
            html.Append("<tr><th scope=\"row\">").Append(Escaped.Text(row.Test)).Append("</th><td>")
                .Append(Escaped.Text(row.Before ?? "not tried")).Append("</td><td>")
                .Append(Escaped.Text(row.Now ?? "not tried again")).Append(Moved(row.Movement)).Append("</td></tr>\n");
        }

        html.Append("</tbody>\n</table>\n");
    }

    private static string Moved(Movement movement) => movement switch
    {
        Movement.Nearer => " <span class=\"letter-nearer\">better</span>",
        Movement.Further => " <span class=\"letter-further\">gave way a little</span>",
        _ => "",
    };
}
