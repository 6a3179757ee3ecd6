using System.Text.RegularExpressions;
using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.Screens;

/// <summary>
/// Finds words a person would see that are written into the markup itself. It reads Razor roughly: whatever stands between
/// tags, minus C#. Better one odd exception in the list than a sentence that can't be translated.
/// </summary>
public static partial class VisibleWords
{
    private static readonly string[] SpokenAttributes = ["aria-label", "aria-description", "alt", "title", "placeholder", "Label", "HelperText"];

    public static IEnumerable<string> In(IEnumerable<Source> files, IReadOnlyDictionary<string, string> reasons) =>
        from file in files
        where file.Extension == ".razor"
        from words in Of(file.Text)
        where !reasons.ContainsKey(words.Text)
        select $"{file.Path}:{file.LineOf(words.At)} shows \"{words.Text}\"";

    private static IEnumerable<(int At, string Text)> Of(string razor)
    {
        var markup = RazorCode.Blank(Blank(razor, RazorComment(), HtmlComment(), Directive(), RawElement()));
        foreach (Match tag in Tag().Matches(markup))
        {
            foreach (Match attribute in Attribute().Matches(tag.Value))
            {
                if (SpokenAttributes.Contains(attribute.Groups["name"].Value) && IsWords(attribute.Groups["value"].Value))
                {
                    yield return (tag.Index + attribute.Index, attribute.Groups["value"].Value);
                }
            }
        }

        foreach (Match text in BetweenTags().Matches(Blank(markup, Tag())))
        {
            if (IsWords(text.Value))
            {
                yield return (text.Index, text.Value.Trim());
            }
        }
    }

    private static bool IsWords(string text) => Word().IsMatch(Entity().Replace(text, " "));

    /// <summary>Puts spaces where the patterns were, so that every line keeps its number.</summary>
    private static string Blank(string text, params Regex[] patterns) =>
        patterns.Aggregate(text, (now, pattern) => pattern.Replace(now, match => RazorCode.Spaces(match.Value)));

    [GeneratedRegex(@"@\*.*?\*@", RegexOptions.Singleline)]
    private static partial Regex RazorComment();

    [GeneratedRegex(@"<!--.*?-->", RegexOptions.Singleline)]
    private static partial Regex HtmlComment();

    [GeneratedRegex(@"^@(page|inject|using|attribute|rendermode|layout|inherits|implements|namespace|typeparam|preservewhitespace)\b[^\n]*", RegexOptions.Multiline)]
    private static partial Regex Directive();

    [GeneratedRegex(@"<(script|style)\b.*?</\1>", RegexOptions.Singleline)]
    private static partial Regex RawElement();

    [GeneratedRegex(@"</?[A-Za-z](?:[^<>""]|""[^""]*"")*>|<!DOCTYPE[^>]*>", RegexOptions.Singleline)]
    private static partial Regex Tag();

    [GeneratedRegex(@"(?<name>[\w:-]+)\s*=\s*""(?<value>[^""]*)""")]
    private static partial Regex Attribute();

    [GeneratedRegex(@"\S(?:[^\n]*\S)?")]
    private static partial Regex BetweenTags();

    [GeneratedRegex(@"&#?\w+;")]
    private static partial Regex Entity();

    [GeneratedRegex(@"\p{L}{2,}")]
    private static partial Regex Word();
}
