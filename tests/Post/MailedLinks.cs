using System.Text.RegularExpressions;

namespace ReedClinic.Post;

/// <summary>The links in mails that were written into a folder: how tests get at a one-time link, as a person would.</summary>
public static class MailedLinks
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    /// <summary>The path of the link to a page in the latest mail to an address; waits until such a mail is there.</summary>
    public static Task<string> PathAsync(string folder, string email, string path, CancellationToken ct, TimeSpan? longest = null) =>
        FirstAsync(folder, mail => Find(mail, email, path), $"with a link to {path} to {email}", longest ?? Patience, ct);

    /// <summary>The latest mail to an address with a subject, as it was written; waits until there is one.</summary>
    public static Task<string> MailAsync(string folder, string email, string subject, CancellationToken ct, TimeSpan? longest = null) =>
        FirstAsync(
            folder,
            mail => Regex.IsMatch(mail, $@"^To: <?{Regex.Escape(email)}>?\r?$", RegexOptions.Multiline | RegexOptions.IgnoreCase)
                && Regex.IsMatch(mail, $@"^Subject: {Regex.Escape(subject)}\r?$", RegexOptions.Multiline) ? mail : null,
            $"“{subject}” to {email}",
            longest ?? Patience,
            ct);

    // The latest first. When none comes it says what there is instead.
    private static async Task<string> FirstAsync(string folder, Func<string, string?> wanted, string what, TimeSpan longest, CancellationToken ct)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(ct);
        patience.CancelAfter(longest);
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(50));
        List<string> mails = [];
        try
        {
            do
            {
                mails = Directory.Exists(folder) ? [.. Directory.GetFiles(folder, "*.eml").OrderDescending(StringComparer.Ordinal).Select(File.ReadAllText)] : [];
                if (mails.Select(wanted).FirstOrDefault(found => found is not null) is { } found)
                {
                    return found;
                }
            }
            while (await tick.WaitForNextTickAsync(patience.Token));
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            // It is said below.
        }

        ct.ThrowIfCancellationRequested();
        var there = mails.SelectMany(mail => Regex.Matches(mail, @"^(To|Subject): .*", RegexOptions.Multiline)).Select(line => line.Value.Trim());
        throw new TimeoutException($"No mail {what} came in {longest.TotalSeconds:0.#} seconds. There are: {string.Join("; ", there)}");
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
