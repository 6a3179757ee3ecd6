using System.Text.RegularExpressions;

namespace ReedClinic.Post;

/// <summary>The links in mails that were written into a folder: how tests get at a one-time link, as a person would.</summary>
public static class MailedLinks
{
    /// <summary>The path of the link to a page in the latest mail to an address; waits until such a mail is there.</summary>
    public static async Task<string> PathAsync(string folder, string email, string path, CancellationToken ct)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(50));
        do
        {
            var mails = Directory.Exists(folder) ? Directory.GetFiles(folder, "*.eml").OrderDescending(StringComparer.Ordinal).Select(File.ReadAllText) : [];
            if (mails.Select(mail => Find(mail, email, path)).FirstOrDefault(found => found is not null) is { } link)
            {
                return link;
            }
        }
        while (await tick.WaitForNextTickAsync(ct));
        throw new OperationCanceledException(ct);
    }

    /// <summary>The latest mail to an address with a subject, as it was written; waits until there is one.</summary>
    public static async Task<string> MailAsync(string folder, string email, string subject, CancellationToken ct)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(50));
        do
        {
            var mails = Directory.Exists(folder) ? Directory.GetFiles(folder, "*.eml").OrderDescending(StringComparer.Ordinal).Select(File.ReadAllText) : [];
            if (mails.FirstOrDefault(mail => Regex.IsMatch(mail, $@"^To: <?{Regex.Escape(email)}>?\r?$", RegexOptions.Multiline | RegexOptions.IgnoreCase)
                && Regex.IsMatch(mail, $@"^Subject: {Regex.Escape(subject)}\r?$", RegexOptions.Multiline)) is { } found)
            {
                return found;
            }
        }
        while (await tick.WaitForNextTickAsync(ct));
        throw new OperationCanceledException(ct);
    }

    /// <summary>The path of the link to a page in a mail to an address; null when the mail is another.</summary>
    public static string? Find(string mail, string email, string path)
    {
        // Quoted-printable, RFC 2045, 6.7: a line that ends with = goes on in the next, and = itself is written =3D.
        var plain = Regex.Replace(mail, "=\r?\n", "").Replace("=3D", "=", StringComparison.Ordinal);
        return Regex.IsMatch(plain, $@"^To: <?{Regex.Escape(email)}>?\r?$", RegexOptions.Multiline | RegexOptions.IgnoreCase)
            && Regex.Match(plain, $@"https?://[^/\s]+({Regex.Escape(path)}[A-Za-z0-9_/-]*)") is { Success: true } link
            ? link.Groups[1].Value
            : null;
    }
}
