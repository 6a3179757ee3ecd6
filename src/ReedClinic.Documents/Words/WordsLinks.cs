using System.Text.RegularExpressions;

namespace ReedClinic.Documents.Words;

/// <summary>Where words may lead, and which pictures may stand in them. One rule for the page and for plain text.</summary>
internal static class WordsLinks
{
    private static readonly Regex Picture = new(
        @"^/media/[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)*(\.[A-Za-z0-9]+)?\z", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    /// <summary>Whether a link leads to a page by https or to a letter-box, by a whole address.</summary>
    public static bool MayLead(string? address) =>
        Uri.TryCreate(address, UriKind.Absolute, out var uri)
        && !address!.Any(letter => char.IsControl(letter) || char.IsWhiteSpace(letter))
        && ((uri.Scheme == Uri.UriSchemeHttps && uri.Host.Length > 0 && uri.UserInfo.Length == 0 && Starts(address, "https://"))
            || (uri.Scheme == Uri.UriSchemeMailto && Starts(address, "mailto:")));

    /// <summary>Whether a picture is one of this studio's own; nothing is ever fetched from elsewhere.</summary>
    public static bool MayShow(string? address) => address is not null && Picture.IsMatch(address);

    private static bool Starts(string address, string scheme) => address.StartsWith(scheme, StringComparison.OrdinalIgnoreCase);
}
