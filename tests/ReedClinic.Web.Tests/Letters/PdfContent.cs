using System.Text;
using System.Text.RegularExpressions;

namespace ReedClinic.Web.Tests.Letters;

/// <summary>
/// A PDF without what its writer makes anew each time: the moments of writing, the names of the document, and the tags of subset
/// fonts (ISO 32000-2:2020, 14.3, 14.4 and 9.9.2). What is left is the same for the same letter on the same paper.
/// </summary>
internal static partial class PdfContent
{
    public static string Of(byte[] pdf)
    {
        var text = Encoding.Latin1.GetString(pdf);
        Assert.StartsWith("%PDF-", text, StringComparison.Ordinal);
        return Fresh().Replace(text, "");
    }

    [GeneratedRegex(@"(?<=/)[A-Z]{6}(?=\+)|\bD:\d{14}|<[0-9A-Fa-f]{32}>|(?<=Date>)\d{4}-\d{2}-\d{2}T[^<]+|\buuid:[0-9a-f-]{36}")]
    private static partial Regex Fresh();
}
