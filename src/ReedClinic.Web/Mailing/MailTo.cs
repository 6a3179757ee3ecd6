namespace ReedClinic.Web.Mailing;

/// <summary>Links that begin a mail in the reader’s own mail program (RFC 6068).</summary>
public static class MailTo
{
    /// <summary>The link. Whatever the address holds stays an address: none of it becomes a copy to somebody else.</summary>
    /// <param name="mail">The address.</param>
    /// <param name="subject">The subject; null where there is none.</param>
    public static string Link(string mail, string? subject = null)
    {
        ArgumentNullException.ThrowIfNull(mail);
        return "mailto:" + Uri.EscapeDataString(mail).Replace("%40", "@", StringComparison.Ordinal)
            + (subject is null ? "" : "?subject=" + Uri.EscapeDataString(subject));
    }
}
