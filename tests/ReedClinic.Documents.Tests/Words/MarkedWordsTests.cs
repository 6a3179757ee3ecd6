using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Documents.Words;

namespace ReedClinic.Documents.Tests.Words;

public sealed class MarkedWordsTests
{
    private const string Plain = "p br em strong ul li h3 h4 blockquote";

    private static readonly Dictionary<string, string[]> Ours = new(Plain.Split(' ').Select(name => KeyValuePair.Create(name, Array.Empty<string>())))
    {
        ["ol"] = ["start"],
        ["a"] = ["href", "rel"],
        ["img"] = ["src", "alt"],
    };

    // The first four are worked examples of the CommonMark specification 0.31.2: emphasis, strong emphasis, paragraphs and
    // a list that ends where its marker changes.
    [Theory]
    [InlineData("*foo bar*", "<p><em>foo bar</em></p>")]
    [InlineData("**foo bar**", "<p><strong>foo bar</strong></p>")]
    [InlineData("aaa\n\nbbb", "<p>aaa</p>\n<p>bbb</p>")]
    [InlineData("- foo\n- bar\n+ baz", "<ul>\n<li>foo</li>\n<li>bar</li>\n</ul>\n<ul>\n<li>baz</li>\n</ul>")]
    [InlineData("one\ntwo", "<p>one<br>\ntwo</p>")]
    [InlineData("# What is kept\n### How long", "<h3>What is kept</h3>\n<h4>How long</h4>")]
    [InlineData("> said", "<blockquote>\n<p>said</p>\n</blockquote>")]
    [InlineData("3. three\n4. four", "<ol start=\"3\">\n<li>three</li>\n<li>four</li>\n</ol>")]
    [InlineData("[the harbour](https://harbour.example/)", "<p><a href=\"https://harbour.example/\" rel=\"noopener noreferrer nofollow\">the harbour</a></p>")]
    [InlineData("<quay@harbour.example>", "<p><a href=\"mailto:quay@harbour.example\" rel=\"noopener noreferrer nofollow\">quay@harbour.example</a></p>")]
    [InlineData("![the bench](/media/bench.jpg)", "<p><img src=\"/media/bench.jpg\" alt=\"the bench\"></p>")]
    public void The_marks_that_are_taken(string words, string html) => Assert.Equal(html, MarkedWords.ToHtml(words).Trim());

    [Theory]
    [InlineData("    four spaces")]
    [InlineData("`code`")]
    [InlineData("***")]
    [InlineData("a | b\n--|--\n1 | 2")]
    [InlineData("~~struck~~ ==marked== :smile: {.class}")]
    [InlineData("[reed]{#id onclick=alert(1)}")]
    [InlineData("Heading\n=======")]
    public void Other_marks_are_only_characters(string words)
    {
        using var document = Parsed(MarkedWords.ToHtml(words));

        Assert.All(document.Body!.QuerySelectorAll("*"), element => Assert.Matches("^(p|br)$", element.LocalName));
    }

    [Theory]
    [InlineData("![pixel](https://foreign.example/pixel.png)", "pixel")]
    [InlineData("![up](/media/../account/sign-out)", "up")]
    [InlineData("![up](/media//foreign.example/a)", "up")]
    [InlineData("![query](/media/a?b=c)", "query")]
    [InlineData("[home](/account/sign-out)", "home")]
    [InlineData("[plain](http://harbour.example/)", "plain")]
    [InlineData("[two hosts](https://harbour.example@foreign.example/)", "two hosts")]
    [InlineData("[**loud**](javascript:alert(1))", "loud")]
    public void An_address_that_may_not_be_there_leaves_its_words(string words, string text)
    {
        using var document = Parsed(MarkedWords.ToHtml(words));

        Assert.Equal(text, document.Body!.TextContent.Trim());
        Assert.Empty(document.Body.QuerySelectorAll("[href], [src]"));
        Assert.Equal(text, MarkedWords.ToText(words).Replace("*", "", StringComparison.Ordinal));
    }

    [Fact]
    public void No_hostile_text_becomes_an_element_or_an_attribute_that_is_not_on_the_list() =>
        Assert.All(HostileTexts.All, vector =>
        {
            using var document = Parsed(MarkedWords.ToHtml(vector.Text));
            foreach (var element in document.Head!.Children.Concat(document.Body!.QuerySelectorAll("*")))
            {
                Assert.True(Ours.ContainsKey(element.LocalName), $"{vector}: <{element.LocalName}>");
                Assert.All(element.Attributes, attribute => Assert.Contains(attribute.Name, Ours[element.LocalName]));
                Assert.All(element.Attributes.Where(attribute => attribute.Name == "href"), to => Assert.Matches("^(https://|mailto:)", to.Value));
                Assert.All(element.Attributes.Where(attribute => attribute.Name == "src"), to => Assert.Matches("^/media/[^.]*$", to.Value));
            }

            Assert.Empty(document.Descendants<IComment>());
        });

    [Fact]
    public void Of_a_hostile_text_without_marks_every_letter_is_still_there() =>
        Assert.All(HostileTexts.All.Where(vector => vector.Kind is "script" or "handler" or "drawing" or "query" && vector.Text.IndexOfAny(['&', '\\', '*', '_', '\n']) < 0), vector =>
        {
            using var document = Parsed(MarkedWords.ToHtml(vector.Text));

            Assert.Equal(vector.Text, document.Body!.TextContent.Trim());
        });

    [Theory]
    [InlineData("# What is kept\n\nYour *name* and\nyour **address**.", "What is kept\n\nYour name and\nyour address.")]
    [InlineData("- one\n- two\n  - deeper\n\n1. first\n2. second", "- one\n- two\n  - deeper\n\n1. first\n2. second")]
    [InlineData("> said\n> twice", "> said\n> twice")]
    [InlineData("See [the harbour](https://harbour.example/) or <https://quay.example/>.", "See the harbour (https://harbour.example/) or https://quay.example/.")]
    [InlineData("![the bench](/media/bench.jpg) &amp; more \\*", "the bench & more *")]
    [InlineData("[click](javascript:alert(1))", "click")]
    public void As_plain_text_it_says_the_same(string words, string text) => Assert.Equal(text, MarkedWords.ToText(words));

    [Theory]
    [InlineData('>')]
    [InlineData('[')]
    public void Marks_too_deep_to_read_stand_as_they_were_typed(char mark)
    {
        var deep = new string(mark, 10_000);

        Assert.Equal(deep, Parsed(MarkedWords.ToHtml(deep)).Body!.TextContent.Trim());
        Assert.Equal(deep, MarkedWords.ToText(deep));
    }

    private static AngleSharp.Html.Dom.IHtmlDocument Parsed(string html) => new HtmlParser().ParseDocument(html);
}
