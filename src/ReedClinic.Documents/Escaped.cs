using System.Text.Encodings.Web;
using System.Text.RegularExpressions;
using System.Text.Unicode;

namespace ReedClinic.Documents;

/// <summary>Text made safe for HTML. Letters of every script stay readable; what could be markup doesn't.</summary>
internal static class Escaped
{
    private static readonly Regex Apostrophe = new(@"(?<=\p{L})'(?=\p{L})", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);

    public static string Text(string text) => Encoder.Encode(text);

    /// <summary>The same for running text: line breaks are kept, and a typewriter's apostrophe becomes a printer's.</summary>
    public static string Lines(string text) =>
        string.Join("<br>", Apostrophes(text).Split('\n').Select(line => Encoder.Encode(line.TrimEnd('\r'))));

    /// <summary>The text with a printer's apostrophe where a typewriter's stood within a word.</summary>
    public static string Apostrophes(string text) => Apostrophe.Replace(text, "’");
}
