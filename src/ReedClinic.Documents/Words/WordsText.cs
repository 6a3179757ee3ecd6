using System.Globalization;
using System.Text;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace ReedClinic.Documents.Words;

/// <summary>Marked words as plain text: paragraphs with a blank line between them, lists by dashes and numbers.</summary>
internal static class WordsText
{
    public static string Of(MarkdownDocument document) => string.Join("\n\n", document.Select(Block).Where(text => text.Length > 0));

    private static string Block(Block block) => block switch
    {
        ListBlock list => List(list),
        QuoteBlock quote => Indent(string.Join("\n\n", quote.Select(Block)), "> ", "> "),
        ContainerBlock container => string.Join("\n", container.Select(Block).Where(text => text.Length > 0)),
        LeafBlock { Inline: { } inline } => Inline(inline),
        _ => "",
    };

    private static string List(ListBlock list)
    {
        var number = int.TryParse(list.OrderedStart, NumberStyles.None, CultureInfo.InvariantCulture, out var start) ? start : 1;
        var items = new List<string>();
        foreach (var item in list)
        {
            var mark = list.IsOrdered ? string.Create(CultureInfo.InvariantCulture, $"{number++}. ") : "- ";
            items.Add(Indent(Block(item), mark, new string(' ', mark.Length)));
        }

        return string.Join('\n', items);
    }

    private static string Indent(string text, string first, string others) =>
        string.Join('\n', text.Split('\n').Select((line, at) => ((at == 0 ? first : others) + line).TrimEnd()));

    private static string Inline(ContainerInline inlines)
    {
        var text = new StringBuilder();
        foreach (var inline in inlines)
        {
            text.Append(inline switch
            {
                LiteralInline literal => literal.Content.ToString(),
                HtmlEntityInline entity => entity.Transcoded.ToString(),
                LineBreakInline => "\n",
                AutolinkInline link => link.Url,
                LinkInline { IsImage: true } picture => Inline(picture),
                LinkInline link => Link(link),
                ContainerInline container => Inline(container),
                _ => "",
            });
        }

        return text.ToString();
    }

    private static string Link(LinkInline link)
    {
        var words = Inline(link);
        return !WordsLinks.MayLead(link.Url) || words == link.Url ? words : $"{words} ({link.Url})";
    }
}
