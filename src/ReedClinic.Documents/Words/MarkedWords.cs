using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using Ganss.Xss;
using Markdig;
using Markdig.Parsers;
using Markdig.Parsers.Inlines;
using Markdig.Syntax;

namespace ReedClinic.Documents.Words;

/// <summary>
/// Words with a few marks – emphasis, lists, two ranks of headings, quotations, links – as HTML that can do nothing, and
/// as plain text. The only class that makes HTML out of what somebody typed; the marks are CommonMark's.
/// </summary>
public static class MarkedWords
{
    private const string LinkRelation = "noopener noreferrer nofollow";

    /// <summary>The highest heading in words: the page that shows them has the ranks above.</summary>
    private const int FirstHeading = 3;

    private const int LastHeading = 4;

    private static readonly string[] Tags = ["p", "br", "em", "strong", "ul", "ol", "li", "h3", "h4", "blockquote", "a", "img"];

    private static readonly string[] Attributes = ["href", "src", "alt", "rel", "start"];

    private static readonly MarkdownPipeline Pipeline = MakePipeline();

    private static readonly HtmlSanitizer Sieve = MakeSieve();

    /// <summary>The words as HTML.</summary>
    /// <param name="words">As they were typed.</param>
    /// <returns>Elements and attributes of the short list above, and nothing else.</returns>
    public static string ToHtml(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return Read(words) is { } read ? Sieve.Sanitize(read.Html) : $"<p>{Escaped.Lines(words)}</p>";
    }

    /// <summary>The words as plain text, as for the text part of an e-mail: the same in the same order, addresses written out.</summary>
    /// <param name="words">As they were typed.</param>
    /// <returns>Lines that end with a line feed between them.</returns>
    public static string ToText(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return Read(words) is { } read ? WordsText.Of(read.Document) : words;
    }

    // Null when the marks are nested deeper than Markdig goes, be it in reading or in writing: such words stand as they
    // were typed.
    private static (MarkdownDocument Document, string Html)? Read(string words)
    {
        try
        {
            var document = Markdown.Parse(words, Pipeline);
            foreach (var heading in document.Descendants<HeadingBlock>())
            {
                heading.Level = Math.Min(heading.Level + FirstHeading - 1, LastHeading);
            }

            return (document, document.ToHtml(Pipeline));
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static MarkdownPipeline MakePipeline()
    {
        var builder = new MarkdownPipelineBuilder().DisableHtml().UseSoftlineBreakAsHardlineBreak();
        builder.BlockParsers.Clear();
        builder.BlockParsers.AddRange([new HeadingBlockParser(), new QuoteBlockParser(), new ListBlockParser(), new ParagraphBlockParser { ParseSetextHeadings = false }]);
        builder.InlineParsers.TryRemove<CodeInlineParser>();
        return builder.Build();
    }

    // What is let through is what Markdig was asked for. It isn't trusted: its links lead wherever somebody wrote.
    private static HtmlSanitizer MakeSieve()
    {
        var sieve = new HtmlSanitizer(new HtmlSanitizerOptions
        {
            AllowedTags = new HashSet<string>(Tags, StringComparer.OrdinalIgnoreCase),
            AllowedAttributes = new HashSet<string>(Attributes, StringComparer.OrdinalIgnoreCase),
            AllowedSchemes = new HashSet<string>(["https", "mailto"], StringComparer.OrdinalIgnoreCase),
            UriAttributes = new HashSet<string>(["href", "src"], StringComparer.OrdinalIgnoreCase),
        });
        sieve.FilterUrl += (_, url) =>
        {
            var allowed = url.Tag is IHtmlImageElement ? WordsLinks.MayShow(url.OriginalUrl) : WordsLinks.MayLead(url.OriginalUrl);
            url.SanitizedUrl = allowed ? url.OriginalUrl : null;
        };
        sieve.PostProcessNode += (_, node) => Finish(node);
        return sieve;
    }

    private static void Finish(PostProcessNodeEventArgs node)
    {
        switch (node.Node)
        {
            case IHtmlAnchorElement anchor when anchor.HasAttribute("href"):
                anchor.SetAttribute("rel", LinkRelation);
                break;
            case IHtmlAnchorElement anchor:
                // A link that may lead nowhere is its words.
                foreach (var child in anchor.ChildNodes.ToList())
                {
                    node.ReplacementNodes.Add(child);
                }

                if (node.ReplacementNodes.Count == 0)
                {
                    node.ReplacementNodes.Add(node.Document.CreateTextNode(""));
                }

                break;
            case IHtmlImageElement picture when !picture.HasAttribute("src"):
                node.ReplacementNodes.Add(node.Document.CreateTextNode(picture.AlternativeText ?? ""));
                break;
        }
    }
}
