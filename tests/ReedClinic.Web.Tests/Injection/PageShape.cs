using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;

namespace ReedClinic.Web.Tests.Injection;

/// <summary>Of which elements and attributes a page is made, learnt from pages that show harmless words.</summary>
internal sealed partial class PageShape
{
    private static readonly string[] Addresses = ["href", "src", "action", "formaction", "xlink:href", "data", "poster", "srcset"];

    private readonly HashSet<string> _known = ["br"];

    /// <summary>Learns what a harmless page is made of.</summary>
    public void Learn(string page)
    {
        using var document = Read(page);
        _known.UnionWith(document.All.SelectMany(Parts));
    }

    /// <summary>
    /// Fails where a page has an element or attribute that no harmless page has, or leads or fetches elsewhere; gives what is
    /// read on it.
    /// </summary>
    public string Holds(string page, string where)
    {
        using var document = Read(page);
        var strange = document.All.SelectMany(Parts).Where(part => !_known.Contains(part)).Distinct().ToList();
        Assert.True(strange.Count == 0, $"{where} has {string.Join(", ", strange)}");
        Assert.All(document.All.SelectMany(element => element.Attributes), attribute =>
        {
            Assert.False(attribute.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase), $"{where}: {attribute.Name}");
            Assert.True(!Addresses.Contains(attribute.Name) || StaysHere(attribute.Value), $"{where}: {attribute.Name}={attribute.Value}");
        });
        Assert.All(document.Scripts, script => Assert.True(script.HasAttribute("src") && script.Text.Length == 0, $"{where} has a script of its own"));
        return TextOf(document);
    }

    // Typed fields included, with single spaces.
    private static string TextOf(IHtmlDocument document)
    {
        var typed = document.QuerySelectorAll<IHtmlInputElement>("input").Select(input => input.Value);
        return Plain(string.Join(' ', typed.Append(document.Body!.TextContent)));
    }

    /// <summary>A text as it is compared: single spaces, a typewriter's apostrophe.</summary>
    public static string Plain(string text) => Spaces().Replace(text.Replace('’', '\''), " ").Trim();

    private static bool StaysHere(string address) =>
        !address.StartsWith("//", StringComparison.Ordinal) && !Scheme().IsMatch(address) && !address.Contains('\\', StringComparison.Ordinal);

    private static IEnumerable<string> Parts(IElement element) =>
        element.Attributes.Select(attribute => $"{element.LocalName}@{attribute.Name}").Append(element.LocalName);

    private static IHtmlDocument Read(string page) =>
        new HtmlParser().ParseDocument(page.Replace("<br>", "\n<br>", StringComparison.Ordinal));

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"^\s*[A-Za-z][A-Za-z0-9+.-]*:")]
    private static partial Regex Scheme();
}
