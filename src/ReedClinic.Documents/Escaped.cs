using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace ReedClinic.Documents;

/// <summary>Text made safe for HTML. Letters of every script stay readable; what could be markup doesn't.</summary>
internal static class Escaped
{
    private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);

    public static string Text(string text) => Encoder.Encode(text);

    /// <summary>The same, with line breaks kept.</summary>
    public static string Lines(string text) =>
        string.Join("<br>", text.Split('\n').Select(line => Encoder.Encode(line.TrimEnd('\r'))));
}
