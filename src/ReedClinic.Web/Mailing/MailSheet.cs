using System.Net;
using System.Text;

namespace ReedClinic.Web.Mailing;

/// <summary>The words of one mail, before they are made into text and into HTML: both say the same.</summary>
/// <param name="Subject">What it is about, in a few words.</param>
/// <param name="Greeting">How it begins.</param>
/// <param name="Before">What stands before the link.</param>
/// <param name="LinkSays">What the link is for; null when there is none.</param>
/// <param name="Link">The link.</param>
/// <param name="After">What stands after it.</param>
/// <param name="Writer">Who writes.</param>
/// <param name="Foot">Why it came.</param>
public sealed record MailSheet(
    string Subject, string Greeting, IReadOnlyList<string> Before, string? LinkSays, string? Link, IReadOnlyList<string> After, string Writer, string Foot)
{
    private const string Line = "margin:0 0 1em;font-size:17px;line-height:1.55;color:#1E2A2F";
    private const string Quiet = "margin:0;font-size:14px;line-height:1.5;color:#4B575C";

    /// <summary>As plain text.</summary>
    public string ToText()
    {
        var text = new StringBuilder();
        foreach (var paragraph in Paragraphs())
        {
            text.Append(paragraph).Append("\r\n\r\n");
        }

        return text.Append(Foot).Append("\r\n").ToString();
    }

    /// <summary>As HTML: paper and ink, nothing that is fetched from anywhere.</summary>
    public string ToHtml()
    {
        var body = new StringBuilder();
        foreach (var paragraph in Paragraphs())
        {
            body.Append("<p style=\"").Append(Line).Append("\">").Append(Marked(paragraph)).Append("</p>\r\n");
        }

        return $"""
            <!DOCTYPE html>
            <html lang="en-GB">
            <head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>{Plain(Subject)}</title></head>
            <body style="margin:0;padding:24px 12px;background:#FBF8F2;font-family:Georgia,'Times New Roman',serif">
            <main style="display:block;max-width:34em;margin:0 auto;padding:28px 24px;background:#FFFDF9;border:1px solid #DED5C4">
            {body}<hr style="border:0;border-top:1px solid #DED5C4;margin:1.5em 0 1em">
            <p style="{Quiet}">{Plain(Foot)}</p>
            </main>
            </body>
            </html>

            """.ReplaceLineEndings("\r\n");
    }

    private IEnumerable<string> Paragraphs() =>
        [Greeting, .. Before, .. Link is null ? Array.Empty<string>() : [$"{LinkSays}\r\n{Link}"], .. After, Writer];

    private string Marked(string paragraph)
    {
        var plain = Plain(paragraph).Replace("\r\n", "<br>\r\n", StringComparison.Ordinal);
        return Link is null || !paragraph.EndsWith(Link, StringComparison.Ordinal)
            ? plain
            : plain.Replace(Plain(Link), $"<a href=\"{Plain(Link)}\" style=\"color:#1B5E9B;word-break:break-all\">{Plain(Link)}</a>", StringComparison.Ordinal);
    }

    private static string Plain(string text) => WebUtility.HtmlEncode(text);
}
