using System.Text.RegularExpressions;
using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.House;

/// <summary>Text becomes markup in a few reviewed files alone (OWASP ASVS 5.0, 3.2.2: text is shown by what shows text).</summary>
public static partial class MarkupRules
{
    public static IEnumerable<string> Unreviewed(IEnumerable<Source> files, IReadOnlyDictionary<string, string> reviewed) =>
        from file in files
        where file.IsUnder("src") && file.Extension is ".cs" or ".razor" or ".cshtml" or ".js" && !reviewed.ContainsKey(file.Path)
        from Match match in (file.Extension == ".js" ? Script() : Markup()).Matches(file.Text)
        select $"{file.Path}:{file.LineOf(match.Index)} makes markup of text ({match.Value})";

    /// <summary>What is on the list and no longer needs to be.</summary>
    public static IEnumerable<string> ReviewedForNothing(IEnumerable<Source> files, IReadOnlyDictionary<string, string> reviewed) =>
        reviewed.Keys.Except(Unreviewed(files, new Dictionary<string, string>()).Select(found => found[..found.IndexOf(':', StringComparison.Ordinal)]))
            .Select(path => $"{path} is on the list for nothing");

    [GeneratedRegex(@"\b(MarkupString|AddMarkupContent|HtmlString|Markdig|HtmlSanitizer|Ganss\.Xss)\b|\bHtml\.Raw\b")]
    private static partial Regex Markup();

    [GeneratedRegex(@"\b(innerHTML|outerHTML|insertAdjacentHTML|createContextualFragment|setHTMLUnsafe)\b|\bdocument\.write|\beval\(|\bnew Function\b")]
    private static partial Regex Script();
}
