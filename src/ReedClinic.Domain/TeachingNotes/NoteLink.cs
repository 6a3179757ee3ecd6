using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.TeachingNotes;

/// <summary>Where a link of a note may lead: to a page by https, by a whole address that shows where it leads.</summary>
public static class NoteLink
{
    /// <summary>The longest address, in characters.</summary>
    public const int Longest = 300;

    private const string Scheme = "https://";

    /// <summary>
    /// Whether a text is such an address and nothing else: no name before the host (RFC 3986, 7.6), a host of plain letters with a dot
    /// in it, no number in its place, and nothing that can't be seen. A host in another script is written as its Punycode (RFC 3492).
    /// </summary>
    /// <param name="text">The text.</param>
    public static bool Is(string? text) =>
        text is { Length: <= Longest } && text.StartsWith(Scheme, StringComparison.Ordinal)
        && text.All(letter => letter is > ' ' and <= '~' and not ('"' or '<' or '>' or '\\' or '`' or '{' or '}' or '|' or '^'))
        && Uri.TryCreate(text, UriKind.Absolute, out var uri)
        && uri.Scheme == Uri.UriSchemeHttps && uri.UserInfo.Length == 0 && uri.IsDefaultPort && uri.HostNameType == UriHostNameType.Dns
        && IsPlain(uri.Host) && text[Scheme.Length..].StartsWith(uri.Host, StringComparison.OrdinalIgnoreCase);

    /// <summary>The address that a paragraph of a letter leads to: one alone in its paragraph, in a part that somebody wrote; else null.</summary>
    /// <param name="block">The part.</param>
    /// <param name="paragraph">A paragraph of it.</param>
    public static string? Of(LetterBlock block, LetterParagraph paragraph)
    {
        ArgumentNullException.ThrowIfNull(block);
        ArgumentNullException.ThrowIfNull(paragraph);
        return block.IsEdited && Is(paragraph.Text) ? paragraph.Text : null;
    }

    /// <summary>The address at the end of a point of a list, behind the words that it belongs to, in a part that somebody wrote; else null.</summary>
    /// <param name="block">The part.</param>
    /// <param name="item">A point of its list.</param>
    public static string? AtEnd(LetterBlock block, LetterParagraph item)
    {
        ArgumentNullException.ThrowIfNull(block);
        ArgumentNullException.ThrowIfNull(item);
        return block is { IsEdited: true, IsList: true } && item.Text.LastIndexOf(' ') is var at and > 0 && Is(item.Text[(at + 1)..]) ? item.Text[(at + 1)..] : null;
    }

    /// <summary>The host that an address leads to.</summary>
    /// <param name="link">An address that <see cref="Is"/> takes.</param>
    public static string Host(string link) => new Uri(link, UriKind.Absolute).Host;

    /// <summary>Reads what was typed.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="field">The field it was typed into.</param>
    /// <param name="problems">Gets what can't be taken.</param>
    /// <returns>The address; null for none.</returns>
    public static string? Read(string? typed, string field, ICollection<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        var text = PlainText.Tidy(typed);
        if (text is null || Is(text))
        {
            return text;
        }

        problems.Add(new(field, "Please give a whole address that begins with https:// and a name such as example.org, without a user’s name before it; at most 300 characters."));
        return null;
    }

    private static bool IsPlain(string host) =>
        host.Contains('.', StringComparison.Ordinal) && host[^1] != '.' && host.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '.' or '-')
        && host.Split('.')[^1].Any(char.IsAsciiLetter);
}
