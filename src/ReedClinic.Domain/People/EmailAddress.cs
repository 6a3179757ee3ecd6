namespace ReedClinic.Domain.People;

/// <summary>The rules for an e-mail address: only what no working address breaks. Mail that arrives is the real test.</summary>
public static class EmailAddress
{
    /// <summary>
    /// The address as it will be kept, or null when it can't be one. Its host has to be named in full, with a dot in it: mail
    /// goes from host to host by full names only (RFC 5321, section 2.3.5).
    /// </summary>
    /// <param name="typed">What was typed.</param>
    public static string? Read(string? typed) =>
        ReadAny(typed) is { } address && address[(address.LastIndexOf('@') + 1)..].Split('.') is { Length: > 1 } parts && parts.All(part => part.Length > 0)
            ? address
            : null;

    /// <summary>The same for finding somebody: an address that was taken long ago may name its host by one word.</summary>
    /// <param name="typed">What was typed.</param>
    public static string? ReadAny(string? typed)
    {
        var address = typed?.Trim() ?? string.Empty;
        var at = address.LastIndexOf('@');
        return address.Length > Student.LongestEmail
            || at <= 0
            || at == address.Length - 1
            || address.Any(letter => char.IsControl(letter) || char.IsWhiteSpace(letter) || letter is '<' or '>' or ',')
            ? null
            : address;
    }
}
